"""Edges of untreated shapes by place: which there are, and how they lie."""

from math import sqrt

import pytest

from publisher.basics import Place
from publisher.design import EdgeRef, PanelPlace, PanelPlan
from publisher.geometry.making.placed_edges import apart, edges_at, heading, middle, parallel, way
from publisher.geometry.paths import straight
from publisher.geometry.registry import Shape, edges_of

HERE = Place("spec.yaml", 1, 1)


def shape() -> Shape:
    """A side of a lean-to: 60 mm long, 40 mm high at its left and 100 mm at its right end."""
    corners = [((0.0, 0.0), "bottom"), ((60.0, 0.0), "right"), ((60.0, 100.0), "slope"), ((0.0, 40.0), "left")]
    outer = straight(corners)
    return Shape(outer, edges_of(outer, [name for _, name in corners]))


def test_edges_are_found_by_place_and_name() -> None:
    plan = PanelPlan(
        "shed", (PanelPlace("near", "side", HERE), PanelPlace("roof", "lost", HERE)), EdgeRef("near", "bottom"), (), (), HERE
    )  # fmt: skip
    edges = edges_at(plan, {"side": shape()})
    assert sorted(map(str, edges)) == ["near.bottom", "near.left", "near.right", "near.slope"]


def test_how_edges_lie() -> None:
    bottom, right, slope, left = shape().edges
    assert [heading(edge) for edge in (bottom, right, slope, left)] == pytest.approx([0, 90, -135, -90])
    assert way(slope) == pytest.approx((-sqrt(0.5), -sqrt(0.5)))
    assert middle(slope) == (30.0, 70.0)
    assert parallel(left, right) and not parallel(slope, right)
    assert apart(left, right) == apart(right, left) == 60.0
