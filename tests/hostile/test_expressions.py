"""Expressions and specs that mean harm: no trace, no hang, no huge number, always a finding."""

import math
import random
import string
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from publisher.basics import Place
from publisher.brief import Brief, Entry, Node, Row, Table, Value, read_brief
from publisher.design import RULES, work_out
from publisher.design.language.amounts import Amount
from publisher.design.language.scope import Scope
from tests.counted import calls
from tests.searches.profile import cases

PLACE = Place("spec.yaml", 1, 1)
SIZES = {"board": Amount(5.0, mm=1), "layers": Amount(14.0), "turn": Amount(20.0, deg=1), "lost": None}
RULE_IDS = {rule.id for rule in RULES}
KINDS: tuple[Any, ...] = ("length", "angle", "count", "number", "quantity")


def judge(text: str, kind: Any = "quantity") -> tuple[float | None, list[Any]]:
    findings: list[Any] = []
    number = Scope(SIZES, findings).number(Value(text, kind, PLACE, True), "test")
    return number, findings


WORDS = st.sampled_from(
    ["board", "layers", "turn", "lost", "max", "sqrt", "sin", "round", "pi", "mm", "in", "deg", "stair.height", "x", "__class__",
     "1", "0", "3/16", "1 3/4", "2.5", "1e9", "999999999", "(", ")", ",", "+", "-", "*", "/", "^", "**", " ", "−", "×", "\"", "°", "."]
)  # fmt: skip
TEXTS = st.one_of(
    st.text(max_size=40), st.lists(WORDS, max_size=30).map(" ".join), st.lists(WORDS, max_size=30).map("".join)
)


@pytest.mark.search
@cases(200, 20_000)
@given(TEXTS, st.sampled_from(KINDS))
def test_any_text_is_a_finite_number_or_one_finding(text: str, kind: Any) -> None:
    number, findings = judge(text, kind)
    if number is None:
        # one finding, or none where the cause (a size without a value) is reported elsewhere
        assert len(findings) == 1 or "lost" in text
    else:
        assert findings == []
        assert math.isfinite(number)
        assert abs(number) <= 1e9
    for finding in findings:
        assert finding.check in RULE_IDS
        assert finding.message
        assert 1 <= finding.place.column <= len(text) + 1


BOMBS = {
    "powers": "9^9^9^9^9",
    "a tower of powers": "^".join(["9"] * 60),
    "powers in brackets": "((((10^16)^16)^16)^16)^16",
    "many factors": "*".join(["999999999"] * 29),
    "deep brackets": "(" * 149 + "1" + ")" * 149,
    "deep signs": "-" * 299 + "1",
    "deep calls": "abs(" * 50 + "1" + ")" * 50,
    "a long text": "1+" * 100_000 + "1",
    "a long number": "9" * 300,
    "a long fraction": "1/" + "9" * 297,
    "a million digits": "9" * 1_000_000,
    "many blanks": " " * 299,
    "blanks for a slow pattern": "1" + " " * 290 + "x",
    "digits and dots": "1.1.1.1." * 30,
    "code": "__import__('os').system('true')",
    "attributes": "board.__class__.__mro__",
    "a null byte": "1\x00mm",
    "surrogates": "\ud800",
    "other digits": "٣ mm",
    "right to left": "\u202e5 mm",
    "not a number": "nan",
    "infinity": "inf",
    "exponents": "1e308",
    "hex": "0x10",
    "underscores": "1_000",
    "many arguments": "max(" + "1," * 140 + "1)",
}


@pytest.mark.parametrize("name", BOMBS)
def test_bombs_are_refused_at_once(name: str) -> None:
    assert calls(lambda: judge(BOMBS[name], "length")) < 20_000  # “many arguments” takes 13,500
    if name in ("many arguments", "a long fraction"):  # which are numbers
        number, findings = judge(BOMBS[name], "number")
        assert (number, findings) == (pytest.approx(1.0 if name == "many arguments" else 0.0), [])
        return
    number, findings = judge(BOMBS[name], "length")
    assert number is None
    assert len(findings) == 1
    assert len(findings[0].message) < 300


def test_work_grows_with_the_length_of_an_expression() -> None:
    def work(text: str) -> int:
        return calls(lambda: [judge(text, kind) for kind in KINDS])

    for piece in ("1+", "board+", "(1)*"):
        short, long = (work(piece * (length // len(piece)) + "1") for length in (60, 280))
        assert long < 6 * short  # 280 / 60 is 4.7


def sized(texts: dict[str, str]) -> Brief:
    entries = tuple(
        Entry(name, Place("spec.yaml", i, 1), Value(text, "quantity", Place("spec.yaml", i, 9), True))
        for i, (name, text) in enumerate(texts.items(), 1)
    )
    table = Table(entries, PLACE)
    return Brief("hostile", Table((Entry("sizes", PLACE, table),), PLACE), (), ())


def test_sizes_that_double_two_thousand_times_end_in_one_finding() -> None:
    texts = {"s0": "1 mm"} | {f"s{i}": f"s{i - 1} + s{i - 1}" for i in range(1, 2000)}
    design = work_out(sized(texts))
    assert [f.check for f in design.findings] == ["design/number-out-of-range"]
    assert len(design.sizes) == 30  # 2^29 mm is the last within a thousand million


def test_two_thousand_sizes_that_all_need_each_other_end_in_findings() -> None:
    names = [f"s{i}" for i in range(2000)]
    texts = {name: "+".join(names[(i + k) % 2000] for k in range(1, 40)) for i, name in enumerate(names)}
    design = work_out(sized(texts))
    assert {f.check for f in design.findings} == {"design/size-cycle"}
    assert len(design.findings) < 200
    assert design.sizes == ()


def test_work_grows_with_the_number_of_sizes() -> None:
    def doubling(many: int) -> Brief:
        return sized({"s0": "1 mm"} | {f"s{i}": f"s{i - 1} + s{i - 1}" for i in range(1, many)})

    def knotted(many: int) -> Brief:
        names = [f"s{i}" for i in range(many)]
        return sized({name: "+".join(names[(i + k) % many] for k in range(1, 40)) for i, name in enumerate(names)})

    for spec in (doubling, knotted):
        few, many = (calls(lambda n=n, spec=spec: work_out(spec(n))) for n in (125, 500))  # type: ignore[misc]
        assert many < 6 * few


NAMES = st.sampled_from(["a", "b", "c", "d", "e"])
SPECS = st.dictionaries(NAMES, st.lists(st.one_of(NAMES, WORDS), min_size=1, max_size=6).map(" ".join), max_size=5)


@pytest.mark.search
@cases(60, 5000)
@given(SPECS)
def test_any_sizes_are_worked_out_or_found(texts: dict[str, str]) -> None:
    design = work_out(sized(texts))
    worked_out = {size.name for size in design.sizes}
    if worked_out != set(texts):
        assert design.findings
    assert all(math.isfinite(size.value) for size in design.sizes)
    assert worked_out <= set(texts) <= set(string.ascii_lowercase)


HARM = ["", "0", "-1", "7.5", "1e9", "10^6", "3 deg", "5 mm", "5 mm +", "nobody", "board", "front.left", "stair.height", "true", "[",
        "{board", "{nobody.fact}", "9" * 400, "\u202e", "stair", "step", "mitre", "180 deg", "-3 mm", "20 x 30 in"]  # fmt: skip


@cache
def demo(slug: str) -> Brief:
    """Return a demo, read once in a process that needs it."""
    return read_brief(Path(__file__).parents[2] / "designs" / slug)


def harmed(node: Node, dice: random.Random) -> Node:
    """The tree with a few values, entries and kinds of nodes changed at random."""
    chance = dice.random()
    if chance < 0.004:
        return dice.choice(
            [Value(dice.choice(HARM), "quantity", node.place), Row((), node.place), Table((), node.place)]
        )
    if isinstance(node, Value):
        return replace(node, text=dice.choice(HARM)) if chance < 0.03 else node
    if isinstance(node, Row):
        items = [harmed(item, dice) for item in node.items if dice.random() > 0.01]
        return replace(node, items=tuple(items + items[:1] if chance > 0.98 else items))
    entries = [replace(e, node=harmed(e.node, dice)) for e in node.entries if dice.random() > 0.01]
    return replace(node, entries=tuple(entries))


@pytest.mark.search
@cases(30, 3000)
@given(st.sampled_from(["lock-stair", "toll-house", "quay"]), st.integers(0, 2**32))
def test_a_demo_with_harm_done_to_it_is_worked_out_or_found(slug: str, seed: int) -> None:
    brief = demo(slug)
    fields = harmed(brief.fields, random.Random(seed))
    if not isinstance(fields, Table):
        return
    design = work_out(replace(brief, fields=fields))
    for finding in design.findings:
        assert finding.check in RULE_IDS
        assert finding.message
        assert finding.place is not None
    for part in design.parts:
        assert 0 <= part.count <= 10_000
        assert 0 < part.thickness <= 100
        numbers = [parameter.value for parameter in part.parameters if isinstance(parameter.value, float)]
        assert all(math.isfinite(value) for value in numbers)
