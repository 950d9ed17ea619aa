"""One note for all tiles of a page that bears many, such as those of long strips: what to do with them is said once, and of each what
only it needs."""

from collections.abc import Iterable
from itertools import groupby

import shapely

from publisher.basics import Box, TextPromise, record
from publisher.basics.wording import LengthUnit, series
from publisher.pages.sheet import Body, Context, Numbers
from publisher.pages.templates import LabelRoom, said_off_part, sides_carried
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_notes import MEASURES, NOTE_OVER, WIDEST_PAGE, set_note
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import LEAST, NOTE, TypeStyle

COMMON_FROM = 4  # tiles of a page: of fewer each has a note of its own, where there is room


@record
class NotedTile:
    """A tile that a common note is about, and what it says of its part's sides, where the tile's label has no room for that."""

    plan: Tiling
    cell: Cell
    sides: str = ""


@record
class CommonNote:
    """Where the note of all tiles of a page stands, and the size of its words."""

    box: Box
    style: TypeStyle
    tiles: tuple[NotedTile, ...]


@record
class CommonSize:
    """A setting of a common note as a block that is looked up a place for."""

    width: float
    height: float
    style: TypeStyle
    ease: float = 1.0


def common_note(context: Context, tiles: tuple[NotedTile, ...], paper: shapely.Geometry) -> CommonNote | None:
    """Return a place on free ``paper`` for the note of all tiles of a page; None where there is none."""
    room = LabelRoom(paper, clear=0.0)
    for style in (NOTE, LEAST):
        sizes = []
        for measure in MEASURES:
            height = set_note(context.type, _said(tiles, None, context.paper.first), style, 0.0, 0.0, measure)[1]
            sizes.append(CommonSize(measure, height, style))
        if found := room.best(sizes):
            size, (x, y) = found
            return CommonNote(Box(x, y, x + size.width, y + size.height), style, tiles)
    return None


def room_wanted(context: Context, tiles: tuple[NotedTile, ...]) -> tuple[tuple[float, float], ...]:
    """Return sizes (width and height in mm) of room on a page in one of which the note of so many tiles fits: low and high."""
    said = _said(tiles, None, context.paper.first)
    return tuple(
        (measure + 1.0, set_note(context.type, said, LEAST, 0.0, 0.0, measure)[1] + 1.0)
        for measure in (MEASURES[0], MEASURES[2])
    )


def common_drawn(context: Context, note: CommonNote, numbers: Numbers) -> Body:
    """Return a common note in its place, with the promises about it."""
    said = _said(note.tiles, numbers, context.paper.first)
    box, setter = note.box, context.type
    drawn, _ = set_note(setter, said, note.style, box.left, box.top, box.width)
    measures = {text for tile in note.tiles for text in _measures(tile, context.paper.first)}
    titles = [line for text in said[:1] for line in setter.lines(text, note.style.bold(), box.width)]
    lines = [line for text in said if text in measures for line in setter.lines(text, note.style, box.width)]
    body = Body(drawn, texts=tuple(TextPromise(numbers.page, line) for line in (*titles, *lines)))
    for tile in note.tiles:
        if tile.sides:
            at = said.index(tile.sides)
            top, low = (
                box.top - set_note(setter, said[:end], note.style, box.left, box.top, box.width)[1]
                for end in (at, at + 1)
            )
            where = Box(box.left, low, box.right, top).grown(NOTE_OVER)
            sample = tile.plan.sample
            body += Body(
                carried=(sides_carried(numbers.page, where, sample.part.id, max(sample.copy, 1), sample.mirrored),)
            )
    return body


def _said(tiles: tuple[NotedTile, ...], numbers: Numbers | None, unit: LengthUnit) -> tuple[str, ...]:
    """Return the paragraphs of a common note. Without ``numbers`` pages are numbered as widely as they may be."""
    ordered = sorted(tiles, key=lambda tile: (tile.plan.name, tile.plan.cutting.cells.index(tile.cell)))
    plans = [[*own] for _, own in groupby(ordered, key=lambda tile: tile.plan.name)]
    titles = "; ".join(f"{own[0].plan.name.strip()} {_numbers(own)}" for own in plans)
    said = [
        f"Tiles {titles}",
        "Cut each out with its grey glue area, and trim it along its dashed trim line. Lay it over the glue area of the tile before it so "
        "that match marks of the same name cover each other, and glue or tape it.",
    ]
    if elsewhere := list(_elsewhere(tiles, numbers)):
        said.append(f"On other pages: {series(elsewhere)}.")
    if any(_beside(tile) for tile in tiles):
        said.append(
            "Some match marks stand beside the part: cut the paper off along its outline only when all is taped."
        )
    measured: dict[str, list[str]] = {}
    for own in plans:
        measured.setdefault(own[0].plan.sizes(unit), []).append(own[0].plan.name.strip())
    for sizes, names in measured.items():
        said.append(f"Taped {series(names)} {'measures' if len(names) == 1 else 'measure'} {sizes}.")
    said.append("Measure before you cut.")
    said += [text for tile in tiles for text in (*_measures(tile, unit), tile.sides) if text]
    return tuple(said)


def _numbers(own: list[NotedTile]) -> str:
    """Return the numbers of a part's tiles on the page, of how many: ``1 and 2 of 3``."""
    cells = own[0].plan.cutting.cells
    return f"{series(str(cells.index(tile.cell) + 1) for tile in own)} of {len(cells)}"


def _elsewhere(tiles: tuple[NotedTile, ...], numbers: Numbers | None) -> Iterable[str]:
    """Yield the neighbours of tiles that other pages bear, each once."""
    here = {(tile.plan.name, tile.cell) for tile in tiles}
    found: dict[str, None] = {}
    for tile in tiles:
        for seam in tile.plan.seams:
            if tile.cell in (seam.first, seam.second):
                other = seam.second if tile.cell is seam.first else seam.first
                if (tile.plan.name, other) not in here:
                    page = WIDEST_PAGE if numbers is None else numbers.page_of(tile.plan.key(other)) or 0
                    number = tile.plan.cutting.cells.index(other) + 1
                    found[f"{tile.plan.name.strip()} {number} (page {page})"] = None
    return found


def _measures(tile: NotedTile, unit: LengthUnit) -> tuple[str, ...]:
    first = tile.cell is tile.plan.cutting.cells[0]
    return said_off_part(tile.plan.sample.part, unit) if first else ()


def _beside(tile: NotedTile) -> bool:
    """Say whether a match mark of a tile stands beside its part."""
    own = [seam for seam in tile.plan.seams if tile.cell in (seam.first, seam.second)]
    return any(not tile.plan.laid.contains(shapely.Point(mark)) for seam in own for mark in seam.marks)
