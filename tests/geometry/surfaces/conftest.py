"""Pieces of board to draw on, and what is measured from the marks."""

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

import numpy as np
import pytest
import shapely

from publisher.basics import Finding, Place, Point
from publisher.design import Parameter, PartPlan, SurfacePlan
from publisher.geometry import Edge, Mark
from publisher.geometry.surfaces import surface_marks

Marks = tuple[Mark, ...]
Drawing = tuple[Marks, tuple[Finding, ...]]
PLACE = Place("spec.yaml", 5, 3)


def draw_on(
    body: shapely.Polygon, pattern: str, seed: int = 0, edges: Sequence[Edge] = (), **sizes: float | str
) -> Drawing:
    """Draw a pattern on any piece of board."""
    given = tuple(Parameter(name, value, str(value), PLACE) for name, value in sizes.items())
    plan = PartPlan(
        id="p", letter="A", name="Part", board="foam", thickness=5.0, shape="", parameters=(), openings=(),
        surface=SurfacePlan(pattern, given, seed, PLACE), drawing=None, treatments=(), count=1, spare=0, mirrored=0,
        turning="any", trace_allowance=0.0, place=PLACE,
    )  # fmt: skip
    return surface_marks(plan, body, (), edges)


def wall_with_holes() -> shapely.Polygon:
    """A wall of 140 × 83 mm with a door on its lower edge and a round window."""
    wall = shapely.box(0.0, 0.0, 140.0, 83.0)
    return wall.difference(shapely.box(30.0, -1.0, 55.5, 45.0)).difference(shapely.Point(100.0, 45.0).buffer(16.0))


def uprights(marks: Iterable[Mark]) -> list[tuple[Point, Point]]:
    """The upright joints, lower end first."""
    lines = [
        (m.path.points[0], m.path.points[-1])
        for m in marks
        if len(m.path.points) == 2 and abs(m.path.points[0][0] - m.path.points[-1][0]) < 1e-9
    ]
    return [(a, b) if a[1] < b[1] else (b, a) for a, b in lines]


def levels(marks: Iterable[Mark]) -> list[float]:
    """The heights of all level joints."""
    return sorted(
        {
            round(m.path.points[0][1], 6)
            for m in marks
            if len(m.path.points) == 2 and m.path.points[0][1] == m.path.points[1][1]
        }
    )


def in_rows(marks: Iterable[Mark], bottoms: Sequence[float]) -> list[list[float]]:
    """The x of upright joints in each row; ``bottoms`` are the rows' lower ends."""
    rows: list[set[float]] = [set() for _ in bottoms]
    for (x, low), (_, top) in uprights(marks):
        rows[int(np.searchsorted(bottoms, (low + top) / 2.0)) - 1].add(round(x, 6))
    return [sorted(row) for row in rows]


def least_stagger(rows: Sequence[Sequence[float]]) -> float:
    """The least distance between joints of neighbouring rows."""
    return min(abs(a - b) for below, above in pairwise(rows) for a in below for b in above)


def pieces(body: shapely.Polygon, row: Sequence[float], height: float) -> tuple[list[float], list[float]]:
    """The lengths of a row's units at a height: those at an end or an opening, and those in the middle."""
    ends: list[float] = []
    middles: list[float] = []
    left, _, right, _ = body.bounds
    level = shapely.LineString([(left - 1.0, height), (right + 1.0, height)])
    for span in shapely.get_parts(shapely.intersection(level, body)):
        a, _, b, _ = span.bounds
        at = [a, *(x for x in row if a < x < b), b]
        lengths = np.diff(at).tolist()
        ends += [lengths[0], lengths[-1]]
        middles += lengths[1:-1]
    return ends, middles


@pytest.fixture(scope="session")
def on() -> Callable[..., Drawing]:
    return draw_on


@pytest.fixture(scope="session")
def body() -> shapely.Polygon:
    return wall_with_holes()
