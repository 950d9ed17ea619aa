"""Panels on faces, where they stand: against plain geometry of an upright wall and of a slope."""

from dataclasses import replace
from math import cos, radians, sin
from types import SimpleNamespace

import numpy as np
import pytest

from publisher.design import FaceSeat
from publisher.geometry import Part
from publisher.joints.panels.seats import measured, seated
from publisher.joints.panels.space import PanelFrame

# a wall that stands on the x axis, its drawn face to the front
UPRIGHT = PanelFrame(np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]]), np.zeros(3))


def slope(angle: float) -> PanelFrame:
    """A roof that rises backwards from the x axis."""
    c, s = cos(radians(angle)), sin(radians(angle))
    return PanelFrame(np.array([[1.0, 0.0, 0.0], [0.0, c, -s], [0.0, s, c]]), np.zeros(3))


def seat(make: SimpleNamespace, **said: object) -> FaceSeat:
    plain = FaceSeat("sign", "wall", "outside", "", (40.0, 30.0), 0.0, None, make.here)
    return replace(plain, **said)  # type: ignore[arg-type]


def bevelled(part: Part, edge: str, bevel: float) -> Part:
    return replace(part, edges=tuple(replace(e, bevel=bevel) if e.name == edge else e for e in part.edges))


@pytest.mark.parametrize(("face", "depth"), [("outside", (-5.0, 0.0)), ("inside", (5.0, 10.0))])
def test_a_sign_lies_on_either_face_where_the_template_says(
    make: SimpleNamespace, face: str, depth: tuple[float, float]
) -> None:
    sign, wall = make.wall("sign", 20, 10), make.wall("wall", 100, 60)
    said = seat(make, face=face)
    frame = seated(said, sign, wall, UPRIGHT)
    assert frame is not None
    corners = frame.carry(np.array([[0.0, 0.0, -5.0], [20.0, 10.0, 0.0]]))
    low, high = corners.min(axis=0), corners.max(axis=0)
    assert (low[0], high[0], low[2], high[2]) == pytest.approx((30.0, 50.0, 25.0, 35.0))
    assert (low[1], high[1]) == pytest.approx(depth)
    found = measured(said, sign, frame, wall, UPRIGHT)
    assert found is not None
    assert found.touches.bounds == pytest.approx((30.0, 25.0, 50.0, 35.0))
    assert (found.area, found.past, found.gap, found.off, found.tilt) == pytest.approx((200.0, 0.0, 0.0, 0.0, 0.0))


def test_a_buttress_stands_square_on_a_wall(make: SimpleNamespace) -> None:
    """Its left edge runs down; turned by 270° it does so on the wall too, and the board stands about the line x = 40."""
    buttress, wall = make.wall("buttress", 25, 40), make.wall("wall", 100, 60)
    said = seat(make, edge="left", turn=270.0, at=(40.0, 20.0))
    frame = seated(said, buttress, wall, UPRIGHT)
    assert frame is not None
    corners = frame.carry(np.array([[0.0, 0.0, 0.0], [25.0, 40.0, -5.0]]))
    assert corners.min(axis=0) == pytest.approx([37.5, -25.0, 0.0], abs=1e-9)
    assert corners.max(axis=0) == pytest.approx([42.5, 0.0, 40.0], abs=1e-9)
    found = measured(said, buttress, frame, wall, UPRIGHT)
    assert found is not None
    assert (found.area, found.length, found.gap, found.angle) == pytest.approx((200.0, 40.0, 0.0, 0.0), abs=1e-6)


def test_what_is_cut_to_a_slope_stands_upright_on_it(make: SimpleNamespace) -> None:
    chimney, roof = bevelled(make.wall("chimney", 30, 45), "bottom", 35.0), make.wall("roof", 100, 80)
    said = seat(make, edge="bottom", slope=35.0)
    frame = seated(said, chimney, roof, slope(35.0))
    assert frame is not None
    assert frame.outward == pytest.approx([0.0, -1.0, 0.0], abs=1e-9)
    found = measured(said, chimney, frame, roof, slope(35.0))
    assert found is not None
    assert (found.gap, found.angle, found.tilt, found.off) == pytest.approx((0.0, 0.0, 0.0, 0.0), abs=1e-6)
    assert found.area == pytest.approx(30.0 * 5.0 / cos(radians(35.0)))
    steeper = measured(said, chimney, frame, roof, slope(45.0))
    assert steeper is not None and (steeper.tilt, steeper.rises) == pytest.approx((10.0, 45.0))


def test_a_door_in_the_edge_is_not_on_the_face(make: SimpleNamespace) -> None:
    with_door = make.polygon(
        "gate", [(0, 0), (10, 0), (10, 20), (30, 20), (30, 0), (40, 0), (40, 40), (0, 40)],
        ("bottom", "jamb", "head", "jamb", "sill", "right", "top", "left"),
    )  # fmt: skip
    gate = replace(with_door, edges=(replace(with_door.edges[0], end=(40.0, 0.0)),))
    wall = make.wall("wall", 100, 60)
    said = seat(make, edge="bottom")
    frame = seated(said, gate, wall, UPRIGHT)
    assert frame is not None
    found = measured(said, gate, frame, wall, UPRIGHT)
    assert found is not None and (found.length, found.area) == pytest.approx((20.0, 100.0))


def test_without_a_place_or_an_edge_nothing_is_put(make: SimpleNamespace) -> None:
    sign, wall = make.wall("sign", 20, 10), make.wall("wall", 100, 60)
    assert seated(seat(make, at=None), sign, wall, UPRIGHT) is None
    assert seated(seat(make, edge="gone"), sign, wall, UPRIGHT) is None
    assert measured(seat(make, edge="gone"), sign, UPRIGHT, wall, UPRIGHT) is None
