"""A board judged by what a pack says that it takes. By hand: a slot of 5.3 that holds with 0.6 takes board from 4.7 to 5.3."""

from math import inf, pi

import pytest

from publisher.basics import Refusal
from publisher.ruler import judge_board, read_thickness
from publisher.ruler.boards import board_range
from publisher.ruler.pack_facts import Met, PackFacts, RecordedBoard

SLOT = Met("slot of part A", 5.3, 5.2, 5.4, 0.8, "foam", 1.0, 5.0, 0.2)
DOOR = Met("door of part A for a 25 mm base", 30.0, 25.0, None)
FOAM = RecordedBoard("foam", "5 mm", 5.0)


def pack(*meetings: Met, variant: str = "", boards: tuple[RecordedBoard, ...] = (FOAM,)) -> PackFacts:
    return PackFacts("House", "1.0.0", meetings, None, "house", variant, boards)


@pytest.mark.parametrize("thickness", [4.7, 5.0, 5.3])
@pytest.mark.keeps("ruler/board-does-not-fit")
def test_a_board_in_the_range_is_good(thickness: float) -> None:
    verdict = judge_board(thickness, pack(SLOT, DOOR))
    assert (verdict.verdict, verdict.findings, verdict.misfits) == ("good", (), ())
    assert (verdict.least, verdict.most) == pytest.approx((4.7, 5.3))


@pytest.mark.parametrize(
    ("thickness", "says"),
    [
        (4.6, "the slot of part A is 5.30 mm when cut and holds up to 5.20 mm: 0.10 mm too loose"),
        (5.4, "the slot of part A is 5.30 mm when cut and needs 5.40 mm: 0.10 mm too tight"),
    ],
)
@pytest.mark.breaks("ruler/board-does-not-fit")
def test_a_board_outside_is_told_which_joint_fails_and_by_how_much(thickness: float, says: str) -> None:
    verdict = judge_board(thickness, pack(SLOT, DOOR))
    assert verdict.misfits == (says,)
    assert verdict.findings[0].value == thickness
    assert f"--set SIZE={thickness:.2f}mm" in verdict.advice[0]


def test_the_variant_that_takes_it_is_named() -> None:
    thin = pack(Met("slot of part A", 4.9, 4.8, 5.0, 0.8, "foam", 1.0, 4.6, 0.2), variant="for thin board")
    other = pack(SLOT, variant="for wide bases")
    verdict = judge_board(4.6, pack(SLOT), (other, thin))
    assert verdict.fits_with == ("for thin board",)
    assert verdict.advice == ("use the pack “for thin board”",)


def test_a_print_that_shrank_takes_thinner_board() -> None:
    """At 98 % the traced slot is 0.98 · 6.1 − 0.8 = 5.178 mm: board of 5.2 no longer goes in, and of 4.6 holds."""
    assert judge_board(5.2, pack(SLOT), scales=(1.0, 0.98)).misfits == (
        "the slot of part A is 5.18 mm when cut and needs 5.20 mm: 0.02 mm too tight",
    )
    assert judge_board(4.6, pack(SLOT), scales=(0.98,)).verdict == "good"


def test_boards_in_a_strip_and_in_a_room() -> None:
    """A strip 131.9469 mm long round a tube of 40: 2 ± 0.1 mm, ends 1 mm apart at most; a room that two boards narrow."""
    girth = pi * 42.0
    strip = Met("length of part S", girth, girth + pi * 0.1 - 1.0, girth - pi * 0.1 + 1.0, 0.0, "card", pi, 2.0, 0.1)
    assert board_range((strip,), "card") == pytest.approx((2.0 - 1.0 / pi, 2.0 + 1.0 / pi))
    room = Met("room inside house", 110.0, 95.0 + 10.0, None, 0.0, "foam", 2.0, 5.0, 0.0)
    assert board_range((room,), "foam") == (0.0, 7.5)
    assert board_range((room,), "card") == (0.0, inf)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("4.6 mm", 4.6),
        ("4.6mm", 4.6),
        ("4,6 mm", 4.6),
        ("1-1/4″", 31.75),
        ("3/16 in", 4.7625),
        ("0.18in", 4.572),
        ("1 1/4 in", 31.75),
    ],
)
def test_a_thickness_has_a_unit(text: str, mm: float) -> None:
    assert read_thickness(text) == pytest.approx(mm)


@pytest.mark.parametrize("text", ["5", "", "five mm", "0 mm", "3/0 in", "-4 mm", "1 4 mm", "400 mm", "4.6 mm" * 20])
@pytest.mark.breaks("ruler/reading-unusable")
def test_no_thickness(text: str) -> None:
    with pytest.raises(Refusal) as refusal:
        read_thickness(text)
    assert "with its unit" in refusal.value.findings[0].hint


@pytest.mark.parametrize(
    ("boards", "named", "says"),
    [
        ((), "", "does not say which boards"),
        ((FOAM, RecordedBoard("card", "", 0.5)), "", "several boards: foam, card"),
        ((FOAM,), "card", "not cut from a board “card”"),
    ],
)
@pytest.mark.breaks("ruler/reading-unusable")
def test_a_board_that_is_not_clear_is_asked_for(boards: tuple[RecordedBoard, ...], named: str, says: str) -> None:
    with pytest.raises(Refusal) as refusal:
        judge_board(4.6, pack(SLOT, boards=boards), board=named)
    assert says in refusal.value.findings[0].message


def test_a_size_that_no_board_fits_takes_none() -> None:
    """It would have to be thinner than 4.9 to go in and thicker than 5.1 to hold."""
    never = Met("slot of part A", 5.0, 5.3, 4.7, 0.0, "foam", 1.0, 5.0, 0.2)
    assert board_range((never,), "foam") == pytest.approx((5.1, 4.9))
    assert judge_board(5.0, pack(never)).verdict == "bad"
