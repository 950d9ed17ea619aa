"""Seams of a split part: where one may cross it, and the cut itself."""

from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import Finding, LineKind, Point, Purpose, record
from publisher.basics.wording import lengths_apart, say_length
from publisher.design import SplitPlan
from publisher.geometry.model import Part, Region
from publisher.geometry.paths import eroded, next_of, one_before, oriented, polygon, recover, straight
from publisher.geometry.rules import SPLIT_OUTSIDE, SPLIT_PLACE

SEAM_CLEAR = 10.0  # mm of board between a seam and any opening, slot, tab, notch, inner corner or end (common practice, no source)
SHORTEST_PLATE = 20.0  # mm: a shorter plate holds nothing
_CORNER = 0.35  # sine of the least inward turn that counts as an inner corner; flattened arcs turn by less
_FAR = (-10.0, -10.0, 10.0, 10.0)  # mm beyond the part, so that only the seam cuts it
_JOINTS = (".tab", ".slot", ".lap")


@record
class Seam:
    """A split laid on its part: ``at`` mm along x (``axis`` 0: the seam runs upright) or along y (``axis`` 1)."""

    plan: SplitPlan
    axis: int
    at: float

    @property
    def beside(self) -> float:
        """How far (mm) from its middle it needs whole board."""
        return max(SEAM_CLEAR + self.plan.step / 2.0, self.plan.plate / 2.0)


@record
class Half:
    """What lies on one side of a seam: the finished piece and its template."""

    outline: Region
    template: Region


@record
class Cut:
    """Both sides of a seam, the lower or left one first; the seam's line; and what was cut."""

    low: Half
    high: Half
    line: shapely.LineString
    seam: Seam
    body: shapely.Polygon


def seam_of(part: Part, plan: SplitPlan) -> Seam:
    """Return the seam in the part's own coordinates."""
    axis = 0 if plan.start == "left" else 1
    return Seam(plan, axis, polygon(part.outline).bounds[axis] + plan.at)


def misplaced(part: Part, seam: Seam, before: Sequence[Seam]) -> Iterator[Finding]:
    """Find a seam that misses its part, or runs too near to what must stay whole. ``before``: seams of the part so far."""
    body, plan = polygon(part.outline), seam.plan
    low, high = body.bounds[seam.axis], body.bounds[seam.axis + 2]
    end, subject = ("left" if seam.axis == 0 else "lower") + " end", f"part {part.id}"
    if not low < seam.at < high:
        at, long = lengths_apart(plan.at, high - low)
        yield SPLIT_OUTSIDE.found(
            f"the seam {at} from the {end} of part “{part.id}” misses it: it is {long} long",
            subject=subject,
            hint=f"write an “at” between {say_length(seam.beside)} and {say_length(high - low - seam.beside)}",
            place=plan.place,
            value=plan.at,
            limit=high - low if plan.at > 0.0 else 0.0,
        )
        return
    taken = [*_taken(part, seam.axis, seam.beside, low, high), *_other_seams(seam, before)]
    near = next((what for what, a, b in taken if a < seam.at < b), "")
    if not near and not _fits(body, seam, seam.at, part.thickness):
        near = "an outline that leaves it too little room"
    if near:
        free = _nearest(body, seam, taken, part.thickness)
        yield SPLIT_PLACE.found(
            f"the seam {say_length(plan.at)} from the {end} of part “{part.id}” meets {near}; it needs "
            f"{say_length(seam.beside)} of whole board on either side",
            subject=subject,
            hint="no place is free for such a seam: make its plate or step smaller, or move what is in the way"
            if free is None
            else f"the nearest free place is {say_length(free)} from the {end}: write at: {free:g} mm",
            place=plan.place,
            value=plan.at,
            limit=free,
        )


def cut_in_two(region: Region, template: Region, seam: Seam, name: str, allowance: float = 0.0) -> Cut | None:
    """Return both sides of a seam with their edges, those of the seam called ``name``; None when there are not just two.

    ``template`` is cut ``allowance`` mm to either side of the seam, where the pencil runs.
    """
    body, axis, half = polygon(region), seam.axis, seam.plan.step / 2.0
    chord = _chord(body, axis, seam.at)
    if chord is None:
        return None
    u0, v0, u1, v1 = (body.bounds[i] + far for i, far in zip((axis, 1 - axis, axis + 2, 3 - axis), _FAR, strict=True))
    path = [(seam.at - half, v0), (seam.at + half, v1)]
    if half:
        middle = (chord[0] + chord[1]) / 2.0
        path[1:1] = [(seam.at - half, middle), (seam.at + half, middle)]
    halves = []
    for u in (u0, u1):
        corners = [_turned(point, axis) for point in (*path, (u, v1), (u, v0))]
        names = [name] * (len(path) - 1) + [""] * 3
        side = Region(oriented(straight(list(zip(corners, names, strict=True)))))
        inner, _ = eroded(side, allowance)
        outline, _ = recover(shapely.intersection(body, polygon(side)), (region, side))
        traced, _ = recover(shapely.intersection(polygon(template), polygon(inner)), (template, inner))
        if outline is None or traced is None:
            return None
        halves.append(Half(outline, traced))
    line = shapely.intersection(shapely.LineString([_turned(point, axis) for point in path]), body)
    return Cut(halves[0], halves[1], line, seam, body)


def _taken(part: Part, axis: int, beside: float, low: float, high: float) -> Iterator[tuple[str, float, float]]:
    """Yield what a seam keeps off, with the stretch along the axis in which it may not lie."""
    yield "the end of the part", low - beside, low + beside
    yield "the end of the part", high - beside, high + beside

    def stretch(points: Sequence[Point]) -> tuple[float, float]:
        along = [point[axis] for point in points]
        return min(along) - beside, max(along) + beside

    for opening in part.openings:
        yield f"the {opening.kind} “{opening.name}”", *stretch(opening.ring.points)
    for ring in part.outline.holes:
        yield "a slot or opening", *stretch(ring.points)
    outer = part.outline.outer
    for run in outer.stretches():
        if run.name.endswith(_JOINTS):
            what = {".tab": "a tab", ".slot": "a notch", ".lap": "a slot"}[run.name[run.name.rindex(".") :]]
            yield f"{what} of the edge “{run.name[: run.name.rindex('.')]}”", *stretch(run.points)
    for mark in part.marks:
        if mark.purpose is Purpose.POCKET or (
            mark.kind is LineKind.GLUE and np.ptp([p[axis] for p in mark.path.points]) < 1.0
        ):
            yield (
                "a pocket" if mark.purpose is Purpose.POCKET else "a panel that is glued there",
                *stretch(mark.path.points),
            )
    points = np.asarray(outer.points)
    came, goes = points - one_before(points), next_of(points) - points
    cross = came[:, 0] * goes[:, 1] - came[:, 1] * goes[:, 0]
    inward = cross < -_CORNER * np.hypot(*came.T) * np.hypot(*goes.T)
    for along in points[inward, axis].tolist():
        yield "an inner corner or notch", along - beside, along + beside


def _other_seams(seam: Seam, before: Sequence[Seam]) -> Iterator[tuple[str, float, float]]:
    for other in before:
        if other.axis == seam.axis:
            steps = (seam.plan.step + other.plan.step) / 2.0
            apart = max(2.0 * SEAM_CLEAR + steps, (seam.plan.plate + other.plan.plate) / 2.0)
            yield "another seam", other.at - apart, other.at + apart


def _nearest(
    body: shapely.Polygon, seam: Seam, taken: Sequence[tuple[str, float, float]], thickness: float
) -> float | None:
    """Return the nearest whole millimetre from the part's end where nothing is in the way."""
    low = body.bounds[seam.axis]
    size = int(body.bounds[seam.axis + 2] - low)
    for at in sorted(range(1, size + 1), key=lambda at: (abs(at - seam.plan.at), at)):
        if not any(a < low + at < b for _, a, b in taken) and _fits(body, seam, low + at, thickness):
            return float(at)
    return None


def _fits(body: shapely.Polygon, seam: Seam, at: float, thickness: float) -> bool:
    """Say whether a seam crosses the part in one go, long enough, its step off the outline, with room for its plate."""
    plan, axis = seam.plan, seam.axis
    chord = _chord(body, axis, at)
    if chord is None or abs(chord[1] - chord[0]) < SEAM_CLEAR:
        return False
    if plan.step and not _step_fits(body, seam, at, (chord[0] + chord[1]) / 2.0):
        return False
    # a stepped seam runs along two lines, a plate between two
    for beside in {plan.step / 2.0, plan.plate / 2.0} - {0.0}:
        chords = [_chord(body, axis, at + side) for side in (0.01 - beside, beside - 0.01)]
        ends = [sorted(one) for one in (chord, *chords) if one is not None]
        least = SHORTEST_PLATE + 2.0 * thickness if beside == plan.plate / 2.0 else SEAM_CLEAR
        if len(ends) < 3 or min(high for _, high in ends) - max(low for low, _ in ends) < least:
            return False
    return True


def _step_fits(body: shapely.Polygon, seam: Seam, at: float, middle: float) -> bool:
    """Say whether the step in the middle of a seam lies in the part, off its outline."""
    half = seam.plan.step / 2.0
    jog = shapely.LineString([_turned((at + side, middle), seam.axis) for side in (-half, half)])
    return bool(body.contains(jog) and body.boundary.distance(jog) >= SEAM_CLEAR / 2.0)


def _chord(body: shapely.Polygon, axis: int, at: float) -> tuple[float, float] | None:
    """Return where a straight line across the axis enters and leaves; None when it crosses more or less than once."""
    ends = (body.bounds[1 - axis] - 1.0, body.bounds[3 - axis] + 1.0)
    line = shapely.intersection(shapely.LineString([_turned((at, end), axis) for end in ends]), body)
    if not isinstance(line, shapely.LineString) or line.is_empty:
        return None
    first, last = (float(point[1 - axis]) for point in (line.coords[0], line.coords[-1]))
    return first, last


def _turned(point: Point, axis: int) -> Point:
    return point if axis == 0 else (point[1], point[0])
