"""What a brush or a pencil gets at: drawn faces with room before them. Mm."""

from collections.abc import Iterator, Sequence
from math import sqrt

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import polygon
from publisher.joints.assembled import Assembled
from publisher.joints.building.movers import Mover
from publisher.joints.building.sites import sites_of
from publisher.joints.outlines import Array, united
from publisher.joints.panels import Panel, is_facet, section_of

BRUSH_REACH = 25.0
"""mm: a hand's brush or blunt pencil needs as much room, and gets as far in from the open (common practice, no source)."""

LOOKS = 6
"""Planes before a face on which other boards are looked for."""

LEAST_SHADOW = 1.0  # mm²: of what is beside a face, and not before it
LOOK_APART = 12.0  # mm between the places of a face from which is looked for the open
MOST_SPOTS = 400  # of a larger face they lie farther apart
LEAST_SHUT = (2.0 * BRUSH_REACH) ** 2  # mm²: a patch that a brush does not reach from its border
LEAST_SHUT_BY = 3  # boards that close a room before a face, at least
SHUT_CRACK = 3.0
"""mm by which boards that close a room may stand apart, or be bevelled: no brush goes through that."""
NEAREST = 0.5  # mm before a face: what is nearer lies on it


@record
class Within:
    """The drawn face of a mover, as it is looked at: ``by`` what stands closest before what is out of reach ('' where all is within
    reach), ``gap`` mm off; ``shut``: it has room before it, in a room that is closed all round."""

    name: str
    by: str
    gap: float
    shut: bool = False


def closed_in(subject: Assembled, assembly: str, there: Sequence[str], parts: Sequence[str]) -> Iterator[Within]:
    """Yield the drawn faces of those parts that stand in an assembly, each with what closes it in; of things on things each board
    with what other things have before it."""
    site = sites_of(subject)[assembly]
    movers = [site.movers[name] for name in there]
    for mover in movers:
        others = [other for other in movers if other is not mover]
        if site.made_of:
            boards = [panel for panel in mover.panels if panel.part.id in parts and not is_facet(panel.part)]
            yield from (_looked_at(f"{mover.name}.{panel.name}", panel, others) for panel in boards)
        elif mover.part in parts and not mover.bent:
            yield _looked_at(mover.name, mover.panels[0], others)


def _looked_at(name: str, panel: Panel, others: Sequence[Mover]) -> Within:
    face = polygon(panel.part.outline)
    covered = united([_before(other, panel, NEAREST) for other in others])
    free = shapely.difference(face, covered)
    shadows: dict[str, list[tuple[float, shapely.Geometry]]] = {}
    for gap in np.linspace(NEAREST, BRUSH_REACH, LOOKS)[1:]:
        for other in others:
            shadow = shapely.intersection(_before(other, panel, float(gap)), free)
            if shadow.area > LEAST_SHADOW:
                shadows.setdefault(other.name, []).append((float(gap), shadow))
    every = united([shadow for own in shadows.values() for _, shadow in own])
    if shapely.buffer(every, -BRUSH_REACH, quad_segs=4).is_empty:
        return _shut_in(name, panel, free, others)
    by = max(shadows, key=lambda other: max(float(shadow.area) for _, shadow in shadows[other]))
    return Within(name, by, shadows[by][0][0])


def _shut_in(name: str, panel: Panel, free: shapely.Geometry, others: Sequence[Mover]) -> Within:
    """Tell whether a face that has room before it lies in a room that is closed all round: no line from it leads into the open."""
    outside = Within(name, "", BRUSH_REACH)
    points, apart = _spots(free)
    boards = [(other.name, board) for other in others for board in other.panels]
    if not len(points) or len(boards) < LEAST_SHUT_BY:
        return outside
    starts = np.array([panel.frame.point((float(x), float(y)), -NEAREST) for x, y in points])
    ways = _ways_off(panel.frame.axes)
    met = [(by, _met(board, starts, ways)) for by, board in boards]
    shut = np.any([np.isfinite(far) for _, far in met], axis=0).all(axis=1)
    if shut.sum() * apart**2 < LEAST_SHUT:
        return outside
    gap, by = min((float(far[shut, 0].min()), by) for by, far in met)
    return Within(name, by, gap + NEAREST, shut=True)


def _spots(free: shapely.Geometry) -> tuple[Array, float]:
    """Return points of a face and how far apart (mm) they lie: a brush, or more where the whole face would else have too many."""
    low_x, low_y, high_x, high_y = free.bounds if not free.is_empty else (0.0, 0.0, 0.0, 0.0)
    apart = max(LOOK_APART, sqrt((high_x - low_x) * (high_y - low_y) / MOST_SPOTS))
    x, y = np.meshgrid(*(np.arange(a + apart / 2.0, b, apart) for a, b in ((low_x, high_x), (low_y, high_y))))
    x, y = x.ravel(), y.ravel()
    inside = shapely.contains_xy(free, x, y) if len(x) else np.zeros(0, dtype=np.bool_)
    return np.asarray(np.column_stack([x, y])[inside]), apart


def _ways_off(axes: Array) -> Array:
    """Return unit vectors off a face: straight, then at 30, 60 and 80 degrees to that all round."""
    tilts, turns = np.radians((30.0, 60.0, 80.0)), np.radians(np.arange(0.0, 360.0, 30.0))
    tilt, turn = (angle.ravel() for angle in np.meshgrid(tilts, turns))
    own = np.column_stack([np.sin(tilt) * np.cos(turn), np.sin(tilt) * np.sin(turn), np.cos(tilt)])
    return np.asarray(np.vstack([[0.0, 0.0, 1.0], own]) @ axes.T)


def _met(board: Panel, starts: Array, ways: Array) -> Array:
    """Return how far (mm) from each start (m, 3) each way (n, 3) meets the middle of a board: (m, n), inf where it never does."""
    axes, middle = board.frame.axes, board.frame.point((0.0, 0.0), board.part.thickness / 2.0)
    own, along = (starts - middle) @ axes, ways @ axes
    with np.errstate(divide="ignore", invalid="ignore"):
        far = -own[:, None, 2] / along[None, :, 2]
        x, y = (own[:, None, n] + far * along[None, :, n] for n in (0, 1))
    ahead = np.isfinite(far) & (far > 0.0)
    hit = np.zeros(far.shape, dtype=np.bool_)
    if ahead.any():
        hit[ahead] = shapely.contains_xy(shapely.buffer(polygon(board.part.outline), SHUT_CRACK), x[ahead], y[ahead])
    return np.where(hit, far, np.inf)


def _before(other: Mover, panel: Panel, gap: float) -> shapely.Geometry:
    """Return the section of a mover by the plane ``gap`` mm before a board's drawn face, in its coordinates."""
    return united([section_of(board, panel.frame, -gap) for board in other.panels])
