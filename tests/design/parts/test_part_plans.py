"""Parts as plans: letters, counts, boards, drawings, allowances."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.design.parts.part_plans import MOST_PARTS


def parts(**texts: str) -> str:
    return "parts:\n" + "".join(f"  {name}: {{board: foam, {text}}}\n" for name, text in texts.items())


NO_ASSEMBLY = "assembly: {pile: {stack: [{part: slab, count: 4}]}}\n"


def test_a_part(tried: Callable[..., Any]) -> None:
    slab = tried(
        "use: trace\n" + NO_ASSEMBLY + parts(slab="name: Slab, shape: disc, spare: 2, trace_allowance: 0.4 mm")
    ).design.parts[0]
    assert (slab.id, slab.letter, slab.name, slab.board, slab.thickness) == ("slab", "A", "Slab", "foam", 5.0)
    assert (slab.count, slab.spare, slab.mirrored, slab.turning, slab.trace_allowance) == (4, 2, 0, "any", 0.4)
    assert (slab.drawing, slab.surface, slab.treatments) == (None, None, ())


def test_letters_run_round_those_that_are_given(tried: Callable[..., Any]) -> None:
    text = parts(
        slab="shape: disc",
        b="shape: disc, count: 1, letter: A",
        c="shape: disc, count: 1",
        d="shape: disc, count: 1, letter: ZZ",
    )
    design = tried(NO_ASSEMBLY + text).design
    assert design.findings == ()
    assert [part.letter for part in design.parts] == ["B", "A", "C", "ZZ"]


def test_letters_that_are_none(tried: Callable[..., Any]) -> None:
    for letter in ("a", "ABC", "1", "Ä"):
        assert tried(NO_ASSEMBLY + parts(slab=f"shape: disc, letter: {letter}")).found == ["design/letter"]


def test_counts_come_from_every_assembly(tried: Callable[..., Any]) -> None:
    text = """
assembly:
  pile: {stack: [{part: slab, count: layers}, {part: wall}, {part: slab, count: 2}]}
  hut: {panels: {front: wall, lid: slab}, stands_on: front.bottom, joins: [{place: lid, rests_on: [front.top]}]}
"""
    design = tried(text).design
    assert design.findings == ()
    assert {part.id: part.count for part in design.parts} == {"slab": 7, "wall": 2}


@pytest.mark.parametrize(
    ("part", "rule", "says"),
    [
        ("shape: disc", "design/part-count", "does not say how many"),
        ("shape: disc, count: 0", "design/count-range", "at least 1"),
        ("shape: disc, count: 2.5", "design/not-whole", "2.5"),
        ("shape: disc, count: 1, drawing: {file: a.svg}", "design/part-outline", "both a shape and a drawing"),
        ("count: 1", "design/part-outline", "neither"),
        ("shape: disc, count: 1, trace_allowance: -0.1 mm", "design/trace-allowance", "-0.10 mm"),
    ],
)  # fmt: skip
def test_faults(part: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(NO_ASSEMBLY + parts(slab="shape: disc", sign=part)).design.findings
    assert finding.check == rule
    assert says in finding.message


def test_a_count_that_has_no_value_is_one_finding(tried: Callable[..., Any]) -> None:
    assert tried(
        "assembly: {hut: {panels: {front: wall}, stands_on: front.bottom}, pile: {stack: [{part: slab, count: lairs}]}}"
    ).found == ["design/unknown-name"]


def test_pasted_templates_have_no_allowance_and_a_warning_says_so(tried: Callable[..., Any]) -> None:
    bad = tried("use: paste\n" + NO_ASSEMBLY + parts(slab="shape: disc, trace_allowance: 0.4 mm"))
    assert bad.found == ["design/trace-allowance-unused"]
    assert bad.design.findings[0].severity == "warning"
    assert bad.design.parts[0].trace_allowance == 0.0
    assert bad.design.use == "paste"


def test_a_drawing(tried: Callable[..., Any]) -> None:
    text = "count: 1, drawing: {file: sign.svg, id: outline, width: 30 mm, lines: {cut: [outline], draw: [letters, frame]}}"
    sign = tried(NO_ASSEMBLY + parts(slab="shape: disc", sign=text)).design.parts[1]
    assert sign.shape == ""
    assert sign.drawing is not None
    assert (sign.drawing.file, sign.drawing.id, sign.drawing.width, sign.drawing.height) == (
        "sign.svg",
        "outline",
        30.0,
        None,
    )
    assert sign.drawing.lines == (("cut", ("outline",)), ("draw", ("letters", "frame")))


@pytest.mark.keeps("design/drawing-scale")
@pytest.mark.parametrize(("said", "scale"), [("1.5", 1.5), ("45 mm / 30 mm", 1.5), ("2 * 3/4", 1.5), ("1/2", 0.5)])
def test_a_drawing_follows_a_scale(tried: Callable[..., Any], said: str, scale: float) -> None:
    sign = f"count: 1, drawing: {{file: sign.svg, id: outline, scale: {said}}}"
    made = tried(NO_ASSEMBLY + parts(slab="shape: disc", sign=sign))
    assert made.found == []
    assert made.design.parts[1].drawing.scale == scale


@pytest.mark.breaks("design/drawing-scale")
@pytest.mark.parametrize("said", ["0", "-1", "1000", "30 mm / 0.1 mm"])
def test_a_scale_that_makes_no_part(tried: Callable[..., Any], said: str) -> None:
    sign = f"count: 1, drawing: {{file: sign.svg, id: outline, scale: {said}}}"
    assert tried(NO_ASSEMBLY + parts(slab="shape: disc", sign=sign)).found == ["design/drawing-scale"]


def test_a_scale_is_no_length(tried: Callable[..., Any]) -> None:
    sign = "count: 1, drawing: {file: sign.svg, id: outline, scale: 2 mm}"
    assert tried(NO_ASSEMBLY + parts(slab="shape: disc", sign=sign)).found != []


MANY = {f"p{i}": "shape: disc, count: 1" for i in range(MOST_PARTS - 1)}


@pytest.mark.keeps("design/too-many-parts")
def test_as_many_parts_as_can_be_sorted(tried: Callable[..., Any]) -> None:
    assert tried(NO_ASSEMBLY + parts(slab="shape: disc", **MANY)).found == []


@pytest.mark.breaks("design/too-many-parts")
def test_more_parts_than_anyone_sorts(tried: Callable[..., Any]) -> None:
    assert tried(NO_ASSEMBLY + parts(slab="shape: disc", last="shape: disc", **MANY)).found == ["design/too-many-parts"]
