"""Panels: placed in space by their joins, and checked against them.

Comes in: panel plans and parts. Goes out: placed panels, their solids, matings, facts.
Never: know a stack.
"""

from publisher.joints.panels.interference import TOUCH, clashes_of
from publisher.joints.panels.matings import Mating, matings_of
from publisher.joints.panels.place import PanelAssembly, place_panels
from publisher.joints.panels.solids import corners_of, face_pair
from publisher.joints.panels.space import Frame

__all__ = [
    "TOUCH",
    "Frame",
    "Mating",
    "PanelAssembly",
    "clashes_of",
    "corners_of",
    "face_pair",
    "matings_of",
    "place_panels",
]
