"""Needs: limits on facts."""

from collections.abc import Callable
from typing import Any

import pytest


def test_needs(tried: Callable[..., Any]) -> None:
    text = """
needs:
  - {fact: pile.height, at_least: 2.5 * board, adjust: board}
  - {fact: slab.door.width, at_most: 3 in}
  - {fact: pile.turn_in_all, at_least: 90 deg, at_most: 360 deg}
  - {fact: pile.layers, at_least: layers, at_most: 7.5}
"""
    design = tried(text).design
    assert design.findings == ()
    assert [(n.fact, n.at_least, n.at_most, n.kind, n.adjust) for n in design.needs] == [
        ("pile.height", 12.5, None, "length", "board"),
        ("slab.door.width", None, 76.2, "length", ""),
        ("pile.turn_in_all", 90.0, 360.0, "angle", ""),
        ("pile.layers", 4.0, 7.5, "number", ""),
    ]


@pytest.mark.parametrize(
    ("need", "rule", "says"),
    [
        ("{fact: pile.height}", "design/need-limit", "has no limit"),
        ("{fact: pile.height, at_least: 5 mm, at_most: 4 mm}", "design/need-limit", "no size can meet both"),
        ("{fact: pile.height, at_least: 5 mm, at_most: 9}", "design/need-limit", "of different kinds"),
        ("{fact: pile.height, at_least: 5 mm * board * board}", "design/need-limit", "mm³"),
        ("{fact: pile.height, at_least: hut.height}", "design/fact-in-size", "worked out from sizes"),
        ("{fact: height, at_least: 5 mm}", "design/unknown-fact", "part.fact or assembly.fact"),
        ("{fact: slap.height, at_least: 5 mm}", "design/unknown-fact", "did you mean “slab”?"),
        ("{fact: pile.height, at_least: 5 mm, adjust: boart}", "design/need-adjust", "did you mean “board”?"),
    ],
)
def test_faults(need: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(f"needs: [{need}]").design.findings
    assert finding.check == rule
    assert says in f"{finding.message} | {finding.hint}"


def test_a_need_may_bind_over_the_spread(tried: Callable[..., Any]) -> None:
    text = """
needs: [{fact: pile.height, at_least: 10 mm, over: spread}, {fact: pile.height, at_most: 90 mm}]
assembly:
  hut: {panels: {front: wall}, stands_on: front.bottom, joins: []}
  pile: {boards: mixed, batches: 3, stack: [{part: slab, count: layers}]}
"""
    design = tried(text).design
    assert design.findings == ()
    assert [need.over for need in design.needs] == ["spread", "measured"]
    assert [stack.sheets for stack in design.stacks] == [3]
