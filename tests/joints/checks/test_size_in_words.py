"""Sizes that are written out in sentences, beside those of the design."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.basics import Finding
from publisher.design import Blank, StepPlan, TextPlan
from publisher.joints.checks.size_in_words import size_in_words

ID = "joints/size-in-words"


def said(make: SimpleNamespace, say: str) -> list[Finding]:
    """Say it of a design with a wall of 120 × 50 mm."""
    words = TextPlan((say, Blank("deck.width", make.here)), make.here)
    step = StepPlan(TextPlan(("Glue",), make.here), "glue", words, (), (), None, make.here)
    design = replace(make.design(), steps=(step,))
    return list(size_in_words.run(make.assembled(design, make.wall("wall", 120, 50)), size_in_words).findings)


@pytest.mark.keeps(ID)
@pytest.mark.parametrize(
    "say",
    [
        "The wall is 120 mm long and 5 cm high.",
        "It is 4.72 in long.",
        "Measure the 100 mm square, or the 1-inch one.",
        "Glue 4 in a row and cut 2 in one go; wait 30 min, 2 m of ribbon, 500 g.",
        "Set it back three millimetres. It is for ages 12 and up. Use 2 coats.",
        "Version 1.2 in two parts.",
        "Put M3.5 screws into the A4 sheet.",
    ],
)
def test_sizes_of_the_design_and_what_is_no_size(make: SimpleNamespace, say: str) -> None:
    assert [finding.message for finding in said(make, say)] == []


@pytest.mark.breaks(ID)
@pytest.mark.parametrize(
    ("say", "words"),
    [
        ("The wall is 118 mm long.", "118 mm"),
        ("Cut a strip of 7.5mm.", "7.5mm"),
        ("A gap of 3,2 cm.", "3,2 cm"),
        ("A 3/8 in dowel.", "3/8 in"),
        ("A rim of 4.91 in.", "4.91 in"),
        ("A rim of 7 inches.", "7 inches"),
    ],
)
def test_a_size_that_nothing_has(make: SimpleNamespace, say: str, words: str) -> None:
    (finding,) = said(make, say)
    assert finding.message == f"a sentence says {words}, and nothing in this design measures that"
    assert finding.place == make.here and "in words" in finding.hint


def test_the_fact_that_comes_near_is_named(make: SimpleNamespace) -> None:
    (finding,) = said(make, "The wall is 118 mm long.")
    assert finding.hint.startswith("write {wall.") and "120 mm" in finding.hint
