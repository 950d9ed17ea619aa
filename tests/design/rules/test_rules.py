"""Every rule of the room has a bad case that it finds, at the right letter, and a good case that it lets pass."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

from publisher.design import RULES

CASES: dict[str, Any] = yaml.safe_load((Path(__file__).parents[2] / "cases" / "design.yaml").read_text("utf-8"))
#: All but the rules about numbers of things, whose cases are made in the test of their module.
TABLED = set(CASES)


def test_every_rule_is_filled_in_and_has_its_cases() -> None:
    ids = [rule.id for rule in RULES]
    assert len(ids) == len(set(ids))
    assert set(ids) >= TABLED
    for rule in RULES:
        assert rule.id.startswith("design/")
        assert rule.title
        assert rule.rationale.endswith(".")


@pytest.mark.parametrize("rule", CASES)
def test_the_bad_case_is_found_where_it_stands(rule: str, tried: Callable[..., Any]) -> None:
    case = CASES[rule]
    bad = tried(case["bad"], case.get("variant", ""), tuple(case.get("set", {}).items()))
    assert set(bad.found) == {rule}
    assert len(bad.found) == case.get("count", 1)
    finding = bad.design.findings[0]
    assert case["says"] in f"{finding.message} | {finding.hint}"
    assert finding.place is not None
    if "set" in case:
        assert str(finding.place) == "--set " + next(iter(case["set"]))
    else:
        assert (finding.place.file, finding.place.line, finding.place.column) == ("spec.yaml", bad.line, bad.column)


@pytest.mark.parametrize("rule", CASES)
def test_the_good_case_passes(rule: str, tried: Callable[..., Any]) -> None:
    case = CASES[rule]
    good = tried(case["good"], case.get("variant", ""), tuple(case.get("good_set", {}).items()))
    assert good.found == []
