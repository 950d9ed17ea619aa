"""Steps that a design could have."""

from collections.abc import Callable

from publisher.joints.advice.steps import proposed_steps
from tests.joints.building.conftest import BOX, assembled

__all__ = ["assembled"]

AT_HAND = "tools: [craft_knife, pencil]\nmaterials: [{name: white_glue}]\n"
SLABS = """
sizes: {board: 5 mm}
parts: {slab: {name: Slab, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}}
assembly: {pile: {stack: [{part: slab, count: 3}]}}
"""


def test_holes_before_outlines_and_a_dry_fit_before_glue(assembled: Callable) -> None:
    more = """
  pile: {stack: [{part: lid, count: 3}]}
  yard:
    things:
      one: {assembly: pile}
      other: {assembly: pile, at: [300 mm, 0 mm]}
      house: {assembly: box, on_top_of: [one], lifts_off: true}
"""
    steps = proposed_steps(assembled(BOX + more + AT_HAND), ("paste",))
    assert [step.stage for step in steps] == [
        "glue_templates",
        "cut",
        "cut",
        *["dry_fit"] * 2,
        *["glue"] * 3,
        "seal",
        "paint",
    ]
    holes, outlines = steps[1], steps[2]
    assert (holes.title, holes.parts, holes.uses) == ("Cut the holes first", ("side",), ("craft_knife",))
    assert outlines.parts == ("side", "end", "lid")
    box, pile, yard = (step for step in steps if step.stage == "glue")
    assert box.adds == ("box.front", "box.left", "box.right", "box.back", "box.lid") and box.uses == ("white_glue",)
    assert box.say.startswith(
        "Begin with the front (side). Then glue on, in this order: the left and right (end), then the back (side), then the lid. "
    )
    assert outlines.say.endswith(", and keep every tab.")
    assert pile.adds == ("pile",) and "Build it twice." in pile.say
    assert yard.adds == ("yard",) and "but for what lifts off: house." in yard.say
    assert not any(step.remark for step in steps)
    assert all(step.wait == ("24 h" if "24 h" in step.say else "") for step in steps) and box.wait and pile.wait


def test_each_way_of_use_has_its_own_beginning(assembled: Callable) -> None:
    first, second, *others = proposed_steps(assembled(BOX), ("trace", "paste"))
    assert [(step.stage, step.only) for step in (first, second)] == [("cut", "trace"), ("glue_templates", "paste")]
    assert not any(step.only for step in others)
    assert "letters at its edges" in first.say


def test_what_is_not_there_is_not_spoken_of(assembled: Callable) -> None:
    trace, outlines, *_ = proposed_steps(assembled(SLABS), ("trace",))
    assert "letters" not in trace.say and "tab" not in outlines.say
