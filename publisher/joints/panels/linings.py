"""Bent parts that lie along curved edges, such as a soffit under its arch: placed there, and measured. Mm."""

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Lining
from publisher.geometry import Part, polygon
from publisher.joints.panels.bent import Curve, curve_of, facets_of
from publisher.joints.panels.space import Array, PanelFrame


@record
class LiningFound:
    """A bent part along a curved edge as it is found: how far (mm) its face is off the edge where it is farthest, how far its ends
    lie from those of the edge, how much of the edge's board it does not lie over, and a point of it in the assembly."""

    lining: Lining
    along: str
    gap: float
    ends: float
    bare: float
    at: tuple[float, float, float]


def lined(lining: Lining, part: Part, part_at: dict[str, Part], frames: dict[str, PanelFrame]) -> PanelFrame | None:
    """Return the frame of a bent part whose outside lies along curved edges: middle on middle, its width from the outside face of
    the first, or as far over the last as over the first."""
    curves = [curve_of(part_at[ref.panel], ref.edge) if ref.panel in part_at else None for ref in lining.along]
    if part.bending is None or not all(curves) or not all(ref.panel in frames for ref in lining.along):
        return None
    first, host = curves[0], frames[lining.along[0].panel]
    assert isinstance(first, Curve)
    across = -host.outward
    along, out = host.axes[:, :2] @ first.along, host.axes[:, :2] @ first.inward
    far = max(float((frames[ref.panel].origin - host.origin) @ across) for ref in lining.along)
    low, high = polygon(part.outline).bounds[1::2]
    begins = (far - (high - low)) / 2.0 if len(lining.along) > 1 else 0.0
    middle = (part.bending.bends[0].start + part.bending.bends[-1].end) / 2.0
    axes = np.column_stack([along, across, out])
    at = host.point(first.middle, 0.0) + begins * across
    return PanelFrame(axes, at - axes @ np.array([middle, low, 0.0]))


def measured_lining(
    lining: Lining, part: Part, own: PanelFrame, part_at: dict[str, Part], frames: dict[str, PanelFrame]
) -> tuple[LiningFound, ...]:
    """Return how a bent part lies along each of its edges."""
    facets = facets_of(part, own)
    found = []
    for ref in lining.along:
        host, frame = part_at.get(ref.panel), frames.get(ref.panel)
        curve = curve_of(host, ref.edge) if host is not None else None
        if host is None or frame is None or curve is None:
            continue
        ends = _outside(facets)
        flat = frame.back(ends.reshape(-1, 3))
        gaps = shapely.distance(shapely.LineString(curve.points), shapely.points(flat[:, :2]))
        worst = int(gaps.argmax())
        tips = sorted((flat[0, :2], flat[-1, :2]), key=lambda tip: float(np.hypot(*(tip - curve.points[0]))))
        apart = max(float(np.hypot(*(tip - end))) for tip, end in zip(tips, curve.points[[0, -1]], strict=True))
        depths = -flat[:, 2]
        covered = max(0.0, min(float(depths.max()), host.thickness) - max(float(depths.min()), 0.0))
        x, y, z = (float(v) for v in ends.reshape(-1, 3)[worst])
        found.append(LiningFound(lining, str(ref), float(gaps[worst]), apart, host.thickness - covered, (x, y, z)))
    return tuple(found)


def _outside(facets: tuple[tuple[Part, PanelFrame], ...]) -> Array:
    """Return the corners of the facets' outsides in the assembly, both of one upright line beside each other (n, 2, 3)."""
    lines = []
    for part, frame in facets:
        left, low, right, high = polygon(part.outline).bounds
        lines += [frame.carry(np.array([[x, low, 0.0], [x, high, 0.0]])) for x in (left, right)]
    return np.array(lines)
