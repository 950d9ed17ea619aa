"""What of a panel assembly touches the table, where its weight falls, and whether it stands with a figure on it. Mm, g, N."""

from collections.abc import Callable
from math import cos, inf, radians

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import BRACE_SHAPE, Figure
from publisher.geometry import Part, polygon
from publisher.joints.facts import short_side
from publisher.joints.footing import (
    FIGURES,
    HALF_A_BASE,
    LEAST_TREAD,
    ballast,
    hull_sides,
    loaded,
    push_to_slide,
    push_to_tip,
)
from publisher.joints.outlines import sound, united, without_hairs
from publisher.joints.panels.bent import arc_of_facet
from publisher.joints.panels.place import Panel, boards_of
from publisher.joints.panels.solids import board_mass, corners_of, face_pair, foot_of, weight_of

LEANS_MOST = 30.0
"""Degrees: no figure is put on what leans more. An assumption."""

SAME_LEVEL = 0.01
"""mm: a face is higher than another by more."""

ROCKS = 0.5
"""mm: no figure stands on a curved panel that falls by more than this from the middle to the rim of its base. An assumption."""


@record
class PanelBalance:
    """How a panel assembly stands: margins in mm by which it does not tip (negative: it tips), empty and with figures at the worst
    places of the faces that one can stand on (None: there is no such face), the panel of the worst of them; grams of the whole and
    of the ballast on the middle of its foot that holds it; the pushes (N) at half its height that tip and that slide it."""

    empty: float
    with_figure: float | None
    worst: str
    mass: float
    ballast: float
    tip: float
    slide: float
    figures: int = 0  # that do the worst

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
    moments, with_figure, worst, figures = empty * whole, None, "", 0
    treads = _treads(panels, figure)
    if treads:
        reaches = np.array([(normals @ shapely.get_coordinates(area).T).max(axis=1) for _, area in treads])
        # judged as the layers of a stack are, which knee braces may stand under
        pile = all(_is_level(panel) or panel.part.shape == BRACE_SHAPE for panel in panels)
        load = loaded(limits, whole * (normals @ at), whole, reaches, figure.mass, FIGURES if pile else 1)
        side = int(load.margins.argmin())
        with_figure, figures = float(load.margins.min()), load.figures
        worst = treads[int(reaches[:, side].argmax())][0]
        moments = np.minimum(moments, load.moments)
    heights = np.vstack([panel.frame.carry(corners_of(panel.part)) for panel in panels])[:, 2]
    margin, height = float(empty.min()), float(heights.max() - heights.min())
    held = ballast(foot, moments) if np.isfinite(moments).all() else inf
    tip, slide = push_to_tip(whole, margin, height), push_to_slide(whole)
    return PanelBalance(margin, with_figure, worst, whole, held, tip, slide, figures)


def bears_figures(panel: Panel, figure: Figure) -> bool:
    """Tell whether a figure can stand on a panel: it is level and wide enough. A facet is as wide as its curved panel is, and
    that is level enough where it hardly falls under the base: base²/(8·radius)."""
    level = _is_level(panel)
    arc = arc_of_facet(panel.part)
    if arc is None:
        return level and short_side(panel.part) >= HALF_A_BASE * figure.base
    _, low, _, high = polygon(panel.part.outline).bounds
    return level and figure.base**2 / (8.0 * arc.radius) <= ROCKS and high - low >= HALF_A_BASE * figure.base


def _is_level(panel: Panel) -> bool:
    return abs(float(panel.frame.outward[2])) >= cos(radians(LEANS_MOST))


def _treads(panels: tuple[Panel, ...], figure: Figure) -> list[tuple[str, shapely.Geometry]]:
    """Return what one can stand on: of every upper face, in plan, what no other level board lies over."""
    level = [(panel, *_upper(panel)) for panel in panels if _is_level(panel)]
    found = []
    for panel, area, height in level:
        if not bears_figures(panel, figure):
            continue
        over = [other for _, other, high in level if high > height + SAME_LEVEL]
        bare = without_hairs(shapely.difference(area, united(over))) if over else area
        found += [(panel.name, bare)] if bare.area >= LEAST_TREAD else []
    return found


def _upper(panel: Panel) -> tuple[shapely.Geometry, float]:
    """Return the upper face of a panel in plan, and how high its middle lies."""
    up = float(panel.frame.outward[2]) > 0.0
    depth = 0.0 if up else -panel.part.thickness
    rings = []
    for path in panel.part.outline.paths:
        pair = face_pair(panel.part, path.points)
        flat = pair.outside if up else pair.inside
        rings.append(panel.frame.carry(np.column_stack([flat, np.full(len(flat), depth)])))
    outer, *holes = rings
    return sound(shapely.Polygon(outer[:, :2], [hole[:, :2] for hole in holes])), float(outer[:, 2].mean())
