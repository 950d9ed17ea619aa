"""Fits: things that go into rooms of parts."""

from collections.abc import Callable
from typing import Any

import pytest


def test_fits(tried: Callable[..., Any]) -> None:
    text = """
fits:
  - {goes: 6 mm, into: slab.bore.width, name: dowel, spread: 0.1 mm, loosest: 0.4 mm}
  - {goes: wall.width, into: hut.inside_width, paint: 0.25 mm}
  - {goes: 2 * board, into: wall.gate.width}
"""
    design = tried(text).design
    assert design.findings == ()
    dowel, lid, tongue = design.fits
    assert (dowel.name, dowel.into, dowel.goes, dowel.goes_fact) == ("dowel", "slab.bore.width", 6.0, "")
    assert (dowel.spread, dowel.paint, dowel.loosest) == (0.1, 0.0, 0.4)
    assert (lid.name, lid.goes, lid.goes_fact, lid.paint, lid.loosest) == (
        "wall.width",
        None,
        "wall.width",
        0.25,
        None,
    )
    assert (tongue.name, tongue.goes) == ("10.0 mm (0.39 in)", 10.0)


@pytest.mark.parametrize(
    ("fit", "rule", "says"),
    [
        ("{goes: 6 mm, into: slap.bore.width}", "design/unknown-fact", "did you mean “slab”?"),
        ("{goes: wal.width, into: slab.bore.width}", "design/unknown-fact", "did you mean “wall”?"),
        ("{goes: 0 mm, into: slab.bore.width}", "design/fit-measure", "as measured"),
        ("{goes: 6 mm, into: slab.bore.width, paint: 0 mm - 1 mm}", "design/fit-measure", "0 or more"),
        ("{goes: wall.width, into: slab.width, spread: 0.1 mm}", "design/fit-measure", "leave spread out"),
        ("{goes: 6 deg, into: slab.bore.width}", "design/wrong-kind", "length"),
    ],
)
def test_faults(fit: str, rule: str, says: str, tried: Callable[..., Any]) -> None:
    (finding,) = tried(f"fits: [{fit}]").design.findings
    assert finding.check == rule
    assert says in f"{finding.message} | {finding.hint}"
    assert finding.place.line > 0
