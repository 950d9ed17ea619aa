"""A path as straight segments and true arcs, for any writer."""

from dataclasses import dataclass
from itertools import pairwise
from math import atan2, cos, pi, sin, tan

from publisher.basics import Point


@dataclass(frozen=True, slots=True)
class Straight:
    """A line to ``end``."""

    end: Point


@dataclass(frozen=True, slots=True)
class Bow:
    """An arc to ``end`` about ``centre``: start angle and signed sweep in radians (anticlockwise positive), radius in mm."""

    end: Point
    centre: Point
    radius: float
    start: float
    sweep: float


def segments(
    points: tuple[Point, ...], closed: bool, arcs: tuple[tuple[int, int, Point, float], ...]
) -> tuple[Point, tuple[Straight | Bow, ...]]:
    """Return the first point and what follows it.

    ``arcs`` are (first, last, centre, radius): the segments from point ``first`` forward to point ``last`` lie on a circle; in a
    closed path indices wrap, and first == last means the whole ring. The walk of a closed path starts where no arc is cut in two.
    """
    n = len(points)
    count = n if closed else n - 1
    starts = {first % n: (last, centre, radius) for first, last, centre, radius in arcs}
    inside: set[int] = set()
    for first, last, _, _ in arcs:
        length = (last - first) % n or n
        inside.update((first + k) % n for k in range(1, length))
    begin = next((i for i in range(n) if i not in inside), 0) if closed else 0
    out: list[Straight | Bow] = []
    done = 0
    while done < count:
        i = (begin + done) % n
        arc = starts.get(i)
        if arc is None:
            done += 1
            out.append(Straight(points[(begin + done) % n]))
            continue
        last, centre, radius = arc
        steps = (last - i) % n or n
        ring = [points[(i + k) % n] for k in range(steps + 1)]
        angles = [atan2(y - centre[1], x - centre[0]) for x, y in ring]
        sweep = sum((b - a + pi) % (2 * pi) - pi for a, b in pairwise(angles))
        out.append(Bow(ring[-1], centre, radius, angles[0], sweep))
        done += steps
    return points[begin], tuple(out)


def beziers(bow: Bow) -> tuple[tuple[Point, Point, Point], ...]:
    """Return the arc as cubic Béziers of at most 45°, each as (control, control, end) in mm.

    Control points at 4/3·tan(sweep/4) of the radius along the tangents (the usual form; its radial error at 45° is
    4·10⁻⁶ of the radius: 0.001 mm at 300 mm).
    """
    pieces = max(1, int(abs(bow.sweep) / (pi / 4) + 1 - 1e-9))
    step = bow.sweep / pieces
    reach = 4.0 / 3.0 * tan(step / 4) * bow.radius
    cx, cy = bow.centre
    out = []
    for k in range(pieces):
        a, b = bow.start + k * step, bow.start + (k + 1) * step
        xa, ya = cx + bow.radius * cos(a), cy + bow.radius * sin(a)
        xb, yb = cx + bow.radius * cos(b), cy + bow.radius * sin(b)
        end = bow.end if k == pieces - 1 else (xb, yb)
        out.append(((xa - reach * sin(a), ya + reach * cos(a)), (xb + reach * sin(b), yb - reach * cos(b)), end))
    return tuple(out)
