"""A soffit under the arches of a bridge of plain sizes: where it lies, and what is found when it is another one's."""

from dataclasses import replace
from math import pi, radians, sin
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.basics import Arc, Line, Path
from publisher.design import EdgeRef, Lining
from publisher.geometry import BendStretch, BentForm, Part, polygon
from publisher.joints.panels import linings_of
from publisher.joints.panels.place import PanelAssembly, place_panels
from publisher.joints.panels.solids import corners_of


def side(make: SimpleNamespace) -> Part:
    """A wall of 100 × 50 with a half-round arch of radius 30 in it."""
    arch = Arc.between("intrados", (20.0, 0.0), (80.0, 0.0), (50.0, 0.0), 30.0, ccw=False)
    around = [(80.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0), (0.0, 0.0), (20.0, 0.0)]
    names = ("foot", "right", "top", "left", "bottom")
    path = Path((arch, *(Line(name, a, b) for name, a, b in zip(names, around, around[1:], strict=False))))
    wall = make.wall("side", 100, 50)
    return make.part("side", path, edges=tuple(e for e in wall.edges if e.name != "bottom"))


def bridge(make: SimpleNamespace, radius: float = 30.0, wide: float = 40.0, angle: float = 180.0) -> PanelAssembly:
    long = radius * angle / 180.0 * pi
    strip = make.wall("strip", long, wide)
    strip = replace(strip, bending=BentForm((BendStretch(0.0, long, radius - 2.5),), "outside", 3.3, 19, "paper"))
    plan = make.panels("bridge", {"f": "side", "e": "end", "k": "side", "s": "strip"}, "e.bottom",
                       make.join("f.right", "e.left"), make.join("e.right", "k.left"))  # fmt: skip
    along = (EdgeRef("f", "intrados"), EdgeRef("k", "intrados"))
    plan = replace(plan, linings=(Lining("s", along, make.here),))
    return place_panels(plan, {"side": side(make), "end": make.wall("end", 40, 50), "strip": strip})


def test_a_soffit_lies_under_both_arches(make: SimpleNamespace) -> None:
    assembly = bridge(make)
    assert assembly.unplaced == () and len(assembly.panels) == 4
    facets = [board for board in assembly.boards if board.name == "s"]
    every = np.vstack([board.frame.carry(corners_of(board.part)) for board in facets])
    low, high = every.min(axis=0), every.max(axis=0)
    assert sorted(high - low) == pytest.approx([30.0, 40.0, 60.0], abs=0.02)
    assert (low[2], high[2]) == pytest.approx((0.0, 30.0), abs=0.02)
    found = linings_of(assembly)
    assert [one.along for one in found] == ["f.intrados", "k.intrados"]
    for one in found:
        assert (one.gap, one.ends, one.bare) == pytest.approx((0.0, 0.0, 0.0), abs=0.01)
    assert sum(polygon(b.part.outline).area for b in facets) == pytest.approx(40.0 * 30.0 * pi, rel=1e-3)


@pytest.mark.parametrize(
    ("wrong", "gap", "ends", "bare"),
    [
        ({"radius": 35.0, "angle": 154.0}, 4.22, 5.0, 0.0),
        ({"angle": 150.0}, 0.0, 60.0 * sin(radians(7.5)), 0.0),
        ({"wide": 34.0}, 0.0, 0.0, 3.0),
    ],
)
def test_a_soffit_for_another_arch_is_measured(
    make: SimpleNamespace, wrong: dict[str, float], gap: float, ends: float, bare: float
) -> None:
    for one in linings_of(bridge(make, **wrong)):
        assert one.bare == pytest.approx(bare, abs=0.01)
        assert one.gap == pytest.approx(gap, abs=0.01) and one.ends == pytest.approx(ends, abs=0.02)
