"""Solids of panels: which faces look at the viewer, how large they look, which edges are drawn."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.joints.drawings.panel_solids import Solids, is_joint, solids_of
from publisher.joints.drawings.view import PANEL_VIEW
from publisher.joints.panels.space import PanelFrame

FRONT = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]])
"""Columns: a wall's x runs right, its y up, it looks to the front."""

BACK = np.array([[-1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, 1.0, 0.0]])
"""The same wall seen from its inside: it looks away from the viewer."""


def solids(part: Part, axes: np.ndarray, *, slots: bool = True, surface: bool = False) -> Solids:
    return solids_of([(part, PanelFrame(axes, np.zeros(3)))], PANEL_VIEW, slots=slots, surface=surface)


def looks(direction: tuple[float, float, float]) -> float:
    """The share of its area that a face with this normal shows: the cosine between it and the way to the viewer."""
    return float(PANEL_VIEW.axes()[2] @ np.array(direction))


def test_a_wall_shows_its_face_its_top_and_one_end(make: SimpleNamespace) -> None:
    made = solids(make.wall("w", 60, 40), FRONT)
    seen = sorted(float(area.area) for area in made.areas)
    upright = [60 * 40 * looks((0, -1, 0)), 60 * 5 * looks((0, 0, 1)), 40 * 5 * looks((1, 0, 0))]
    assert seen == pytest.approx(sorted(upright), rel=1e-6)
    assert made.areas[made.main[0]].area == pytest.approx(upright[0])


def test_nine_edges_of_a_block_are_drawn(make: SimpleNamespace) -> None:
    """Of the twelve edges of a block three meet at the corner that cannot be seen."""
    edges = np.vstack(solids(make.wall("w", 60, 40), FRONT).edges)
    ends = {tuple(sorted(map(tuple, np.round(edge, 6).tolist()))) for edge in edges}
    assert len(ends) == 9


def test_a_wall_that_looks_away_shows_its_back(make: SimpleNamespace) -> None:
    made = solids(make.wall("w", 60, 40), BACK)
    assert made.areas[made.main[0]].area == pytest.approx(60 * 40 * looks((0, -1, 0)), rel=1e-6)


def test_depth_grows_towards_the_viewer(make: SimpleNamespace) -> None:
    """The plane of every face gives the depth of its own corners."""
    wall = make.wall("w", 60, 40)
    made = solids(wall, FRONT)
    corners = np.array([[x, y, 0.0] for x, y in wall.outline.outer.points]) @ FRONT.T @ PANEL_VIEW.axes().T
    plane = made.planes[made.main[0]]
    assert corners[:, :2] @ plane[:2] + plane[2] == pytest.approx(corners[:, 2])


def test_an_opening_is_a_hole_in_the_face(make: SimpleNamespace) -> None:
    hole = make.hole(((10.0, 10.0), (10.0, 20.0), (20.0, 20.0), (20.0, 10.0)), "window")
    plain = make.wall("w", 60, 40)
    pierced = make.part("w", plain.outline.outer, holes=(hole,), edges=plain.edges)
    whole, left = solids(plain, FRONT), solids(pierced, FRONT)
    lost = whole.areas[whole.main[0]].area - left.areas[left.main[0]].area
    assert lost == pytest.approx(100.0 * looks((0, -1, 0)))
    assert len(left.areas) == len(whole.areas) + 2  # the sill and one reveal look at the viewer


@pytest.mark.parametrize(("axes", "drawn"), [(FRONT, 1), (BACK, 0)])
def test_a_pattern_shows_only_on_a_face_that_looks_at_the_viewer(
    make: SimpleNamespace, axes: np.ndarray, drawn: int
) -> None:
    mark = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((10.0, 10.0), (30.0, 10.0))))
    part = replace(make.wall("w", 60, 40), marks=(mark,))
    assert solids(part, axes, surface=True).weights.count("detail") == drawn
    assert solids(part, axes, surface=False).weights.count("detail") == 0


@pytest.mark.parametrize(
    ("name", "joint"),
    [("right.tab", True), ("left.slot", True), ("right", False), ("tab", False), ("tab.right", False)],
)
def test_tabs_and_slots_are_known_by_their_runs(name: str, joint: bool) -> None:
    assert is_joint(name) is joint
