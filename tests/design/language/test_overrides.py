"""Sizes as given by the spec, a variant and the command line."""

from collections.abc import Callable
from typing import Any

from publisher.brief import Brief
from publisher.design import variants

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
    assert tried(VARIANTS, "big").design.variant_title == "200.0 mm (7 7/8 in) long"
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
