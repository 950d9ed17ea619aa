"""Where a copy's number, letter and measures stand inside it in the picture of a sheet, clear of its lines. Millimetres on the page."""

from collections.abc import Iterator
from functools import cached_property

import numpy as np
import shapely
from shapely import affinity

from publisher.basics import PlacePromise, Point, Pose, record
from publisher.geometry import Part, polygon
from publisher.pages.front.layout_words import SheetWords
from publisher.pages.type import LEAST, NOTE, Setter, TypeStyle

LINES_CLEAR = 0.5  # between words and lines
LINES_APART = 0.9  # between the foot of a line and the capitals of the next
SPOTS_TRIED = 14  # places along either side of a copy at which words are tried
NAME = NOTE.bold().tagged("figure")
SMALL_NAME = LEAST.bold().tagged("figure")
MEASURE_STYLE = LEAST.tagged("figure")

StyledLine = tuple[str, TypeStyle]


@record
class PieceLabel:
    """Words in a copy: their lines, the middle of the block over the picture's lower left corner, and its width and height.
    ``whole``: its measures are among them."""

    place: PlacePromise
    lines: tuple[StyledLine, ...]
    at: Point
    size: tuple[float, float]
    whole: bool


class Places:
    """Finds places in copies; those that lie alike share one."""

    def __init__(self, setter: Setter, scale: float, turn: float) -> None:
        """Keep the type, the scale of the picture, and by how many degrees the sheet is turned in it."""
        self.setter, self.scale, self.turn = setter, scale, turn
        self._known: dict[tuple[str, float, bool, int, int], Point | None] = {}
        self._rooms: dict[tuple[str, float, bool], RoomForWords] = {}

    def label(self, words: SheetWords, place: PlacePromise, part: Part, origin: Point) -> PieceLabel | None:
        """Return the words that fit in a copy whose own origin lies at ``origin``: as many as can be; None when none does."""
        for lines, whole in _ways(words, place):
            size = self._size(lines)
            at = self._spot(part, place.turn, place.mirrored, size)
            if at is not None:
                return PieceLabel(place, lines, (origin[0] + at[0], origin[1] + at[1]), size, whole)
        return None

    def _size(self, lines: tuple[StyledLine, ...]) -> tuple[float, float]:
        wide = max(self.setter.width(text, style) for text, style in lines)
        return wide, sum(self.setter.cap(style) for _, style in lines) + LINES_APART * (len(lines) - 1)

    def _spot(self, part: Part, turn: float, mirrored: bool, size: tuple[float, float]) -> Point | None:
        # sizes are grown to a tenth, so that copies of like words share a place
        wide, high = (int(np.ceil(side * 10.0 + 20.0 * LINES_CLEAR)) for side in size)
        lies = (part.id, round(turn, 6), mirrored)
        key = (*lies, wide, high)
        if key not in self._known:
            if lies not in self._rooms:
                self._rooms[lies] = RoomForWords(self._shape(part, turn, mirrored))
            self._known[key] = self._rooms[lies].roomiest(wide / 10.0, high / 10.0)
        return self._known[key]

    def _shape(self, part: Part, turn: float, mirrored: bool) -> shapely.Polygon:
        a, b, c, d, _, _ = Pose(turn=turn + self.turn, mirrored=mirrored).matrix()
        by = self.scale
        return affinity.affine_transform(polygon(part.outline), [a * by, c * by, b * by, d * by, 0.0, 0.0])


def _ways(words: SheetWords, place: PlacePromise) -> Iterator[tuple[tuple[StyledLine, ...], bool]]:
    """Yield the blocks of words for a copy, the best first, each with whether it has the measures."""
    name, points = words.name(place), words.measures(place)
    yield ((name, NAME), *((" ".join(pair), MEASURE_STYLE) for pair in points)), True
    if len(points) == 1:
        yield ((name, NAME), *((figure, MEASURE_STYLE) for figure in points[0])), True
        yield ((f"{name} {' '.join(points[0])}", MEASURE_STYLE),), True
    yield ((name, NAME),), False
    yield ((name, SMALL_NAME),), False


class RoomForWords:
    """A copy's shape as it lies in a picture, and what is known of it, for words of all sizes."""

    def __init__(self, shape: shapely.Polygon) -> None:
        """Keep the shape (mm on the page)."""
        self.shape = shape

    @cached_property
    def _middle(self) -> Point:
        """The roomiest point: the middle of the largest circle inside."""
        shapely.prepare(self.shape)
        x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(self.shape, 0.2))[0]
        return float(x), float(y)

    def roomiest(self, wide: float, high: float) -> Point | None:
        """Return the middle of the upright rectangle of this size inside the shape that lies nearest to its roomiest point."""
        left, bottom, right, top = self.shape.bounds
        if right - left < wide or top - bottom < high:
            return None
        middle = self._middle
        xs, ys = np.meshgrid(
            np.append(np.linspace(left + wide / 2, right - wide / 2, SPOTS_TRIED), middle[0]),
            np.append(np.linspace(bottom + high / 2, top - high / 2, SPOTS_TRIED), middle[1]),
        )
        x, y = xs.ravel(), ys.ravel()
        nearest = np.hypot(x - middle[0], y - middle[1]).argsort(kind="stable")
        for some in np.split(nearest, [SPOTS_TRIED]):  # where there is room at all, it is seldom far off
            boxes = shapely.box(x[some] - wide / 2, y[some] - high / 2, x[some] + wide / 2, y[some] + high / 2)
            free = some[shapely.covers(self.shape, boxes)]
            if len(free):
                return float(x[free[0]]), float(y[free[0]])
        return None
