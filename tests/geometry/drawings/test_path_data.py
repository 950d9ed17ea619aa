"""Path data read to its end or refused."""

import pytest

from publisher.geometry.drawings.path_data import Arc, Cubic, Line, read_path
from publisher.geometry.drawings.tree import Unreadable


def test_relative_and_absolute_commands_agree() -> None:
    absolute = read_path("M10 10 L20 10 H30 V20 C30 30 20 30 20 20 S10 10 10 20 Q5 25 0 20 T-10 20 A5 5 0 0 1 -20 20 Z")
    relative = read_path("m10 10l10 0h10v10c0 10-10 10-10 0s-10-10-10 0q-5 5-10 0t-10 0a5 5 0 01-10 0z")
    assert absolute == relative
    (path,) = absolute
    assert path.closed and path.pieces[-1] == Line((-20.0, 20.0), (10.0, 10.0))
    assert path.pieces[4] == Cubic(
        (20.0, 20.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0)
    )  # S mirrors the control point
    assert path.pieces[7] == Arc((-10.0, 20.0), 5.0, 5.0, 0.0, False, True, (-20.0, 20.0))


def test_more_points_after_a_move_are_lines_and_a_path_goes_on_after_z() -> None:
    first, second = read_path("M0 0 1 0 1 1z l5 5")
    assert len(first.pieces) == 3 and second.start == (0.0, 0.0) and not second.closed


@pytest.mark.parametrize(
    "text", ["L1 1", "M0 0 L1", "M0 0 X", "5 5", "M0 0 A1 1 0 2 0 5 5", "M0 0 Z 5", "M0 0 L1e99 0"]
)
def test_what_cannot_be_read_is_refused(text: str) -> None:
    with pytest.raises(Unreadable):
        read_path(text)
