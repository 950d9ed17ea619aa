"""Packs that meet: a mismatch is found in mm, a fit is not."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Place, Severity
from publisher.design import Blank, Fact, Kind, MeetPlan
from publisher.joints.facts.families import MeetingSize, compare_meets, meeting_sizes


def size(slug: str, value: float, name: str = "deck_height", kind: Kind = "length", pack: str = "") -> MeetingSize:
    return MeetingSize(slug, pack or slug, name, value, kind, Place(f"{slug}/spec.yaml", 7, 3))


@pytest.mark.keeps("joints/meeting-size-alone")
@pytest.mark.breaks("joints/packs-do-not-meet")
def test_a_mismatch_is_said_in_mm_with_who_says_what() -> None:
    (found,) = compare_meets((size("quay", 100.0), size("stair", 71.4)))
    assert found.severity is Severity.ERROR
    assert found.message.startswith("deck_height: quay 100.0 mm (3.94 in), stair 71.4 mm (2.81 in): differ by 28.6 mm")
    assert "stair/spec.yaml:7:3" in found.hint
    assert "quay/spec.yaml:7:3" in found.hint


def test_twenty_boards_of_5_meet_twenty_one_of_three_sixteenths() -> None:
    """100.0 and 100.0125 mm: a natural storey."""
    assert compare_meets((size("quay", 20 * 5.0), size("stair", 21 * 4.7625))) == ()
    assert len(compare_meets((size("quay", 100.0), size("stair", 100.2)))) == 1


def test_a_pack_that_differs_on_one_board_only_is_named_with_it() -> None:
    sizes = (size("quay", 100.0), size("stair", 100.0), size("stair", 95.3, pack="stair on 4.76 mm (0.19 in) board"))
    (found,) = compare_meets(sizes)
    assert "stair on 4.76 mm (0.19 in) board 95.3 mm (3.75 in): differ by 4.70 mm" in found.message


def test_sizes_of_other_kinds_do_not_compare() -> None:
    (found,) = compare_meets((size("a", 4.0, kind="length"), size("b", 4.0, kind="count")))
    assert "4.00 mm (0.16 in) in a and 4 in b" in found.message


@pytest.mark.keeps("joints/packs-do-not-meet")
@pytest.mark.breaks("joints/meeting-size-alone")
def test_a_name_that_no_other_pack_has_is_found_only_when_it_looks_like_a_slip() -> None:
    three = (size("a", 9.0), size("b", 9.0), size("c", 9.0, "deck_heigth"))
    (found,) = compare_meets(three)
    assert (found.check, found.subject) == ("joints/meeting-size-alone", "c")
    assert "did you mean “deck_height”" in found.hint
    assert compare_meets((*three[:2], size("c", 9.0, "pin_distance"))) == ()


def test_meeting_sizes_are_worked_out_from_sizes_and_facts(make: SimpleNamespace) -> None:
    plans = tuple(
        MeetPlan(n, Blank(e, make.here), make.here) for n, e in (("deck", "s.height * 2"), ("pin", "s.width"))
    )
    design = replace(make.design(), meets=plans)
    sizes, findings = meeting_sizes("stair", design, (Fact("s.height", 35.0, "length"),))
    assert [(s.slug, s.name, s.value, s.kind) for s in sizes] == [("test", "deck", 70.0, "length")]
    (found,) = findings
    assert "s.width" in found.message
