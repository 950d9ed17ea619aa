"""What a promise looks like where a page carries it, and how the strokes of the page agree with it."""

from collections.abc import Iterable, Sequence

import numpy as np
import shapely

from publisher.basics import Box, Carried, Point, record
from publisher.proof.measuring.ink import Ink, straightened
from publisher.proof.measuring.outlines import TRY_STEP, StrokeSegments
from publisher.proof.measuring.strewn import tried
from publisher.proof.reading import Array, TextLine

CARRIED_TOLERANCE = 0.1  # mm on the page between a promised line and the stroke that shows it
CLOSED_UP = 1.0  # mm on the page: in a picture a line this near to another may be left out, as both would print as one
READS_IN = 0.5  # mm by which words may reach over their box


@record
class Agreement:
    """How many points of how many were tried and met no stroke (or no promised line), and the first of them on the page."""

    tried: int
    missing: int
    at: Point


def carried_points(where: Carried, points: Sequence[Point]) -> Array:
    """Return points of a promise carried to the page."""
    a, b, c, d, e, f = where.pose.matrix()
    carried: Array = np.asarray(points, dtype=float) @ (np.array(((a, b), (c, d))) * where.scale) + (e, f)
    return carried


def carried_lines(where: Carried, lines: Iterable[Sequence[Point]]) -> list[Array]:
    """Return lines of a promise carried to the page, points that make no bend left out."""
    each = list(lines)
    if not each:
        return []
    carried = carried_points(where, [point for line in each for point in line])
    points, owners = straightened(carried, np.repeat(np.arange(len(each)), [len(line) for line in each]))
    return np.split(points, np.flatnonzero(np.diff(owners)) + 1)


def strokes_in(ink: Ink, box: Box, *, solid: bool = False, least: float = 0.0) -> StrokeSegments:
    """Return the strokes of a page that lie in a box, all but a hair: ``solid`` ones only, none thinner than ``least``."""
    grown = box.grown(CARRIED_TOLERANCE)
    bounds = ink.bounds
    inside = (bounds[:, 0] >= grown.left) & (bounds[:, 1] >= grown.bottom)
    inside &= (bounds[:, 2] <= grown.right) & (bounds[:, 3] <= grown.top) & (ink.width >= least)
    if solid:
        inside &= ~ink.dashed
    if not inside.any():
        return StrokeSegments(np.zeros((0, 2)), np.zeros((0, 2)), np.zeros(0, dtype=int), np.zeros(0))
    points, owners = ink.straight
    points, owners = points[inside[owners]], owners[inside[owners]]
    inner = np.flatnonzero(np.diff(owners) == 0)
    owner = owners[inner]
    return StrokeSegments(points[inner], points[inner + 1], owner, ink.width[owner])


def met_by(lines: Sequence[Array], strokes: StrokeSegments, within: float = CARRIED_TOLERANCE) -> Agreement:
    """Try points along promised lines: each has a stroke ``within`` so many mm."""
    long = [line for line in lines if len(line) > 1]
    if not long:
        return Agreement(0, 0, (0.0, 0.0))
    owners = np.repeat(np.arange(len(long)), [len(line) for line in long])
    wanted = shapely.linestrings(np.concatenate(long), indices=owners)
    return _judged(tried(wanted, TRY_STEP)[0], strokes, within)


def only(strokes: StrokeSegments, lines: Sequence[Array]) -> Agreement:
    """Try points along strokes: each lies on a promised line."""
    long = [line for line in lines if len(line) > 1]
    starts = np.concatenate([line[:-1] for line in long]) if long else np.zeros((0, 2))
    ends = np.concatenate([line[1:] for line in long]) if long else np.zeros((0, 2))
    promised = StrokeSegments(starts, ends, np.zeros(len(starts), dtype=int), np.zeros(len(starts)))
    drawn = shapely.linestrings(np.stack((strokes.starts, strokes.ends), axis=1))
    return _judged(tried(drawn, TRY_STEP)[0], promised, CARRIED_TOLERANCE)


def _judged(points: Array, against: StrokeSegments, tolerance: float) -> Agreement:
    far = np.flatnonzero(~against.near(points, tolerance))
    at = points[far[0]].tolist() if len(far) else (0.0, 0.0)
    return Agreement(len(points), len(far), (at[0], at[1]))


def lines_in(lines: Iterable[TextLine], box: Box) -> list[TextLine]:
    """Return the lines of words whose middle lies in a box."""
    grown = box.grown(READS_IN)
    found = []
    for line in lines:
        x, y = line.middle()
        if grown.left <= x <= grown.right and grown.bottom <= y <= grown.top:
            found.append(line)
    return found
