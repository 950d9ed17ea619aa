"""Areas of a sketch: what white ones cover of lines that are drawn before them, and the lines that hatch or dot an area. Mm of the page
for what covers, of the sketch for the others."""

from collections.abc import Iterator, Sequence
from itertools import chain

import numpy as np
import shapely

from publisher.basics import Path, Point, polyline
from publisher.geometry import mitred

HATCH_APART = 1.6  # mm between the lines of a board in section
UNDER_BORDER = 0.05  # mm within its border from which an area covers a line
DOTS_APART = 1.8  # mm between the rows of a dotted face
SHORTEST_SEEN = 0.3  # mm of a line that are worth drawing


class Covers:
    """White areas of a sketch, each with the place in the order of what is drawn from which on it covers."""

    def __init__(self, whites: list[tuple[int, Path]]) -> None:
        """Take the outline of each area with its place in that order."""
        points, area = _coordinates([path.points for _, path in whites])
        self._areas = shapely.polygons(shapely.linearrings(points, indices=area))
        self._order, self._boxes = np.array([at for at, _ in whites]), shapely.bounds(self._areas).reshape(-1, 4)
        self._united: dict[bytes, shapely.Geometry] = {}  # many lines lie under the same areas

    def uncovered(self, lines: Sequence[tuple[int, Path]]) -> list[tuple[Path, ...]]:
        """Return of each line with its place in that order what no area drawn after it covers; the line itself where none touches it."""
        left: list[tuple[Path, ...]] = [(path,) for _, path in lines]
        if not lines or not len(self._areas):
            return left
        points, line = _coordinates([path.travelled for _, path in lines])
        shapes = shapely.linestrings(points, indices=line)
        near = self._near(shapes, np.array([at for at, _ in lines]))
        touched = np.flatnonzero(near.any(axis=1))
        unions = np.array([self._union(row) for row in near[touched]], dtype=object)
        shapely.prepare(unions)  # a few areas, each asked for by many lines: most of these pass beside them
        meet = shapely.intersects(unions, shapes[touched])
        touched, unions = touched[meet], unions[meet]
        rests = shapely.difference(shapes[touched], unions)
        less = shapely.length(rests) <= shapely.length(shapes[touched]) - 0.01
        for at, rest in zip(touched[less].tolist(), shapely.line_merge(rests[less]), strict=True):
            left[at] = tuple(_pieces(rest))
        return left

    def _near(
        self, shapes: "np.typing.NDArray[np.object_]", at: "np.typing.NDArray[np.intp]"
    ) -> "np.typing.NDArray[np.bool_]":
        """Return for each line which areas are drawn later and may touch it."""
        left, bottom, right, top = shapely.bounds(shapes).T[:, :, None]
        boxes = self._boxes.T
        near: np.typing.NDArray[np.bool_] = (
            (boxes[0] <= right) & (boxes[2] >= left) & (boxes[1] <= top) & (boxes[3] >= bottom)
        )
        near &= self._order > at[:, None]
        return near

    def _union(self, near: "np.typing.NDArray[np.bool_]") -> shapely.Geometry:
        key = near.tobytes()
        if key not in self._united:
            # a line on the border of an area is the outline that is drawn of it, or of what stands behind: it stays
            united = shapely.union_all(self._areas[near])
            self._united[key] = mitred(united, -UNDER_BORDER)
        return self._united[key]


def _coordinates(
    lines: Sequence[Sequence[Point]],
) -> "tuple[np.typing.NDArray[np.float64], np.typing.NDArray[np.intp]]":
    """Return the points of lines one after another, and the number of the line that each is of."""
    points = np.fromiter(chain.from_iterable(chain.from_iterable(lines)), dtype=float).reshape(-1, 2)
    return points, np.repeat(np.arange(len(lines)), [len(line) for line in lines])


def _pieces(rest: shapely.Geometry) -> Iterator[Path]:
    """Yield the pieces of what is left of a line that are worth drawing."""
    for piece in shapely.get_parts(rest):
        if piece.geom_type == "LineString" and piece.length > SHORTEST_SEEN:
            yield polyline(tuple((float(x), float(y)) for x, y in piece.coords))


def hatch_runs(area: shapely.Geometry) -> list[tuple[Point, ...]]:
    """Return the lines at 45° of a hatched area."""
    if area.is_empty:
        return []
    left, bottom, right, top = area.bounds
    steps = int((right - left + top - bottom) / HATCH_APART) + 1
    starts = [left - (top - bottom) + (step + 0.5) * HATCH_APART for step in range(steps)]
    rising = shapely.linestrings([((x, bottom), (x + top - bottom, top)) for x in starts])
    inside = shapely.get_parts(shapely.intersection(rising, area))
    return [tuple(piece.coords) for piece in inside[shapely.length(inside) > 0.5]]


def level_runs(area: shapely.Geometry) -> list[tuple[Point, ...]]:
    """Return the rows of a dotted area; every second one begins half a dot farther on."""
    if area.is_empty:
        return []
    left, bottom, right, top = area.bounds
    rows = int((top - bottom) / DOTS_APART)
    low = (bottom + top) / 2 - (rows - 1) / 2 * DOTS_APART
    lines = [
        ((left - 1.0 + (n % 2) * DOTS_APART / 2, low + n * DOTS_APART), (right + 1.0, low + n * DOTS_APART))
        for n in range(max(rows, 1))
    ]
    inside = shapely.get_parts(shapely.intersection(shapely.linestrings(lines), area))
    return [tuple(piece.coords) for piece in inside[shapely.length(inside) > DOTS_APART]]


def solid_rings(area: shapely.Geometry) -> Iterator[tuple[Point, ...]]:
    """Yield the rings of an area, one with holes cut in two through each: filled, a ring alone would cover its hole too."""
    for piece in shapely.get_parts(area):
        if piece.geom_type != "Polygon" or piece.is_empty:
            continue
        if not piece.interiors:
            yield tuple((float(x), float(y)) for x, y in piece.exterior.coords[:-1])
            continue
        left, bottom, right, top = piece.bounds
        middle = float(piece.interiors[0].centroid.x)
        for low, high in ((left, middle), (middle, right)):
            yield from solid_rings(piece.intersection(shapely.box(low, bottom, high, top)))
