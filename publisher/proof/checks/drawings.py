"""The pictures of steps and of the cover: the right drawing, whole, at its scale."""

import re
from collections.abc import Iterator
from functools import partial
from itertools import accumulate, pairwise
from math import sqrt

import numpy as np
import shapely
from shapely.ops import substring

from publisher.basics import Carried, Check, DrawingPromise, Findings, Point
from publisher.proof.checks.frame import about, carried_faults, judged, page_name
from publisher.proof.checks.left_out import may_be_missing
from publisher.proof.measuring import (
    CARRIED_TOLERANCE,
    CLOSED_UP,
    LENGTH_TOLERANCE,
    Case,
    StrokeSegments,
    carried_lines,
    carried_points,
    lines_in,
    met_by,
    only,
    strokes_in,
)
from publisher.proof.reading import Array, normal

OUTLINE_FROM = 0.2  # mm: thinner lines in a picture are texture, what lies behind, or lead to a label
FINE_SHARE = 0.5  # of the fine lines that may be left out of a full page
HEAD_OFF = 0.3  # mm by which the tip and the middle of an arrow's head may be off
MOST_HIDDEN_OF_A_LINE = 0.5  # where other things stand in the box of a picture
MOST_HIDDEN_OF_A_SIDE = 0.75  # of each of its sides between two corners
LEAST_SIDE_SHOWN = 4.0  # mm of the picture as it was drawn: a shorter side may be hidden whole
SIDE_NEAR = 0.5  # mm from a side to a line that is so near that both would print as one
END_OF_A_SIDE = 0.1  # of its length, at both corners
BENDS_FROM = 0.8  # cosine of the bend at which a side ends
SCENE = "scene:"
COVER_WHOLE = "cover:whole:"  # begins the key of the finished piece on a cover, which bears no words
REACH_IN = 1.0  # mm that words beside a picture may reach into its box
STANDS = ":@stands"  # ends the key of what is put together, where a sketch shows what is done to it
MOST_COVERED = 0.3  # of it: what holds it, a brush or a pot may stand before it
SCENE_LABEL_OFF = (
    1.2  # mm from a word of a sketch to the middle of that word in the table: nothing there makes it give way
)
LABEL_MOVED = 1.5  # of a label's own width and height by which it may keep off another, and a step more in a crowd
ROUND_PICTURE = 12.0  # mm round a picture in which its labels stand
PHOTO = "photo:"
GLUE_SIGN = re.compile(r"step:\d+:(?!does:).*:glue")  # keys of the signs that glue is taken, or none
SAME_SHAPE = 0.02  # share by which the sides of a photograph may differ from those of its file


@judged(
    "proof/step-picture",
    "Pictures as the spec asks",
    "a picture of another step is followed before any word is read; lines may be "
    f"{CARRIED_TOLERANCE:g} mm off, {FINE_SHARE:.0%} of each kind of fine ones left out, and any within {CLOSED_UP:g} mm of another",
    may_be_empty=True,
)
def step_pictures(case: Case, check: Check[Case]) -> Findings:
    """Look for each promised drawing on its page: its lines, its labels, and no other heavy line."""
    hint = "place the picture that the spec names there"
    for promise in case.promises.drawings:
        if may_be_missing(case, promise):
            continue
        what = f"the picture of {_of(promise.key)} ({promise.drawing})"
        judge = partial(_photo if promise.drawing.startswith(PHOTO) else _drawn_wrong, case, promise)
        yield from carried_faults(case, check, promise.key, what, hint, judge, f": {what}")
    asked = {promise.key for promise in case.promises.drawings}
    for where in case.promises.carried:
        if GLUE_SIGN.fullmatch(where.key) and where.key not in asked:
            what = f" says in {_of(where.key)} whether glue is taken, which nothing there asks for"
            yield about(check, page_name(where.page), what, "draw the signs of that act, and no others")
    return len(case.promises.drawings)


def _of(key: str) -> str:
    """Return in words what a picture with this key is of."""
    where, _, rest = key.partition(":")
    named = {"step": f"step {rest.partition(':')[0]}", "trade": f"how it is done: {rest.replace('_', ' ')}"}
    return named.get(where, f"the {where}")


def _drawn_wrong(case: Case, promise: DrawingPromise, where: Carried) -> str:
    """Return in words what is wrong with a drawing or its place; empty when nothing."""
    under = _under(case, where) if promise.key.startswith(COVER_WHOLE) else ""
    return _fault(case, promise, where) or (under and f"lies over “{under}”")


def _fault(case: Case, promise: DrawingPromise, where: Carried) -> str:
    """Return in words what is wrong with a drawing; empty when nothing."""
    ink = case.ink(where.page)
    if ink is None:
        return "is missing"
    lines, fine = carried_lines(where, promise.lines), _kinds_of(promise)
    strokes = strokes_in(ink, where.box)
    if promise.key.endswith(STANDS):
        found = met_by(lines, strokes, CLOSED_UP)
        lacks = found.missing > MOST_COVERED * found.tried
        return f"is not drawn: no line at {found.at[0]:.1f}, {found.at[1]:.1f} mm" if lacks else ""
    if promise.among:
        return _hidden(lines, strokes, where.scale) or _headed(case, promise, where) or _labelled(case, promise, where)
    for wanted, most in ((lines, 0.0), *((carried_lines(where, kind), FINE_SHARE) for kind in fine)):
        found = met_by(wanted, strokes, CLOSED_UP)
        if found.missing > most * found.tried:
            return f"lacks a line at {found.at[0]:.1f}, {found.at[1]:.1f} mm"
    stray = only(strokes_in(ink, where.box, solid=True, least=OUTLINE_FROM), lines)
    if stray.missing:
        return f"shows a line of something else at {stray.at[0]:.1f}, {stray.at[1]:.1f} mm"
    return _headed(case, promise, where) or _labelled(case, promise, where)


def _under(case: Case, where: Carried) -> str:
    """Return words that a picture lies over, as far as they reach into it; '' for a picture that stands free."""
    inner = shapely.box(*where.box.grown(-REACH_IN).sides)
    return next((line.text[:40] for line in case.lines(where.page) if inner.intersects(line.area())), "")


def _kinds_of(promise: DrawingPromise) -> list[tuple[tuple[Point, ...], ...]]:
    """Return the fine lines of a picture by their kinds: patterns of outsides, what lies behind, strokes of insides."""
    ends = list(accumulate(promise.kinds))
    return [promise.fine[end - count : end] for end, count in zip(ends, promise.kinds, strict=True)] or [promise.fine]


def _headed(case: Case, promise: DrawingPromise, where: Carried) -> str:
    """Return which head of an arrow does not stand where it belongs, or looks another way."""
    if not promise.heads:
        return ""
    on_page = np.array(case.heads(where.page)).reshape(-1, 3, 2)
    for corners in carried_points(where, [at for head in promise.heads for at in head]).reshape(-1, 3, 2):
        tips = np.hypot(*(on_page[:, 0] - corners[0]).T) if len(on_page) else np.zeros(0)
        middles = np.hypot(*(on_page.mean(axis=1) - corners.mean(axis=0)).T) if len(on_page) else np.zeros(0)
        if not bool(((tips <= HEAD_OFF) & (middles <= HEAD_OFF)).any()):
            return f"lacks the head of an arrow at {corners[0][0]:.1f}, {corners[0][1]:.1f} mm"
    return ""


def _hidden(lines: list[Array], strokes: StrokeSegments, scale: float) -> str:
    """Return what is wrong with lines that other things may hide in part."""
    tried = [(line, MOST_HIDDEN_OF_A_LINE, CARRIED_TOLERANCE) for line in lines]
    tried += [
        (side, MOST_HIDDEN_OF_A_SIDE, SIDE_NEAR) for line in lines for side in _sides(line, LEAST_SIDE_SHOWN * scale)
    ]
    for line, most, within in tried:
        found = met_by([line], strokes, within)  # tools and signs are never thinned out
        if found.missing > most * found.tried:
            return f"lacks a line at {found.at[0]:.1f}, {found.at[1]:.1f} mm"
    return ""


def _sides(line: Array, least: float) -> Iterator[Array]:
    """Yield the stretches of a line between its corners that are so long (mm)."""
    ways = np.diff(line, axis=0)
    long = np.hypot(*ways.T)
    along = np.einsum("ij,ij->i", ways[:-1], ways[1:])
    corners = np.flatnonzero(along < BENDS_FROM * long[:-1] * long[1:]) + 1
    ends = [0, *corners.tolist(), len(ways)]
    for a, b in pairwise(ends):
        side = long[a:b].sum()
        if b > a and side >= least - LENGTH_TOLERANCE:  # what else meets its corners is none of it
            inner = substring(shapely.LineString(line[a : b + 1]), END_OF_A_SIDE * side, (1.0 - END_OF_A_SIDE) * side)
            yield shapely.get_coordinates(inner)


def _labelled(case: Case, promise: DrawingPromise, where: Carried) -> str:
    """Return what is wrong with the labels: each stands at its point, or beside it where another stands there."""
    if not promise.labels:
        return ""
    near = lines_in(case.lines(where.page), where.box.grown(ROUND_PICTURE))
    crowd = sqrt(len(promise.labels))
    points = carried_points(where, [at for _, at in promise.labels])
    fixed = promise.drawing.startswith(SCENE)
    for (text, _), point in zip(promise.labels, points, strict=True):
        areas = [(line.area(), line.size) for line in near if normal(line.text) == normal(text)]
        if not any(
            shapely.dwithin(area, shapely.Point(point), SCENE_LABEL_OFF)
            if fixed
            else _stands_at(area, size, point, LABEL_MOVED + crowd)
            for area, size in areas
        ):
            return f"does not show “{text}” where it belongs"
    return ""


def _stands_at(
    area: shapely.Polygon, size: float, point: "np.ndarray[tuple[int], np.dtype[np.float64]]", steps: float
) -> bool:
    left, bottom, right, top = area.bounds
    x, y = (left + right) / 2, (bottom + top) / 2
    wide, high = right - left + size / 4, top - bottom + size / 4
    return bool(abs(x - point[0]) <= steps * wide and abs(y - point[1]) <= steps * high)


def _photo(case: Case, promise: DrawingPromise, where: Carried) -> str:
    """Return what is wrong with a photograph: one of its shape stands in the box."""
    page = case.page(where.page)
    box = where.box.grown(CARRIED_TOLERANCE)
    for image in page.images if page else ():
        inside = all(box.left <= x <= box.right and box.bottom <= y <= box.top for x, y in image.corners)
        shape = image.across * promise.height / (image.down * promise.width) if image.down else 0.0
        if image.visible and inside and abs(shape - 1.0) <= SAME_SHAPE:
            return ""
    return "is no photograph of its shape"
