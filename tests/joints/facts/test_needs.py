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
    assert limit_of(make.need("s.x", 62.46)) == "at least 62.5 mm (2.47 in)"
    assert limit_of(make.need("s.x", None, 62.46)) == "at most 62.4 mm (2.45 in)"
    assert limit_of(make.need("s.x", 100.0, 100.0)) == "exactly 100.0 mm (3.94 in)"


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
