"""A stack as panels that lie flat, and panels carried to another place."""

from collections.abc import Iterable, Sequence
from math import cos, radians, sin

import numpy as np

from publisher.basics import Place
from publisher.geometry import Part
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, PanelFrame, corners_of, plates_on
from publisher.joints.stacks import Knee, LaidStack


def panels_of_stack(
    stack: LaidStack, parts: dict[str, Part], place: Place, knees: Sequence[Knee] = ()
) -> tuple[Panel, ...]:
    """Return the layers of a stack as panels whose drawn faces look up, the undermost first, then its knee braces
    and the plates behind their seams."""
    made = []
    for layer in stack.layers:
        a, b, c, d, e, f = layer.pose.matrix()
        axes = np.array([[a, c, 0.0], [b, d, 0.0], [0.0, 0.0, 1.0]])
        frame = PanelFrame(axes, np.array([e, f, layer.bottom + layer.thickness]))
        made.append(Panel(f"layer_{layer.number}", parts[layer.part], frame, False, place))
    knee_part = parts.get(stack.brace.part) if stack.brace is not None else None
    if stack.brace is not None and knee_part is not None:
        for knee in knees:
            if not knee.blocked:
                frame = _upright(knee, stack.brace.drop, knee_part.thickness)
                made.append(Panel(f"brace_{stack.layers[knee.layer].number}", knee_part, frame, False, place))
    return (*made, *plates_on(made))


def _upright(knee: Knee, drop: float, thick: float) -> PanelFrame:
    """Return the frame of a brace: its level side runs out under the step, its upright side stands against the core."""
    c, s = cos(radians(knee.heading)), sin(radians(knee.heading))
    axes = np.array([[c, 0.0, s], [s, 0.0, -c], [0.0, 1.0, 0.0]])
    return PanelFrame(axes, np.array([*knee.at, knee.top - drop]) + thick / 2.0 * axes[:, 2])


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
