"""Sizes in the order of their needs: long chains, circles, kinds."""

from collections.abc import Callable
from typing import Any

import pytest

from publisher.basics import Place
from publisher.brief import Value
from publisher.design import Size
from publisher.design.language.sizes import MOST_SIZES, work_out_sizes
from tests.counted import calls


def given(**texts: str) -> dict[str, Value]:
    return {name: Value(text, "quantity", Place("spec.yaml", i, 1)) for i, (name, text) in enumerate(texts.items(), 1)}


def test_a_chain_of_a_thousand_sizes_is_worked_out_in_either_order() -> None:
    chain = {"s0": "1 mm"} | {f"s{i}": f"s{i - 1} + 1 mm" for i in range(1, 1000)}
    for texts in (chain, dict(reversed(chain.items()))):
        findings: list[Any] = []
        sizes, _ = work_out_sizes(given(**texts), findings)
        assert findings == []
        assert {s.name: s.value for s in sizes}["s999"] == 1000.0
        assert [s.name for s in sizes] == list(texts)


def test_work_grows_with_the_length_of_a_chain() -> None:
    def work(many: int, step: int) -> int:
        chain = {"s0": "1 mm"} | {f"s{i}": f"s{i - 1} + 1 mm" for i in range(1, many)}
        return calls(lambda: work_out_sizes(given(**dict(list(chain.items())[::step])), []))

    for step in (1, -1):
        assert work(800, step) < 6 * work(200, step)


def test_a_circle_of_a_thousand_sizes_is_one_finding_that_fits_on_a_line() -> None:
    findings: list[Any] = []
    sizes, amounts = work_out_sizes(given(**{f"s{i}": f"s{(i + 1) % 1000}" for i in range(1000)}), findings)
    assert sizes == ()
    assert set(amounts.values()) == {None}
    (finding,) = findings
    assert finding.message.startswith("these sizes go round in a circle: s0 → s1 → ")
    assert finding.message.endswith("→ … → s0")


def test_every_circle_is_named_and_what_hangs_on_it_is_silent() -> None:
    findings: list[Any] = []
    sizes, _ = work_out_sizes(given(a="b", b="a", c="c + 1 mm", d="a + c", e="2 mm"), findings)
    assert [s.name for s in sizes] == ["e"]
    assert [f.message.partition(": ")[2] for f in findings] == ["a → b → a", "c → c"]


def test_one_fault_is_one_finding() -> None:
    findings: list[Any] = []
    sizes, _ = work_out_sizes(given(a="5 mm +", b="a * 2", c="b / a"), findings)
    assert sizes == ()
    assert [f.check for f in findings] == ["design/unreadable-expression"]


@pytest.mark.parametrize(
    ("text", "kind", "value"),
    [
        ("3/16 in", "length", 4.7625),
        ("14", "count", 14.0),
        ("0.5", "number", 0.5),
        ("10 mm / 5 mm", "ratio", 2.0),
        ("round(10 mm / 3 mm)", "count", 3.0),
        ("1 deg * 3", "angle", 3.0),
    ],
)
def test_kinds(text: str, kind: str, value: float) -> None:
    sizes, _ = work_out_sizes(given(a=text), [])
    assert (sizes[0].kind, sizes[0].value) == (kind, value)


def test_an_area_is_no_size_but_may_be_a_step_on_the_way() -> None:
    findings: list[Any] = []
    sizes, _ = work_out_sizes(given(a="3 mm * 12 mm", b="sqrt(3 mm * 12 mm)"), findings)
    assert [(s.name, s.value) for s in sizes] == [("b", 6.0)]
    assert [f.check for f in findings] == ["design/wrong-kind"]


def test_a_named_count_divides_degrees_and_neither_it_nor_a_ratio_becomes_them(tried: Callable[..., Any]) -> None:
    sizes = "sizes: {{board: 5 mm, length: 100 mm, layers: 4, n: {}}}\n"
    stack = "assembly: {{hut: {{panels: {{front: wall}}, stands_on: front.bottom}}, pile: {{stack: [{{part: slab, count: 2, turn: {}}}]}}}}"
    counted = tried(sizes.format("round(length / board)") + stack.format("360 deg / n"))
    assert counted.found == []
    assert counted.design.stacks[0].rows[0].turn == 18.0
    assert tried(sizes.format("round(length / board)") + stack.format("n")).found == ["design/no-unit"]
    assert tried(sizes.format("length / board") + stack.format("n")).found == ["design/ratio-as-size"]


@pytest.mark.keeps("design/too-many-sizes")
def test_as_many_sizes_as_can_be_read() -> None:
    findings: list[Any] = []
    texts = {f"s{i}": "1 mm" for i in range(MOST_SIZES)}
    assert len(work_out_sizes(given(**texts), findings)[0]) == MOST_SIZES
    assert findings == []


@pytest.mark.breaks("design/too-many-sizes")
def test_more_sizes_than_anyone_can_read() -> None:
    findings: list[Any] = []
    texts = {f"s{i}": "1 mm" for i in range(MOST_SIZES)}
    assert work_out_sizes(given(**texts, one_more="1 mm"), findings)[0] == ()
    assert [f.check for f in findings] == ["design/too-many-sizes"]


def test_a_size_that_is_tried_brings_its_value_and_its_expression_is_not_read() -> None:
    findings: list[Any] = []
    texts = given(reach="no such name", half="reach / 2")
    tried = Size("reach", 108.3, "length", "", Place("spec.yaml"))
    sizes, _ = work_out_sizes(texts, findings, (tried,))
    assert findings == []
    assert [(s.name, s.kind, s.value) for s in sizes] == [("reach", "length", 108.3), ("half", "length", 54.15)]
    work_out_sizes(texts, findings)
    assert findings
