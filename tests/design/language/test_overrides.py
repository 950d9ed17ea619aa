"""Sizes as given by the spec, a variant and the command line."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.brief import Brief
from publisher.design import asked_variants, variants, work_out

VARIANTS = 'variants: {big: {title: "{length} long", sizes: {length: 200 mm}}, small: {sizes: {length: 50 mm}}}'


def test_variants_in_the_order_of_the_spec(brief_of: Callable[[str], Brief]) -> None:
    assert variants(brief_of(VARIANTS)) == ("big", "small")
    assert variants(brief_of("")) == ()


def test_the_command_line_wins_over_the_variant_and_the_variant_over_the_spec(tried: Callable[..., Any]) -> None:
    def length(variant: str = "", *sets: tuple[str, str]) -> float:
        design = tried(VARIANTS, variant, sets).design
        assert design.findings == ()
        return float(next(s.value for s in design.sizes if s.name == "length"))

    assert length() == 100.0
    assert length("big") == 200.0
    assert length("big", ("length", "3/16 in")) == 4.7625
    assert length("", ("length", "1 mm"), ("length", "2 * board")) == 10.0


def test_sizes_keep_their_expression_place_and_order(tried: Callable[..., Any]) -> None:
    sizes = tried(
        "sizes: {reach: 2 * length, length: 100 mm, board: 5 mm, layers: 4}", "", (("board", "6 mm"),)
    ).design.sizes
    assert [(s.name, s.expression, s.kind) for s in sizes] == [
        ("reach", "2 * length", "length"),
        ("length", "100 mm", "length"),
        ("board", "6 mm", "length"),
        ("layers", "4", "count"),
    ]
    assert str(sizes[2].place) == "--set board"
    assert str(sizes[0].place) == "spec.yaml:4:16"


def test_a_variant_has_a_title_filled_from_sizes(tried: Callable[..., Any]) -> None:
    assert tried(VARIANTS, "big").design.variant_title == "200 mm (7 7/8 in) long"
    assert tried(VARIANTS, "small").design.variant_title == "small"
    assert tried(VARIANTS).design.variant_title == ""


def test_a_title_cannot_use_facts(tried: Callable[..., Any]) -> None:
    found = tried('variants: {big: {title: "{pile.height} tall", sizes: {length: 9 mm}}}', "big").found
    assert found == ["design/unknown-in-text"]


def test_an_unknown_variant_is_a_finding(tried: Callable[..., Any]) -> None:
    (finding,) = tried(VARIANTS, "bigg").design.findings
    assert (finding.check, finding.hint) == ("design/unknown-variant", "did you mean “big”?")


def test_names_that_no_expression_could_use(tried: Callable[..., Any]) -> None:
    for name, says in (
        ("in", "a unit"),
        ("sqrt", "a function"),
        ("pi", "a constant"),
        ("figure-base", "cannot be used"),
    ):
        (finding,) = tried(f"sizes: {{board: 5 mm, length: 9 mm, layers: 4, {name}: 3 mm}}").design.findings
        assert finding.check == "design/reserved-name"
        assert says in finding.message


BOTH = """
use: [trace, paste]
parts:
  wall: {name: Wall, board: foam, shape: wall_panel, trace_allowance: 0.4 mm, with: {width: length, height: 80 mm}}
  slab: {name: Slab, board: foam, shape: disc, with: {radius: length / 2}}
variants:
  low: {title: "low, {length} wide", sizes: {length: 60 mm}}
"""


def test_each_variant_is_there_to_trace_and_to_paste(brief_of: Callable[..., Any]) -> None:
    brief = brief_of(BOTH)
    assert variants(brief) == ("low", "paste", "low_paste")
    assert asked_variants(brief) == ("", "low", "paste", "low_paste")
    assert asked_variants(brief, ("low", "standard", "low")) == ("low", "")
    made = {name: work_out(brief, name) for name in asked_variants(brief)}
    assert all(design.findings == () for design in made.values())
    told = {name: (d.use, d.parts[0].trace_allowance, d.variant, d.variant_title) for name, d in made.items()}
    assert told == {
        "": ("trace", 0.4, "", ""),
        "low": ("trace", 0.4, "low", "low, 60 mm (2.36 in) wide"),
        "paste": ("paste", 0.0, "paste", "to paste"),
        "low_paste": ("paste", 0.0, "low_paste", "low, 60 mm (2.36 in) wide, to paste"),
    }
    assert [next(s.value for s in made[name].sizes if s.name == "length") for name in ("paste", "low_paste")] == [
        100.0,
        60.0,
    ]


@pytest.mark.parametrize(("use", "names"), [("trace", ("low",)), ("paste", ("low",)), ("[paste]", ("low",))])
def test_one_way_of_use_adds_no_variant(use: str, names: tuple[str, ...], brief_of: Callable[..., Any]) -> None:
    brief = brief_of(BOTH.replace("[trace, paste]", use))
    assert variants(brief) == names
    assert work_out(brief).use == use.strip("[]")


@pytest.mark.breaks("design/variant-name-taken")
def test_no_variant_takes_the_name_of_the_packs_to_paste(tried: Callable[..., Any]) -> None:
    found = tried(BOTH.replace("  low:", "  paste:")).design.findings
    assert [f.check for f in found] == ["design/variant-name-taken"]
    assert "packs to paste" in found[0].message


def test_a_step_may_be_for_one_way_of_use(brief_of: Callable[..., Any]) -> None:
    steps = "steps: [{title: Trace, say: Trace., only: trace}, {title: Glue, say: Glue., only: paste}, {title: Cut, say: Cut.}]"
    brief = brief_of(BOTH + steps)
    shown = {name: [step.title.pieces for step in work_out(brief, name).steps] for name in ("", "paste")}
    assert shown == {"": [("Trace",), ("Cut",)], "paste": [("Glue",), ("Cut",)]}


def test_a_step_may_be_for_some_variants(brief_of: Callable[..., Any]) -> None:
    """The packs to paste of a variant are that variant's too; what only its steps use is bought for it alone."""
    steps = (
        "tools: [pencil, pins]\n"
        "steps:\n"
        "  - {title: Low, say: Low., when: [low], uses: [pins]}\n"
        "  - {title: As written, say: As written., when: [standard], uses: [pencil]}\n"
        "  - {title: Both, say: Both., when: [standard, low]}\n"
        "  - {title: Glue, say: Glue., when: [low], only: paste}\n"
    )
    brief = brief_of(BOTH + steps)
    known = {name: work_out(brief, name) for name in ("", "low", "low_paste")}
    shown = {name: ["".join(map(str, step.title.pieces)) for step in design.steps] for name, design in known.items()}
    assert shown == {"": ["As written", "Both"], "low": ["Low", "Both"], "low_paste": ["Low", "Both", "Glue"]}
    assert {name: design.tools for name, design in known.items()} == {
        "": ("pencil",),
        "low": ("pins",),
        "low_paste": ("pins",),
    }
    assert not any(design.findings for design in known.values())


@pytest.mark.breaks("design/step-never-shown")
def test_a_step_for_a_variant_that_is_not_there_is_told_of(brief_of: Callable[..., Any]) -> None:
    steps = "steps:\n  - {title: Low, say: Low.}\n  - {title: Lower, say: Lower., when: [standard, lows]}\n"
    (found,) = work_out(brief_of(BOTH + steps)).findings
    assert (
        found.check == "design/step-never-shown" and "“lows”" in found.message and "did you mean “low”?" in found.hint
    )
    written = (BOTH + steps).splitlines()[-1]
    assert found.place.column == written.index("lows") + 1


def test_what_only_steps_of_one_way_use_is_bought_for_it_alone(brief_of: Callable[..., Any]) -> None:
    """The card is for tracing, the stick glue for pasting; knife and glue are for both, and so is what no step names."""
    steps = (
        "tools: [craft_knife, pencil, brushes]\n"
        "materials: [{name: thin_card}, {name: stick_glue}, {name: white_glue}, {name: masking_tape}, {text: A dowel}]\n"
        "steps:\n"
        "  - {title: Trace, say: Trace., only: trace, uses: [thin_card, pencil, craft_knife]}\n"
        "  - {title: Paste, say: Paste., only: paste, uses: [stick_glue, craft_knife]}\n"
        "  - {title: Glue, say: Glue., uses: [white_glue]}\n"
    )
    brief = brief_of(BOTH + steps)
    tracing, pasting = work_out(brief), work_out(brief, "paste")
    assert tracing.tools == ("craft_knife", "pencil", "brushes") and pasting.tools == ("craft_knife", "brushes")
    assert [m.name for m in tracing.materials] == ["thin_card", "white_glue", "masking_tape", ""]
    assert [m.name for m in pasting.materials] == ["stick_glue", "white_glue", "masking_tape", ""]
    one_way = work_out(
        brief_of(
            (BOTH + steps.replace(", only: trace", "").replace(", only: paste", "")).replace("[trace, paste]", "trace")
        )
    )
    assert len(one_way.materials) == 5
