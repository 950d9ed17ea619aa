"""Pitches and offsets that break joint, against the plain fractions of a turn or a shift."""

from math import pi
from random import Random

import pytest

from publisher.joints.stacks.bonds import half_offset, nearest_bond, nearest_offset, stagger_of
from publisher.joints.stacks.courses import Stagger


def ring(joints: int, turn: float, radius: float = 30.0) -> Stagger:
    unit, way = 2 * pi * radius / joints, radius * turn * pi / 180
    return Stagger(0, stagger_of(way, unit), unit, way, turn)


def wall(unit: float, shift: float) -> Stagger:
    return Stagger(0, stagger_of(shift, unit), unit, shift, 0.0)


def test_layers_of_fifteen_degrees_with_a_joint_every_fifteen_degrees() -> None:
    """Fact of the trade (common practice, no source): a pitch that divides the turn puts all courses in line."""
    in_line = ring(24, 15.0)
    assert in_line.share == pytest.approx(0.0, abs=1e-9)
    quarter, half = nearest_bond(in_line, 0.25), nearest_bond(in_line, 0.5)
    assert quarter is not None
    assert half is not None
    assert (quarter.joints, quarter.share) == (18, pytest.approx(0.25))
    assert (half.joints, half.share) == (12, pytest.approx(0.5))


def test_no_count_nearer_than_the_one_proposed_breaks_joint() -> None:
    rng = Random(4)
    for _ in range(100):
        joints, turn = rng.randint(8, 60), rng.uniform(5, 60)
        found = nearest_bond(ring(joints, turn), 0.25)
        if found is None or found.joints is None:
            continue
        assert stagger_of(found.joints * turn, 360.0) >= 0.25 - 1e-6
        for n in range(joints - abs(found.joints - joints) + 1, joints + abs(found.joints - joints)):
            if n != joints and n > 1:
                assert stagger_of(n * turn, 360.0) < 0.25


@pytest.mark.parametrize(("unit", "shift"), [(10.0, 20.0), (9.0, 19.0), (12.0, 5.9), (7.0, 0.5)])
def test_a_straight_wall_takes_the_unit_nearest_to_its_own(unit: float, shift: float) -> None:
    for least in (0.25, 0.5):
        found = nearest_bond(wall(unit, shift), least)
        if found is None:
            assert shift < unit / 4 * least  # a short shift cannot reach so far without units of another size
            continue
        assert found.share >= least - 1e-9
        nearer = [unit + (found.unit - unit) * i / 50 for i in range(50)]
        assert all(stagger_of(shift, u) < least for u in nearer if abs(u - unit) < abs(found.unit - unit) - 1e-9) or (
            wall(unit, shift).share >= least
        )


def test_an_offset_moves_every_other_course_away_from_both_neighbours() -> None:
    rng = Random(5)
    for _ in range(200):
        stagger = wall(rng.uniform(5, 20), rng.uniform(0, 40))
        found = nearest_offset(stagger, 0.25)
        for offset, share in (half_offset(stagger), *(() if found is None else (found,))):
            up = stagger_of((stagger.moved or 0.0) + offset, stagger.unit)
            down = stagger_of((stagger.moved or 0.0) - offset, stagger.unit)
            assert min(up, down) == pytest.approx(share, abs=1e-9)
        assert (found is None) == (stagger.share > 0.25 + 1e-6)
        assert found is None or found[1] >= 0.25 - 1e-6


def test_layers_that_do_not_move_have_no_other_pitch() -> None:
    assert nearest_bond(wall(10.0, 0.0), 0.25) is None
    assert nearest_bond(Stagger(0, 0.0, 10.0, None, 20.0), 0.25) is None
