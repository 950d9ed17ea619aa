"""Arcs as Béziers, for writers that know no arcs."""

from math import cos, radians, sin, tan

from publisher.basics import Arc, Point, angle


def beziers(arc: Arc) -> tuple[tuple[Point, Point, Point], ...]:
    """Return the arc as cubic Béziers of at most 45°, each as (control, control, end) in mm.

    Control points at 4/3·tan(sweep/4) of the radius along the tangents (the usual form; its radial error at 45° is
    4·10⁻⁶ of the radius: 0.001 mm at 300 mm).
    """
    sweep, first, (cx, cy) = radians(arc.sweep), angle(arc.centre, arc.start), arc.centre
    pieces = arc.parts
    step = sweep / pieces
    reach = 4.0 / 3.0 * tan(step / 4) * arc.radius
    out = []
    for k in range(pieces):
        a, b = first + k * step, first + (k + 1) * step
        xa, ya = cx + arc.radius * cos(a), cy + arc.radius * sin(a)
        xb, yb = cx + arc.radius * cos(b), cy + arc.radius * sin(b)
        end = arc.end if k == pieces - 1 else (xb, yb)
        out.append(((xa - reach * sin(a), ya + reach * cos(a)), (xb + reach * sin(b), yb - reach * cos(b)), end))
    return tuple(out)
