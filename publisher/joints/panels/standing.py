"""What of a panel assembly touches the table, where its weight falls, and whether it stands with a figure on it. Mm, g, N."""

from collections.abc import Callable
from math import cos, inf, radians

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Figure
from publisher.geometry import Part, polygon
from publisher.joints.facts import short_side
from publisher.joints.footing import ballast, hull_sides, push_to_slide, push_to_tip
from publisher.joints.panels.bent import arc_of_facet
from publisher.joints.panels.place import Panel, boards_of
from publisher.joints.panels.solids import board_mass, corners_of, face_pair, foot_of, weight_of
from publisher.joints.panels.space import Array

LEANS_MOST = 30.0
"""Degrees: no figure is put on what leans more. An assumption."""

HALF_A_BASE = 0.5
"""Of a base: no figure stands on a panel that is narrower than this. An assumption."""

ROCKS = 0.5
"""mm: no figure stands on a curved panel that falls by more than this from the middle to the rim of its base. An assumption."""


@record
class PanelBalance:
    """How a panel assembly stands: margins in mm by which it does not tip (negative: it tips), empty and with a figure at the
    worst place of a face that one can stand on (None: there is no such face), the panel of that place; grams of the whole and of the
    ballast on the middle of its foot that holds it; the pushes (N) at half its height that tip and that slide it."""

    empty: float
    with_figure: float | None
    worst: str
    mass: float
    ballast: float
    tip: float
    slide: float

    @property
    def margin(self) -> float:
        """The least margin."""
        return self.empty if self.with_figure is None else min(self.empty, self.with_figure)


def balance_of(
    panels: tuple[Panel, ...], mass: Callable[[Part], float], figure: Figure, foot: shapely.Geometry | None = None
) -> PanelBalance:
    """Return how panels, at least one, stand together; every panel weighs ``mass`` in the middle of its board. ``foot``: what
    they touch, where that is not the table."""
    foot = foot_of(boards_of(panels)) if foot is None else foot
    at = weight_of(boards_of(panels), mass)
    whole = sum(board_mass(panel.part, mass) for panel in panels)
    normals, limits = hull_sides(foot)
    empty = limits - normals @ at
    margins, with_figure, worst = empty, None, ""
    reaches = [(name, (normals @ points[:, :2].T).max(axis=1)) for name, points in _places(panels, figure)]
    if reaches:
        farthest = np.max([reach for _, reach in reaches], axis=0)
        loaded = limits - (whole * (normals @ at) + figure.mass * farthest) / (whole + figure.mass)
        side = int(loaded.argmin())
        with_figure, worst = float(loaded.min()), max(reaches, key=lambda reach: float(reach[1][side]))[0]
        margins = np.minimum(empty * whole, loaded * (whole + figure.mass))
    else:
        margins = empty * whole
    heights = np.vstack([panel.frame.carry(corners_of(panel.part)) for panel in panels])[:, 2]
    margin, height = float(empty.min()), float(heights.max() - heights.min())
    held = ballast(foot, 1.0, margins) if np.isfinite(margins).all() else inf
    return PanelBalance(
        margin, with_figure, worst, whole, held, push_to_tip(whole, margin, height), push_to_slide(whole)
    )


def bears_figures(panel: Panel, figure: Figure) -> bool:
    """Tell whether a figure can stand on a panel: it is level and wide enough. A facet is as wide as its curved panel is, and
    that is level enough where it hardly falls under the base: base²/(8·radius)."""
    level = abs(float(panel.frame.outward[2])) >= cos(radians(LEANS_MOST))
    arc = arc_of_facet(panel.part)
    if arc is None:
        return level and short_side(panel.part) >= HALF_A_BASE * figure.base
    _, low, _, high = polygon(panel.part.outline).bounds
    return level and figure.base**2 / (8.0 * arc.radius) <= ROCKS and high - low >= HALF_A_BASE * figure.base


def _places(panels: tuple[Panel, ...], figure: Figure) -> list[tuple[str, Array]]:
    """Return the corners (n, 3), in the assembly, of every upper face that a figure can stand on."""
    return [(panel.name, _upper(panel)) for panel in panels if bears_figures(panel, figure)]


def _upper(panel: Panel) -> Array:
    up = float(panel.frame.outward[2]) > 0.0
    pair = face_pair(panel.part, panel.part.outline.outer.points)
    flat = pair.outside if up else pair.inside
    return panel.frame.carry(np.column_stack([flat, np.full(len(flat), 0.0 if up else -panel.part.thickness)]))
