"""A stack as panels that lie flat, and panels carried to another place."""

from collections.abc import Iterable
from math import cos, radians, sin

import numpy as np

from publisher.basics import Place
from publisher.geometry import Part
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, PanelFrame, corners_of
from publisher.joints.stacks import LaidStack


def panels_of_stack(stack: LaidStack, parts: dict[str, Part], place: Place) -> tuple[Panel, ...]:
    """Return the layers of a stack as panels whose drawn faces look up."""
    made = []
    for layer in stack.layers:
        a, b, c, d, e, f = layer.pose.matrix()
        axes = np.array([[a, c, 0.0], [b, d, 0.0], [0.0, 0.0, 1.0]])
        frame = PanelFrame(axes, np.array([e, f, layer.bottom + layer.thickness]))
        made.append(Panel(f"layer_{layer.number}", parts[layer.part], frame, False, place))
    return tuple(made)


def carried(panels: Iterable[Panel], turn: float, by: Array) -> tuple[Panel, ...]:
    """Return panels turned about the upright axis by ``turn`` degrees, then moved by a vector (mm)."""
    c, s = cos(radians(turn)), sin(radians(turn))
    matrix = np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])
    return tuple(
        Panel(
            p.name, p.part, PanelFrame(matrix @ p.frame.axes, matrix @ p.frame.origin + by), p.rests, p.place, p.seated
        )
        for p in panels
    )


def box_of(panels: Iterable[Panel]) -> tuple[Array, Array]:
    """Return the lower and the upper corner of the upright box round panels."""
    every = np.vstack([panel.frame.carry(corners_of(panel.part)) for panel in panels])
    return every.min(axis=0), every.max(axis=0)
