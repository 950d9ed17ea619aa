"""Doors, windows, holes and pockets: kinds, heads, and how they are cut into a panel."""

from publisher.geometry.openings.cut import draw_openings
from publisher.geometry.openings.kind import DrawnOpening
from publisher.geometry.openings.kinds import opening_infos
