"""Parts as the sketches of acts show them: their own outlines, small, in cells, each with its letter and how many there are."""

from collections.abc import Iterator, Sequence
from math import ceil, hypot

import shapely
from shapely.affinity import affine_transform

from publisher.basics import Box, Path, Point, Purpose, record, remembered_few
from publisher.geometry import Part, polygon
from publisher.pages.instructions.sketch_pen import WORDS_WHITE, SketchPen
from publisher.pages.instructions.sketch_places import room_for
from publisher.pages.model import LineStyle
from publisher.pages.sheet import LEAST_WHITE
from publisher.pages.type import PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_OUTLINE

COUNT_LETTER = 2.2  # mm of a letter of a count, in a sketch that is drawn smaller
COUNT_HIGH = 5.0  # mm under a part for its letter and count
BOARD_ROUND = 2.4  # mm of board round a part that still lies in it
STAYS_WHITE = 0.9  # of a part, within whose outline so much must stay white
HOLLOW = 0.6  # of what its outline goes round: a piece with less is a rim
CLOSEST_LINES = 1.4  # mm between two lines of a pattern: closer ones are thinned


@record
class PartArt:
    """A part in a cell of a sketch: ``at`` is where its own (0, 0) lies (mm), ``scale`` how small it is drawn, ``around``: mm kept
    free round it."""

    part: Part
    cell: Box
    at: Point
    scale: float
    count: int
    around: float = 0.0

    @property
    def shape(self) -> shapely.Polygon:
        """The finished piece in the sketch."""
        return _shape_of(self)

    @property
    def low(self) -> float:
        """Where its room ends above its count (mm)."""
        return float(self.at[1] + self.scale * polygon(self.part.outline).bounds[1] - self.around)

    @property
    def said(self) -> str:
        """How many of it there are: ``2 × A``."""
        return f"{self.count} × {self.part.letter}" if self.count else self.part.letter

    def carry(self, point: Point) -> Point:
        """Return where a point of the part lies in the sketch."""
        return self.at[0] + self.scale * point[0], self.at[1] + self.scale * point[1]

    def outline(
        self,
        pen: SketchPen,
        outer: LineStyle = PICTURE_CONTOUR,
        holes: LineStyle = PICTURE_OUTLINE,
        narrow: LineStyle | None = None,
    ) -> None:
        """Draw its outline and its openings, white before what was drawn. ``narrow``: an opening or a rim whose lines would close up."""
        shape = self.shape
        pen.white(*ring_points(shape.exterior))
        rims = [float(shapely.distance(shape.exterior, hole)) * pen.scale for hole in shape.interiors]
        if narrow and rims and min(rims) < (outer.width + holes.width) / 2 + LEAST_WHITE:
            hollow = shape.area < HOLLOW * shapely.Polygon(shape.exterior).area
            outer, holes = narrow if hollow else outer, narrow
        pen.line(*ring_points(shape.exterior), style=outer, closed=True)
        for hole in shape.interiors:
            closes = shapely.Polygon(hole).buffer(-(holes.width + LEAST_WHITE) / (2 * pen.scale)).is_empty
            style = narrow if closes and narrow else holes
            if shapely.Polygon(hole).buffer(-(style.width + LEAST_WHITE) / (2 * pen.scale)).is_empty:
                pen.line(*middle_line(hole), style=style)  # its two sides would be one anyway, and one of them none
            else:
                pen.line(*ring_points(hole), style=style, closed=True)

    def marks(self, pen: SketchPen, purposes: Sequence[Purpose], style: LineStyle = PICTURE_DETAIL) -> int:
        """Draw its marks of these purposes, of lines that would close up as many as stay apart; return how many."""
        found = [mark.path for mark in self.part.marks if mark.purpose in purposes and len(mark.path.points) > 1]
        kept: list[shapely.Geometry] = []
        for line in sorted(map(self.line_of, found), key=shapely.length, reverse=True):
            if not kept or float(shapely.distance(kept, line).min()) >= CLOSEST_LINES or _crosses(kept, line):
                kept.append(line)
                pen.line(*line.coords, style=style)
        return len(kept)

    def line_of(self, path: Path) -> shapely.LineString:
        """Return a line of the part in the sketch."""
        return shapely.LineString([self.carry(point) for point in path.points])

    def counted(self, pen: SketchPen) -> None:
        """Set its letter and count under it."""
        pen.shows(self.part.id, self.at, self.scale)
        pen.count(self.said, (self.cell.left + self.cell.right) / 2, self.low - COUNT_HIGH + 0.8)

    def lettered(self, pen: SketchPen) -> None:
        """Set its letter on it, where there is room beside what was drawn on it."""
        high = pen.setter.cap(pen.small) / pen.scale
        (x, y), radius = room_for(pen, self.shape)
        room = radius - hypot(pen.wide(self.part.letter), high) / 2
        if room >= 0.0:
            pen.count(
                self.part.letter, x, y - high / 2, white=min(room, WORDS_WHITE)
            )  # more would hide the outline beside it


@remembered_few
def _shape_of(art: PartArt) -> shapely.Polygon:
    """Return a part as it lies in its cell: what is drawn of it and beside it asks for it many times."""
    return affine_transform(polygon(art.part.outline), (art.scale, 0.0, 0.0, art.scale, *art.at))


def heaviest(pen: SketchPen, arts: Sequence[PartArt], styles: Sequence[LineStyle]) -> LineStyle:
    """Return the first of some styles, heaviest first, in which every part of a sketch keeps white within its outline, else the last: in
    one sketch a heavier line would say more than how large a part is drawn."""
    return next((style for style in styles if all(_stays_open(art, style, pen.scale) for art in arts)), styles[-1])


def _stays_open(art: PartArt, style: LineStyle, scale: float) -> bool:
    whole = shapely.Polygon(art.shape.exterior)
    half = (style.width + LEAST_WHITE) / (2 * scale)
    white = whole.buffer(-half, join_style="mitre").buffer(half, join_style="mitre")
    return bool(white.area > STAYS_WHITE * whole.area)


def middle_line(ring: shapely.LinearRing | Sequence[Point]) -> tuple[Point, Point]:
    """Return the line along the middle of a narrow opening, from end to end."""
    a, b, c, d = shapely.get_coordinates(shapely.oriented_envelope(shapely.Polygon(ring)))[:4]
    if hypot(*(b - a)) > hypot(*(c - b)):
        a, b, c, d = b, c, d, a
    start, end = (a + b) / 2, (c + d) / 2
    return (float(start[0]), float(start[1])), (float(end[0]), float(end[1]))


def _crosses(kept: list[shapely.Geometry], line: shapely.Geometry) -> bool:
    """Say whether a line ends on others, as the short joints of a bond do, and no other lies along it."""
    (ax, ay), (bx, by) = line.coords[0], line.coords[-1]
    middle = shapely.Point((ax + bx) / 2, (ay + by) / 2)
    return (
        float(shapely.length(line)) >= CLOSEST_LINES
        and float(shapely.distance(kept, middle).min()) > 0.75 * CLOSEST_LINES
    )


def ring_points(ring: shapely.LinearRing, finest: float = 0.03) -> tuple[Point, ...]:
    """Return the corners of a ring of a sketch, each once; what strays less than ``finest`` mm from a straight line is none."""
    return tuple((float(x), float(y)) for x, y in ring.simplify(finest).coords[:-1])


def part_cells(parts: Sequence[tuple[Part, int]], box: Box, around: float = 0.0) -> tuple[PartArt, ...]:
    """Share a box out among parts, each with its count, as large as they fit; ``around``: mm kept free round each."""
    if not parts:
        return ()
    return max((tuple(_laid(parts, box, rows, around)) for rows in range(1, len(parts) + 1)), key=_shows)


def _shows(arts: tuple[PartArt, ...]) -> tuple[bool, bool, float]:
    """Return how well parts are laid: whether all are seen, whether each count keeps to its cell, and how large they are."""
    keep = all(art.cell.width >= COUNT_LETTER * len(art.said) + 1.0 for art in arts)
    return min(art.scale for art in arts) > 0.0, keep, sum(art.scale for art in arts)


def _laid(parts: Sequence[tuple[Part, int]], box: Box, rows: int, around: float) -> Iterator[PartArt]:
    across = ceil(len(parts) / rows)
    high = box.height / rows
    for row in range(rows):
        own = parts[row * across : (row + 1) * across]
        for column, (part, count) in enumerate(own):
            wide = box.width / len(own)
            left, top = box.left + column * wide, box.top - row * high
            yield _fitted(part, count, Box(left, top - high, left + wide, top), around)


def _fitted(part: Part, count: int, cell: Box, around: float) -> PartArt:
    left, bottom, right, top = polygon(part.outline).bounds
    wide = cell.width - 2.0 - 2 * around
    high = cell.height - COUNT_HIGH - 2 * around
    scale = min(wide / max(right - left, 1e-6), high / max(top - bottom, 1e-6), 1.0)
    x = (cell.left + cell.right) / 2 - scale * (left + right) / 2
    y = cell.bottom + COUNT_HIGH + (cell.height - COUNT_HIGH) / 2 - scale * (bottom + top) / 2
    return PartArt(part, cell, (x, y), scale, count, around)


def board_round(pen: SketchPen, art: PartArt) -> None:
    """Draw the board in which a part still lies, torn off at its sides."""
    left, bottom, right, top = art.shape.bounds
    gap = BOARD_ROUND
    ring = ((left - gap, bottom - gap), (right + gap, bottom - gap), (right + gap, top + gap), (left - gap, top + gap))
    pen.white(*ring)
    pen.line(*ring, style=PICTURE_DETAIL, closed=True)
