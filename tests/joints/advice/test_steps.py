"""Steps that a design could have."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.joints.advice.steps import proposed_steps
from tests.joints.building.conftest import BOX, BRACED, assembled

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


@pytest.mark.parametrize(
    ("materials", "stages", "named", "unnamed"),
    [
        ("", [], "", "filler|paint|white glue|rule|knife|card|Fill|Seal"),
        ("{name: white_glue}", ["seal"], "white glue", "filler|paint|Fill|rule|knife"),
        ("{name: filler}", ["seal"], "Fill what gapes", "paint|white glue|knife"),
        ("{name: acrylic_paint}", ["paint"], "Paint it", "Fill|white glue|knife"),
        (
            "{name: filler}, {name: white_glue}, {name: acrylic_paint}",
            ["seal", "paint"],
            "Fill.*white glue.*Paint it",
            "knife",
        ),
    ],
)
def test_what_the_spec_does_not_list_is_not_named(
    assembled: Callable, materials: str, stages: list[str], named: str, unnamed: str
) -> None:
    steps = proposed_steps(assembled(f"{BOX}materials: [{materials}]\n"), ("trace",))
    assert [step.stage for step in steps if step.stage in ("seal", "paint")] == stages
    said = " ".join(f"{step.title}. {step.say}" for step in steps)
    assert re.search(named, said)
    assert re.findall(unnamed, said.replace("they hold by their glue", "")) == []


def test_nothing_is_sealed_that_is_no_foam(assembled: Callable) -> None:
    listed = "materials: [{name: white_glue}]\n"
    assert any(step.stage == "seal" for step in proposed_steps(assembled(SLABS + listed), ("paste",)))
    subject = assembled(SLABS + listed)
    card = replace(
        subject, design=replace(subject.design, boards=(replace(subject.design.boards[0], material="card"),))
    )
    assert not any(step.stage == "seal" for step in proposed_steps(card, ("paste",)))


def test_steps_speak_the_language_of_the_design(assembled: Callable) -> None:
    subject = assembled(BOX + AT_HAND + "language: de\n")
    trace, *_, holes, outlines, dry, glue, seal = proposed_steps(subject, ("trace",))
    assert (trace.title, holes.title, outlines.title, seal.title) == (
        *("Teile nachzeichnen", "Öffnungen zuerst"),
        *("Umrisse schneiden", "Schaum versiegeln"),
    )
    assert dry.title == "box: trocken aufbauen" and dry.say.startswith("Ohne Leim zusammensetzen")
    assert glue.say == (
        "Mit front (Side) beginnen. Dann in dieser Reihenfolge ankleben: left und right (End), dann back (Side), dann lid. "
        "24 h auf einem ebenen Tisch trocknen lassen: hier ist Zeit für eine Pause."
    )
    assert glue.adds == ("box.front", "box.left", "box.right", "box.back", "box.lid")


def test_a_stair_with_braces_in_german(assembled: Callable) -> None:
    steps = proposed_steps(assembled(BRACED + AT_HAND + "language: de\n"), ("trace",))
    dry, glue = (step for step in steps if step.stage in ("dry_fit", "glue"))
    assert "Kniestreben weglassen" in dry.say
    assert "unter die Stufen 6, 7 und 11" in glue.say and "{stair_brace.width} an die Unterseite" in glue.say
    assert "{stair.rim_chord}" in glue.say and not re.search(r"\b(the|and|each)\b", " ".join(s.say for s in steps))


def test_a_roof_that_lifts_off_goes_on_after_the_floor_under_it(assembled: Callable) -> None:
    """The floor goes in from below too: with the roof on before it, nobody reaches the glue."""
    text = """
sizes: {board: 5 mm}
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, with: {width: 100 mm, height: 70 mm}}
  floor: {name: Floor, board: foam, shape: rectangle, with: {width: 90 mm, height: 90 mm}}
  roof: {name: Roof, board: foam, shape: rectangle, with: {width: 100 mm, height: 100 mm}}
assembly:
  store:
    panels: {front: wall, right: wall, back: wall, left: wall, floor: floor, roof: roof}
    stands_on: front.bottom
    corners: equal
    joins:
      - {edges: [front.right, right.left], joint: mitre}
      - {edges: [right.right, back.left], joint: mitre}
      - {edges: [back.right, left.left], joint: mitre}
      - {edges: [left.right, front.left], joint: mitre}
      - {place: floor, stands_on: back, face: inside, edge: top, at: [50 mm, 40 mm], turn: 180 deg}
      - {place: roof, rests_on: [front.top, right.top, back.top, left.top]LOOSE}
"""
    subject = assembled(text.replace("LOOSE", ", loose: true"))
    (added,) = [step.adds for step in proposed_steps(subject, ("trace",)) if step.title == "Glue the store"]
    assert added[-1] == "store.roof"
    (said,) = [step.say for step in proposed_steps(subject, ("trace",)) if step.title == "Glue the store"]
    assert said.count("roof") == 1
    assert "Then set on what lifts off, without glue where it rests: the roof. " in said
    (said,) = [
        step.say
        for step in proposed_steps(assembled(text.replace("LOOSE", "")), ("trace",))
        if step.title == "Glue the store"
    ]
    assert "lifts off" not in said


def test_only_marks_that_a_template_bears_are_to_be_copied(assembled: Callable) -> None:
    """Layers lie: none of them says which way is up. A ring of walls alike takes any at any corner: no letters."""

    def traced(text: str) -> str:
        return proposed_steps(assembled(text + AT_HAND), ("trace",))[0].say

    assert "Copy" not in traced(SLABS)
    assert "the word top with its arrow and the small letters at its edges before you lift" in traced(BOX)
    assert "Wort" not in traced(SLABS + "language: de\n")


def test_a_plate_of_one_layer_is_set_down_and_glued_on_nothing(assembled: Callable) -> None:
    yard = """
  plate: {stack: [{part: lid}]}
  yard:
    things:
      ground: {assembly: plate}
      house: {assembly: box, on_top_of: [ground]}
"""
    glued = [step for step in proposed_steps(assembled(BOX + yard + AT_HAND), ("trace",)) if step.stage == "glue"]
    assert [step.title for step in glued] == ["Glue the box", "Put the yard together"]
    assert glued[1].adds == ("plate", "yard")
    alone = SLABS.replace("count: 3", "count: 1")
    assert [s.title for s in proposed_steps(assembled(alone + AT_HAND), ("trace",)) if s.stage == "glue"]
