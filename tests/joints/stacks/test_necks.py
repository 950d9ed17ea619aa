"""Necks of stacks: which layers, under which tread, by hand."""

from types import SimpleNamespace

import pytest

from publisher.design import Figure
from publisher.joints.footing import GRAVITY
from publisher.joints.stacks.necks import StackNeck, necks_of


def necks(
    make: SimpleNamespace, figure: float, *rows: tuple[str, int, float, tuple[float, float]]
) -> tuple[StackNeck, ...]:
    parts = make.rectangle("post", -5, -5, 5, 5), make.rectangle("arm", -5, -13, 85, 13), make.disc("plinth", 60.0)
    board = make.board()
    made = make.assembled(make.design(stacks=(make.stack("s", *rows),), boards=(board,)), *parts)
    return necks_of(made.stacks[0], {part.id: part for part in parts}, {board.id: board}, Figure(25.0, figure))


def test_every_glued_joint_is_a_neck_of_what_lies_over_it(make: SimpleNamespace) -> None:
    """An arm that reaches 85 mm to one side, on three posts: the same moment at all of them, but for the posts' own weight."""
    found = necks(make, 30.0, ("plinth", 1, 0.0, (0, 0)), ("post", 3, 0.0, (0, 0)), ("arm", 1, 0.0, (0, 0)))
    assert [(one.layer, one.tread) for one in found] == [(4, 4), (3, 4), (2, 4), (1, 4)]
    arm = 90.0 * 26.0 * 5.0 * 30.0e-6 * GRAVITY * 40.0  # grams by mm³; its middle stands 40 mm off
    # at its corner: along the arm, and half its width across
    along = 6 * (30.0 * GRAVITY * 85.0 + arm) / 10.0**3
    across = 6 * 30.0 * GRAVITY * 13.0 / 10.0**3
    assert [one.neck.stress for one in found] == [pytest.approx(along + across, rel=1e-6)] * 4


def test_without_a_figure_the_arm_alone_bends_it(make: SimpleNamespace) -> None:
    (top, *_) = necks(make, 0.0, ("post", 2, 0.0, (0, 0)), ("arm", 1, 0.0, (0, 0)))
    assert top.neck.stress == pytest.approx(6 * 90.0 * 26.0 * 5.0 * 30.0e-6 * GRAVITY * 40.0 / 10.0**3, rel=1e-6)
