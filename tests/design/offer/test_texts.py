"""Texts with blanks, filled from sizes and facts."""

import math
from collections.abc import Callable
from typing import Any

import pytest

from publisher.basics import Place
from publisher.basics.wording import LengthUnit
from publisher.design import Blank, Design, Fact, Quantity, TextPlan, amount, fill

PLACE = Place("spec.yaml", 1, 1)
FACTS = (
    Fact("pile.carries", 0.53, "force", rounds="down"),
    Fact("pile.height", 70.0, "length"),
    Fact("pile.headroom", math.inf, "length"),
    Fact("pile.weight", 48.2, "mass"),
    Fact("slab.share", 0.5, "ratio"),
    Fact("slab.area", 1234.0, "area"),
    Fact("pile.layers", 4.0, "count"),
)


@pytest.fixture
def design(tried: Callable[..., Any]) -> Design:
    made = tried("sizes: {board: 5 mm, length: 100 mm, layers: 4, turn: 20 deg, nothing: 0}").design
    assert isinstance(made, Design)
    return made


def text_of(design_text: str, tried: Callable[..., Any]) -> TextPlan:
    made = tried(f"summary: '{design_text}'").design
    assert made.findings == ()
    assert isinstance(made.summary, TextPlan)
    return made.summary


@pytest.mark.parametrize(
    ("text", "filled"),
    [
        ("Bases of {board}.", "Bases of 5 mm (0.20 in)."),
        ("{layers} layers, {pile.height} tall", "4 layers, 70 mm (2.76 in) tall"),
        ("{ layers * 2 }", "8"),
        ("{pile.height / pile.layers}", "17.5 mm (11/16 in)"),
        ("headroom: {pile.headroom}", "headroom: open"),
        ("{pile.weight}, {slab.share}, {slab.area}", "48 g, 0.50, 12.3 cm² (1.91 sq in)"),
        ("{pile.height / board}", "14.00"),
        ("{{braces}} and {{{layers}}}", "{braces} and {4}"),
        ("it carries {pile.carries}", "it carries about 50 g"),
        ("nothing to fill", "nothing to fill"),
    ],
)
def test_fill(text: str, filled: str, design: Design, tried: Callable[..., Any]) -> None:
    assert fill(text_of(text, tried), design, FACTS) == (filled, ())


@pytest.mark.parametrize(
    ("text", "first", "filled"),
    [
        ("{pile.base}", "mm", "25 mm (0.98 in)"),  # 25.07: a promise
        ("{pile.base}", "in", "0.98 in (25 mm)"),
        ("{pile.base in mm}", "in", "25 mm"),
        ("{pile.base in inches}", "mm", "0.98 in"),
        ("{pile.base + 0 mm}", "mm", "25.1 mm (0.99 in)"),  # worked out from it: to the nearest
        ("{length in inches}", "mm", "3 15/16 in"),
        ("{pile.height}", "in", "2.76 in (70 mm)"),
        ("{slab.area}", "in", "1.91 sq in (12.3 cm²)"),
    ],
)
def test_a_text_names_both_units_or_the_one_that_it_asks_for(
    text: str, first: LengthUnit, filled: str, design: Design, tried: Callable[..., Any]
) -> None:
    facts = (*FACTS, Fact("pile.base", 25.07, "length", rounds="down"))
    assert fill(text_of(text, tried), design, facts, first) == (filled, ())


def test_only_a_length_is_asked_for_in_a_unit(design: Design) -> None:
    text, (finding,) = fill(TextPlan((Blank("layers", PLACE, "mm"),), PLACE), design, FACTS)
    assert text == "{layers}"
    assert "cannot be said in mm" in finding.message


def test_what_has_no_value_is_printed_as_written_and_found(design: Design) -> None:
    for expression, says in (
        ("pile.hight", "did you mean “pile.height”?"),
        ("pile.headroom + 1 mm", "open"),
        ("pile.height ^ 3", "mm³"),
        ("layers / nothing", "divides by zero"),
    ):
        text, (finding,) = fill(TextPlan(("It is ", Blank(expression, PLACE), "."), PLACE), design, FACTS)
        assert text == f"It is {{{expression}}}."
        assert says in f"{finding.message} | {finding.hint}"
        assert finding.place == PLACE


def test_amount(design: Design) -> None:
    assert amount(Blank("pile.height + 5 mm", PLACE), design, FACTS) == (Quantity(75.0, "length"), ())
    assert amount(Blank("pile.headroom", PLACE), design, FACTS) == (Quantity(math.inf, "length"), ())
    assert amount(Blank("2 * layers", PLACE), design, FACTS) == (Quantity(8.0, "count"), ())
    nothing, findings = amount(Blank("pile.hight", PLACE), design, FACTS)
    assert nothing is None
    assert [f.check for f in findings] == ["design/unknown-in-text"]


@pytest.mark.parametrize(
    ("text", "rule", "says"),
    [
        ("{layers", "design/text-blank", "never closed"),
        ("layers}", "design/text-blank", "closes nothing"),
        ("{}", "design/unreadable-expression", "there is no value here"),
        ("{layers +}", "design/unreadable-expression", "ends too early"),
        ("{lairs}", "design/unknown-in-text", "no size “lairs”"),
        ("{pyle.height}", "design/unknown-in-text", "did you mean “pile”?"),
        ("{board + 5}", "design/mixed-kinds", "write 5 mm"),
        ("{board ^ 3}", "design/wrong-kind", "mm³"),
        ("{layers / 0}", "design/no-value", "divides by zero"),
    ],
)
def test_texts_are_checked_before_facts_are_known(text: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(f"summary: '{text}'").design.findings
    assert finding.check == rule
    assert finding.subject == "summary"
    assert says in f"{finding.message} | {finding.hint}"


def test_blanks_point_at_their_own_column_in_plain_text(tried: Callable[..., Any]) -> None:
    (finding,) = tried("summary: A pile of { lairs }.").design.findings
    assert (finding.place.line, finding.place.column) == (12, 22)
    (finding,) = tried("summary: >\n  A pile of\n  {lairs}.").design.findings
    assert (finding.place.line, finding.place.column) == (12, 10)
