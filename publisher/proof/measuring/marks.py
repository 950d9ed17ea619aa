"""Match marks found on a page by their looks: a circle with a cross through it, and the label printed beside it."""

from math import dist

import numpy as np
import shapely

from publisher.basics import Point, record
from publisher.proof.measuring.ink import Ink
from publisher.proof.reading import Array, TextLine, says

ROUND_MARK = 0.02  # mm that the points of a circle may differ in their distance from the middle
CENTRED = 0.03  # mm between the middle of the circle and the crossing of its cross
LABEL_WITHIN = 12.0  # mm from the middle of a mark to its label


@record
class FoundMark:
    """A mark on a page: its middle (mm), its radius, its label ("" when none stands near)."""

    at: Point
    radius: float
    label: str


def find_marks(ink: Ink, lines: tuple[TextLine, ...], radius: float, labels: tuple[str, ...]) -> tuple[FoundMark, ...]:
    """Return the marks of about this radius on a page, each with the nearest of the labels; no label is given twice to marks."""
    middles = [m for m in circles(ink, radius) if crossed(ink, m[0], m[1])]
    pairs = []
    for number, (middle, _) in enumerate(middles):
        point = shapely.Point(middle)
        for label in labels:
            distances = [shapely.distance(point, t.area()) for t in lines if says(t.text, label)]
            pairs += [(d, number, label, k) for k, d in enumerate(distances) if d <= LABEL_WITHIN]
    named: dict[int, str] = {}
    used: set[tuple[str, int]] = set()
    for _, number, label, k in sorted(pairs):
        if number not in named and (label, k) not in used:
            named[number] = label
            used.add((label, k))
    return tuple(FoundMark(m, r, named.get(i, "")) for i, (m, r) in enumerate(middles))


def circles(ink: Ink, radius: float) -> list[tuple[Point, float]]:
    """Return middle and radius of the circles of about this radius on a page."""
    found: list[tuple[Point, float]] = []
    if not len(ink.piece):
        return found
    across = ink.bounds[:, 2] - ink.bounds[:, 0]
    down = ink.bounds[:, 3] - ink.bounds[:, 1]
    likely = (np.abs(across - 2 * radius) < 0.4) & (np.abs(down - 2 * radius) < 0.4)
    for i in map(int, np.flatnonzero(likely)):
        points = ink.line(i)
        if len(points) < 9 or float(np.hypot(*(points[0] - points[-1]))) > 0.01:
            continue
        middle = (ink.bounds[i, :2] + ink.bounds[i, 2:]) / 2
        away = np.hypot(*(points - middle).T)
        if float(away.max() - away.min()) <= ROUND_MARK:
            here = (float(middle[0]), float(middle[1]))
            if not any(dist(here, other) < ROUND_MARK for other, _ in found):
                found.append((here, float(away.mean())))
    return found


def crossed(ink: Ink, middle: Point, radius: float) -> bool:
    """Say whether two lines cross at right angles in the middle of a circle."""
    starts, ends, _ = ink.segments
    centre = (starts + ends) / 2
    near: Array = np.hypot(*(centre - middle).T) <= CENTRED
    near &= np.hypot(*(ends - starts).T) >= radius
    directions = (ends - starts)[near]
    if len(directions) < 2:
        return False
    unit = directions / np.hypot(*directions.T)[:, None]
    return bool((np.abs(unit @ unit.T) < 0.02).any())
