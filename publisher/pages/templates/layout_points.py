"""The two points by which a layout lays a part at an angle, on the part's template: each beside the corner that is measured out.

They are set when all else of a template stands, so that they move nothing; where a template has no room beside a corner, it has neither.
"""

from collections.abc import Iterable, Sequence
from math import dist, hypot

import shapely

from publisher.basics import Layer, LayoutPromise, Point, Pose, TextPromise, polyline
from publisher.geometry import Part, polygon
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.templates.part_strokes import quiet_lines
from publisher.pages.type import LEADER, NOTE, Note, Setter, note_at

LAYOUT_POINTS = ("●", "○")
POINT_CLEAR = 0.4  # mm round a point's corners
FROM_CORNER = 12.0  # mm from its corner, and no more than
NEARER_CORNER = 0.3  # of the way to the other corner
SIGN_ROUND, CORNER_SHORT = 1.4, 0.8  # mm from the middle of a point, and from its corner, that its line keeps
POINT_STRAY = 3.0  # mm by which a reader may find words off their middle


def layout_points(layouts: Iterable[LayoutPromise]) -> dict[str, tuple[Point, ...]]:
    """Return the two points (own coordinates) of every part that lies at an angle on some sheet."""
    return {
        place.part: tuple(measure.own for measure in place.measures)
        for layout in layouts
        for place in layout.places
        if len(place.measures) == len(LAYOUT_POINTS)
    }


def point_notes(
    corners: Sequence[Point], part: Part, pose: Pose, setter: Setter, taken: Iterable[shapely.Geometry]
) -> tuple[Note, ...]:
    """Return the points of a part, each as near to its corner as it is clear of lines and of what is ``taken``; none without room."""
    if not corners:
        return ()
    most = min(FROM_CORNER, NEARER_CORNER * dist(*corners))
    ground, others = polygon(part.template, pose), [quiet_lines(part, pose), *taken]
    notes: list[Note] = []
    for text, corner in zip(LAYOUT_POINTS, corners, strict=True):
        bare = note_at(text, NOTE, 0.0, 0.0, setter).own
        clear = hypot(bare.width, bare.height) / 2 + POINT_CLEAR
        free = ground.buffer(-clear).difference(shapely.union_all(others).buffer(clear))
        own = pose.apply(corner)
        if free.is_empty:
            return ()
        (x, y), _ = shapely.shortest_line(free, shapely.Point(own)).coords
        if dist((x, y), own) > most:
            return ()
        notes.append(note_at(text, NOTE, x, y, setter))
        others.append(notes[-1].area())
    return tuple(notes)


def point_leaders(corners: Sequence[Point], notes: Sequence[Note], pose: Pose) -> tuple[Drawn, ...]:
    """Draw a line from each point to the corner that it stands for, where it does not stand at it: it is the corner that is measured."""
    lines = []
    for corner, note in zip(map(pose.apply, corners), notes, strict=False):
        middle = note.area().centroid.coords[0]
        away = dist(middle, corner)
        if away > SIGN_ROUND + CORNER_SHORT + 1.0:
            lines.append(
                polyline(tuple(_between(middle, corner, at / away) for at in (SIGN_ROUND, away - CORNER_SHORT)))
            )
    return (Stroke(LEADER, tuple(lines), Layer.NOTES, tag="artifact"),) if lines else ()


def _between(one: Point, other: Point, share: float) -> Point:
    return (one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share)


def point_promises(
    page: int, corners: Sequence[Point], pose: Pose, drawn: Iterable[Drawn], part: str, copy: int
) -> tuple[TextPromise, ...]:
    """Promise each point that is drawn of a copy: inside its outline, beside its corner."""
    shown = {
        thing.text: (thing.x, thing.y) for thing in drawn if isinstance(thing, Words) and thing.text in LAYOUT_POINTS
    }
    return tuple(
        TextPromise(page, text, own, dist(shown[text], own) + POINT_STRAY, part, copy)
        for text, own in zip(LAYOUT_POINTS, map(pose.apply, corners), strict=False)
        if text in shown
    )
