"""A part whose faces are alike may be put in either way round; what is worked into a face, or is not its own mirror, may not."""

from dataclasses import replace
from types import SimpleNamespace

from publisher.basics import LineKind, Purpose, polyline
from publisher.design import StepPlan, TextPlan
from publisher.geometry import Mark, Part
from publisher.joints.mirrors import alike_parts, faces_alike, is_own_mirror


def test_a_plain_wall_may_be_turned_round_and_one_with_a_pattern_may_not(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    assert is_own_mirror(wall) and faces_alike(wall)
    level = polyline(((0.0, 25.0), (120.0, 25.0)))
    pressed = replace(wall, marks=(Mark(LineKind.DRAW, Purpose.SURFACE, level),))
    assert is_own_mirror(pressed) and not faces_alike(pressed), "its drawing is the same turned over, its piece is not"


def test_what_leans_is_another_part_turned_over(make: SimpleNamespace) -> None:
    leaning = make.polygon("brace", [(0, 0), (60, 0), (70, 40), (0, 40)])
    assert not is_own_mirror(leaning) and not faces_alike(leaning)


def test_letters_of_joins_must_meet_turned_round_too(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)

    def lettered(left: str, right: str) -> Part:
        spots = ((4.0, 25.0, left), (116.0, 25.04, right))
        return replace(
            wall, marks=tuple(Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((x, y),)), text=t) for x, y, t in spots)
        )

    assert faces_alike(lettered("a", "a")), "to a hair: marks are set to a tenth of a millimetre"
    assert not faces_alike(lettered("a", "b")), "turned round its ends would meet the wrong walls"


def test_round_off_does_not_tell_faces_apart(make: SimpleNamespace) -> None:
    corners = [(0.0, 0.0), (120.0, 1e-12), (120.0 - 1e-11, 50.0), (0.0, 50.0 + 1e-11)]
    assert faces_alike(make.polygon("wall", corners))


def test_a_step_that_works_on_a_face_and_a_board_with_one_paper_tell_which_is_out(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    assert alike_parts(make.design(boards=(make.board(),)), (wall,)) == {"wall"}
    assert not alike_parts(make.design(boards=(make.board(faces="paper_one"),)), (wall,))
    text = TextPlan(("Press.",), make.here)
    for stage, acts, found in (("texture", None, set()), ("cut", ("press",), set()), ("cut", None, {"wall"})):
        step = StepPlan(text, stage, text, ("wall",), (), None, make.here, acts=acts)
        assert alike_parts(replace(make.design(), steps=(step,)), (wall,)) == found
