"""The card outline against ISO/IEC 7810, size ID-1: 85.60 x 53.98 mm, corner radius 3.18 mm."""

from math import dist

import pytest

from publisher.basics import Arc
from publisher.pages.model import Stroke
from publisher.pages.sheet.bank_card import card


def test_sizes_and_corners() -> None:
    body = card(10.0, 100.0, 2)
    (stroke,) = body.drawn
    assert isinstance(stroke, Stroke)
    (path,) = stroke.paths
    xs, ys = [p[0] for p in path.points], [p[1] for p in path.points]
    assert max(xs) - min(xs) == pytest.approx(85.60, abs=1e-9)
    assert max(ys) - min(ys) == pytest.approx(53.98, abs=1e-9)
    arcs = [edge for edge in path.edges if isinstance(edge, Arc)]
    assert [(arc.radius, arc.sweep) for arc in arcs] == [(3.18, 90.0)] * 4
    for arc in arcs:
        assert all(dist(point, arc.centre) == pytest.approx(3.18) for point in (*arc.points(), arc.end))


def test_straight_sides_are_promised_where_they_are_drawn() -> None:
    body = card(10.0, 100.0, 2)
    assert sorted(round(p.length, 2) for p in body.lengths) == [47.62, 47.62, 79.24, 79.24]
    for side in body.lengths:
        assert dist(side.start, side.end) == pytest.approx(side.length, abs=1e-9)
        assert side.purpose == "card"
        assert side.start[0] == pytest.approx(side.end[0]) or side.start[1] == pytest.approx(side.end[1])
