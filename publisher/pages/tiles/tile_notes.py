"""The note of a tile on a page that others share: which tile it is, what to do with it, what to measure after taping.

It stands close beside the tile, else on it where no line crosses, else farther off; in fewer and smaller words where there is little
room.
"""

from collections.abc import Iterable, Iterator, Sequence

import shapely

from publisher.basics import Box, Carried, Layer, TextPromise, record
from publisher.basics.wording import LengthUnit
from publisher.geometry import polygon
from publisher.pages.model import Drawn
from publisher.pages.sheet import Body, Context, Numbers
from publisher.pages.templates import (
    PART_AWAY,
    LabelRoom,
    Shown,
    Spot,
    free_area,
    free_paper,
    patterned,
    said_off_part,
    sides_carried,
)
from publisher.pages.tiles.seam_marks import TileSeam
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_labels import said_of, sides_said, tile_room
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import LEAST, NOTE, Setter, TypeStyle, as_polygon

MEASURES = (84.0, 64.0, 50.0, 38.0, 30.0)  # mm
NOTE_OVER = 0.5  # mm by which letters may reach over a note's box
NOTE_CLOSE = 12.0  # mm from its tile within which nobody takes a note for another's
WAYS: tuple[tuple[TypeStyle, bool, bool], ...] = (
    (NOTE, True, True),
    (LEAST, True, True),
    (LEAST, False, True),
    (LEAST, False, False),
)
WIDEST_PAGE = 88  # a number as wide as any: places are found before pages have numbers


@record
class TileNote:
    """Where the note of a tile stands: the upper left corner of its words and their measure, their size, all of them or few, with or
    without lengths that no line shows (``measured``); whether they lie on the tile itself; and what they say of the part's sides, where
    its label has no room for that."""

    box: Box
    style: TypeStyle
    full: bool
    measured: bool
    on_tile: bool
    sides: str = ""


@record
class NoteSize:
    """A setting of a note as a block that is looked up a place for."""

    width: float
    height: float
    style: TypeStyle
    full: bool
    measured: bool
    ease: float = 1.0


NoteFor = tuple[
    Tiling, Cell, Sequence[Box], Spot | None, bool
]  # what seams and label take of a tile, and whether it bears the whole label


def tile_notes(context: Context, page: Shown, tiles: tuple[NoteFor, ...]) -> tuple[TileNote, ...] | None:
    """Return a place for the note of each tile of a page; None when one finds none."""
    paper = note_paper(page, tiles)
    found = []
    for plan, cell, boxes, label, whole in tiles:
        sides = note_sides(context, plan, label, whole)
        sizes = tuple(_sizes(context, plan, cell, sides))
        note = _place(plan, cell, boxes, label, paper, sizes, sides)
        if note is None:
            return None
        if not note.on_tile:
            paper = paper.difference(as_polygon(note.box).buffer(PART_AWAY, join_style="mitre"))
        found.append(note)
    return tuple(found)


def note_paper(page: Shown, tiles: tuple[NoteFor, ...]) -> shapely.Geometry:
    """Return where on a page notes of its tiles may stand that lie on none of them."""
    paper = free_paper(free_area(page.frame), page.lying, page.chunks)
    seams = [box.grown(1.0) for _, _, boxes, _, _ in tiles for box in boxes]
    taken = (*seams, *(box.grown(PART_AWAY) for box in page.words))
    return paper.difference(shapely.union_all([as_polygon(box) for box in taken]))


def note_sides(context: Context, plan: Tiling, label: Spot | None, whole: bool) -> str:
    """Return what a note must say of the part's sides: nothing where the label on the tile says it."""
    said = said_of(context, plan)
    form = label.label.form if label else "letter"
    if form in ("whole", "low") or (form in ("row", "column", "run") and not said.face):
        return ""
    return sides_said(said, plan.turn) if whole else ""


def _sizes(context: Context, plan: Tiling, cell: Cell, sides: str) -> Iterator[NoteSize]:
    unit = context.paper.first
    known = set()
    for style, full, measured in WAYS:
        said = _said(plan, cell, None, unit, full, measured, sides)
        if (style, said) not in known:
            known.add((style, said))
            for measure in MEASURES:
                height = set_note(context.type, said, style, 0.0, 0.0, measure)[1]
                yield NoteSize(measure, height, style, full, measured)


def _place(
    plan: Tiling,
    cell: Cell,
    boxes: Sequence[Box],
    label: Spot | None,
    paper: shapely.Geometry,
    sizes: tuple[NoteSize, ...],
    sides: str,
) -> TileNote | None:
    """Return the place of a note: for each size of words first close beside the tile, then on it, then anywhere on free paper."""
    shape = polygon(plan.sample.part.template, plan.pose(cell)).intersection(as_polygon(plan.window(cell)))
    around = Box(*shape.bounds)
    beside = LabelRoom(paper, clear=0.0)
    own = shape.buffer(-1e-3)
    on: LabelRoom | None = None
    for way in dict.fromkeys((size.style, size.full, size.measured) for size in sizes):
        some = [size for size in sizes if (size.style, size.full, size.measured) == way]
        tried = [(near, size) for size in some if (near := beside.nearest(size, around))]
        close = min(tried, key=lambda one: one[0][0], default=None)
        if close and close[0][0] <= NOTE_CLOSE:
            return _note(close[1], close[0][1], sides, on_tile=False)
        if on is None and not patterned(plan.sample.part):
            on = tile_room(plan, cell, [*boxes, *((label.box,) if label else ())])
        if on is not None and (inside := on.best(some)):
            size, at = inside
            if own.covers(shapely.box(at[0], at[1], at[0] + size.width, at[1] + size.height)):
                return _note(size, at, sides, on_tile=True)
        if close:
            return _note(close[1], close[0][1], sides, on_tile=False)
    return None


def _note(size: NoteSize, at: tuple[float, float], sides: str, *, on_tile: bool) -> TileNote:
    box = Box(at[0], at[1], at[0] + size.width, at[1] + size.height)
    return TileNote(box, size.style, size.full, size.measured, on_tile, sides)


def note_drawn(context: Context, plan: Tiling, cell: Cell, note: TileNote, numbers: Numbers, *, whole: bool) -> Body:
    """Return a note in its place, with the promises about it."""
    said = _said(plan, cell, numbers, context.paper.first, note.full, note.measured, note.sides)
    left, top, width = note.box.left, note.box.top, note.box.width
    drawn, height = set_note(context.type, said, note.style, left, top, width)
    part, copy = plan.sample.part.id, max(plan.sample.copy, 1)
    measures = (text for text in said_off_part(plan.sample.part, context.paper.first) if text in said)
    lines = (line for text in measures for line in context.type.lines(text, note.style, width))
    own = Box(left, top - height, left + width, top)
    body = Body(
        drawn,
        texts=tuple(TextPromise(numbers.page, line) for line in (said[0], *lines)),
        carried=(tile_carried(numbers.page, own, part, copy, cell),),
    )
    if whole and note.sides:
        before = set_note(context.type, said[:-1], note.style, left, top, width)[
            1
        ]  # other words may say “top” of the tile
        sides = Box(left, top - height, left + width, top - before).grown(NOTE_OVER)
        body += Body(carried=(sides_carried(numbers.page, sides, part, copy, plan.sample.mirrored),))
    return body


def tile_carried(page: int, box: Box, part: str, copy: int, cell: Cell) -> Carried:
    """Say that the words in a box are the note of a tile: they may lie on the tile itself."""
    return Carried(f"tile:{part}:{copy}:{cell.row}:{cell.column}", page, box)


def set_note(
    setter: Setter, said: tuple[str, ...], style: TypeStyle, x: float, top: float, width: float
) -> tuple[tuple[Drawn, ...], float]:
    """Return paragraphs under each other, the first bold, and their height."""
    drawn: list[Drawn] = []
    y = top
    for number, text in enumerate(said):
        block = setter.paragraph(text, style if number else style.bold(), x, y, width, layer=Layer.NOTES)
        drawn += block.drawn
        y -= block.height + 0.4
    return tuple(drawn), top - y - 0.4


def tile_name(plan: Tiling, cell: Cell) -> str:
    """Return what a tile is called: its part, and as which of how many it comes."""
    number, count = plan.cutting.cells.index(cell) + 1, len(plan.cutting.cells)
    return f"Tile {plan.name.strip()} {number} of {count}"


def _said(
    plan: Tiling, cell: Cell, numbers: Numbers | None, unit: LengthUnit, full: bool, measured: bool, sides: str
) -> tuple[str, ...]:
    """Return the words of a note. Without ``numbers`` pages are numbered as widely as they may be."""
    on = [seam for seam in plan.seams if seam.second is cell]
    under = [seam for seam in plan.seams if seam.first is cell]
    said = [tile_name(plan, cell)]
    if on:
        said.append(_laid_over(on, _and(_where(plan, cell, seam.first, numbers) for seam in on), full))
    if under:
        names = _and(_where(plan, cell, seam.second, numbers) for seam in under)
        task = "Leave its own glue area on" if on else "Cut it out with its glue area"
        said.append(f"{task}: {names} {'lies' if len(under) == 1 else 'lie'} over that.")
    if _beside_part(plan, (*on, *under)):
        said.append(
            "Some match marks stand beside the part: cut the paper off along its outline only when all is taped."
        )
    said.append(f"Taped it measures {plan.sizes(unit)}." + (" Measure it before you cut." if full else ""))
    if measured and cell is plan.cutting.cells[0]:
        said += said_off_part(plan.sample.part, unit)
    return (*said, *filter(None, (sides,)))


def _where(plan: Tiling, cell: Cell, other: Cell, numbers: Numbers | None) -> str:
    """Return how a tile names another: by its number, and by its page where that is another one."""
    number = plan.cutting.cells.index(other) + 1
    if plan.key(other) == plan.key(cell):
        return f"tile {number}"
    page = WIDEST_PAGE if numbers is None else numbers.page_of(plan.key(other)) or 0
    return f"tile {number} (page {page})"


def _laid_over(on: list[TileSeam], names: str, full: bool) -> str:
    """Say to lay a tile over others; in ``full`` also how."""
    ends = _and("left" if seam.upright else "top" for seam in on)
    task = f"Cut it out of the page and trim it along the trim line at the {ends}. Lay it over the glue area of {names}"
    return f"{task} so that match marks of the same name cover each other, and glue or tape it." if full else f"{task}."


def _beside_part(plan: Tiling, found: Iterable[TileSeam]) -> bool:
    """Say whether a match mark of these seams stands on paper beside the part."""
    return any(not plan.laid.contains(shapely.Point(mark)) for seam in found for mark in seam.marks)


def _and(names: Iterable[str]) -> str:
    return " and ".join(names)
