from types import SimpleNamespace

import numpy as np
import pytest

from publisher.joints.panels.space import PanelFrame
from publisher.joints.panels.touching import face_behind, touch_of

UP = PanelFrame(np.eye(3), np.array([0.0, 0.0, 5.0]))  # a lid whose inside face lies on z = 0


def standing(low: float, turn: float = 0.0) -> PanelFrame:
    """A wall that stands 100 mm high under z = ``low``, its top edge turned by ``turn`` degrees out of the level."""
    c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
    axes = np.array([[c, -s, 0.0], [0.0, 0.0, -1.0], [s, c, 0.0]])
    return PanelFrame(axes, np.array([20.0, 50.0, low]) - axes @ np.array([0.0, 100.0, 0.0]))


def touch(make: SimpleNamespace, low: float, turn: float = 0.0, wide: float = 60.0, lid: float = 100.0) -> object:
    wall = make.wall("wall", wide, 100.0)
    found = touch_of(face_behind(make.wall("lid", lid, 100.0), UP), wall, standing(low, turn), wall.edge("top"))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("low", "turn", "lid", "gap", "bare", "angle"),
    [
        (0.0, 0.0, 100.0, 0.0, 0.0, 0.0),
        (-3.0, 0.0, 100.0, 3.0, 0.0, 0.0),
        (0.0, 0.0, 50.0, 0.0, 30.0, 0.0),  # the wall runs from x = 20 to 80, the lid ends at 50
        (0.0, 0.0, 10.0, 0.0, 60.0, 0.0),
        (0.0, -10.0, 100.0, 60.0 * np.sin(np.radians(10.0)), 0.0, 10.0),
    ],
)
def test_gap_bare_length_and_angle(
    make: SimpleNamespace, low: float, turn: float, lid: float, gap: float, bare: float, angle: float
) -> None:
    found = touch(make, low, turn, lid=lid)
    assert (found.gap, found.bare, found.angle) == pytest.approx((gap, bare, angle), abs=0.6)  # places lie 1 mm apart
    assert found.holds == (gap == 0.0 and bare == 0.0)


@pytest.mark.parametrize(("lid", "holds"), [(81.0, True), (79.0, True), (77.0, False), (76.0, False)])
def test_a_cover_may_leave_no_more_bare_than_glue_bridges(make: SimpleNamespace, lid: float, holds: bool) -> None:
    """The wall ends at x = 80; a board is 5 mm thick."""
    assert touch(make, 0.0, lid=lid).holds == holds


def test_no_board_at_an_edge_is_nothing_to_measure(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 60.0, 100.0)
    low = make.part("low", make.wall("low", 60.0, 50.0).outline.outer, edges=wall.edges)
    assert touch_of(face_behind(make.wall("lid", 100.0, 100.0), UP), low, standing(0.0), wall.edge("top")) is None
