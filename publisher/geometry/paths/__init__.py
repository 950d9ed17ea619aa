"""Lines and arcs: exact outlines, how they are shifted, let in, joined and cut.

Comes in: points, lines, arcs in mm. Goes out: rings and regions whose runs keep their names, centres and radii.
Never: know a shape or a part.
"""

from publisher.geometry.paths.biarcs import fitted, fitted_line
from publisher.geometry.paths.bumps import Bump, box_bump, let_in
from publisher.geometry.paths.curves import SAGITTA, SAME, Curve, angle, flatten, polar
from publisher.geometry.paths.offset import eroded, shift
from publisher.geometry.paths.regions import fault, polygon, recover
from publisher.geometry.paths.rings import (
    Pen,
    area,
    circle,
    curves_of,
    oriented,
    path_length,
    reverse,
    ring_of,
    run_points,
    signed_area,
    straight,
)

__all__ = [
    "SAGITTA",
    "SAME",
    "Bump",
    "Curve",
    "Pen",
    "angle",
    "area",
    "box_bump",
    "circle",
    "curves_of",
    "eroded",
    "fault",
    "fitted",
    "fitted_line",
    "flatten",
    "let_in",
    "oriented",
    "path_length",
    "polar",
    "polygon",
    "recover",
    "reverse",
    "ring_of",
    "run_points",
    "shift",
    "signed_area",
    "straight",
]
