"""Roof slopes in space: how steep planes meet. Angles in degrees."""

from math import acos, cos, degrees, radians, sin


def bevel_between(pitch: float, other: float, turn: float = 90.0) -> float:
    """Return the bevel (degrees from square) at which two slopes of equal board meet.

    ``pitch`` and ``other``: against the horizontal; ``turn``: the angle between their eaves' outward directions in plan.
    Each edge takes half of the angle between the two slopes' normals, whose cosine is
    sin p·sin q·cos(turn) + cos p·cos q.
    """
    p, q = radians(pitch), radians(other)
    cosine = sin(p) * sin(q) * cos(radians(turn)) + cos(p) * cos(q)
    return degrees(acos(max(-1.0, min(1.0, cosine)))) / 2.0
