from collections.abc import Callable

import pytest

from publisher.joints.checks.cannot_be_put_in import cannot_be_put_in
from tests.joints.building.conftest import BOX, assembled

__all__ = ["assembled"]


@pytest.mark.keeps("joints/cannot-be-put-in")
def test_ends_between_the_sides(assembled: Callable) -> None:
    outcome = cannot_be_put_in.run(
        assembled(BOX, "box.front, box.left, box.right, box.back, box.lid"), cannot_be_put_in
    )
    assert outcome.looked_at == 5 and outcome.findings == ()


@pytest.mark.breaks("joints/cannot-be-put-in")
def test_an_end_after_both_sides(assembled: Callable) -> None:
    subject = assembled(BOX, "box.front, box.left, box.back, box.right, box.lid")
    (finding,) = cannot_be_put_in.run(subject, cannot_be_put_in).findings
    assert (
        finding.message == "right of box cannot be put in any more: front stands in the way, and no other way is free"
    )
    assert finding.hint == "this order works: adds: [box.front, box.left, box.right, box.back, box.lid]"
    assert (finding.place.line, finding.subject) == (24, "step 1")
    subject = assembled(BOX, finding.hint.partition("[")[2].rstrip("]"))
    assert cannot_be_put_in.run(subject, cannot_be_put_in).findings == ()


WOVEN = """
sizes: {board: 5 mm}
parts:
  a: {name: A, board: foam, shape: wall_panel, with: {width: 160 mm, height: 40 mm}}
  b: {name: B, board: foam, shape: wall_panel, with: {width: 160 mm, height: 40 mm}}
  c: {name: C, board: foam, shape: wall_panel, with: {width: 160 mm, height: 40 mm}}
  d: {name: D, board: foam, shape: wall_panel, with: {width: 160 mm, height: 40 mm}}
assembly:
  crate:
    panels: {a: a, b: b, c: c, d: d}
    stands_on: a.bottom
    joins:
      - {edges: [a.top, c.bottom], joint: cross_lap, at: [50 mm, 50 mm], play: 0.3 mm}
      - {edges: [c.top, b.bottom], joint: cross_lap, at: [110 mm, 110 mm], play: 0.3 mm}
      - {edges: [b.top, d.bottom], joint: cross_lap, at: [50 mm, 50 mm], play: 0.3 mm}
      - {edges: [d.top, a.bottom], joint: cross_lap, at: [110 mm, 110 mm], play: 0.3 mm}
"""
"""Four ribs of a crate, each let into the next: woven, as the flaps of a box."""

STRAIGHT = {
    "[c.top, b.bottom], joint: cross_lap, at: [110 mm, 110 mm]": "[b.top, c.bottom], joint: cross_lap, at: [50 mm, 110 mm]",
    "[b.top, d.bottom], joint: cross_lap, at: [50 mm, 50 mm]": "[b.top, d.bottom], joint: cross_lap, at: [110 mm, 110 mm]",
    "[d.top, a.bottom], joint: cross_lap, at: [110 mm, 110 mm]": "[a.top, d.bottom], joint: cross_lap, at: [110 mm, 50 mm]",
}
"""What makes of them ribs that are all let in from above."""


@pytest.mark.breaks("joints/cannot-be-put-in")
def test_ribs_that_are_woven_lock_each_other(assembled: Callable) -> None:
    (finding,) = cannot_be_put_in.run(assembled(WOVEN, "crate"), cannot_be_put_in).findings
    assert finding.message.startswith("c of crate cannot be put in any more: ")
    assert finding.message.endswith("a, b, c, d lock each other, and no order of straight moves puts them together")
    assert "open the same way" in finding.hint


@pytest.mark.keeps("joints/cannot-be-put-in")
def test_ribs_let_in_from_above(assembled: Callable) -> None:
    text = WOVEN
    for woven, straight in STRAIGHT.items():
        text = text.replace(woven, straight)
    assert cannot_be_put_in.run(assembled(text, "crate"), cannot_be_put_in).findings == ()


@pytest.mark.breaks("joints/cannot-be-put-in")
def test_woven_ribs_are_found_without_any_step_that_adds(assembled: Callable) -> None:
    (finding,) = cannot_be_put_in.run(assembled(WOVEN), cannot_be_put_in).findings
    assert (
        finding.message
        == "a, b, c, d of crate are woven into each other: no order of straight moves puts them together"
    )
    assert finding.place.line == assembled(WOVEN).design.panels[0].place.line
    text = WOVEN
    for woven, straight in STRAIGHT.items():
        text = text.replace(woven, straight)
    assert cannot_be_put_in.run(assembled(text), cannot_be_put_in).findings == ()


@pytest.mark.breaks("joints/cannot-be-put-in")
def test_what_is_said_to_be_joined_before_can_be_joined(assembled: Callable) -> None:
    """“with” is no cure for what locks: all that goes in as one is put together too."""
    subject = assembled(WOVEN, "crate.a with crate.b with crate.c with crate.d")
    (finding,) = cannot_be_put_in.run(subject, cannot_be_put_in).findings
    assert "are said to be joined before, and a, b, c, d lock each other" in finding.message
    good = assembled(BOX, "box.front with box.left with box.right with box.back, box.lid")
    assert cannot_be_put_in.run(good, cannot_be_put_in).findings == ()
