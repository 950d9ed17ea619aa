"""Doors, windows and slits: kinds, heads, and how they are cut into a panel."""

from publisher.geometry.openings.cut import Drawn, draw_openings
from publisher.geometry.openings.kinds import opening_infos

__all__ = ["Drawn", "draw_openings", "opening_infos"]
