"""Path data read to its end or refused."""

import pytest

from publisher.geometry.drawings.path_data import Cubic, Elliptic, Straight, read_path
from publisher.geometry.drawings.tree import Unreadable


def test_relative_and_absolute_commands_agree() -> None:
    absolute = read_path("M10 10 L20 10 H30 V20 C30 30 20 30 20 20 S10 10 10 20 Q5 25 0 20 T-10 20 A5 5 0 0 1 -20 20 Z")
    relative = read_path("m10 10l10 0h10v10c0 10-10 10-10 0s-10-10-10 0q-5 5-10 0t-10 0a5 5 0 01-10 0z")
    assert absolute == relative
    (path,), problem = absolute
    assert problem == ""
    assert path.closed and path.pieces[-1] == Straight((-20.0, 20.0), (10.0, 10.0))
    assert path.pieces[4] == Cubic(
        (20.0, 20.0), (20.0, 10.0), (10.0, 10.0), (10.0, 20.0)
    )  # S mirrors the control point
    assert path.pieces[7] == Elliptic((-10.0, 20.0), 5.0, 5.0, 0.0, False, True, (-20.0, 20.0))


def test_more_points_after_a_move_are_lines_and_a_path_goes_on_after_z() -> None:
    (first, second), _ = read_path("M0 0 1 0 1 1z l5 5")
    assert len(first.pieces) == 3 and second.start == (0.0, 0.0) and not second.closed


@pytest.mark.parametrize(
    ("text", "pieces"),
    [
        ("L1 1", 0), ("M0 0 L1", 0), ("M0 0 L5 5 X", 1), ("5 5", 0), ("M0 0 L5 5 A1 1 0 2 0 5 5", 1), ("M0 0 L1 1 Z 5", 2),
        ("M0 0 L5 5 NaN 6", 1),
    ],
)  # fmt: skip
def test_what_stands_before_an_error_is_drawn_and_the_error_said(text: str, pieces: int) -> None:
    # SVG 1.1, F.2: draw up to the error
    paths, problem = read_path(text)
    assert sum(len(path.pieces) for path in paths) == pieces
    assert "cannot be read at" in problem


def test_a_number_is_never_split() -> None:
    assert read_path("M0 0 L10 X")[0] == []
    (path,), problem = read_path("M1-.5.5.5L10-5e-1")
    assert problem == "" and path.pieces[-1] == Straight((0.5, 0.5), (10.0, -0.5))


def test_beyond_all_drawings() -> None:
    for text in ("M0 0 L1e99 0", "M0 0 L1e9999 0", "M0 0 L1000000001 0", "M0 0" + "L1 1" * 100_001):
        with pytest.raises(Unreadable):
            read_path(text)
