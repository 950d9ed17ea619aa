"""What goes into what when a thing is set down: the lip of a lid in the room inside walls, or a cap over what it covers. Mm."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import record
from publisher.geometry import mitred
from publisher.joints.outlines import Array, pieces
from publisher.joints.panels import Panel, PanelFrame, corners_of, section_of
from publisher.joints.wholes.put import PlacedThing, PlacedWhole

LIFT_PLAY = 0.8
"""mm of play, both sides together, with which what lifts off still goes in when it is sealed and painted. Common practice, no source."""

BESIDE_RIM = 0.5
"""mm over or under a rim at which is looked what is there, and what a lip reaches in, at least."""

PLUMB = 1e-3
"""Of a unit vector: a board that leans more than this wedges itself, and needs no play."""

CRACK = 0.05
"""mm: boards this near to each other close a room."""

LONG_SIDE = 5.0
"""mm: sides of a room that are as long give a way along which it is measured, besides every 22.5°."""


@record
class LipRoom:
    """A room, the hull of what goes into it, in plan, and the ways (n, 2) across which both are measured."""

    room: shapely.Polygon
    lip: shapely.Geometry
    ways: Array

    @property
    def plays(self) -> Array:
        """By how much (mm) the room is wider than the lip, across each way."""
        return self.across(self.ways)

    @property
    def play(self) -> float:
        """The least play (mm)."""
        return float(self.plays.min())

    def across(self, ways: Array) -> Array:
        """Return by how much (mm) the room is wider than the lip, across ways (n, 2) of unit length."""
        return _across(self.room, ways) - _across(self.lip, ways)


@record
class Lip:
    """Something that lifts off and goes into what carries it, or over that: both, and the rooms with what goes into them."""

    thing: PlacedThing
    on: PlacedThing
    rooms: tuple[LipRoom, ...]

    @property
    def play(self) -> float:
        """The least play (mm, both sides together; below zero where it is too long, and stands on the rim)."""
        return min(room.play for room in self.rooms)


def lips_of(whole: PlacedWhole) -> tuple[Lip, ...]:
    """Return every thing that lifts off and goes into what carries it, or would but for less than half a board on each side."""
    found = []
    for one in whole.things:
        for other in (whole.thing(name) for name in one.thing.on) if one.thing.lifts_off else ():
            rooms = (*_lip_rooms(one, other),)
            if rooms:
                found.append(Lip(one, other, rooms))
    return tuple(found)


def _lip_rooms(one: PlacedThing, other: PlacedThing) -> Iterator[LipRoom]:
    low, top = _extent(one.panels)[0], _extent(other.panels)[1]
    if low < top - BESIDE_RIM:
        at = (low + top) / 2.0
        pairs = _in_each_other(_plan(one.panels, at), _plan(other.panels, at))
        yield from (found for found, _ in pairs)
        return
    board = max(panel.part.thickness for panel in other.panels)
    for found, of_upper in _in_each_other(_plan(one.panels, low + BESIDE_RIM), _plan(other.panels, top - BESIDE_RIM)):
        if -board < found.play < 0.0 and _under_a_lid(one if of_upper else other, found.lip, board):
            yield found


def _in_each_other(upper: shapely.Geometry | None, lower: shapely.Geometry | None) -> Iterator[tuple[LipRoom, bool]]:
    """Yield each room with what goes into it, and whether that is of the upper thing; of two level sections."""
    if upper is None or lower is None:
        return
    for outer, inner in ((lower, upper), (upper, lower)):
        whole = shapely.buffer(shapely.convex_hull(outer), CRACK)
        for room in _rooms(outer):
            own = [piece for piece in shapely.get_parts(inner) if shapely.intersects(piece, room)]
            lip = shapely.convex_hull(shapely.union_all(own))
            if own and shapely.covers(whole, lip):
                yield LipRoom(room, lip, _ways(room)), inner is upper


def _under_a_lid(thing: PlacedThing, lip: shapely.Geometry, board: float) -> bool:
    """Tell whether a level board of a thing reaches out over its lip all round: what is then to lie on the rim is the board."""
    wide = mitred(lip, board / 4.0)
    level = [panel for panel in thing.panels if abs(float(panel.frame.outward[2])) > 1.0 - PLUMB]
    plans = (_plan([panel], sum(_extent([panel])) / 2.0) for panel in level)
    return any(plan is not None and shapely.covers(shapely.convex_hull(plan), wide) for plan in plans)


def _extent(panels: tuple[Panel, ...] | list[Panel]) -> tuple[float, float]:
    heights = np.concatenate([panel.frame.carry(corners_of(panel.part))[:, 2] for panel in panels])
    return float(heights.min()), float(heights.max())


def _plan(panels: tuple[Panel, ...] | list[Panel], height: float) -> shapely.Geometry | None:
    """Return the level section of boards at a height; None where one of them leans."""
    frame = PanelFrame(np.eye(3), np.array([0.0, 0.0, height]))
    cuts = [(panel, section_of(panel, frame, 0.0)) for panel in panels]
    there = [(panel, cut) for panel, cut in cuts if not cut.is_empty]
    ups = [abs(float(panel.frame.outward[2])) for panel, _ in there]
    if any(PLUMB < up < 1.0 - PLUMB for up in ups):
        return None
    return pieces(shapely.union_all([cut for _, cut in there]))


def _rooms(walls: shapely.Geometry) -> list[shapely.Polygon]:
    closed = mitred(mitred(walls, CRACK), -CRACK)
    return [shapely.Polygon(ring) for piece in shapely.get_parts(closed) for ring in piece.interiors]


def _ways(room: shapely.Polygon) -> Array:
    """Return unit vectors along the long sides of a room, and every 22.5°."""
    sides = np.diff(shapely.get_coordinates(room.exterior), axis=0)
    lengths = np.hypot(sides[:, 0], sides[:, 1])
    long = sides[lengths >= LONG_SIDE] / lengths[lengths >= LONG_SIDE, None]
    turns = np.radians(np.arange(0.0, 180.0, 22.5))
    return np.vstack([np.column_stack([np.cos(turns), np.sin(turns)]), long])


def _across(area: shapely.Geometry, ways: Array) -> Array:
    return np.asarray(np.ptp(shapely.get_coordinates(area) @ ways.T, axis=0))
