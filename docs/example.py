"""Example parts for the docs: written in the spec language, read and drawn by the tool itself."""

import json
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from publisher.basics import Refusal, errors
from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import ParameterInfo, Part, ShapeInfo, make_parts

Sizes = dict[str, float | str]
TABLE: dict[str, dict[str, Any]] = json.loads((Path(__file__).parent / "examples.json").read_text(encoding="utf-8"))
UNITS = {"length": " mm", "angle": " deg"}
HEAD = """format: 2
title: Example
version: 1.0.0
use: trace
boards:
  foam: {thickness: 5 mm, sheets: [20 x 30 in]}
parts:
"""
TRIES = 400  # of sizes for a shape that nobody gave example sizes
USUAL = (40.0, 90.0, 60.0, 25.0, 120.0, 15.0, 8.0, 5.0, 180.0, 3.0)


def word(value: float | str, info: ParameterInfo) -> str:
    """Return a value as a designer writes it."""
    return value if isinstance(value, str) else f"{value:g}{UNITS.get(info.kind, '')}"


def part_text(info: ShapeInfo, sizes: Sizes, more: str = "") -> str:
    """Return the lines of a part with these sizes; ``more``: further lines, indented as the part's own."""
    inner = ", ".join(f"{p.name}: {word(sizes[p.name], p)}" for p in info.parameters if p.name in sizes)
    name = info.name.replace("_", " ").capitalize()
    given = f"\n    with: {{{inner}}}" if inner else ""
    own = "".join(f"    {line}\n" for line in TABLE["more"].get(info.name, ()))
    return (
        f"  {info.name}:\n    name: {name}\n    board: foam\n    count: 1\n    shape: {info.name}{given}\n{own}{more}"
    )


def draw(text: str) -> Part | None:
    """Return the (first) part of a spec with these lines under ``parts``, or None when it cannot be."""
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "example"  # the folder's name is the design's
        folder.mkdir()
        (folder / "spec.yaml").write_text(HEAD + text, encoding="utf-8")
        try:
            brief = read_brief(folder)
        except Refusal:
            return None
        if errors(brief.findings):
            return None
        design = work_out(brief)
        if errors(design.findings):
            return None
        parts, _ = make_parts(design)
    return parts[0] if parts else None


def example(info: ShapeInfo, kind: str = "shapes") -> Sizes:
    """Return sensible sizes: from the registry, from ``examples.json``, else the first that give a part.

    Raises LookupError when none was found: then give the shape's parameters an ``example``.
    """
    given: Sizes = dict(TABLE[kind].get(info.name, {}))
    given |= {p.name: p.example for p in info.parameters if p.example is not None and p.name not in given}
    wanting = [p for p in info.parameters if p.default is None and p.name not in given]
    if not wanting and (given or kind != "shapes" or draw(part_text(info, given))):
        return given
    for sizes in _tries(info, given):
        if draw(part_text(info, sizes)):
            return sizes
    raise LookupError(f"no example sizes for {info.name}: add them to docs/examples.json or to its parameters")


def _tries(info: ShapeInfo, given: Sizes) -> Iterator[Sizes]:
    """Yield sizes to try: usual ones first, with and without the sizes that may be left out."""
    for turn in range(TRIES):
        sizes = dict(given)
        for index, parameter in enumerate(info.parameters):
            optional = parameter.default is not None
            if parameter.name in sizes or (optional and (turn // len(USUAL) + index) % 4 != 3):
                continue
            if parameter.kind == "choice":
                sizes[parameter.name] = parameter.choices[turn % len(parameter.choices)]
                continue
            usual = USUAL[(turn * (index + 1) + index) % len(USUAL)]
            usual = min(max(usual, parameter.least or 0.0), parameter.most or usual)
            sizes[parameter.name] = float(round(usual)) if parameter.kind == "count" else usual
        yield sizes
