"""Parts by id and board."""

from collections.abc import Callable
from typing import Any

from publisher.design.language.scope import Scope
from publisher.design.parts.parts_known import KnownParts, know_parts


def test_parts_on_boards_that_exist_and_that_do_not(brief_of: Callable[[str], Any]) -> None:
    brief = brief_of("parts: {a: {board: foam}, b: {board: card}, c: {name: C}}")
    findings: list[Any] = []
    known = know_parts(brief.fields.table("parts"), (), ("foam",), Scope({}, findings))
    assert list(known.boards) == ["a", "b", "c"]
    # foam exists but has no thickness: that is a finding of the board, not of the part
    assert [f.subject for f in findings] == ["part b", "part c"]
    assert known.thickness("a") == known.thickness("nobody") == 0.0


def test_a_stranger_is_remembered(brief_of: Callable[[str], Any]) -> None:
    findings: list[Any] = []
    known = KnownParts({"slab": None})
    value = brief_of("title: slap").fields.value("title")
    assert not known.has(value, Scope({}, findings), "assembly pile")
    assert known.strangers == ["slap"]
    assert findings[0].hint == "did you mean “slab”?"
