"""Papers that a spec asks for."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.basics import PaperPromise, Place
from publisher.design import PaperWish, promised_paper

NOWHERE = Place("spec.yaml")


def test_papers(tried: Callable[..., Any]) -> None:
    text = """
papers:
  - a4
  - {name: half, width: 148 mm, height: 210 mm}
  - {name: roll, width: 24 in, height: 36 in, margins: [1 mm, 2 mm, 3 mm, 4 mm]}
  - {name: even, width: 24 in, height: 36 in, margins: 1/4 in}
  - {name: some, width: 24 in, height: 36 in, margins: {left: 9 mm, top: 8 mm}}
  - {name: a3}
"""
    design = tried(text).design
    assert design.findings == ()
    assert [(w.name, w.width, w.height, w.margins) for w in design.papers] == [
        ("a4", None, None, None),
        ("half", 148.0, 210.0, None),
        ("roll", 609.6, 914.4, (1.0, 2.0, 3.0, 4.0)),
        ("even", 609.6, 914.4, (6.35, 6.35, 6.35, 6.35)),
        ("some", 609.6, 914.4, (9.0, 0.0, 0.0, 8.0)),
        ("a3", None, None, None),
    ]


@pytest.mark.parametrize(
    ("paper", "says"),
    [
        ("{name: p, width: 100 mm}", "lacks a width or a height"),
        ("{name: p, width: 0 mm, height: 100 mm}", "a side is from 100 to 5000 mm"),
        ("{name: p, width: 100 mm, height: 100 mm, margins: [21 mm, 0 mm, 20 mm, 0 mm]}", "less than 60 mm"),
        ("{name: p, width: 99.9 mm, height: 100 mm}", "99.9 mm × 100.0 mm"),
        ("{name: p, width: 100 mm, height: 5001 mm}", "a side is from 100 to 5000 mm"),
        ("{name: p, width: 100 mm, height: 100 mm, margins: [-1 mm, 0 mm, 0 mm, 0 mm]}", "negative"),
    ],
)
def test_faults(paper: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(f"papers: [{paper}]").design.findings
    assert finding.check == "design/paper-size"
    assert says in finding.message
    assert finding.place is not None and finding.place.line > 0


def test_a_paper_is_promised_as_the_spec_describes_it_or_by_its_name() -> None:
    own = PaperWish("Roll", 610.0, 300.0, (5.0, 6.0, 7.0, 8.0), NOWHERE)
    wishes = (PaperWish("a4", None, None, None, NOWHERE), own)
    assert promised_paper(wishes, "roll") == PaperPromise("roll", 610.0, 300.0, (5.0, 6.0, 7.0, 8.0))
    assert promised_paper(wishes, "a4") == PaperPromise("a4")
