"""Weights and packed sizes by hand."""

from types import SimpleNamespace

import pytest

from publisher.design import Fact
from publisher.joints import footprint


def test_a_piece_weighs_its_area_without_its_openings(make: SimpleNamespace) -> None:
    """100 × 50 mm with a hole of 20 × 10 in bare foam of 5 mm, 150 g/m²: 4800 mm² · 150e-6 = 0.72 g."""
    hole = make.hole(((30.0, 20.0), (30.0, 30.0), (50.0, 30.0), (50.0, 20.0)), "window")
    part = make.part("w", make.wall("w", 100, 50).outline.outer, holes=(hole,))
    assert footprint.mass_of(part, {"foam": make.board()}) == pytest.approx(0.72)
    (fact,) = footprint.part_masses([part], {"foam": make.board()})
    assert (fact.name, fact.kind) == ("w.mass", "mass")


def test_panels_weigh_together_what_each_weighs(make: SimpleNamespace) -> None:
    wall = make.wall("w", 100, 50)
    whole = footprint.panels_mass("box", [wall, wall, make.wall("d", 20, 50)], {"foam": make.board()}, make.here)
    assert whole.value == pytest.approx((5000 * 2 + 1000) * 150e-6)


def test_pieces_lie_in_one_pile(make: SimpleNamespace) -> None:
    turned = make.polygon("t", [(0.0, 0.0), (30.0, 30.0), (20.0, 40.0), (-10.0, 10.0)])  # 42.4 × 14.1, at 45 degrees
    facts = footprint.packed("box", [make.wall("a", 40, 25), turned, turned], make.here)
    values = {f.name: f.value for f in facts}
    assert values == pytest.approx(
        {"box.packed_length": 30 * 2**0.5, "box.packed_width": 25.0, "box.packed_height": 15.0}
    )
    assert footprint.packed("box", [], make.here) == []


def test_the_longest_side_is_that_of_the_box_that_it_fits_in() -> None:
    facts = [Fact(f"s.{n}", v, "length") for n, v in (("width", 184.0), ("depth", 180.0), ("height", 75.0))]
    (found,) = footprint.longest([*facts, Fact("w.width", 9.0, "length"), Fact("w.height", 400.0, "length")])
    assert (found.name, found.value) == ("s.longest", 184.0)
