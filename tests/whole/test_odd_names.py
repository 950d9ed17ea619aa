"""Names, materials and needs as designers write them are taken for no number of ours, nor is a paper of the spec's own."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.whole.conftest import Run, changed, small_design

NAMES = (
    "45°",
    "ab",
    "7",
    "2 of 3",
    "page 99 of 100",
    "Northernmost abutment 17.42 mm as of 1887",
    "A: page 4",
    "12 × C",
    "cut 9, long 12.0 × 8.0 mm",
)
MORE = "\n".join(
    f'  n{number}: {{name: "{name}", board: foam, count: 1, shape: rectangle, with: {{width: 60 mm, height: {40 + number} mm}}}}'
    for number, name in enumerate(NAMES)
)

MATERIALS = """\
materials:
  - {text: "ribbon, 12.7 mm wide, as on page 44"}
  - {text: lath, length: 3 * radius + 7 mm}
  - {text: dowels, count: 17}
needs: [{fact: n0.width, at_least: 37.3 mm}]
"""
SIZED = (
    '  s: {name: "Plate 120 × 80 mm (4.72 × 3.15 in), cut 9", printed: sizes, board: foam, count: 2, shape: rectangle, '
    "with: {width: 100 mm, height: 80 mm}}"
)


@pytest.mark.parametrize("paper", ["a4", "{name: roll, width: 170 mm, height: 240 mm}"])
def test_odd_names_are_built_and_proved(paper: str, publisher: Callable[..., Run], tmp_path: Path) -> None:
    folder = small_design(tmp_path / "designs", "bollard")
    changed(folder, "papers: [a4, letter]", f"{MORE}\n{SIZED}\npapers: [{paper}]")
    changed(folder, "title: Bollard", 'title: "Bollard 12.5 of 1887, page 7"')
    changed(folder, "parts: [disc]", "parts: [disc, n0, n1, n5]")
    changed(folder, "steps:", MATERIALS + "steps:")
    run = publisher("build", tmp_path / "designs", "--out", tmp_path / "out")
    assert (run.code, "proved" in run.out) == (0, True), run.err
