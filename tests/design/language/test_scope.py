"""Names and what they mean while values are worked out."""

import math

from publisher.basics import Finding, Place
from publisher.brief import Value
from publisher.design import Fact
from publisher.design.language.amounts import Amount
from publisher.design.language.scope import Scope, column_of

PLACE = Place("spec.yaml", 7, 11, "/sizes/x")


def value(text: str, plain: bool = True) -> Value:
    return Value(text, "length", PLACE, plain)


def test_a_size_without_a_value_is_silent_because_it_has_its_finding_already() -> None:
    findings: list[Finding] = []
    scope = Scope({"board": None}, findings)
    assert scope.amount(value("2 * board"), "part wall") is None
    assert scope.number(value("board"), "part wall") is None
    assert findings == []


def test_facts_count_only_where_they_are_allowed() -> None:
    findings: list[Finding] = []
    made = (Fact("stair.height", 70.0, "length"), Fact("stair.headroom", math.inf, "length"))
    facts = {fact.name: fact for fact in made}
    assert Scope({}, findings, facts).number(value("stair.height / 2"), "") == 35.0
    assert Scope({}, findings, facts).amount(value("stair.headroom"), "") == Amount(math.inf, mm=1)
    assert findings == []
    assert Scope({}, findings, facts).amount(value("stair.headroom - 1 mm"), "") is None
    assert "is open: nothing limits it" in findings[-1].message
    assert Scope({}, findings).amount(value("stair.height"), "") is None
    assert findings[-1].check == "design/fact-in-size"
    assert Scope({}, findings, facts).amount(value("stair.hight"), "") is None
    assert findings[-1].hint == "did you mean “stair.height”?"
    assert Scope({}, findings, facts).amount(value("stair.weight_in_all"), "") is None
    assert findings[-1].hint == "facts of stair: height, headroom"
    assert Scope({}, findings, facts).amount(value("stare.height"), "") is None
    assert findings[-1].hint == "did you mean “stair.height”?"


def test_the_column_is_counted_only_in_plain_values() -> None:
    assert column_of(value("board + 5"), 6) == Place("spec.yaml", 7, 17, "/sizes/x")
    assert column_of(value("board + 5", plain=False), 6) == PLACE


def test_a_finding_names_subject_expression_and_place() -> None:
    findings: list[Finding] = []
    Scope({"board": Amount(5.0, mm=1)}, findings).number(value("board + 5"), "part wall, width")
    (finding,) = findings
    assert finding.subject == "part wall, width"
    assert finding.message == "“board + 5”: a length plus a plain number says nothing"
    assert finding.hint == "write 5 mm"
    assert str(finding.place) == "spec.yaml:7:17"


def test_a_long_expression_is_not_repeated() -> None:
    findings: list[Finding] = []
    Scope({}, findings).number(value("1 mm + " * 20 + "1"), "")
    assert findings[0].message == "a length plus a plain number says nothing"
