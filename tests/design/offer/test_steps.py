"""Steps, tools and materials."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.design import Blank
from publisher.design.offer.steps import names_in

TEXT = """
tools: [craft_knife]
materials: [{name: white_glue}, {text: "Dowel, 6 mm", length: pile.height + 5 mm}, pins]
cover: {exploded: pile}
steps:
  - title: Wind {layers} times
    stage: glue
    say: Up to {pile.height}.
    parts: [slab]
    uses: [white_glue, craft_knife]
    picture: {plan: pile, layer: 3, alt: "Layer 3 of {layers}."}
  - {title: Look, say: Look at it., picture: {part: slab}}
"""


def test_steps(tried: Callable[..., Any]) -> None:
    design = tried(TEXT).design
    assert design.findings == ()
    first, second = design.steps
    assert (first.stage, first.parts, first.uses) == ("glue", ("slab",), ("white_glue", "craft_knife"))
    assert [p if isinstance(p, str) else p.expression for p in first.title.pieces] == ["Wind ", "layers", " times"]
    assert first.picture is not None
    assert (first.picture.kind, first.picture.target, first.picture.layer) == ("plan", "pile", 3)
    assert first.picture.alt is not None
    assert isinstance(first.picture.alt.pieces[1], Blank)
    assert second.picture is not None
    assert (second.picture.kind, second.picture.target, second.picture.layer) == ("part", "slab", 0)
    assert design.cover is not None
    assert (design.cover.kind, design.cover.target) == ("exploded", "pile")


def test_tools_and_materials(tried: Callable[..., Any]) -> None:
    design = tried(TEXT).design
    assert design.tools == ("craft_knife",)
    glue, dowel, pins = design.materials
    assert (glue.name, glue.text, glue.amount) == ("white_glue", None, None)
    assert (dowel.name, dowel.text.pieces, dowel.amount.expression) == ("", ("Dowel, 6 mm",), "pile.height + 5 mm")
    assert pins.name == "pins"


@pytest.mark.parametrize(
    ("old", "new", "rule", "says"),
    [
        ("parts: [slab]", "parts: [slap]", "design/unknown-part", "did you mean “slab”?"),
        ("uses: [white_glue,", "uses: [glue,", "design/unknown-material", "did you mean “white_glue”?"),
        ("layer: 3", "layer: 0", "design/picture", "layers 1 to 4"),
        ("layer: 3", "layer: 2.5", "design/not-whole", "2.5"),
        ("plan: pile", "plan: hut", "design/picture", "there is no “hut” to show"),
        ("plan: pile, layer: 3", "photo: cat.jpg", "design/picture", "there is no “cat.jpg” to show"),
        ("plan: pile, layer: 3", "part: pile", "design/picture", "there is no “pile” to show"),
        ("plan: pile, layer: 3", "part: slab, whole: pile", "design/picture", "a picture shows one thing"),
        ("{pile.height}", "{pyle.height}", "design/unknown-in-text", "did you mean “pile”?"),
        ("pile.height + 5", "pyle.height + 5", "design/unknown-in-text", "no part or assembly “pyle”"),
    ],
)
def test_faults(old: str, new: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(TEXT.replace(old, new)).design.findings
    assert finding.check == rule
    assert says in f"{finding.message} | {finding.hint}"


def test_names_of_a_list_or_of_one_word(brief_of: Callable[[str], Any]) -> None:
    fields = brief_of("fonts: [a.ttf, b.ttf]\ntools: knife").fields
    assert names_in(fields.get("fonts")) == ("a.ttf", "b.ttf")
    assert names_in(fields.get("tools")) == ("knife",)
    assert names_in(None) == ()
