"""Which layers wind or climb, by where they lie."""

from publisher.basics import Pose
from publisher.joints.model import StackLayer
from publisher.joints.stacks.climbs import alike, climbs_of, moved_on, thickened


def layers(*each: tuple[str, float, float]) -> tuple[StackLayer, ...]:
    """Layers of these parts, each turned (degrees) and shifted (mm along its own x) against the one below."""
    made, pose = [], Pose()
    for k, (part, turn, shift) in enumerate(each):
        x, y = pose.apply((shift, 0.0))
        pose = Pose(x, y, pose.turn + turn)
        made.append(StackLayer(part, pose, 5.0 * k, 5.0, "s", k + 1))
    return tuple(made)


def said(*each: tuple[str, float, float]) -> list[list[int]]:
    return [list(climb) for climb in climbs_of(layers(*each))]


PLINTH, STEP, OVER = ("p", 0.0, 0.0), ("s", 20.0, 0.0), ("s", 0.0, 0.0)


def test_a_stair_is_what_is_moved_from_layer_to_layer_of_one_part() -> None:
    assert said(PLINTH, STEP, STEP, STEP) == [[1, 2, 3]]
    assert said(PLINTH, OVER, STEP, STEP) == [[1, 2, 3]]  # however the lowest lies on the plinth
    assert said(STEP, STEP) == [[0, 1]]
    assert said(PLINTH, PLINTH, PLINTH) == [] == said(PLINTH, STEP) == said(PLINTH, ("q", 20.0, 0.0), PLINTH)
    assert said(("s", 0.0, 15.0), ("s", 0.0, 15.0), ("s", 0.0, 15.0)) == [[0, 1, 2]]


def test_a_single_moved_layer_on_a_block_is_no_stair_but_one_on_a_doubled_step_goes_on() -> None:
    assert said(OVER, OVER, OVER, ("s", 0.0, 30.0), OVER) == []
    assert said(PLINTH, STEP, STEP, OVER, STEP) == [[1, 2], [3, 4]]
    assert thickened(layers(PLINTH, STEP, STEP, OVER, OVER)) == ((2, 3, 4),)
    assert thickened(layers(PLINTH, STEP, STEP)) == ()


def test_turns_that_differ_make_two_runs_of_one_stair() -> None:
    made = layers(PLINTH, STEP, STEP, ("s", 30.0, 0.0), ("s", 30.0, 0.0))
    (climb,) = climbs_of(made)
    assert [list(run) for run in alike(made, climb)] == [[1, 2], [3, 4]]
    turn, shift = moved_on(*layers(STEP, ("s", 350.0, 3.0)))
    assert abs(turn + 10.0) < 1e-9 and abs(shift[0] - 3.0) < 1e-9 and abs(shift[1]) < 1e-9
