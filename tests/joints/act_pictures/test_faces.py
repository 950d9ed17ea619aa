"""The outside of a part bears its pattern in pictures, its inside short strokes, and a part with two faces alike neither."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.joints.act_pictures.faces import PATCH, insides, pattern_lines, pattern_of
from publisher.joints.act_pictures.picture import act_picture
from publisher.joints.act_pictures.planned import best_sight
from publisher.joints.act_pictures.scene import Solid
from publisher.joints.act_pictures.sight import look
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import View, solids_of
from publisher.joints.panels import PanelFrame
from tests.joints.act_pictures.conftest import scenes

FROM_ABOVE = View(0.0, 90.0)
OUTSIDE_UP = PanelFrame(np.eye(3), np.zeros(3))
INSIDE_UP = PanelFrame(np.diag([1.0, -1.0, -1.0]), np.zeros(3))


def rowed(part: Part, every: float) -> Part:
    """The part with level rows pressed into its outside."""
    left, low, right, high = shapely.bounds(shapely.multipoints(part.outline.outer.points))
    rows = [polyline(((left, float(y)), (right, float(y)))) for y in np.arange(low + every, high, every)]
    return replace(part, marks=tuple(Mark(LineKind.DRAW, Purpose.SURFACE, row) for row in rows))


@pytest.fixture
def wall(box: Assembled) -> Part:
    return next(part for part in box.parts if part.id == "side")


def test_a_pattern_shows_on_the_outside_alone(wall: Part) -> None:
    brick, axes = rowed(wall, 4.0), FROM_ABOVE.axes()
    assert pattern_lines((Solid("a", brick, OUTSIDE_UP),), axes, 1.0)
    assert not pattern_lines((Solid("a", brick, INSIDE_UP),), axes, 1.0)
    assert not pattern_lines((Solid("a", wall, OUTSIDE_UP),), axes, 1.0)


def test_a_dense_pattern_is_drawn_larger_in_patches(wall: Part) -> None:
    """Rows of 1 mm on a paper at a fifth would be a grey: drawn so large, they stand a millimetre apart, and no farther out."""
    pattern = pattern_of(rowed(wall, 1.0))
    assert pattern is not None and len(pattern.spots) == 2
    shown = np.vstack(pattern_lines((Solid("a", rowed(wall, 1.0), OUTSIDE_UP),), FROM_ABOVE.axes(), 0.2))
    for x, y, _ in pattern.spots:
        own = shown[np.hypot(*(shown[:, :, :2].mean(axis=1) - (x, y)).T) < PATCH / 0.2]
        heights = np.unique(np.round(own[:, 0, 1] * 0.2, 3))
        assert len(heights) > 2 and np.diff(heights).min() > 0.8
    spots = shapely.union_all([shapely.Point(x, y).buffer(PATCH / 0.2 + 0.1) for x, y, _ in pattern.spots])
    assert shapely.covers(spots, shapely.linestrings(shown[:, :, :2])).all()


def test_strokes_are_on_insides_but_of_parts_whose_faces_are_alike(wall: Part) -> None:
    axes = FROM_ABOVE.axes()
    for frame, alike, found in ((INSIDE_UP, "", 1), (OUTSIDE_UP, "", 0), (INSIDE_UP, wall.id, 0)):
        solids = solids_of([(wall, frame)], FROM_ABOVE, slots=True, surface=False)
        assert len(insides((Solid("a", wall, frame),), solids, axes, frozenset({alike}))) == found


def test_a_picture_tells_the_faces_of_walls_apart(box: Assembled) -> None:
    """The front lies on its outside: what is seen of it is its inside."""
    scene = scenes(box)["act:1:1"]
    differ, alike = (replace(scene, alike=frozenset(ids)) for ids in ((), ("side", "end")))
    assert look(differ, View(38.0, 24.0)).there_inside and not look(alike, View(38.0, 24.0)).there_inside
    assert any("hatch" in act_picture(one, best_sight(one, None)).lines for one in (differ,))
    assert "hatch" not in act_picture(alike, best_sight(alike, None)).lines
