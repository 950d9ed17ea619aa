"""A wall looks outwards where nothing of the piece stands before its outside; a rib between two walls does not."""

from types import SimpleNamespace

import numpy as np

from publisher.joints.model import Placed
from publisher.joints.outward import look_outwards

UPRIGHT = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, -1.0], [0.0, 1.0, 0.0]])


def at(part: str, y: float, turned: bool = False) -> Placed:
    """A wall that looks to the front, or turned to the back, at a depth (mm)."""
    axes = UPRIGHT @ np.diag([-1.0, 1.0, -1.0]) if turned else UPRIGHT
    origin = np.array([120.0 if turned else 0.0, y, 0.0])
    return Placed(part, part, tuple(np.column_stack([axes, origin]).ravel()))  # type: ignore[arg-type]


def test_a_rib_behind_a_front_is_inner_and_front_and_back_look_out(make: SimpleNamespace) -> None:
    parts = tuple(make.wall(name, 120, 50) for name in ("front", "rib", "back"))
    box = ("box", (at("front", 0.0), at("rib", 40.0), at("back", 80.0, turned=True)))
    assert look_outwards(parts, (box,)) == {"front", "back"}
    assert look_outwards(parts, (("alone", (at("rib", 0.0),)),)) == {"rib"}
    assert look_outwards(parts, ()) == frozenset()


def test_a_part_that_looks_out_here_and_in_there_is_inner(make: SimpleNamespace) -> None:
    wall = make.wall("wall", 120, 50)
    assert look_outwards((wall,), (("pair", (at("wall", 0.0), at("wall", 30.0))),)) == frozenset()
