"""Specs that are made to hang, exhaust or confuse the reader: refused with a place, never a trace."""

import random
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.basics import Finding, Refusal
from publisher.brief import read_brief

GOOD = """format: 2
title: Landing
version: 1.0.0
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  landing: {name: Landing, board: foam, shape: disc, with: {radius: 20 mm}}
"""


def _laughs(levels: int, wide: int) -> str:
    lines = ["a0: &a0 [" + "x," * wide + "]"]
    for i in range(1, levels):
        lines.append(f"a{i}: &a{i} [" + f"*a{i - 1}," * wide + "]")
    return "\n".join(lines)


BOMBS: dict[str, Callable[[], str]] = {
    "billion laughs": lambda: _laughs(9, 9),
    "few but wide aliases": lambda: _laughs(4, 2).replace("x,", "x," * 4000),
    "quadratic blow-up": lambda: "a: &a [" + "x," * 9000 + "]\nb: [" + "*a," * 9000 + "]",
    "an alias of itself": lambda: "a: &a {b: *a}",
    "brackets": lambda: "a: " + "[" * 400_000,
    "braces": lambda: "a: " + "{a: " * 200_000,
    "nested keys": lambda: "\n".join(" " * i + "a:" for i in range(1200)),
    "nested dashes": lambda: "- " * 400_000,
    "question marks": lambda: "? " * 400_000,
    "colons": lambda: ":" * 900_000,
    "percent signs": lambda: "%" * 900_000,
    "remarks": lambda: "#" * 900_000,
    "line ends": lambda: "\n" * 900_000,
    "an open quote": lambda: "a: '" + "''" * 400_000,
    "exclamation marks": lambda: "a: " + "!" * 500_000,
    "one long key": lambda: "x" * 900_000 + ": 1",
    "one long text": lambda: GOOD + "summary: " + "x" * 900_000,
    "one long number": lambda: GOOD.replace("format: 2", "format: " + "9" * 900_000),
    "one long word": lambda: GOOD.replace("shape: disc", "shape: " + "d" * 900_000),
    "one long path": lambda: GOOD + "cover: {photo: " + "a/" * 400_000 + "b.png}",
    "one long version": lambda: GOOD.replace("1.0.0", "1." * 400_000),
    "one long licence": lambda: GOOD + "licence: " + "A AND " * 150_000,
    "one long sheet": lambda: GOOD.replace("20 x 30 in", "2" + " ./" * 250_000),
    "many sizes": lambda: GOOD.replace(
        "{board: 5 mm}", "{board: 5 mm," + ",".join(f"s{i}: 1" for i in range(9900)) + "}"
    ),
    "many unknown keys": lambda: GOOD + "".join(f"colour{i}: 1\n" for i in range(9900)),
    "many repeated keys": lambda: GOOD + "a: 1\n" * 9900,
    "many parts": lambda: GOOD + "".join(f"  p{i}: {{name: P, board: foam, shape: disc}}\n" for i in range(2400)),
    "many layers": lambda: GOOD + "assembly: {a: {stack: [" + "{part: landing}," * 6000 + "]}}\n",
    "many tools": lambda: GOOD + "tools: [" + "[a], {b: c}, pins," * 3000 + "]\n",
    "many tags": lambda: GOOD + "".join(f"a{i}: !x{i} 1\n" for i in range(9900)),
    "many hidden characters": lambda: GOOD + "summary: " + "\u202e" * 300_000,
}


def _found(folder: Path) -> tuple[Finding, ...]:
    try:
        return read_brief(folder).findings
    except Refusal as refusal:
        return refusal.findings


@pytest.mark.parametrize("name", BOMBS)
def test_a_bomb_is_refused_in_few_words(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "bomb"
    folder.mkdir()
    (folder / "spec.yaml").write_text(BOMBS[name](), encoding="utf-8")
    findings = _found(folder)
    assert 0 < len(findings) <= 102
    for finding in findings:
        assert finding.place is not None
        assert len(finding.message) + len(finding.hint) < 1200
        assert (finding.message + finding.hint).isprintable()


@pytest.mark.parametrize("name", ["brackets", "quadratic blow-up", "one long text", "many layers"])
def test_a_bomb_takes_little_memory(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "bomb"
    folder.mkdir()
    (folder / "spec.yaml").write_text(BOMBS[name](), encoding="utf-8")
    _found(folder)
    tracemalloc.start()
    _found(folder)
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert peak < 60e6


def test_random_bytes_are_refused(tmp_path: Path) -> None:
    dice = random.Random(11)
    folder = tmp_path / "noise"
    folder.mkdir()
    for length in (1, 2, 3, 5, 17, 64, 300, 5000):
        for _ in range(20):
            (folder / "spec.yaml").write_bytes(dice.randbytes(length))
            findings = _found(folder)
            assert findings
            assert all(f.message and f.hint and f.place for f in findings)


def test_nothing_is_ever_constructed(tmp_path: Path) -> None:
    """Tags that other YAML readers run as code are only a finding."""
    folder = tmp_path / "code"
    folder.mkdir()
    target = tmp_path / "made"
    tag = f"!!python/object/apply:os.mkdir ['{target}']"
    (folder / "spec.yaml").write_text(GOOD + f"summary: {tag}\n")
    assert "brief/foreign-tag" in [f.check for f in _found(folder)]
    assert not target.exists()
