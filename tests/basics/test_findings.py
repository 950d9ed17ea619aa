"""Findings, rules and checks: a check that looks at nothing fails."""

import pytest

from publisher.basics import (
    Check,
    Finding,
    Findings,
    Outcome,
    Place,
    Refusal,
    Rule,
    Severity,
    checked,
    errors,
    gathered,
    run_checks,
)

RULE = Rule("room/too-long", "Nothing is too long", "It would not fit.", Severity.WARNING)


def too_long(subject: tuple[int, ...], check: Check[tuple[int, ...]]) -> Outcome:
    return Outcome(len(subject), tuple(check.found(f"{n} is too long", value=float(n)) for n in subject if n > 10))


CHECK: Check[tuple[int, ...]] = Check(RULE.id, RULE.title, RULE.rationale, Severity.ERROR, run=too_long)


@checked("room/too-short", "Nothing is too short", "It would rattle.", Severity.WARNING, may_be_empty=True)
def too_short(subject: tuple[int, ...], check: Check[tuple[int, ...]]) -> Findings:
    for number in subject:
        if number < 2:
            yield check.found(f"{number} is too short")
    return len(subject)


def test_a_check_is_made_of_a_test_that_yields_findings() -> None:
    assert (too_short.id, too_short.severity, too_short.may_be_empty) == ("room/too-short", Severity.WARNING, True)
    outcome = too_short.run((1, 5, 0), too_short)
    assert outcome.looked_at == 3
    assert [(f.check, f.message) for f in outcome.findings] == [
        ("room/too-short", "1 is too short"),
        ("room/too-short", "0 is too short"),
    ]
    assert too_short.run((5,), too_short) == Outcome(1)


def test_a_rule_makes_findings_with_its_id_and_severity() -> None:
    place = Place("spec.yaml", 3, 7)
    found = RULE.found("12 is too long", subject="part A", hint="make it shorter", place=place, value=12.0, limit=10.0)
    assert found == Finding(
        "room/too-long", Severity.WARNING, "part A", "12 is too long", "make it shorter", place, 12.0, 10.0
    )
    assert str(found.place) == "spec.yaml:3:7"
    assert str(Place("--set board")) == "--set board"


def test_checks_report_all_they_find() -> None:
    assert [f.message for f in run_checks((CHECK,), (3, 11, 12))] == ["11 is too long", "12 is too long"]


def test_a_check_with_nothing_to_look_at_fails_unless_it_may() -> None:
    (found,) = run_checks((CHECK,), ())
    assert found.severity is Severity.ERROR
    assert "nothing to look at" in found.message
    allowed: Check[tuple[int, ...]] = Check(
        *(RULE.id, RULE.title, RULE.rationale, Severity.ERROR), run=too_long, may_be_empty=True
    )
    assert run_checks((allowed,), ()) == ()


def test_only_errors_stop_a_pack() -> None:
    warning = RULE.found("a")
    error = CHECK.found("b")
    assert errors((warning, error)) == (error,)


def test_a_refusal_carries_its_findings() -> None:
    with pytest.raises(Refusal, match="no folder") as caught:
        raise Refusal(RULE.found("no folder"))
    assert caught.value.findings[0].check == "room/too-long"


def named(line: int, message: str, cause: str = "") -> Finding:
    return RULE.found(message, place=Place("spec.yaml", line, 1), cause=cause)


def test_findings_of_one_cause_are_the_first_of_them_and_how_many_follow() -> None:
    found = [named(9, "no step", "a"), named(4, "no part", "a"), named(5, "too long"), named(9, "again", "a")]
    assert [f.message for f in gathered(found)] == ["no part, and 2 that follow (line 9)", "too long"]
    many = gathered(named(line, f"no {line}", "a") for line in range(1, 13))
    assert [f.message for f in many] == ["no 1, and 11 that follow (lines 2, 3, 4, 5, 6, 7, 8, 9 and 3 more)"]
    two = gathered((named(3, "no part", "a"), RULE.found("no place", cause="a"), named(3, "no board", "b")))
    assert [f.message for f in two] == ["no place, and 1 that follows (line 3)", "no board"]
