"""What the seams of a tile draw: match marks with their names, lines to trim on, glue areas with their words."""

from dataclasses import replace

import shapely

from publisher.basics import Box, Layer, Point, SeamPromise, circle, polyline, record, remembered
from publisher.geometry import polygon
from publisher.pages.model import Drawn, Fill, Stroke, Words
from publisher.pages.sheet import Body, Numbers
from publisher.pages.tiles.mark_names import Marked, NameRoom, placed_name
from publisher.pages.tiles.seam_marks import TileSeam
from publisher.pages.tiles.seams import MARK_RADIUS, OVERLAP, TRIM, Cell
from publisher.pages.tiles.tile_furniture import SIZE_HALF, size_bands
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import GAUGE, LEAST, NOTE, PALE, REFERENCE, Setter, TypeStyle, as_polygon
from publisher.pages.type import TRIM as TRIM_LINE

GLUE = OVERLAP - TRIM
OFF_TRIM = 0.4  # mm


@record
class Seamed:
    """What a tile's seams draw under the part and over it, and the boxes in which their marks and words stand."""

    under: Body
    over: Body
    boxes: tuple[Box, ...]


def seam_bodies(setter: Setter, plan: Tiling, cell: Cell, numbers: Numbers) -> Seamed:
    """Return what a tile's seams draw. On a page that others share, words keep to the tile, and name no page."""
    others = [seam.second if cell is seam.first else seam.first for seam in _own(plan, cell)]
    pages = tuple(numbers.page_of(plan.key(other)) or 0 for other in others)
    said = pages if plan.place(cell).info is not None else (0,) * len(pages)
    drawn = _drawn(setter, plan, cell, said=said)
    return replace(drawn, over=drawn.over + Body(seams=_promises(plan, cell, numbers.page, pages)))


def _own(plan: Tiling, cell: Cell) -> list[TileSeam]:
    """Return the seams of one tile."""
    return [seam for seam in plan.seams if cell in (seam.first, seam.second)]


def _promises(plan: Tiling, cell: Cell, here: int, pages: tuple[int, ...]) -> tuple[SeamPromise, ...]:
    """Return the promises of the seams that begin with this tile; ``pages``: of the tile beyond each of its seams."""
    part, copy = plan.sample.part.id, max(plan.sample.copy, 1)
    return tuple(
        SeamPromise(
            part,
            copy,
            _mark_name(plan, seam, number),
            (here, page),
            (_shifted(plan, cell, mark), _shifted(plan, seam.second, mark)),
            MARK_RADIUS,
        )
        for seam, page in zip(_own(plan, cell), pages, strict=True)
        if cell is seam.first
        for number, mark in enumerate(seam.marks)
    )


@remembered
def _drawn(setter: Setter, plan: Tiling, cell: Cell, *, said: tuple[int, ...]) -> Seamed:
    """Return what a tile's seams draw, without promises: the same wherever its page stands. ``said``: the page that each names."""
    under, over = Body(), Body()
    own = _own(plan, cell)
    room = _name_room(plan, cell, own)
    boxes = [Box(*at, *at).grown(MARK_RADIUS) for at in room.marks]
    for seam, page in zip(own, said, strict=True):
        first = cell is seam.first
        marks = [_shifted(plan, cell, m) for m in seam.marks]
        names = [_mark_name(plan, seam, i) for i in range(len(marks))]
        over += Body(tuple(_mark(m) for m in marks))
        for mark, name in zip(marks, names, strict=True):
            words, box = placed_name(setter, Marked(mark, name, seam.upright, first), room, boxes)
            boxes.append(box)
            over += Body(words)
        over += Body(_line_drawn(setter, plan, cell, seam, marks, boxes, page))
        if first:
            under += Body((_glue_fill(plan, cell, seam),))
    return Seamed(under, over, tuple(boxes))


def _shifted(plan: Tiling, cell: Cell, point: Point) -> Point:
    x, y = plan.shift(cell)
    return (point[0] + x, point[1] + y)


def _name_room(plan: Tiling, cell: Cell, own: list[TileSeam]) -> NameRoom:
    """Return what the names of a tile's marks keep clear of."""
    ground = polygon(plan.sample.part.template, plan.pose(cell))
    notes = [note.area() for note in plan.notes_on(cell)]
    lines = [*_seam_lines(plan, cell), *map(as_polygon, size_bands(plan, cell))]
    marks = tuple(_shifted(plan, cell, mark) for seam in own for mark in seam.marks)
    return NameRoom(
        shapely.union_all([plan.lines_on(cell), *lines]),
        shapely.union_all([ground.boundary, *notes, *lines]),
        plan.window(cell),
        marks,
    )


def _seam_lines(plan: Tiling, cell: Cell, but: TileSeam | None = None) -> list[shapely.LineString]:
    """Return, on the page, the lines along the tile's seams, ``but`` one."""
    window = plan.window(cell)
    found = []
    for seam in plan.seams:
        if cell in (seam.first, seam.second) and seam is not but:
            x, y = _shifted(plan, cell, (seam.at, seam.at))
            ends = ((x, window.bottom), (x, window.top)) if seam.upright else ((window.left, y), (window.right, y))
            found.append(shapely.LineString(ends))
    return found


def _mark_name(plan: Tiling, seam: TileSeam, number: int) -> str:
    """Return a match mark's own name: part, the two tiles in reading order, and a small letter."""
    cells = plan.cutting.cells
    return f"{plan.name}{cells.index(seam.first) + 1}-{cells.index(seam.second) + 1}·{chr(ord('a') + number)}"


def _mark(at: Point) -> Drawn:
    """Return a match mark: a circle with a cross through its centre, the arms ending on the circle."""
    x, y = at
    across = polyline(((x - MARK_RADIUS, y), (x + MARK_RADIUS, y)))
    up = polyline(((x, y - MARK_RADIUS), (x, y + MARK_RADIUS)))
    return Stroke(GAUGE, (circle(at, MARK_RADIUS), across, up), Layer.OUTLINES, None, "figure")


def _line_drawn(
    setter: Setter, plan: Tiling, cell: Cell, seam: TileSeam, marks: list[Point], boxes: list[Box], page: int
) -> tuple[Drawn, ...]:
    """Return the line to trim on (or, on the page that is glued on, where that edge will lie), broken at the marks, with its words."""
    first = cell is seam.first
    window, alone = plan.window(cell), plan.place(cell).info is not None
    axis = 1 if seam.upright else 0
    at = marks[0][1 - axis]
    low, high = (window.bottom, window.top) if seam.upright else (window.left, window.right)
    stops = [low]
    broken = [(mark[axis] - MARK_RADIUS - 0.4, mark[axis] + MARK_RADIUS + 0.4) for mark in marks]
    for band in size_bands(plan, cell):  # a line through the words of a size could not be told from the letters
        across = (band.bottom, band.top) if seam.upright else (band.left, band.right)
        if across[1] - across[0] < 3 * SIZE_HALF:
            broken.append(across)
    for start, end in sorted(broken):
        stops += [start, max(end, start)]
    stops.append(high)
    ends = [(a, b) for a, b in zip(stops[::2], stops[1::2], strict=True) if b - a > 0.5]
    paths = tuple(polyline(((at, a), (at, b)) if seam.upright else ((a, at), (b, at))) for a, b in ends)
    drawn: list[Drawn] = [Stroke(REFERENCE if first else TRIM_LINE, paths, Layer.NOTES, None, "figure")]
    others = _seam_lines(plan, cell, but=seam)
    lines = shapely.union_all([plan.lines_on(cell), *others, *map(as_polygon, size_bands(plan, cell))])
    if first:
        strip = Box(at, low, at + GLUE, high) if seam.upright else Box(low, at - GLUE, high, at)
        said: tuple[str, ...] = ("glue area", "glue")
        if alone:
            said = (f"glue area: page {page} lies on it", *said)
    elif alone:
        gap = 4.2
        strip = (
            Box(at - TRIM - gap, low, at - TRIM, high) if seam.upright else Box(low, at + TRIM, high, at + TRIM + gap)
        )
        said = (f"trim line: cut, then lay over page {page}", "trim line", "trim")
        live = plan.place(cell).frame.live
        if strip.left < live.left or strip.top > live.top - 1.0:
            return tuple(drawn)
        lines = shapely.GeometryCollection()
    else:  # on what is trimmed off
        off = TRIM + OFF_TRIM  # letters that reach under their line end short of the dashes
        strip = Box(at - off, low, at - OFF_TRIM, high) if seam.upright else Box(low, at + OFF_TRIM, high, at + off)
        said = ("trim line", "trim")
    words, box = _strip_words(setter, said, strip, seam.upright, lines, boxes, NOTE if first or alone else LEAST)
    if box:
        boxes.append(box)
    return (*drawn, *words)


def _strip_words(
    setter: Setter,
    said: tuple[str, ...],
    strip: Box,
    upright: bool,
    lines: shapely.Geometry,
    boxes: list[Box],
    style: TypeStyle,
) -> tuple[tuple[Words, ...], Box | None]:
    """Set the first text that fits into the longest stretch of a strip that no line crosses; return it with its box."""
    cap = setter.cap(style)
    axis = 1 if upright else 0
    low, high = (strip.bottom, strip.top) if upright else (strip.left, strip.right)
    closed: list[tuple[float, float]] = []
    area = as_polygon(strip)
    for piece in shapely.get_parts(lines.intersection(area)):
        bounds = piece.bounds
        closed.append((bounds[axis] - 0.8, bounds[axis + 2] + 0.8))
    for box in boxes:
        if as_polygon(box).intersects(area):
            closed.append((box.bottom - 0.8, box.top + 0.8) if upright else (box.left - 0.8, box.right + 0.8))
    free: list[tuple[float, float]] = []
    start = low
    for a, b in sorted(closed):
        free.append((start, a))
        start = max(start, b)
    free.append((start, high))
    a, b = max(free, key=lambda f: f[1] - f[0])
    text = next((t for t in said if setter.width(t, style) <= b - a - 2.0), None)
    if text is None:
        return (), None
    middle, half = (a + b) / 2, setter.width(text, style) / 2
    if upright:
        x = (strip.left + strip.right + cap) / 2
        words = setter.line(text, style, x, middle, align="centre", turn=90.0, layer=Layer.NOTES)
        return words, Box(x - cap - 0.3, middle - half, x + 0.7, middle + half)
    y = (strip.bottom + strip.top - cap) / 2
    words = setter.line(text, style, middle, y, align="centre", layer=Layer.NOTES)
    return words, Box(middle - half, y - 0.7, middle + half, y + cap + 0.3)


def _glue_fill(plan: Tiling, cell: Cell, seam: TileSeam) -> Drawn:
    """Return the pale ground of a glue area."""
    window = plan.window(cell)
    x, y = plan.shift(cell)
    if seam.upright:
        box = Box(seam.at + x, window.bottom, window.right, window.top)
    else:
        box = Box(window.left, window.bottom, window.right, seam.at + y)
    return Fill(PALE, (polyline(box.corners(), True),), Layer.NOTES, None, "artifact")
