"""Where joins lie: on an edge, about the middle that mates share; or beside it, where the mate stands."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import LineKind, Purpose
from publisher.design import EdgeTreatment, PartPlan, SlotRow
from publisher.design.records.edges import JointLine
from publisher.geometry import Part
from publisher.geometry.making.joint_places import JointPlace, glue_lines

Plan = Callable[..., PartPlan]
Draw = Callable[[PartPlan], Part]
Treat = Callable[..., EdgeTreatment]
DECK: dict[str, float | str] = {"width": 480.0, "height": 80.0}


def letters(part: Part) -> dict[str, tuple[float, float]]:
    return {m.text: m.path.points[0] for m in part.marks if m.purpose is Purpose.MATCH}


def test_a_letter_stands_at_the_middle_of_the_nominal_edge_whatever_is_taken_off(
    plan: Plan, drawn: Draw, treatment: Treat
) -> None:
    joins = (treatment("left", 5.0), treatment("bottom", 0.0, matches=("j",)))
    short = {"width": 140.0, "height": 80.0}
    assert letters(drawn(plan("wall_panel", short, (), joins)))["j"] == pytest.approx((70.0, 5.0))


def test_on_a_long_joint_both_mates_have_it_at_one_place_away_from_seams(
    plan: Plan, drawn: Draw, treatment: Treat
) -> None:
    """A deck's bottom edge runs from left to right, the top edge of the side under it from right to left."""
    deck = replace(treatment("bottom", matches=("j",)), lines=(JointLine(0.0, 5.0, ("j",)),))
    side = replace(treatment("top", 5.0, matches=("j",)), lines=(JointLine(0.0, 5.0, ("j",), forward=False),))
    on_deck = letters(drawn(plan("wall_panel", DECK, (), (deck,))))["j"]
    on_side = letters(drawn(plan("wall_panel", DECK, (), (side,))))["j"]
    assert on_deck[0] == pytest.approx(on_side[0]) == pytest.approx(0.17 * 480.0)


def test_ribs_under_a_deck_get_two_glue_lines_with_their_letter_between(
    plan: Plan, drawn: Draw, treatment: Treat
) -> None:
    lines = (JointLine(10.0, 5.0, ("l",)), JointLine(160.0, 5.0, ("m",)))
    part = drawn(plan("wall_panel", DECK, (), (replace(treatment("left", matches=("l", "m")), lines=lines),)))
    glue = sorted({round(p[0], 6) for m in part.marks if m.kind is LineKind.GLUE for p in m.path.points})
    assert glue == [10.0, 15.0, 160.0, 165.0]
    assert letters(part) == {"l": pytest.approx((12.5, 40.0)), "m": pytest.approx((162.5, 40.0))}


def test_slots_are_cut_and_need_no_glue_line(plan: Plan, drawn: Draw, treatment: Treat) -> None:
    row = SlotRow(2, 10.0, 5.0, 0.3)
    own = replace(treatment("left", slots=(row,), matches=("a",)), lines=(JointLine(10.0, 5.0, ("a",)),))
    part = drawn(plan("wall_panel", DECK, (), (own,)))
    assert not [m for m in part.marks if m.kind is LineKind.GLUE]
    assert letters(part)["a"] == pytest.approx((12.5, 40.0))


def test_glue_lines_lie_on_the_left_of_the_joint() -> None:
    place = JointPlace("bottom", (0.0, 10.0), (50.0, 10.0), 5.0, ("a",), glued=True)
    *lines, words = glue_lines((place,))
    assert [m.path.points for m in lines] == [((0.0, 10.0), (50.0, 10.0)), ((0.0, 15.0), (50.0, 15.0))]
    assert (words.text, words.path.points) == (
        "inside face",
        ((25.0, 12.5),),
    )  # where the mate stands, not where it is drawn
    assert not list(glue_lines((replace(place, glued=False),)))
