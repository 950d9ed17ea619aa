"""Parts that are like another: what they take over, with the place where it is written, and what cannot be resolved."""

import pytest

from publisher.basics import Finding
from publisher.brief import Table, Value, limits
from publisher.brief.validate import validate
from publisher.brief.yaml_reader import read_nodes

HEAD = """\
format: 2
title: Walls
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  wall:
    name: Wall
    letter: K
    board: foam
    shape: wall_panel
    with: {width: 80 mm, height: 60 mm}
    openings:
      door: {kind: door, head: round, width: 32 mm, height: 50 mm}
      light: {kind: window, width: 10 mm, height: 10 mm, sill: 20 mm}
    surface: {pattern: brick, with: {length: 9 mm, height: 3 mm, bond: running}}
    count: 1
"""


def read(more: str) -> tuple[Table, tuple[Finding, ...]]:
    bound = validate(read_nodes(HEAD + more, "spec.yaml")[0], "spec.yaml")
    return bound.fields.table("parts"), bound.findings


def at(parts: Table, *path: str) -> Value | None:
    table = parts
    for step in path[:-1]:
        table = table.table(step)
    return table.value(path[-1])


def test_a_part_takes_over_what_it_does_not_say_but_neither_name_nor_letter() -> None:
    parts, findings = read("  low: {name: Low wall, like: wall, with: {height: 40 mm}}\n")
    assert findings == ()
    low = parts.table("low")
    assert [entry.key for entry in low.entries] == [
        "board", "shape", "with", "openings", "surface", "count", "name",
    ]  # fmt: skip
    assert [(e.key, e.node.text) for e in low.table("with").entries if isinstance(e.node, Value)] == [
        ("width", "80 mm"), ("height", "40 mm"),
    ]  # fmt: skip
    width, height = at(parts, "low", "with", "width"), at(parts, "low", "with", "height")
    assert width is not None
    assert height is not None
    assert (width.place.line, width.place.column) == (13, 19)  # where the other part says it
    assert (height.place.line, height.place.column) == (19, 52)
    assert at(parts, "low", "openings", "door", "head") is not None


def test_a_chain_is_followed_and_the_nearest_word_holds() -> None:
    parts, findings = read(
        "  lower: {name: Lower, like: low, with: {width: 30 mm}}\n"
        "  low: {name: Low wall, like: wall, with: {height: 40 mm}, without: [openings.light, surface]}\n"
    )
    assert findings == ()
    sizes = {e.key: e.node.text for e in parts.table("lower").table("with").entries if isinstance(e.node, Value)}
    assert sizes == {"width": "30 mm", "height": "40 mm"}
    assert [e.key for e in parts.table("lower").table("openings").entries] == ["door"]
    assert parts.table("lower").get("surface") is None
    assert parts.table("wall").get("surface") is not None


def test_of_another_shape_kind_or_pattern_only_sizes_that_it_has_are_taken_over() -> None:
    parts, findings = read(
        "  tower: {name: Tower, like: wall, shape: tower_panel, with: {sides: 6},\n"
        "    openings: {light: {kind: round_hole, diameter: 8 mm, up: 9 mm}}, surface: {pattern: planks, with: {width: 9 mm}}}\n"
        "  slab: {name: Slab, like: wall, shape: disc, with: {radius: 9 mm}, without: [openings]}\n"
    )
    assert findings == ()
    tower = parts.table("tower")
    assert {e.key for e in tower.table("with").entries} == {"sides", "width", "height"}
    assert {e.key for e in tower.table("openings").table("light").entries} == {"kind", "diameter", "up"}
    assert [e.key for e in tower.table("surface").table("with").entries] == ["length", "width"]
    assert [e.key for e in parts.table("slab").table("with").entries] == ["radius"]


def test_a_drawing_takes_the_place_of_a_shape_and_a_shape_that_of_a_drawing() -> None:
    parts, findings = read(
        "  sign: {name: Sign, like: wall, drawing: {file: sign.svg, id: rim}, without: [openings]}\n"
        "  other: {name: Other, like: sign, drawing: {id: rim2}}\n"
        "  plate: {name: Plate, like: other, shape: disc, with: {radius: 9 mm}}\n"
    )
    assert findings == ()
    assert parts.table("sign").get("shape") is parts.table("sign").get("with") is None
    assert [(e.key, e.node.text) for e in parts.table("other").table("drawing").entries if isinstance(e.node, Value)] == [
        ("file", "sign.svg"), ("id", "rim2"),
    ]  # fmt: skip
    assert parts.table("plate").get("drawing") is None


@pytest.mark.parametrize(
    ("more", "message", "column"),
    [
        ("  low: {name: Low, like: wal}\n", "there is no part “wal” to be like", 26),
        ("  low: {name: Low, like: low}\n", "these parts are like each other: low → low", 26),
        (
            "  a: {name: A, like: b}\n  b: {name: B, like: c}\n  c: {name: C, like: b}\n",
            "these parts are like each other: b → c → b",
            22,
        ),
        ("  low: {name: Low, like: wall, without: [roof]}\n", "has no “roof” to leave out", 42),
    ],
)
def test_what_cannot_be_resolved_is_one_finding_at_its_word(more: str, message: str, column: int) -> None:
    findings = read(more)[1]
    assert [f.check for f in findings] == ["brief/likeness"]
    assert message in findings[0].message
    assert findings[0].place is not None
    assert findings[0].place.column == column
    assert findings[0].hint


def test_a_mistake_in_what_is_taken_over_is_found_once() -> None:
    low = "  low: {name: Low, like: wall}\n  lower: {name: Lower, like: low}\n"
    top = read_nodes(HEAD.replace("height: 60 mm}", "heigth: 60 mm}") + low, "spec.yaml")[0]
    assert [f.check for f in validate(top, "spec.yaml").findings].count("brief/unknown-key") == 1


def test_every_part_says_its_own_name() -> None:
    assert [f.check for f in read("  low: {like: wall}\n")[1]] == ["brief/missing-key"]


def test_a_wrong_kind_of_likeness_is_a_finding() -> None:
    assert read("  low: {name: Low, like: [wall]}\n")[1]
    assert read("  low: {name: Low, like: wall, without: surface}\n")[1]
    assert read("  low: {name: Low, without: [surface], board: foam, shape: disc, with: {radius: 9 mm}, count: 1}\n")[1]


def test_likenesses_cannot_make_a_spec_grow_without_bound() -> None:
    steps = "    combine: [" + ", ".join(["{turn: 1 deg}"] * 55) + "]\n"
    more = "".join(f"  p{i}: {{name: P, like: wall}}\n" for i in range(190))
    assert limits.NODES < 190 * 55 * 4
    assert "brief/too-many-values" in {f.check for f in read(steps + more)[1]}
