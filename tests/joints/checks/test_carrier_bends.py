"""Brackets, lintels and legs at their limits."""

from dataclasses import replace
from pathlib import Path

import pytest

from publisher.basics import Check
from publisher.joints.assembled import Assembled
from publisher.joints.checks.carrier_bends import carrier_too_weak, leg_buckles, leg_too_narrow
from publisher.joints.put_together import assemble
from tests.joints.panels.test_carriers import shelf, stand
from tests.reference.solids import build


def found(
    check: Check[Assembled], text: str, folder: Path, stiffness: float | None = None
) -> list[tuple[str, float | None]]:
    built = build(text, folder)
    boards = tuple(replace(board, stiffness=stiffness) for board in built.design.boards)
    subject = assemble(replace(built.design, boards=boards), tuple(built.parts.values()))[0]
    return [(one.message, one.value) for one in check.run(subject, check).findings]


@pytest.mark.breaks("joints/carrier-too-weak")
def test_a_low_bracket_and_a_low_lintel_break(tmp_path: Path) -> None:
    ((message, value),) = found(carrier_too_weak, shelf(4.0), tmp_path)
    assert "b1 of s breaks" in message and "reaching 50" in message and "so do 1 more" in message
    assert value is not None and value > 6 * 30.0 * 9.80665e-3 * 49.0 / (5.0 * 4.0**2)
    ((message, _),) = found(carrier_too_weak, stand(12.0, 3.5), tmp_path)
    assert "between supports 96.0 mm" in message and "3.50 mm" in message


@pytest.mark.keeps("joints/carrier-too-weak")
def test_high_ones_bear(tmp_path: Path) -> None:
    assert found(carrier_too_weak, shelf(9.0), tmp_path) == []
    assert found(carrier_too_weak, stand(12.0, 7.0), tmp_path) == []


@pytest.mark.breaks("joints/leg-too-narrow")
def test_a_leg_narrower_than_a_foot_is_found(tmp_path: Path) -> None:
    ((message, value),) = found(leg_too_narrow, stand(6.0, 15.0), tmp_path)
    assert value == pytest.approx(6.0) and "west of s, which carries deck, has a leg 6.00 mm" in message


@pytest.mark.keeps("joints/leg-too-narrow")
def test_a_leg_as_wide_as_a_foot_passes(tmp_path: Path) -> None:
    assert found(leg_too_narrow, stand(7.0, 15.0), tmp_path) == []  # with paper on both faces


@pytest.mark.breaks("joints/leg-buckles")
def test_a_slender_leg_of_soft_board_bows_out(tmp_path: Path) -> None:
    ((message, value),) = found(leg_buckles, stand(8.0, 10.0, high=200.0), tmp_path, stiffness=5.0)
    assert value == pytest.approx(3.14159265**2 * 5.0 * 8.0 * 125.0 / 12.0 / 185.0**2)
    assert "a leg of west of s" in message


@pytest.mark.keeps("joints/leg-buckles")
def test_a_short_one_stays_straight_and_one_of_unknown_board_is_not_judged(tmp_path: Path) -> None:
    assert found(leg_buckles, stand(8.0, 10.0, high=60.0), tmp_path, stiffness=5.0) == []
    assert found(leg_buckles, stand(8.0, 10.0, high=200.0), tmp_path) == []
