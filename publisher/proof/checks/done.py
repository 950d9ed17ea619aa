"""The sketches of what a step does to its parts: each part in its own shape, with how many there are, and what is right and wrong."""

import re
from collections.abc import Iterator
from functools import partial
from itertools import combinations

import numpy as np
import shapely

from publisher.basics import Box, Carried, Check, DonePromise, Findings
from publisher.proof.checks.frame import carried_faults, judged
from publisher.proof.measuring import CARRIED_TOLERANCE, CLOSED_UP, Case, carried_lines, lines_in, met_by, strokes_in
from publisher.proof.reading import Array, normal

MOST_HIDDEN = 0.3  # of the outline of a part: a tool, a rule, a letter or a flag may lie on it
AT_AN_END, TRIED_EACH = (
    0.3,
    0.5,
)  # mm within which a point of an outline lies at its end, and from one that is tried to the next
MOST_OF_AN_END = 0.75  # of what lies at one of its four ends: more is missing, and that end is hidden
ENDS_HIDDEN = 1  # a rule may lie along one; with two the part may be drawn larger
TICK = np.array(((1.4, -1.4), (2.6, 4.2)))  # mm: the strokes of a tick, at full size
LIKE_A_TICK = 0.05  # of its size, by which one may be off
SIGN_WIDE = 0.49  # mm: signs are drawn with thicker lines than what they speak of
LEAST_CROSS = 3.0  # mm: no cross that says “wrong” is smaller


@judged(
    "proof/done",
    "Sketches show what a step does, and to what",
    "a buyer who looks at the pictures alone takes the parts that they show, and as many: each part that a step works on stands in the "
    f"sketch of that act in its own shape, no more than {MOST_HIDDEN:.0%} of it under tools and words, with its letter and count; what "
    "is right is ticked, and what is wrong is crossed out, as often as the act has it",
    may_be_empty=True,
)
def done_shown(case: Case, check: Check[Case]) -> Findings:
    """Look for each part of each act where a page says that it is shown."""
    hint = "draw the act with all its parts, each from its own outline"
    for promise in case.promises.done:
        what = f"part {promise.letter} in the sketch of “{promise.act.replace('_', ' ')}” (step {promise.key.split(':')[1]})"
        judge = partial(_fault, case, promise)
        yield from carried_faults(case, check, promise.key, what, hint, judge, f": {what}")
    return len(case.promises.done)


def _fault(case: Case, promise: DonePromise, where: Carried) -> str:
    """Return in words what is wrong with a part in a sketch; empty when nothing."""
    ink = case.ink(where.page)
    if ink is None:
        return "is missing"
    grown = where.box.grown(CARRIED_TOLERANCE)
    rings, strokes = carried_lines(where, promise.rings), strokes_in(ink, grown)
    found = met_by(rings, strokes, CLOSED_UP)
    ends = [met_by(points, strokes) for points in _ends(rings[0])]
    larger = sum(end.missing > MOST_OF_AN_END * end.tried for end in ends) > ENDS_HIDDEN
    if found.missing > MOST_HIDDEN * found.tried or larger:
        return f"is not drawn in its own shape: no line at {found.at[0]:.1f}, {found.at[1]:.1f} mm"
    said = normal("   ".join(line.text for line in lines_in(case.lines(where.page), where.box)))
    wanted = f"{promise.count} × {promise.letter}" if promise.count else promise.letter
    if not re.search(rf"(?<![\w.]){re.escape(normal(wanted))}(?![\w.])", said):
        return f"has no “{wanted}” at it"
    lines = [
        ink.points[a:b]
        for a, b, width in zip(ink.starts[:-1], ink.starts[1:], ink.width, strict=True)
        if width >= SIGN_WIDE
    ]
    inside = [line for line in lines if len(line) and _lies_in(line, grown)]
    for sign, wants, has in (
        ("tick", promise.right, _ticks(inside)),
        ("cross", promise.wrong, _crosses(inside, _grounds(case, where))),
    ):
        if has != wants:
            return f"stands in a sketch with {has} of the sign “{sign}”, where {wants} belong"
    return ""


def _ends(ring: Array) -> Iterator[list[Array]]:
    """Yield what lies farthest to the left, right, bottom and top of an outline: points of it there, each as a line of no length."""
    line = shapely.LineString(ring)
    points = shapely.get_coordinates(shapely.segmentize(line, TRIED_EACH))
    for axis in (0, 1):
        for end in (points[:, axis].min(), points[:, axis].max()):
            yield [np.array((point, point + 1e-3)) for point in points[np.abs(points[:, axis] - end) <= AT_AN_END]]


def _lies_in(line: Array, box: Box) -> bool:
    (left, bottom), (right, top) = line.min(axis=0), line.max(axis=0)
    return bool(box.left <= left and box.bottom <= bottom and right <= box.right and top <= box.top)


def _ticks(lines: list[Array]) -> int:
    """Count ticks: two strokes, down and up, of their own proportion."""
    found = 0
    for line in lines:
        if len(line) == 3:
            ways = np.diff(line, axis=0)
            size = ways[0, 0] / TICK[0, 0]
            found += bool(size > 0 and np.abs(ways - TICK * size).max() <= LIKE_A_TICK * size * TICK.max())
    return found


def _grounds(case: Case, where: Carried) -> shapely.Geometry:
    """Return what all parts of a sketch cover: lines that cross on them are their own."""
    return shapely.union_all(
        [
            shapely.Polygon(carried_lines(other, one.rings)[0])
            for one in case.promises.done
            for other in case.carried(one.key)
            if (other.page, other.box) == (where.page, where.box)
        ]
    )


def _crosses(lines: list[Array], grounds: shapely.Geometry) -> int:
    """Count crosses: two straight strokes from corner to corner of one box, which lies off all parts."""
    straight = [line for line in lines if len(line) == 2 and np.ptp(line, axis=0).min() >= LEAST_CROSS]
    straight = [line for line in straight if not shapely.contains_xy(grounds, *line.mean(axis=0))]
    boxes = [(*line.min(axis=0), *line.max(axis=0)) for line in straight]
    falls = [bool(np.prod(line[1] - line[0]) < 0) for line in straight]
    return sum(
        falls[a] != falls[b] and bool(np.abs(np.subtract(boxes[a], boxes[b])).max() <= CARRIED_TOLERANCE)
        for a, b in combinations(range(len(straight)), 2)
    )
