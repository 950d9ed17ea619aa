"""Booleans give every segment its run back, and arcs their exact circle."""

from math import acos, cos, dist, pi, radians, sin, sqrt

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Arc, Pose, circle
from publisher.geometry import Region, area, polygon
from publisher.geometry.paths.regions import fault, recover
from publisher.geometry.paths.rings import straight
from tests.searches.profile import cases


def box(x: float, y: float, w: float, h: float, name: str = "") -> Region:
    corners = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    names = (name,) * 4 if name else ("bottom", "right", "top", "left")
    return Region(straight(tuple(zip(corners, names, strict=True))))


def disc(x: float, y: float, radius: float, name: str = "rim") -> Region:
    return Region(circle((x, y), radius, name))


def names(region: Region) -> list[str]:
    return [edge.name for edge in region.outer.edges]


def test_a_polygon_has_the_holes_and_lies_where_the_pose_says() -> None:
    region = Region(box(0, 0, 60, 40).outer, (box(5, 5, 10, 10).outer.reversed(),))
    assert polygon(region).area == 60 * 40 - 100 and polygon(region.outer).area == 60 * 40
    assert polygon(region, Pose(turn=90)).bounds == pytest.approx((-40, 0, 0, 60))


def test_a_bite_out_of_a_square_keeps_names_and_the_true_arc() -> None:
    square, bite = box(0.0, 0.0, 100.0, 60.0), disc(50.0, 60.0, 20.0, "bite")
    region, why = recover(polygon(square).difference(polygon(bite)), (square, bite))
    assert region is not None and why == ""
    assert names(region).count("top") == 2 and names(region).count("bite") == 1
    arc = next(edge for edge in region.outer.edges if edge.name == "bite")
    assert isinstance(arc, Arc) and arc.centre == (50.0, 60.0) and arc.radius == 20.0
    assert min(arc.start, arc.end) == pytest.approx((30.0, 60.0))
    assert max(arc.start, arc.end) == pytest.approx((70.0, 60.0))
    assert area(region) == pytest.approx(6000.0 - 200.0 * pi, rel=1e-9)


def test_the_corner_lies_where_the_exact_curves_meet() -> None:
    left, right = disc(0.0, 0.0, 50.0, "left"), disc(60.0, 0.0, 40.0, "right")
    region, _ = recover(polygon(left).union(polygon(right)), (left, right))
    assert region is not None and sorted(names(region)) == ["left", "right"]
    x = (60.0**2 + 50.0**2 - 40.0**2) / 120.0
    corner = (x, sqrt(50.0**2 - x**2))
    assert min(dist(p, corner) for p in region.outer.points) < 1e-9
    lens = 50.0**2 * acos(x / 50.0) + 40.0**2 * acos((60.0 - x) / 40.0) - 60.0 * corner[1]
    assert area(region) == pytest.approx(pi * (50.0**2 + 40.0**2) - lens, rel=1e-9)


def test_a_hole_is_turned_round_and_a_disc_inside_stays_a_circle() -> None:
    square, bore = box(0.0, 0.0, 100.0, 60.0), disc(40.0, 30.0, 10.0, "bore")
    region, _ = recover(polygon(square).difference(polygon(bore)), (square, bore))
    assert region is not None and len(region.holes) == 1
    assert {edge.name for edge in region.holes[0].edges} == {"bore"}
    assert all(isinstance(edge, Arc) and edge.centre == (40.0, 30.0) for edge in region.holes[0].edges)
    assert area(region) == pytest.approx(6000.0 - 100.0 * pi, rel=1e-12)


def test_collinear_leftovers_are_merged_and_the_earlier_source_wins_a_shared_edge() -> None:
    a, b = box(0.0, 0.0, 50.0, 20.0), box(50.0, 0.0, 50.0, 20.0, "b")
    region, _ = recover(polygon(a).union(polygon(b)), (a, b))
    assert region is not None
    assert set(region.outer.points) >= {(0.0, 0.0), (100.0, 0.0), (100.0, 20.0), (0.0, 20.0)}
    assert set(names(region)) == {"bottom", "top", "left", "b"}
    same, _ = recover(polygon(a).intersection(polygon(a)), (a, box(0.0, 0.0, 50.0, 20.0, "late")))
    assert same is not None and "late" not in names(same)


@pytest.mark.parametrize(
    ("cut", "words"),
    [
        (box(-1.0, -1.0, 200.0, 200.0), "nothing is left"),
        (box(40.0, -1.0, 10.0, 100.0), "falls into 2 pieces"),
    ],
)
def test_a_result_that_is_no_outline_is_said_in_words(cut: Region, words: str) -> None:
    square = box(0.0, 0.0, 100.0, 60.0)
    region, why = recover(polygon(square).difference(polygon(cut)), (square, cut))
    assert region is None and words in why


def test_faults_are_said_in_words() -> None:
    assert fault(polygon(box(0.0, 0.0, 9.0, 9.0))) == ""
    bow = shapely.Polygon([(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)])
    assert fault(bow) == "the outline crosses itself at x 5.0, y 5.0 mm"
    frame = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0)]
    apart = shapely.Polygon(frame, [[(20.0, 0.0), (25.0, 0.0), (25.0, 5.0)]])
    assert fault(apart).startswith("the outline has a piece that lies apart")
    assert fault(shapely.Polygon([(0.0, 0.0), (1e-9, 0.0), (0.0, 1e-9)])) == "the outline encloses nothing"


@pytest.mark.search
@cases(40, 3000)
@given(
    st.floats(-60.0, 60.0), st.floats(-60.0, 60.0), st.floats(1.0, 60.0), st.floats(0.0, 360.0), st.floats(5.0, 80.0)
)
def test_random_booleans_give_runs_on_their_sources(
    x: float, y: float, radius: float, turn: float, size: float
) -> None:
    turned = straight(tuple(((size * c - 7.0, size * s + 3.0), f"edge_{k}") for k, (c, s) in enumerate(_corners(turn))))
    sources = (Region(turned), disc(x, y, radius))
    a, b = (polygon(s) for s in sources)
    for result in (a.union(b), a.difference(b), a.intersection(b)):
        region, why = recover(result, sources)
        assert (region is None) == bool(why)
        if region is None:
            continue
        # arcs are exact, so the area may differ from the chords' by perimeter × sagitta
        assert abs(polygon(region).area - result.area) < 0.006 * result.length + 1e-3
        for path in region.paths:
            for edge in path.edges:
                line = a.exterior if edge.name.startswith("edge") else b.exterior
                assert max(shapely.Point(p).distance(line) for p in edge.points()) < 0.02


def _corners(turn: float) -> list[tuple[float, float]]:
    return [(cos(radians(turn + 90.0 * k)), sin(radians(turn + 90.0 * k))) for k in range(4)]
