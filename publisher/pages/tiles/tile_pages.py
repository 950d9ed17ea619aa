"""Tile pages: parts that fit no page, cut into tiles that are taped together by printed match marks."""

from collections.abc import Callable

import shapely

from publisher.basics import Box, Rule, Severity
from publisher.geometry import Part, polygon
from publisher.pages.model import Drawn, Stroke, Tile
from publisher.pages.sheet import PAGE_SQUARE, Body, Context, Numbers, PageDraft, ink_box
from publisher.pages.templates import (
    PART_AWAY,
    PART_GAP,
    LabelRoom,
    Says,
    Spot,
    blocks,
    details,
    first_spot,
    identities,
    letters,
    mark_promises,
    mark_strokes,
    near,
    outline_promise,
    outline_strokes,
    page_frame,
    patterned,
    planner_of,
    quiet_boxes,
    quiet_lines,
    sample_count,
    samples,
    says,
    shortened,
    sides_carried,
    small_blocks,
    spot_drawn,
    spot_promises,
    waste_strokes,
)
from publisher.pages.tiles.seam_drawing import seam_bodies
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_furniture import info_drawn, size_lines
from publisher.pages.tiles.tile_map import overview_draft
from publisher.pages.tiles.tile_plan import Tiling, least_tiles, tiling
from publisher.pages.type import LEAST, NOTE, SPACE, as_polygon

MOST_TILES_OF_PART = 200
MAP_FROM = 3  # tiles of one copy that have a map of their own
TURNED = ("upper side", "left", "lower side", "right")  # where the upper end of a part lies that is turned by quarters
TOO_MANY_TILES = Rule(
    "pages/too-many-tiles",
    "A part takes more tiles than a pack holds",
    "nobody tapes hundreds of pages, and errors of tiles add up; a slip in a size must not fill a thousand pages",
    Severity.ERROR,
)


def tile_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the pages of all parts that fit no page: for each copy an overview (when it has more than two tiles) and its tiles."""
    planner = planner_of(context)
    drafts: list[PageDraft] = []
    for part in context.parts:
        if planner.fits(part):
            continue
        count = least_tiles(context, part) * sample_count(context, part)
        if count > MOST_TILES_OF_PART:
            drafts.append(_too_many(context, part, count))
            continue
        for sample in samples(context, part):
            plan = tiling(context, sample)
            if len(plan.cutting.cells) >= MAP_FROM:
                drafts.append(overview_draft(context, plan))
            whole = _labelled(context, plan)
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
    """Return the name of a tile: row, column, and how many there are of each."""
    return f"row {cell.row}, column {cell.column} of {plan.cutting.rows} × {plan.cutting.columns}"


def _draft(context: Context, plan: Tiling, cell: Cell, whole: bool) -> PageDraft:
    part = plan.sample.part
    of = f", copy {plan.sample.copy}" if plan.sample.copy else ""
    first = cell is plan.cutting.cells[0]
    return PageDraft(
        kind="tiles",
        key=plan.key(cell),
        title=f"{part.letter} {part.name}{of} — {caption(plan, cell)}",
        frame=plan.frame,
        body=_body(context, plan, cell, whole),
        task=f"tiles of part {part.letter}",
        bookmarks=((f"{part.letter} {part.name}{of}", 1),) if first else (),
        parts=(part.id,),
    )


def _body(context: Context, plan: Tiling, cell: Cell, whole: bool) -> Callable[[Numbers], Body]:
    """Return the maker of one tile's page."""
    part, copy, mirrored = plan.sample.part, max(plan.sample.copy, 1), plan.sample.mirrored
    pose, window = plan.pose(cell), plan.window(cell)

    def body(numbers: Numbers) -> Body:
        page = numbers.page
        shown = Body(
            tiles=(Tile(part.id, copy, cell.row, cell.column, window, pose),),
            outlines=(outline_promise(page, part, copy, pose, window, cell.row, cell.column),),
        )
        under, over, boxes = seam_bodies(context.type, plan, cell, numbers)
        label = _label(context, plan, cell, boxes, whole)
        notes = plan.notes_on(cell)
        quiet = [*quiet_boxes(part, pose, notes), *(b.grown(0.4) for b in boxes)]
        if label:
            quiet.append(label.box.grown(0.8))
        words = [w for n in notes for w in n.drawn(context.type)]
        marks = mark_strokes(part, pose, window, quiet)
        drawn: tuple[Drawn, ...] = (
            *waste_strokes(part, pose, context.type, window, [b.grown(0.4) for b in boxes]),
            *marks,
            *outline_strokes(part, pose, window),
            *words,
            *(spot_drawn(context.type, label, plan.turn) if label else ()),
            *size_lines(context.type, plan, cell, context.paper.first),
        )
        found = (
            shown
            + under
            + Body(drawn, marks=mark_promises(page, part, copy, marks, window))
            + over
            + Body(texts=spot_promises(page, label, part.id, copy) if label else ())
            + Body(carried=(sides_carried(page, label.box, part.id, copy, mirrored),) if label and whole else ())
        )
        info, box = info_drawn(context.type, plan, cell, caption(plan, cell), numbers, context.paper.first)
        if not whole or (label and label.label.form in ("whole", "low")):
            return found + info
        enough = label is not None and label.label.form in ("row", "column", "run")
        beside = _beside(context, plan, cell, (found + info).drawn, page, enough=enough)
        if beside is not None:
            return found + info + beside
        sides = _sides(_said(context, plan), plan.turn)
        info, box = info_drawn(context.type, plan, cell, caption(plan, cell), numbers, context.paper.first, sides)
        return found + info + Body(carried=(sides_carried(page, box, part.id, copy, mirrored),))

    return body


def _label(context: Context, plan: Tiling, cell: Cell, boxes: list[Box], whole: bool) -> Spot | None:
    """Return the words inside a tile: on the ``whole`` one all that fits there, what the piece must not lose above all; on the
    others letter and name. None where not even the letter fits."""
    said = _said(context, plan)
    room = _room(plan, cell, boxes)
    if whole and not patterned(plan.sample.part):
        found = next((f for group in blocks(context.type, said) if (f := room.best(group))), None)
        if found:
            return Spot(*found)
    best = identities(context.type, said) if whole else small_blocks(context.type, said)
    groups = (*best, *letters(context.type, said))
    rooms = (room, _room(plan, cell, boxes, surface=False))  # lines of a surface make room where there is no other
    return next((spot for one in rooms if (spot := first_spot(one, groups))), None)


def _beside(
    context: Context, plan: Tiling, cell: Cell, drawn: tuple[Drawn, ...], page: int, *, enough: bool
) -> Body | None:
    """Return what a piece may lose, in free room of a tile's page beside the tile, and unless the tile holds ``enough``, what it must
    not lose; None when there is no room."""
    live = plan.frame.live
    window, pose = plan.window(cell), plan.pose(cell)
    shape = polygon(plan.sample.part.template, pose).intersection(as_polygon(window))
    outline = shapely.Polygon(shapely.get_parts(shape)[0].exterior)
    ink = (
        thing for thing in drawn if not isinstance(thing, Stroke) or thing.clip is None
    )  # what is clipped is the part's own
    boxes = [box for thing in ink if (box := ink_box(context.type.faces, thing))]
    taken = [
        outline.buffer(PART_GAP),
        *(as_polygon(box.grown(SPACE)) for box in boxes),
        *(as_polygon(b.grown(PART_AWAY / 2)) for b in plan.frame.blocked),
    ]
    paper = as_polygon(live).difference(shapely.union_all(taken))
    for words in shortened(_said(context, plan)):
        for group in details(context.type, words) if enough else blocks(context.type, words, (NOTE, LEAST)):
            if spot := near(outline, group, paper):
                sample = plan.sample
                where = sides_carried(page, spot.box, sample.part.id, max(sample.copy, 1), sample.mirrored)
                return Body(
                    spot_drawn(context.type, spot, plan.turn), texts=spot_promises(page, spot), carried=(where,)
                )
    return None


def _sides(said: Says, turn: float) -> str:
    """Return in words what a label says of a part that lies turned by whole quarters, where the label itself finds no room."""
    face = f": {said.face}" if said.face else ""
    top = f" Its top is at the {TURNED[round(turn / 90.0) % 4]} of this page." if said.top else ""
    return f"Part {said.letter}, {said.cut}. {said.sides[0]}{face}. {' '.join(said.sides[1:])}{top}".strip()


def _said(context: Context, plan: Tiling) -> Says:
    return says(context, plan.sample.part, plan.sample.copy, plan.sample.mirrored)


def _labelled(context: Context, plan: Tiling) -> Cell:
    """Return the tile that carries the whole label: the first with enough room, else the one that shows most of the part."""
    said = _said(context, plan)
    sizes = () if patterned(plan.sample.part) else tuple(blocks(context.type, said))
    for cell in plan.cutting.cells if sizes else ():
        room = _room(plan, cell, [])
        if any(room.best(size) for size in sizes):
            return cell
    return max(plan.cutting.cells, key=lambda c: plan.laid.intersection(as_polygon(c.area)).area)


def _room(plan: Tiling, cell: Cell, boxes: list[Box], *, surface: bool = True) -> LabelRoom:
    """Return the free places of a tile, on the page: on the part, inside the tile, clear of marks and of what seams say. Lines of
    the surface are among the marks unless ``surface`` is False."""
    area = cell.area.moved(*plan.shift(cell))
    ground = polygon(plan.sample.part.template, plan.pose(cell)).intersection(as_polygon(area))
    lines = plan.lines_on(cell)
    if not surface:
        notes = [note.area() for note in plan.notes_on(cell)]
        lines = shapely.union_all([quiet_lines(plan.sample.part, plan.pose(cell), surface=False), *notes])
    return LabelRoom(ground, shapely.union_all([lines, *map(as_polygon, boxes)]))
