"""Facts of a panel assembly: outside sizes, inside sizes, height of the ridge. Mm."""

import numpy as np

from publisher.design import Fact, Kind
from publisher.joints.facts import made_fact
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.solids import corners_of
from publisher.joints.panels.standing import PanelBalance

OUT_OF_SQUARE = 1e-6
"""A wall's outward vector may lie this far out of the level, or off an axis, to count as standing square."""


def facts_of(assembly: PanelAssembly, balance: PanelBalance | None = None) -> tuple[Fact, ...]:
    """Return width (x), depth (y), height, inside sizes between the outermost standing walls, the ridge if panels rest, and
    how it stands."""
    if not assembly.panels:
        return ()
    bounds = [(panel, panel.frame.carry(corners_of(panel.part))) for panel in assembly.solid]
    every = np.vstack([corners for _, corners in bounds])
    low, high = every.min(axis=0), every.max(axis=0)
    values: list[tuple[str, float, Kind]] = [
        ("panels", len(assembly.panels), "count"),
        ("width", high[0] - low[0], "length"),
        ("depth", high[1] - low[1], "length"),
        ("height", high[2] - low[2], "length"),
    ]
    for name, axis in (("inside_width", 0), ("inside_depth", 1)):
        inside = _inside(tuple(p for p in assembly.panels if not p.seated), axis)
        if inside is not None:
            values.append((name, inside, "length"))
    rests = [corners for panel, corners in bounds if panel.rests]
    if rests:
        values.append(("ridge", np.vstack(rests)[:, 2].max() - low[2], "length"))
    if balance is not None:
        values += standing_facts(balance)
    name = assembly.plan.name
    return tuple(made_fact(f"{name}.{fact}", value, kind, assembly.plan.place) for fact, value, kind in values)


def inside_walls(panels: tuple[Panel, ...], axis: int) -> tuple[Panel, ...]:
    """Return the outermost standing walls that look along an axis, the last and the first along it; () where one is missing."""
    square = [panel for panel in panels if abs(abs(float(panel.frame.outward[axis])) - 1.0) < OUT_OF_SQUARE]
    last = [panel for panel in square if panel.frame.outward[axis] > 0]
    first = [panel for panel in square if panel.frame.outward[axis] < 0]
    if not last or not first:
        return ()
    return max(last, key=lambda p: float(p.frame.origin[axis])), min(first, key=lambda p: float(p.frame.origin[axis]))


def _inside(panels: tuple[Panel, ...], axis: int) -> float | None:
    """Return the free length along an axis between the inside faces of the outermost walls that look along it, or None."""
    walls = inside_walls(panels, axis)
    if not walls:
        return None
    last, first = walls
    return float(last.frame.origin[axis] - first.frame.origin[axis]) - last.part.thickness - first.part.thickness


def standing_facts(balance: PanelBalance) -> list[tuple[str, float, Kind]]:
    """Return what is known of how something stands: its margins in mm, the pushes in N that tip and slide it."""
    values: list[tuple[str, float, Kind]] = [("balance_margin", balance.empty, "length")]
    if balance.with_figure is not None:
        values.append(("balance_with_figures", balance.with_figure, "length"))
    return [*values, ("push_to_tip", balance.tip, "force"), ("push_to_slide", balance.slide, "force")]
