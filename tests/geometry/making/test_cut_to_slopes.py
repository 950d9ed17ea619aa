"""Bevels of edges that are cut to a slope: from sloping edges beside them, or from two heights and what holds them apart."""

from math import atan, degrees

import pytest

from publisher.basics import Place
from publisher.design import EdgeRef, Join, PanelPlace, PanelPlan, Rest
from publisher.geometry.making.cut_to_slopes import slope_bevels
from publisher.geometry.making.placed_edges import edges_at
from publisher.geometry.paths import straight
from publisher.geometry.registry import Shape, edges_of

HERE = Place("spec.yaml", 1, 1)


def four(*corners: tuple[float, float]) -> Shape:
    names = ("bottom", "right", "top", "left")
    outer = straight(list(zip(corners, names, strict=True)))
    return Shape(outer, edges_of(outer, names))


def wall(width: float, height: float) -> Shape:
    return four((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))


def ref(text: str) -> EdgeRef:
    return EdgeRef(*text.split("."))


def bevels(side: Shape, on: tuple[str, ...], cut: tuple[str, ...], inset: float = 0.0) -> dict[str, float]:
    """A shed of a front 40 mm high and a back 100 mm high, joined by one side."""
    joins = [
        Join(ref(a), ref(b), "butt", 90.0, "", "", 0, inset, 0.0, None, "", HERE)
        for a, b in (("front.right", "side.left"), ("side.right", "back.left"))
    ]
    places = tuple(PanelPlace(name, name, HERE) for name in ("front", "side", "back"))
    rest = Rest("roof", tuple(map(ref, on)), HERE, tuple(map(ref, cut)))
    plan = PanelPlan("shed", places, ref("front.bottom"), tuple(joins), (rest,), HERE)
    shapes = {"front": wall(80.0, 40.0), "side": side, "back": wall(80.0, 100.0)}
    found, told = slope_bevels(plan, edges_at(plan, shapes))
    assert len(found) + len(told) == len(cut)
    return {str(edge): bevel for edge, bevel in found.items()}


def test_walls_at_both_ends_of_a_slope_are_bevelled_against_each_other() -> None:
    slope = four((0.0, 0.0), (60.0, 0.0), (60.0, 100.0), (0.0, 40.0))
    found = bevels(slope, ("side.top", "front.top", "back.top"), ("front.top", "back.top"))
    assert found == pytest.approx({"front.top": -45.0, "back.top": 45.0})
    steep = four(
        (0.0, 0.0), (20.0, 0.0), (20.0, 100.0), (0.0, 40.0)
    )  # its middle lies higher than that of its high end
    found = bevels(steep, ("side.top", "back.top"), ("back.top",))
    assert found == pytest.approx({"back.top": degrees(atan(3.0))})


def test_without_a_sloping_edge_two_heights_make_the_slope() -> None:
    found = bevels(wall(60.0, 30.0), ("front.top", "back.top"), ("front.top", "back.top"))
    assert found == pytest.approx({"front.top": -45.0, "back.top": 45.0})
    found = bevels(
        wall(60.0, 30.0), ("front.top", "back.top"), ("back.top",), inset=10.0
    )  # the back stands 10 mm inside
    assert found == pytest.approx({"back.top": degrees(atan(60.0 / 50.0))})


def test_one_level_edge_alone_has_no_slope() -> None:
    assert bevels(wall(60.0, 30.0), ("back.top",), ("back.top",)) == {}
