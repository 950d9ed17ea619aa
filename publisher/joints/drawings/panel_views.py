"""A panel assembly as a whole, exploded, and seen square to it."""

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Purpose
from publisher.geometry import Part
from publisher.joints.drawings.hidden import visible
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

MOST_FACES = 1000
"""Faces among which what is hidden is measured to the last edge; of more, the thickness of the boards is left out."""

EXPLODED_ROOM = 6.0
"""mm of visible face around a letter: with less it would stand on lines."""

FACET_ROOM = 3.0
"""The same on a facet of a bent part, over whose borders the board goes on without a line."""


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
    if best is None:
        return sketch
    solids = best[1]
    draw_solids(solids, sketch)
    lettered: set[str] = set()
    for panel, main in zip(assembly.boards, solids.main, strict=True):
        room = FACET_ROOM if is_facet(panel.part) else EXPLODED_ROOM
        spot = None if panel.name in lettered else letter_spot(solids, main, room)
        if spot is not None:
            sketch.label(panel.part.letter, *spot)
            lettered.add(panel.name)
    return sketch


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


def letter_spot(solids: Solids, main: int, room: float = EXPLODED_ROOM) -> tuple[float, float] | None:
    """Return where the letter of a panel stands: on its face, or just beside one that is too small; None where neither is free."""
    return _label_spot(solids, main, room) or _spot_beside(solids, main)


def _least_shown(solids: Solids, faces: list[int], enough: float) -> float:
    """Return the least share that a panel shows of its face, of those given; as soon as one shows no more than ``enough``, its."""
    least = 1.0
    for main in faces:
        least = min(least, shown(solids, main) if main >= 0 else 1.0)
        if least <= enough:
            break
    return least


def shown(solids: Solids, main: int) -> float:
    """Return the share of a panel's face that nothing hides, 0 to 1; of a very large whole, that no other panel's face hides."""
    every = np.arange(len(solids.areas))
    hiding = every if len(every) <= MOST_FACES else np.array([other for other in solids.main if other >= 0])
    points, seen = _seen(solids, main, hiding)
    return float(seen.mean()) if len(points) else 1.0


def _seen(solids: Solids, main: int, hiding: npt.NDArray[np.int64]) -> tuple[Array, npt.NDArray[np.bool_]]:
    """Return points on a face (n, 2) and whether each is seen past the faces that may hide it."""
    area, plane = solids.areas[main], solids.planes[main]
    left, bottom, right, top = area.bounds
    across, up = np.meshgrid(np.linspace(left, right, 25)[1:-1], np.linspace(bottom, top, 25)[1:-1])
    points: Array = np.column_stack([across.ravel(), up.ravel()])
    points = points[shapely.contains_xy(area, points[:, 0], points[:, 1])]
    seen = np.ones(len(points), dtype=bool)
    depth = points @ plane[:2] + plane[2]
    bounds = shapely.bounds(np.asarray(solids.areas)[hiding])
    near = (bounds[:, 0] < right) & (bounds[:, 2] > left) & (bounds[:, 1] < top) & (bounds[:, 3] > bottom)
    for index in hiding[near]:
        other, other_plane = solids.areas[index], solids.planes[index]
        if index != main:
            behind = np.flatnonzero(seen & (points @ other_plane[:2] + other_plane[2] > depth + 0.1))
            if len(behind):
                seen[behind[shapely.contains_xy(other, points[behind])]] = False
    return points, seen


def _spot_beside(solids: Solids, main: int) -> tuple[float, float] | None:
    """Return a point just outside a face that is too small for a letter, at one of its ends or sides, clear of all faces; or None."""
    if main < 0:
        return None
    box = shapely.get_coordinates(shapely.oriented_envelope(solids.areas[main]))
    if len(box) < 4:
        return None
    middle, sides = box[:4].mean(axis=0), [(box[i] + box[i + 1]) / 2.0 for i in range(4)]
    sides.sort(key=lambda side: -float(np.hypot(*(side - middle))))
    for side in sides:
        way = (side - middle) / max(float(np.hypot(*(side - middle))), 1e-9)
        at = side + (EXPLODED_ROOM + 1.0) * way
        if float(shapely.distance(solids.areas, shapely.Point(at)).min()) >= EXPLODED_ROOM:
            return float(at[0]), float(at[1])
    return None


def _label_spot(solids: Solids, main: int, least: float) -> tuple[float, float] | None:
    """Return the point of a face that is seen and lies farthest from its border and from what hides it; None where that is not
    ``least`` mm."""
    if main < 0:
        return None
    area = solids.areas[main]
    points, seen = _seen(solids, main, np.arange(len(solids.areas)))
    if not seen.any():
        return None
    room = shapely.distance(shapely.points(points[seen]), shapely.boundary(area))
    if not seen.all():
        hidden = shapely.multipoints(points[~seen])
        room = np.minimum(room, shapely.distance(shapely.points(points[seen]), hidden))
    best = int(room.argmax())
    if room[best] < least:
        return None
    x, y = points[seen][best]
    return float(x), float(y)
