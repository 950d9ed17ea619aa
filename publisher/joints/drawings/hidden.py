"""Visible stretches of edges in space among flat faces: each edge minus the union of the faces in front of it."""

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import record
from publisher.geometry import mitred
from publisher.joints.outlines import Array

Indices = npt.NDArray[np.int64]

HIDDEN_DEPTH = 0.02
"""mm by which a face must lie nearer to the viewer than an edge to hide it: an edge on a face is seen."""

RIM = 0.02
"""mm by which faces are drawn in, so that an edge along the border of a face in front of it does not flicker."""


@record
class FrontFaces:
    """Faces that look towards the viewer: their areas in the drawing, and their planes, depth = p·x + q·y + r (mm)."""

    areas: Array  # of shapely polygons
    planes: Array  # (n, 3)


def visible(edges: Array, faces: FrontFaces) -> tuple[Array, Indices]:
    """Return the visible stretches of edges (m, 2, 3: x, y, depth towards the viewer) as (k, 2, 2), and the edge of each."""
    count = len(edges)
    if count == 0:
        return np.zeros((0, 2, 2)), np.zeros(0, dtype=np.int64)
    starts, ends = edges[:, 0], edges[:, 1]
    flat = np.hypot(*(ends - starts)[:, :2].T)
    areas = mitred(faces.areas, -RIM)
    tree = shapely.STRtree(areas)
    edge_at, face_at = tree.query(shapely.linestrings(edges[:, :, :2]))
    near, far = _in_front(starts[edge_at], ends[edge_at], faces.planes[face_at])
    some = (far - near) * flat[edge_at] > 1e-6
    edge_at, face_at, near, far = edge_at[some], face_at[some], near[some], far[some]
    way = (ends - starts)[edge_at][:, :2]
    clipped = np.stack(
        [starts[edge_at][:, :2] + near[:, None] * way, starts[edge_at][:, :2] + far[:, None] * way], axis=1
    )
    lines = shapely.linestrings(clipped)
    kept = _needed(edge_at, lines, areas[face_at], (near <= 0.0) & (far >= 1.0))
    edge_at, face_at = edge_at[kept], face_at[kept]
    cut = shapely.intersection(lines[kept], areas[face_at])
    parts, of = shapely.get_parts(cut, return_index=True)
    line = (shapely.get_type_id(parts) == 1) & ~shapely.is_empty(parts)
    parts, of = parts[line], of[line]
    if not len(parts):
        return edges[:, :, :2], np.arange(count)
    first = shapely.get_coordinates(shapely.get_point(parts, 0))
    last = shapely.get_coordinates(shapely.get_point(parts, -1))
    owner = edge_at[of]
    unit = (ends - starts)[owner][:, :2] / flat[owner][:, None] ** 2
    a = ((first - starts[owner][:, :2]) * unit).sum(axis=1)
    b = ((last - starts[owner][:, :2]) * unit).sum(axis=1)
    return _remainders(edges, flat, owner, np.minimum(a, b), np.maximum(a, b))


def _needed(edge_at: Indices, lines: Array, faces: Array, whole: npt.NDArray[np.bool_]) -> npt.NDArray[np.bool_]:
    """Tell which pairs of a line and a face in front of it must be cut: those that meet, and for an edge that one face hides
    all along (where ``whole``: the line is the whole edge) no other. Prepared faces answer that far faster than they cut."""
    shapely.prepare(faces)
    meets = shapely.intersects(faces, lines)
    hides = np.zeros(len(lines), dtype=bool)
    hides[meets & whole] = shapely.covers(faces[meets & whole], lines[meets & whole])
    gone = np.zeros(int(edge_at.max(initial=-1)) + 1, dtype=bool)
    gone[edge_at[hides]] = True
    first = np.zeros(len(lines), dtype=bool)
    at = np.flatnonzero(hides)
    first[at[np.unique(edge_at[at], return_index=True)[1]]] = True
    needed: npt.NDArray[np.bool_] = first | (meets & ~gone[edge_at])
    return needed


def _in_front(starts: Array, ends: Array, planes: Array) -> tuple[Array, Array]:
    """Return the stretch (share of the edge, from and to) along which each face lies nearer to the viewer than its edge."""
    f0 = (planes[:, :2] * starts[:, :2]).sum(axis=1) + planes[:, 2] - starts[:, 2] - HIDDEN_DEPTH
    f1 = (planes[:, :2] * ends[:, :2]).sum(axis=1) + planes[:, 2] - ends[:, 2] - HIDDEN_DEPTH
    slope = np.where(f0 == f1, 1.0, f0 - f1)
    cross = np.clip(f0 / slope, 0.0, 1.0)
    near = np.where(f0 > 0, 0.0, np.where(f1 > 0, cross, 1.0))
    far = np.where(f1 > 0, 1.0, np.where(f0 > 0, cross, 0.0))
    return near, np.maximum(near, far)


def _remainders(edges: Array, flat: Array, owner: Indices, low: Array, high: Array) -> tuple[Array, Indices]:
    """Return what is left of every edge when its hidden stretches (share of its length) are taken away."""
    order = np.lexsort((low, owner))
    owner, low, high = owner[order], low[order], high[order]
    begins = np.searchsorted(owner, np.arange(len(edges)))
    stops = np.searchsorted(owner, np.arange(len(edges)), side="right")
    left: list[tuple[int, float, float]] = []
    for edge, (begin, stop) in enumerate(zip(begins.tolist(), stops.tolist(), strict=True)):
        at, least = 0.0, 3 * RIM / max(flat[edge], 1e-9)
        for i in range(begin, stop):
            if low[i] > at + least:
                left.append((edge, at, float(low[i])))
            at = max(at, float(high[i]))
        if at < 1.0 - least:
            left.append((edge, at, 1.0))
    which = np.array([e for e, _, _ in left], dtype=np.int64)
    share = np.array([(a, b) for _, a, b in left]).reshape(-1, 2)
    start, way = edges[which, 0, :2], (edges[which, 1] - edges[which, 0])[:, :2]
    return start[:, None, :] + share[:, :, None] * way[:, None, :], which
