import re
from math import inf
from types import SimpleNamespace

import pytest

from publisher.design import Fact
from publisher.joints.facts.needs import (
    limit_of,
    margin_of,
    message_of,
    nearest_fact,
    same_kind,
    shortfall,
    spare_words,
)


def test_a_fact_that_is_open_meets_any_least_headroom(make: SimpleNamespace) -> None:
    assert shortfall(make.need("s.headroom", 62.5), Fact("s.headroom", float("inf"), "length")) is None
    assert shortfall(make.need("s.headroom", None, 62.5), Fact("s.headroom", float("inf"), "length")) is not None


def test_sums_of_floats_meet_their_limit(make: SimpleNamespace) -> None:
    assert shortfall(make.need("s.height", 70.0, 70.0), Fact("s.height", sum([0.1] * 700), "length")) is None


def test_a_value_that_rounds_to_its_limit_is_said_with_more_digits(make: SimpleNamespace) -> None:
    short = shortfall(make.need("s.base", 25.0), Fact("s.base", 24.998, "length"))
    assert short is not None
    assert message_of(short).startswith("s.base is 24.998 mm (0.9842 in); at least 25.000 mm (0.9843 in)")


def test_plain_kinds_compare_with_each_other(make: SimpleNamespace) -> None:
    assert same_kind(make.need("s.layers", 3, kind="number"), Fact("s.layers", 4, "count"))
    assert not same_kind(make.need("s.turn", 3, kind="number"), Fact("s.turn", 4, "angle"))


def test_the_nearest_fact_is_of_the_same_owner_first() -> None:
    facts = (Fact("a.height", 1, "length"), Fact("b.headroom", 1, "length"), Fact("b.height", 1, "length"))
    assert nearest_fact("b.heigth", facts) == "b.height"
    assert nearest_fact("b.qqqqq", facts[:1]) == ""


def test_margins_are_what_is_to_spare(make: SimpleNamespace) -> None:
    fact = Fact("s.x", 27.0, "length")
    assert margin_of(make.need("s.x", 25.0), fact) == 2.0
    assert margin_of(make.need("s.x", 25.0, 28.0), fact) == 1.0
    assert margin_of(make.need("s.x", None, 26.0), fact) == -1.0
    assert margin_of(make.need("s.x", 25.0), Fact("s.x", inf, "length")) == inf
    assert limit_of(make.need("s.x", 25.0, 30.0)) == "at least 25.0 mm (0.99 in) and at most 30.0 mm (1.18 in)"


def test_limits_go_away_from_failure_and_one_value_is_exact(make: SimpleNamespace) -> None:
    assert limit_of(make.need("s.x", 62.46789)) == "at least 62.5 mm (2.47 in)"
    assert limit_of(make.need("s.x", None, 62.46789)) == "at most 62.4 mm (2.45 in)"
    assert limit_of(make.need("s.x", 100.0, 100.0)) == "exactly 100.0 mm (3.94 in)"


@pytest.mark.parametrize(
    ("limit", "kind", "words"),
    [
        (31.75, "length", "at most 31.75 mm (1.25 in)"),  # 1.25 in
        (
            25.4 * 21 / 16,
            "length",
            "at most 33.3 mm (1.3125 in)",
        ),  # 1 5/16 in: rounded down where it cannot be said whole
        (99.125, "length", "at most 99.125 mm (3.90 in)"),
        (100.0 / 3.0, "length", "at most 33.3 mm (1.31 in)"),
        (22.125, "angle", "at most 22.125°"),
        (0.625, "ratio", "at most 0.625"),
        (2.0 / 3.0, "ratio", "at most 0.66"),
    ],
)
def test_a_limit_is_said_as_its_writer_gave_it(make: SimpleNamespace, limit: float, kind: str, words: str) -> None:
    assert limit_of(make.need("s.x", None, limit, kind=kind)) == words


def test_a_limit_in_words_is_never_on_the_failing_side(make: SimpleNamespace) -> None:
    for step in range(1, 4000):
        limit = step * 25.4 / 64 if step % 2 else step / 7.0
        for need, side in ((make.need("s.x", limit), 1.0), (make.need("s.x", None, limit), -1.0)):
            mm, inch = (float(number) for number in re.findall(r"\d[\d.]*", limit_of(need)))
            assert side * (mm - limit) >= -1e-6
            assert side * (inch * 25.4 - limit) >= -1e-4


def test_what_is_over_a_limit_is_not_short(make: SimpleNamespace) -> None:
    fact = Fact("s.x", 33.0, "length")
    assert spare_words(make.need("s.x", None, 30.0), fact) == "NOT MET, 3.00 mm (0.12 in) too much"
    assert spare_words(make.need("s.x", 20.0, 30.0), fact) == "NOT MET, 3.00 mm (0.12 in) too much"
    assert spare_words(make.need("s.x", 34.0, 40.0), fact) == "NOT MET, 1.00 mm (0.04 in) short"


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (27.229, "met, 2.22 mm (0.08 in) to spare"),
        (25.03, "met, but tight: less than 0.5 mm to spare"),
        (25.5, "met, 0.50 mm (0.01 in) to spare"),
        (25.0, "met exactly"),
        (24.991, "NOT MET, 0.01 mm (0.01 in) short"),
        (inf, "met"),
    ],
)
def test_how_a_need_stands(make: SimpleNamespace, value: float, words: str) -> None:
    assert spare_words(make.need("s.x", 25.0), Fact("s.x", value, "length")) == words


def test_what_is_not_met_never_looks_met(make: SimpleNamespace) -> None:
    short = shortfall(make.need("s.x", 25.07), Fact("s.x", 25.06, "length"))
    assert short is not None
    assert message_of(short).startswith("s.x is 25.06 mm (0.987 in); at least 25.07 mm (0.987 in)")
