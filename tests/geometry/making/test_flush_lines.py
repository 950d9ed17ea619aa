"""Edges of unequal length that are flush at one end: what is drawn and written where they meet, and nowhere else."""

from pathlib import Path

import pytest

from publisher.basics import LineKind, Purpose
from publisher.geometry.making.flush_lines import SharedEnd
from tests.reference.solids import build

COURT = """sizes: {{board: 5 mm}}
parts:
  high: {{name: High, board: foam, shape: wall_panel, with: {{width: 100 mm, height: 90 mm}}}}
  low: {{name: Low, board: foam, shape: wall_panel, with: {{width: 70 mm, height: 40 mm}}}}
assembly:
  court:
    panels: {{a: high, b: low, c: high}}
    stands_on: a.bottom
    joins:
      - {{edges: [a.right, b.left], joint: butt, runs_through: a, flush: {end}, inset: {inset} mm}}
      - {{edges: [b.right, c.left], joint: butt, runs_through: b, flush: {end}}}
"""


@pytest.mark.parametrize("inset", [0, 15])
@pytest.mark.parametrize(("end", "low", "high"), [("bottom", 0.0, 40.0), ("top", 50.0, 90.0)])
def test_glue_lines_and_letters_stand_where_a_shorter_mate_meets_the_line(
    tmp_path: Path, inset: int, end: str, low: float, high: float
) -> None:
    """A wall 40 mm high on one of 90 mm: glued at its own height, the letter in the middle of it on both."""
    parts = build(COURT.format(inset=inset, end=end), tmp_path).parts
    glue = [y for m in parts["high"].marks if m.kind is LineKind.GLUE for _, y in m.path.points]
    assert (sorted({round(y, 6) for y in glue}) == [low, high]) if inset else not glue
    for part, middle in (("high", (low + high) / 2.0), ("low", 20.0)):
        at = [m.path.points[0][1] for m in parts[part].marks if m.purpose is Purpose.MATCH]
        assert at and all(y == pytest.approx(middle, abs=4.1) for y in at), (part, at)


def test_a_shared_end_is_cut_from_either_end_of_its_line() -> None:
    line = ((0.0, 0.0), (0.0, 90.0))
    assert SharedEnd(40.0, at_end=False).of(line) == ((0.0, 0.0), (0.0, pytest.approx(40.0)))
    assert SharedEnd(40.0, at_end=True).of(line) == ((0.0, pytest.approx(50.0)), (0.0, 90.0))
