"""Tile pages: parts that fit no page, cut into tiles that are taped together by printed match marks."""

from collections.abc import Callable, Iterable

import shapely

from publisher.basics import Rule, Severity
from publisher.geometry import Part, polygon
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import PAGE_SQUARE, Body, Context, Numbers, PageDraft, ink_box, title_fits
from publisher.pages.templates import (
    PART_AWAY,
    PART_GAP,
    blocks,
    details,
    near,
    page_frame,
    sample_count,
    shortened,
    sides_carried,
    spot_drawn,
    spot_promises,
)
from publisher.pages.tiles.seam_drawing import seam_bodies
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_drawing import tile_body
from publisher.pages.tiles.tile_furniture import info_drawn
from publisher.pages.tiles.tile_labels import labelled, said_of, sides_said, tile_label
from publisher.pages.tiles.tile_map import overview_draft
from publisher.pages.tiles.tile_plan import Tiling, least_tiles
from publisher.pages.type import LEAST, NOTE, SPACE, as_polygon

MOST_TILES_OF_PART = 200

TOO_MANY_TILES = Rule(
    "pages/too-many-tiles",
    "A part takes more tiles than a pack holds",
    "nobody tapes hundreds of pages, and errors of tiles add up; a slip in a size must not fill a thousand pages",
    Severity.ERROR,
)


def tiles_refusal(context: Context, part: Part) -> PageDraft | None:
    """Return the empty page that says why a part that fits no page is not printed; None when it can be."""
    count = least_tiles(context, part) * sample_count(context, part)
    return _too_many(context, part, count) if count > MOST_TILES_OF_PART else None


def tile_drafts(context: Context, plans: Iterable[Tiling]) -> tuple[PageDraft, ...]:
    """Return the pages of copies whose tiles have pages of their own: for each a map where it has one, and its tiles."""
    drafts: list[PageDraft] = []
    for plan in plans:
        if plan.mapped:
            drafts.append(overview_draft(context, plan))
        whole = labelled(context, plan)
        drafts += [_draft(context, plan, cell, cell is whole) for cell in plan.cutting.cells]
    return tuple(drafts)


def _too_many(context: Context, part: Part, count: int) -> PageDraft:
    """Return an empty page with the finding that a part takes more tiles than anybody would tape."""
    left, bottom, right, top = polygon(part.template).bounds
    finding = TOO_MANY_TILES.found(
        f"part {part.letter} {part.name} is {right - left:.0f} × {top - bottom:.0f} mm and would take {count} tiles on "
        f"{context.paper.title}; a pack takes at most {MOST_TILES_OF_PART}",
        subject=part.id,
        hint="use a larger paper, divide the part, or check its sizes",
        place=part.place,
        value=float(count),
        limit=float(MOST_TILES_OF_PART),
    )
    frame = page_frame(context.paper, True, PAGE_SQUARE, "lower_right")
    key, task = f"tiles:{part.id}", f"tiles of part {part.letter}"
    return PageDraft("tiles", key, f"{part.letter} {part.name}", frame, lambda _: Body(), task, findings=(finding,))


def caption(plan: Tiling, cell: Cell) -> str:
    """Return the name of a tile: its number in a single row or column, else row, column, and how many there are of each."""
    if min(plan.cutting.rows, plan.cutting.columns) == 1:
        return f"tile {max(cell.row, cell.column)} of {max(plan.cutting.rows, plan.cutting.columns)}"
    return f"row {cell.row}, column {cell.column} of {plan.cutting.rows} × {plan.cutting.columns}"


def _draft(context: Context, plan: Tiling, cell: Cell, whole: bool) -> PageDraft:
    part = plan.sample.part
    of = f", copy {plan.sample.copy}" if plan.sample.copy else ""
    first = cell is plan.cutting.cells[0]
    frame = plan.place(cell).frame
    titles = (f"{named}{of} — {caption(plan, cell)}" for named in (f"{part.letter} {part.name}", part.letter))
    return PageDraft(
        kind="tiles",
        key=plan.key(cell),
        title=next(
            (title for title in titles if title_fits(context.type, frame, title)), f"{part.letter} {part.name}{of}"
        ),
        frame=frame,
        body=_body(context, plan, cell, whole),
        task=f"tiles of part {part.letter}",
        bookmarks=((f"{part.letter} {part.name}{of}", 1, ""),) if first else (),
        parts=(part.id,),
    )


def _body(context: Context, plan: Tiling, cell: Cell, whole: bool) -> Callable[[Numbers], Body]:
    """Return the maker of one tile's page."""
    part, copy, mirrored = plan.sample.part, max(plan.sample.copy, 1), plan.sample.mirrored

    def body(numbers: Numbers) -> Body:
        page = numbers.page
        seamed = seam_bodies(context.type, plan, cell, numbers)
        label = tile_label(context, plan, cell, seamed.boxes, whole)
        found = tile_body(context, plan, cell, page, seamed, label, whole=whole)
        info, box = info_drawn(context.type, plan, cell, caption(plan, cell), numbers, context.paper.first)
        if not whole or (label and label.label.form in ("whole", "low")):
            return found + info
        enough = label is not None and label.label.form in ("row", "column", "run")
        beside = _beside(context, plan, cell, (found + info).drawn, page, enough=enough)
        if beside is not None:
            return found + info + beside
        sides = sides_said(said_of(context, plan), plan.turn)
        info, box = info_drawn(context.type, plan, cell, caption(plan, cell), numbers, context.paper.first, sides)
        return found + info + Body(carried=(sides_carried(page, box, part.id, copy, mirrored),))

    return body


def _beside(
    context: Context, plan: Tiling, cell: Cell, drawn: tuple[Drawn, ...], page: int, *, enough: bool
) -> Body | None:
    """Return what a piece may lose, in free room of a tile's page beside the tile, and unless the tile holds ``enough``, what it must
    not lose; None when there is no room."""
    frame = plan.place(cell).frame
    window, pose = plan.window(cell), plan.pose(cell)
    whole = shapely.Polygon(polygon(plan.sample.part.template, pose).exterior)  # what is cut out of it is hatched
    outline = shapely.Polygon(shapely.get_parts(whole.intersection(as_polygon(window)))[0].exterior)
    ink = (
        thing for thing in drawn if not isinstance(thing, Stroke) or thing.clip is None
    )  # what is clipped is the part's own
    boxes = [box for thing in ink if (box := ink_box(context.type.faces, thing))]
    taken = [
        outline.buffer(PART_GAP),
        *(as_polygon(box.grown(SPACE)) for box in boxes),
        *(as_polygon(b.grown(PART_AWAY / 2)) for b in frame.blocked),
    ]
    paper = as_polygon(frame.live).difference(shapely.union_all(taken))
    for words in shortened(said_of(context, plan)):
        for group in details(context.type, words) if enough else blocks(context.type, words, (NOTE, LEAST)):
            if spot := near(outline, group, paper):
                sample = plan.sample
                where = sides_carried(page, spot.box, sample.part.id, max(sample.copy, 1), sample.mirrored)
                return Body(
                    spot_drawn(context.type, spot, plan.turn), texts=spot_promises(page, spot), carried=(where,)
                )
    return None
