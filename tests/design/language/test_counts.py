"""Whole numbers within bounds."""

from typing import Any

import pytest

from publisher.basics import Place
from publisher.brief import Value
from publisher.design.language.counts import read_count
from publisher.design.language.scope import Scope


def read(text: str | None) -> tuple[int, list[Any]]:
    findings: list[Any] = []
    value = None if text is None else Value(text, "count", Place("spec.yaml", 3, 4))
    return read_count(value, 1, 1, 100, "the count", Scope({}, findings), "part wall"), findings


@pytest.mark.parametrize(("text", "count"), [(None, 1), ("14", 14), ("round(6.6)", 7), ("14.000000001", 14), ("1", 1)])
def test_counts(text: str | None, count: int) -> None:
    assert read(text) == (count, [])


@pytest.mark.parametrize(
    ("text", "rule", "limit"),
    [("0", "design/count-range", 1.0), ("-3", "design/count-range", 1.0), ("101", "design/count-range", 100.0),
     ("7.5", "design/not-whole", None), ("3 mm", "design/wrong-kind", None)],
)  # fmt: skip
def test_what_is_no_count(text: str, rule: str, limit: float | None) -> None:
    count, (finding,) = read(text)
    assert count == 1
    assert (finding.check, finding.limit) == (rule, limit)
