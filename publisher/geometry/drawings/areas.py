"""Areas by fill rule: rings of points in mm to shapely polygons, with a guard against drawings that cross themselves endlessly."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import Point
from publisher.geometry.drawings.tree import Unreadable
from publisher.geometry.paths import next_of

MOST_CROSSINGS = 30_000  # pairs of segments whose boxes meet, beyond neighbours
_SPECK = 1e-9  # mm²: less is rounding where an edge runs along a clip
_SAMPLE = 256
_UNITS = 1e6  # steps per mm of the clipping library, which works in whole numbers
_GOLDEN = 0.6180339887498949


def filled(rings: Sequence[Sequence[Point]], rule: str) -> BaseGeometry:
    """Return the area (mm) that rings fill by ``evenodd`` or ``nonzero``; open rings count as closed."""
    rings = [ring for ring in rings if len(ring) > 2]
    if not rings:
        return shapely.Polygon()
    if len(rings) == 1:
        whole = shapely.Polygon(rings[0])
        if whole.is_valid:
            return whole
    guard(rings)
    return _by_rule(rings, rule)


def _by_rule(rings: Sequence[Sequence[Point]], rule: str) -> BaseGeometry:
    """Return the union by winding number (Vatti's algorithm of the clipping library)."""
    import pyclipper

    how = pyclipper.PFT_EVENODD if rule == "evenodd" else pyclipper.PFT_NONZERO
    clipper = pyclipper.Pyclipper()
    added = False
    for ring in rings:
        whole = np.rint(np.asarray(ring) * _UNITS).astype(np.int64).tolist()
        try:
            clipper.AddPath(whole, pyclipper.PT_SUBJECT, True)
            added = True
        except pyclipper.ClipperException:  # a ring without area
            continue
    if not added:
        return shapely.Polygon()
    tree: Any = clipper.Execute2(pyclipper.CT_UNION, how, how)
    pieces: list[shapely.Polygon] = []
    outers = list(tree.Childs)
    while outers:
        outer = outers.pop()
        holes = [np.asarray(hole.Contour) / _UNITS for hole in outer.Childs if len(hole.Contour) > 2]
        for hole in outer.Childs:
            outers.extend(hole.Childs)
        if len(outer.Contour) > 2:
            pieces.append(shapely.Polygon(np.asarray(outer.Contour) / _UNITS, holes))
    # rings may touch themselves at a point: a buffer of nothing parts them there
    sound = shapely.get_parts(shapely.buffer(pieces, 0.0)) if pieces else []
    return shapely.MultiPolygon([piece for piece in sound if piece.area > _SPECK])


def united(regions: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return the union of regions (mm)."""
    parts = [part for region in regions for part in shapely.get_parts(region) if part.geom_type == "Polygon"]
    if len(regions) < 2 or len(parts) < 2:
        return shapely.MultiPolygon(parts)
    turned = [shapely.orient_polygons(part) for part in parts]  # outsides and holes run opposite ways: they cancel
    rings = [ring.coords for part in turned for ring in (part.exterior, *part.interiors)]
    guard(rings)
    return _by_rule(rings, "nonzero")


def clipped(region: BaseGeometry, clips: Sequence[BaseGeometry]) -> BaseGeometry:
    """Return what of a region lies inside all clips (mm); the region itself when no clip cuts it."""
    for clip in clips:
        if region.is_empty:
            break
        if not clip.covers(region):
            # a region that only touches the clip's edge leaves a line there, which is no area
            shared = shapely.get_parts(shapely.intersection(region, clip))
            region = shapely.MultiPolygon(
                [piece for piece in shared if piece.geom_type == "Polygon" and piece.area > _SPECK]
            )
    return region


def guard(rings: Sequence[Sequence[Point]]) -> None:
    """Refuse rings whose segments meet each other so often that no area could be worked out in time.

    Segments spread evenly over all of them by the golden ratio are looked up in an index of all; the mean count of boxes that
    meet, less a segment and its neighbours, is scaled up to the whole.
    """
    arrays = [np.asarray(ring, dtype=float) for ring in rings if len(ring) > 1]
    count = sum(len(array) for array in arrays)
    if count < 100:
        return
    starts = np.concatenate(arrays)
    ends = np.concatenate([next_of(array) for array in arrays])
    (left, bottom), (right, top) = np.minimum(starts, ends).T.copy(), np.maximum(starts, ends).T.copy()
    chosen = np.unique((np.arange(_SAMPLE) * _GOLDEN % 1.0 * count).astype(int))
    met = 0
    for i in chosen.tolist():
        beside = (left <= right[i]) & (right >= left[i])
        met += int(np.count_nonzero(beside & (bottom <= top[i]) & (top >= bottom[i]))) - 3
    crossings = max(0, met) * count / len(chosen) / 2.0
    if crossings > MOST_CROSSINGS:
        raise Unreadable(
            "the drawing's lines cross each other too often to work out its areas",
            "simplify the path, or draw textures as lines of their own",
        )
