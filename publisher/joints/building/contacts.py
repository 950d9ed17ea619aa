"""Which pieces are glued to each other: panels that share a face, whether a line of the spec says so or both only come to stand so, and
what a part is cut in with the plates behind its seams. Mm."""

from collections.abc import Iterable
from itertools import combinations

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import record, remembered
from publisher.design import PanelPlan
from publisher.geometry import Edge, LaidSeam, Part, polygon
from publisher.joints.assembled import Assembled
from publisher.joints.building.movers import Mover, faces_of, movers_of
from publisher.joints.outlines import Array, widest_strip
from publisher.joints.panels import PANEL_TOUCH

GluedPair = frozenset[str]
Regions = npt.NDArray[np.object_]

OPPOSITE = 1e-3
"""One more than the cosine between the normals of two faces that lie flat on each other."""

GLUED_WIDE = 0.5
"""Of the thinner board: a common face that is narrower is a corner at which two pieces pass each other. An assumption."""

GLUED_LONG = 1.5
"""Of the thinner board: the same of a face that is no longer than that."""

SAWN = 1e-3  # mm: half the width of what is taken away where a part is cut, to tell its pieces apart
SAWN_LONG = 1.0  # mm, or mm²: pieces that share less pass each other at a corner


@record
class _Flat:
    """One face of a mover: its outward normal, how far along it the face lies, and its rings in space, the outer one first."""

    normal: Array
    level: float
    rings: tuple[Array, ...]


def glued_pairs(subject: Assembled, plan: PanelPlan) -> tuple[GluedPair, ...]:
    """Return the pairs of panels that are glued to each other: by joins, by what rests and is put somewhere, by bent linings; and among
    what these hold together all pairs that share a face as they stand. What lifts off is glued to nothing that it lies on, and what
    hangs together by a fold is one piece; nor are the tabs that come through a board glued to what is put over them there."""
    folded = {frozenset((j.a.panel, j.b.panel)) for j in plan.joins if j.joint == "fold"}
    said = {
        *(frozenset((j.a.panel, j.b.panel)) for j in plan.joins),
        *(frozenset((seat.panel, seat.host)) for seat in plan.seats),
        *(frozenset((rest.panel, ref.panel)) for rest in plan.rests if not rest.loose for ref in rest.on),
        *(frozenset((lining.panel, ref.panel)) for lining in plan.linings for ref in lining.along),
    }
    group = _groups((place.name for place in plan.places), said)
    movers = movers_of(subject, plan.name)
    unsaid = (
        frozenset((one.name, other.name))
        for one, other in combinations(movers, 2)
        if group[one.name] == group[other.name]
        and frozenset((one.name, other.name)) not in said
        and _share_a_face(one, other, *(_edges_with_tabs(plan, mover) for mover in (one, other)))
    )
    return tuple(sorted({*said, *unsaid} - folded, key=sorted))


def _groups(names: Iterable[str], pairs: Iterable[GluedPair]) -> dict[str, str]:
    """Return for each name one that stands for all that hangs together with it."""
    every = tuple(pairs)
    of = {name: name for name in (*names, *(name for pair in every for name in pair))}
    for pair in every:
        new = of[min(pair)]
        old = {of[name] for name in pair}
        of = {name: new if own in old else own for name, own in of.items()}
    return of


def _edges_with_tabs(plan: PanelPlan, mover: Mover) -> tuple[Edge, ...]:
    refs = (ref for join in plan.joins for ref in (join.a, join.b) if join.tabs_on == mover.name == ref.panel)
    return tuple(edge for ref in refs if (edge := mover.panels[0].part.edge(ref.edge)) is not None)


def _share_a_face(one: Mover, other: Mover, tabbed: tuple[Edge, ...], tabbed_other: tuple[Edge, ...]) -> bool:
    """Tell whether two movers lie on each other with a face of each, more than by a corner, their tabs left out."""
    a, b = faces_of(one), faces_of(other)
    if (a.low > b.high + PANEL_TOUCH).any() or (b.low > a.high + PANEL_TOUCH).any():
        return False
    thin = min(panel.part.thickness for mover in (one, other) for panel in mover.panels)
    own, its = _flats(one), _flats(other)
    normals, levels = (
        [np.array([getattr(f, what) for f in faces]) for faces in (own, its)] for what in ("normal", "level")
    )
    flat = normals[0] @ normals[1].T < OPPOSITE - 1.0
    on = np.argwhere(flat & (np.abs(levels[0][:, None] + levels[1][None, :]) <= PANEL_TOUCH))
    facing = ((own[int(i)], its[int(j)]) for i, j in on)
    return any(
        _is_glued(_common(face, beside), thin)
        for face, beside in facing
        if not _of_tabs(face, one, tabbed) and not _of_tabs(beside, other, tabbed_other)
    )


def _of_tabs(face: _Flat, mover: Mover, tabbed: tuple[Edge, ...]) -> bool:
    """Tell whether a face lies beyond one of the edges out of which tabs stand."""
    flat = mover.panels[0].frame.back(np.vstack(face.rings))[:, :2]
    for edge in tabbed:
        start, way = np.asarray(edge.start), np.subtract(edge.end, edge.start)
        beyond = (flat - start) @ np.array([way[1], -way[0]]) / np.hypot(*way)
        if beyond.min() > -PANEL_TOUCH and beyond.max() > PANEL_TOUCH:
            return True
    return False


def _is_glued(common: shapely.Geometry, thin: float) -> bool:
    if common.area < GLUED_WIDE * GLUED_LONG * thin * thin:
        return False
    return any(
        widest_strip(piece) >= GLUED_WIDE * thin and piece.length / 2.0 >= (GLUED_WIDE + GLUED_LONG) * thin
        for piece in shapely.get_parts(common)
        if isinstance(piece, shapely.Polygon)
    )


def glued_along_seams(part: Part) -> int:
    """Return how many times two of the pieces that a part is cut in are glued to each other, and plates to the pieces behind which they
    lie."""
    lines = [shapely.LineString(seam.line) for seam in part.seams]
    if not lines:
        return 0
    body = shapely.difference(polygon(part.outline), shapely.buffer(shapely.union_all(lines), SAWN))
    pieces: Regions = shapely.buffer([piece for piece in shapely.get_parts(body) if piece.area > 1.0], 2.0 * SAWN)
    return sum(_glued_at(seam, pieces) for seam in part.seams)


def _glued_at(seam: LaidSeam, pieces: Regions) -> int:
    """Return the joints of one seam: of each two pieces beside it, and of its plate with every piece over it."""
    along = shapely.intersection(shapely.LineString(seam.line), pieces)
    pairs = sum(bool(one.intersection(other).length > SAWN_LONG) for one, other in combinations(along, 2))
    if seam.plate is None:
        return pairs
    left, bottom, right, top = polygon(seam.plate.outline).bounds
    x, y = seam.at
    plate = shapely.box(x + left, y + bottom, x + right, y + top)
    return pairs + sum(bool(shapely.intersection(plate, piece).area > SAWN_LONG) for piece in pieces)


@remembered
def _flats(mover: Mover) -> tuple[_Flat, ...]:
    faces = faces_of(mover)
    broad = zip(faces.broad_normals, faces.broad, strict=True)
    narrow = zip(faces.narrow_normals, ((quad,) for quad in faces.narrow), strict=True)
    return tuple(_Flat(n, float(n @ rings[0][0]), rings) for n, rings in (*broad, *narrow))


def _common(one: _Flat, other: _Flat) -> shapely.Geometry:
    """Return what two faces in one plane have in common, seen from above it."""
    side = np.eye(3)[int(np.abs(one.normal).argmin())]
    across = np.cross(one.normal, side)
    plane = np.column_stack([across, np.cross(one.normal, across)]) / np.linalg.norm(across)
    return shapely.intersection(*(_area(face.rings, plane) for face in (one, other)))


def _area(rings: tuple[Array, ...], plane: Array) -> shapely.Geometry:
    return shapely.make_valid(shapely.Polygon(rings[0] @ plane, [ring @ plane for ring in rings[1:]]))
