"""A part whose faces are alike may be put in either way round; what is worked into a face, or is not its own mirror, may not."""

from dataclasses import replace
from types import SimpleNamespace

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark
from publisher.joints.mirrors import faces_alike, is_own_mirror


def test_a_plain_wall_may_be_turned_round_and_one_with_a_pattern_may_not(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    assert is_own_mirror(wall) and faces_alike(wall)
    level = polyline(((0.0, 25.0), (120.0, 25.0)))
    pressed = replace(wall, marks=(Mark(LineKind.DRAW, Purpose.SURFACE, level),))
    assert is_own_mirror(pressed) and not faces_alike(pressed), "its drawing is the same turned over, its piece is not"


def test_what_leans_is_another_part_turned_over(make: SimpleNamespace) -> None:
    leaning = make.polygon("brace", [(0, 0), (60, 0), (70, 40), (0, 40)])
    assert not is_own_mirror(leaning) and not faces_alike(leaning)


def test_a_letter_of_a_join_belongs_to_no_face(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    letter = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((60.0, 4.0),)), text="a")
    assert faces_alike(replace(wall, marks=(letter,)))
