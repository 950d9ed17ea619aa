"""Random booleans of lines and arcs: what is left keeps its sources' circles, and ends where both sources run."""

from itertools import pairwise
from math import dist, pi
from random import Random

import pytest
import shapely

from publisher.basics import Arc, Path, PathEdge, Point, circle, polar, polyline
from publisher.geometry import Region, area, polygon
from publisher.geometry.paths.regions import recover
from publisher.geometry.paths.rings import Pen, oriented
from tests.searches.profile import seeds

BATCH = 50  # booleans of one case


def shape(rng: Random) -> Region:
    """A star of lines and arcs about a point near the origin, or a disc; now and then with a round hole."""
    centre = (rng.uniform(-20.0, 20.0), rng.uniform(-20.0, 20.0))
    reach = rng.uniform(8.0, 40.0)
    name = f"s{rng.random():.6f}"
    if rng.random() < 0.25:
        outer = circle(centre, reach, name)
    else:
        count = rng.randint(3, 9)
        turns = sorted(rng.uniform(0.0, 2.0 * pi) for _ in range(count))
        if max(b - a for a, b in pairwise((*turns, turns[0] + 2.0 * pi))) > 2.8:
            turns = [2.0 * pi * k / count for k in range(count)]
        corners = [polar(reach * rng.uniform(0.6, 1.0), turn, centre) for turn in turns]
        pen = Pen(corners[0])
        for k, corner in enumerate((*corners[1:], corners[0])):
            bow(pen, corner, f"{name}.{k}", rng)
        outer = pen.path()
    holes = (circle(centre, reach * 0.2, f"{name}.hole", ccw=False),) if rng.random() < 0.2 else ()
    return Region(oriented(outer), holes)


def bow(pen: Pen, to: Point, name: str, rng: Random) -> None:
    """Draw a line, or a flat arc to either side."""
    (ax, ay), (bx, by) = pen.at, to
    chord = dist(pen.at, to)
    if rng.random() < 0.4 or chord < 0.5:
        pen.line(to, name)
        return
    radius = chord * rng.uniform(0.8, 4.0)
    off = (radius**2 - chord**2 / 4.0) ** 0.5 * rng.choice((1.0, -1.0))
    middle = ((ax + bx) / 2.0 - (by - ay) / chord * off, (ay + by) / 2.0 + (bx - ax) / chord * off)
    pen.arc(to, middle, radius, name, ccw=off > 0.0)


def away(edge: PathEdge, point: Point) -> float:
    """Return how far (mm) a point is from an edge's line or circle."""
    if isinstance(edge, Arc):
        return abs(dist(point, edge.centre) - edge.radius)
    (ax, ay), (bx, by) = edge.start, edge.end
    return abs((point[0] - ax) * (by - ay) - (point[1] - ay) * (bx - ax)) / edge.length


def assert_of(path: Path, sources: tuple[Region, ...]) -> None:
    """Each edge has a source of its name, arcs its centre and radius; each end lies on the sources of both neighbours."""
    own: dict[str, list[PathEdge]] = {}
    for edge in (edge for source in sources for one in source.paths for edge in one.edges):
        own.setdefault(edge.name, []).append(edge)
    for before, edge in pairwise((path.edges[-1], *path.edges)):
        assert before.end == edge.start
        if isinstance(edge, Arc):
            found = [s for s in own[edge.name] if isinstance(s, Arc)]
            assert any(dist(s.centre, edge.centre) < 1e-9 and abs(s.radius - edge.radius) < 1e-9 for s in found)
        for one in (before, edge):
            assert min(away(source, edge.start) for source in own[one.name]) < 1e-6


@pytest.mark.search
@seeds(4, 200)
def test_random_booleans(seed: int) -> None:
    rng = Random(seed)
    for _ in range(BATCH):
        sources = (shape(rng), shape(rng))
        if not all(polygon(source).is_valid for source in sources):
            continue
        a, b = (polygon(source) for source in sources)
        result = rng.choice((shapely.union, shapely.difference, shapely.intersection))(a, b)
        region, why = recover(result, sources)
        assert (region is None) is bool(why)
        if region is None:
            assert why.startswith(("nothing is left", "it falls into"))
            continue
        for path in region.paths:
            assert_of(path, sources)
        # arcs are exact, chords lie off them by at most the sagitta
        assert abs(area(region) - result.area) < 0.006 * result.length + 1e-3


def test_a_line_that_all_but_touches_a_disc() -> None:
    """The chords of the disc cross the line many times; the disc itself does so twice, or not at all."""
    for gap in (-0.004, -0.002, -1e-4, 0.0, 1e-4, 0.002, 0.004):
        disc, half = Region(circle((0.0, 0.0), 40.0, "rim")), -40.0 + gap
        box = Region(polyline([(-60.0, half), (60.0, half), (60.0, 60.0), (-60.0, 60.0)], True, "side"))
        for how in (shapely.union, shapely.intersection):
            region, _ = recover(how(polygon(disc), polygon(box)), (disc, box))
            assert region is not None
            assert_of(region.outer, (disc, box))
            assert len(region.outer.edges) <= 6
