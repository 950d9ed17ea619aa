import numpy as np
import pytest

from publisher.joints.drawings.view import PANEL_VIEW, STACK_VIEW, View


@pytest.mark.parametrize("view", [PANEL_VIEW, STACK_VIEW, View(45.0, 35.264)])
def test_the_axes_are_a_turn_and_up_stays_up(view: View) -> None:
    axes = view.axes()
    assert axes @ axes.T == pytest.approx(np.eye(3))
    assert axes[0, 2] == 0  # uprights are drawn upright
    assert axes[1, 2] > 0
    assert axes[2] @ [1, -1, 1] > 0  # from the front right and above


def test_an_isometric_view_shortens_all_axes_alike() -> None:
    """Isometric: elevation asin(1/√3) = 35.264°, every axis drawn at √(2/3) of its length (ISO 5456-3)."""
    shown = np.hypot(*View(45.0, np.degrees(np.arcsin(1 / np.sqrt(3)))).axes()[:2])
    assert shown == pytest.approx([np.sqrt(2 / 3)] * 3)


def test_lift_moves_a_point_as_height_does() -> None:
    axes = STACK_VIEW.axes()
    raised = axes[:2] @ np.array([3.0, 4.0, 7.0])
    assert STACK_VIEW.plan_matrix() @ (np.array([3.0, 4.0]) + 7.0 * STACK_VIEW.lift()) == pytest.approx(raised)
