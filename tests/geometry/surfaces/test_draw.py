"""Patterns clipped to the board between outline and openings."""

from collections.abc import Callable
from math import cos, pi, sin

import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Finding, LineKind, Purpose, Severity, polyline
from publisher.design import OpeningPlan, PartPlan, SurfacePlan
from publisher.geometry import Mark, ParameterInfo, Part, polygon, surface_infos
from publisher.geometry.making.parts import make_part
from publisher.geometry.surfaces import PATTERNS, surface_marks
from publisher.geometry.surfaces.draw import MOST_UNITS, SHORTEST_LINE
from tests.geometry.surfaces.conftest import draw_on
from tests.searches.profile import cases

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Refuse = Callable[[PartPlan], tuple[Finding, ...]]
Cover = Callable[..., SurfacePlan]
WALL: dict[str, float | str] = {"width": 90.0, "height": 60.0}
NAMES = [pattern.info.name for pattern in PATTERNS]
USUAL = {
    "length": (4.0, 60.0),
    "height": (2.0, 12.0),
    "low": (2.0, 8.0),
    "width": (3.0, 20.0),
    "shown": (3.0, 20.0),
    "size": (5.0, 40.0),
}


def test_at_least_eight_patterns_each_with_its_least_feature() -> None:
    assert len(NAMES) >= 8 and len(set(NAMES)) == len(NAMES)
    for info in surface_infos():
        assert info.least_feature >= 1.0, info.name  # two pencil lines of 0.3 to 0.5 mm and a gap
        assert info.meaning and all(p.meaning for p in info.parameters)


def test_joints_keep_clear_of_cuts(
    plan: Plan, drawn: Draw, surface: Cover, opening: Callable[..., OpeningPlan]
) -> None:
    openings = (
        opening("d", "door", width=20.0, height=40.0, head="round", centre=25.0),
        opening("w", "window", width=20.0, height=20.0, sill=20.0, centre=65.0),
    )
    part = drawn(plan("wall_panel", WALL, openings, surface=surface("brick", length=9.0, height=3.0)))
    body = polygon(part.outline)
    lines = shapely.linestrings([m.path.points for m in part.marks if m.purpose is Purpose.SURFACE])
    assert shapely.contains(body, lines).all()
    assert shapely.distance(body.boundary, lines).min() > 0.99
    assert shapely.length(lines).min() >= 1.0


@pytest.mark.keeps("geometry/surface-heavy")
def test_joints_leave_room_for_words_on_request(plan: Plan, surface: Cover) -> None:
    word = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((60.0, 30.0),)), text="ab")
    bricks = plan("wall_panel", WALL, surface=surface("brick", length=9.0, height=3.0))
    marks, found = surface_marks(bricks, shapely.box(0.0, 0.0, 90.0, 60.0), (word,))
    assert found == ()
    lines = shapely.linestrings([m.path.points for m in marks])
    assert shapely.distance(shapely.Point(word.path.points[0]), lines).min() >= 2.5 - 1e-9


@pytest.mark.breaks("geometry/surface-heavy")
def test_a_heavy_pattern_is_drawn_with_a_warning(plan: Plan, surface: Cover) -> None:
    wall: dict[str, float | str] = {"width": 200.0, "height": 200.0}
    part, found = make_part(plan("wall_panel", wall, surface=surface("cobbles", size=9.0)))
    assert part is not None
    assert [(f.check, f.severity) for f in found] == [("geometry/surface-heavy", Severity.WARNING)]
    assert found[0].value is not None and found[0].value > 3000


def parameter(info: ParameterInfo) -> st.SearchStrategy[float | str]:
    if info.kind == "choice":
        return st.sampled_from(info.choices)
    if info.kind == "count":
        return st.integers(int(info.least or 0), int(info.most or 0)).map(float)
    low, high = USUAL.get(info.name, (info.least or 0.0, info.most if info.most is not None else 100.0))
    return st.floats(low, high) | st.floats(info.least or 0.0, min(info.most or 100.0, 100.0))


@st.composite
def board(draw: st.DrawFn) -> shapely.Polygon:
    """A star-shaped outline of 3 to 12 corners with up to two holes."""
    corners = draw(st.integers(3, 12))
    reach = draw(st.lists(st.floats(15.0, 90.0), min_size=corners, max_size=corners))
    x, y = draw(st.floats(-300.0, 300.0)), draw(st.floats(-300.0, 300.0))
    ring = [(x + r * cos(2.0 * pi * i / corners), y + r * sin(2.0 * pi * i / corners)) for i, r in enumerate(reach)]
    piece = shapely.Polygon(ring)
    for _ in range(draw(st.integers(0, 2))):
        at = shapely.Point(x + draw(st.floats(-40.0, 40.0)), y + draw(st.floats(-40.0, 40.0)))
        piece = piece.difference(at.buffer(draw(st.floats(3.0, 20.0)), quad_segs=draw(st.sampled_from([1, 16]))))
    return max(shapely.get_parts(piece), key=lambda p: float(p.area), default=piece)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.search
@cases(6, 600)
@given(data=st.data())
def test_any_region_any_sizes(name: str, data: st.DataObject) -> None:
    """All marks lie inside, their number is bounded, twice is the same, and nothing is raised."""
    piece = data.draw(board())
    info = next(i for i in surface_infos() if i.name == name)
    needed = {p.name: parameter(p) for p in info.parameters if p.default is None}
    optional = {p.name: parameter(p) for p in info.parameters if p.default is not None}
    sizes = data.draw(st.fixed_dictionaries(needed, optional=optional))
    seed = data.draw(st.integers(0, 2**31))
    marks, found = draw_on(piece, name, seed, **sizes)
    assert (marks, found) == draw_on(piece, name, seed, **sizes)
    assert all(f.message and f.hint and f.place for f in found)
    if any(f.severity is Severity.ERROR for f in found):
        assert marks == ()
        return
    assert len(marks) <= 6 * MOST_UNITS
    if not marks:
        return
    lines = [shapely.LineString(m.path.points + m.path.points[:1] * m.path.closed) for m in marks]
    assert all(m.kind is LineKind.DRAW for m in marks)
    assert shapely.length(lines).min() >= SHORTEST_LINE - 1e-9
    edge = 1e-6 if name == "edge_joints" else -0.99
    assert shapely.covers(piece.buffer(edge), lines).all()
