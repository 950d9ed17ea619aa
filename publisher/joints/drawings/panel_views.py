"""A panel assembly as a whole, exploded, and seen square to it."""

import numpy as np
import shapely

from publisher.basics import Purpose
from publisher.geometry import Part
from publisher.joints.drawings.hidden import visible
from publisher.joints.drawings.letter_spots import (
    EXPLODED_ROOM,
    FACET_ROOM,
    letter_spot,
    on_face,
    room_on_paper,
    shown,
    spot_beside,
)
from publisher.joints.drawings.lines import Sketch
from publisher.joints.drawings.panel_solids import Solids, solids_of
from publisher.joints.drawings.view import PANEL_VIEW, View
from publisher.joints.outlines import Array
from publisher.joints.panels import Panel, PanelAssembly, PanelFrame, corners_of, flat_boards, is_facet

MOST_MARKS = 900
"""Lines of patterns in one drawing; denser patterns are left to the template."""

EXPLODED_APART = 0.3
"""How far panels stand apart in an exploded view, as a share of the mean outside size of the whole."""

OFF_FACE = 0.5
"""How far what is put on a face stands off it in an exploded view, as a share of how far panels stand apart."""

LINING_OUT = 0.7
"""The same for what bends along an edge: out of the arch that it lies in."""

SPREADS = ((1.0, 1.9), (1.3, 1.9), (1.6, 1.9), (2.1, 1.9), (2.6, 1.9), (1.3, 3.0), (2.1, 3.0), (2.6, 4.0))
"""Ways of standing apart, the closest first: how far what looks away from the viewer goes, and how high what rests is lifted."""

SHOWN_SHARE = 1 / 3
"""Share of its face that every panel shows, if one of the spreads allows it."""


def whole_view(assembly: PanelAssembly) -> Sketch:
    """Draw the assembly put together."""
    few = few_marks(assembly.panels)
    panels = [(p.part, p.frame) for p in flat_boards(assembly.panels, patterned=few)]
    sketch = Sketch()
    draw_solids(solids_of(panels, PANEL_VIEW, slots=False, surface=few), sketch)
    return sketch


def flat_view(assembly: PanelAssembly, view: View) -> Sketch:
    """Draw the assembly put together, seen square to the piece, without the patterns on its faces."""
    sketch = Sketch()
    panels = [(p.part, p.frame) for p in flat_boards(assembly.panels, patterned=False)]
    draw_solids(solids_of(panels, view, slots=False, surface=False), sketch)
    return sketch


def exploded_view(assembly: PanelAssembly) -> Sketch:
    """Draw the assembly with its panels moved out along their outside normals, with the letter of every part.

    What would stay hidden is moved farther: of the spreads tried, the first in which every panel shows a third of its face.
    """
    best: tuple[float, Solids] | None = None
    for spread in SPREADS:
        solids = solids_of(apart(assembly, *spread), PANEL_VIEW, slots=True, surface=False)
        flat = [main for board, main in zip(assembly.boards, solids.main, strict=True) if not is_facet(board.part)]
        least = _least_shown(solids, flat, 0.0 if best is None else best[0])
        if best is None or least > best[0] + 1e-9:
            best = least, solids
        if least >= SHOWN_SHARE:
            break
    sketch = Sketch()
    if best is not None:
        draw_solids(best[1], sketch)
        _letter(assembly, best[1], sketch)
    return sketch


def _letter(assembly: PanelAssembly, solids: Solids, sketch: Sketch) -> None:
    """Add the letter of every panel: on its face, else beside it with a line to it; where neither has room, as near as it can be."""
    lettered: set[str] = set()
    wanted = room_on_paper(solids.areas)
    taken: list[tuple[float, float]] = []
    for panel, main in zip(assembly.boards, solids.main, strict=True):
        if panel.name in lettered:
            continue
        least = FACET_ROOM if is_facet(panel.part) else EXPLODED_ROOM
        spot = on_face(solids, main, max(least, wanted))
        if spot is None and (beside := spot_beside(solids, main, max(least, wanted), taken)) is not None:
            spot = (float(beside[0, 0]), float(beside[0, 1]))
            way = beside[1] - beside[0]
            start = beside[0] + way * min(0.7 * wanted / max(float(np.hypot(*way)), 1e-9), 0.9)
            sketch.add_path("leader", np.array([start, beside[1]]))
        spot = spot or letter_spot(solids, main, least)
        if spot is not None:
            sketch.label(panel.part.letter, *spot)
            lettered.add(panel.name)
            taken.append(spot)


def apart(assembly: PanelAssembly, back: float, lift: float) -> list[tuple[Part, PanelFrame]]:
    """Return the panels moved out: those that look away from the viewer ``back`` times as far, what rests ``lift`` times up."""
    corners = np.vstack([p.frame.carry(corners_of(p.part)) for p in assembly.boards])
    away = EXPLODED_APART * float((corners.max(axis=0) - corners.min(axis=0)).mean())
    crossed = {join.a.panel for join in assembly.plan.joins if join.at is not None}
    let_in = {join.b.panel for join in assembly.plan.joins if join.at is not None} - crossed
    towards = PANEL_VIEW.axes()[2]
    panels: list[tuple[Part, PanelFrame]] = []
    shifts: dict[str, Array] = {}
    for panel in assembly.panels:
        shift = away * panel.frame.outward
        if panel.rests:  # what lies on walls is lifted off them, and the slopes part a little
            shift = 0.35 * shift + np.array([0.0, 0.0, lift * away])
        elif panel.name in let_in:  # out of the slots of the panels that it crosses, which stay
            shift = np.array([0.0, 0.0, 0.7 * lift * away])
        elif panel.name in crossed:
            shift = np.zeros(3)
        elif float(towards @ panel.frame.outward) < 0:
            shift = back * shift
        shifts[panel.name] = shift
    for panel in assembly.boards:
        shift = _off_host(panel.name, assembly, shifts, OFF_FACE * away)
        panels.append((panel.part, PanelFrame(panel.frame.axes, panel.frame.origin + shift)))
    return panels


def _off_host(name: str, assembly: PanelAssembly, shifts: dict[str, Array], away: float) -> Array:
    """Return how far a panel is moved; one that is put on a face goes with what carries it, and off that face."""
    panel = assembly.panel(name)
    if panel is not None and any(lining.panel == name for lining in assembly.plan.linings):
        return np.asarray(-LINING_OUT * away / OFF_FACE * panel.frame.outward)  # out of the hollow side of its curve
    seat = next((seat for seat in assembly.plan.seats if seat.panel == name and seat.placed), None)
    host = assembly.panel(seat.host) if seat is not None else None
    if panel is None or seat is None or host is None or not panel.seated:
        return shifts[name]
    off = host.frame.outward if seat.face == "outside" else -host.frame.outward
    return np.asarray(_off_host(host.name, assembly, shifts, away) + away * off)


def few_marks(panels: tuple[Panel, ...]) -> bool:
    """Tell whether the patterns that show are few enough lines to be drawn."""
    towards = PANEL_VIEW.axes()[2]
    seen = [p.part for p in panels if float(towards @ p.frame.outward) > 0]
    return sum(m.purpose is Purpose.SURFACE for part in seen for m in part.marks) <= MOST_MARKS


def draw_solids(solids: Solids, sketch: Sketch) -> None:
    """Draw what of the edges of solids is seen."""
    if not solids.edges:
        return
    sketch.shapes += solids.areas
    weights = np.repeat(solids.weights, [len(e) for e in solids.edges])
    edges = np.vstack(solids.edges)
    seen = np.hypot(*(edges[:, 1] - edges[:, 0])[:, :2].T) > 1e-6
    lines, owner = visible(edges[seen], solids.faces())
    kept = weights[seen][owner]
    for weight in dict.fromkeys(solids.weights):
        if (kept == weight).any():
            sketch.add(weight, shapely.multilinestrings(shapely.linestrings(lines[kept == weight])))


def _least_shown(solids: Solids, faces: list[int], enough: float) -> float:
    """Return the least share that a panel shows of its face, of those given; as soon as one shows no more than ``enough``, its."""
    least = 1.0
    for main in faces:
        least = min(least, shown(solids, main) if main >= 0 else 1.0)
        if least <= enough:
            break
    return least
