"""The acts of the trade that a pack tells how to do, each with its sketch: which they are follows from the design, and what they show is
promised here, before any page."""

from collections.abc import Iterator, Sequence
from math import radians, tan

from publisher.basics import Arc, DrawingPromise
from publisher.design import Design, things_used
from publisher.geometry import Part
from publisher.joints.model import Joined
from publisher.joints.scenes import scene_promise

TRADE = "trade:"
"""Begins the keys of these sketches."""

STEEP_BEVEL = 15.0  # degrees from square: by eye a hand keeps less
STEEPEST_DRAWN = 60.0  # degrees: a flatter blade would leave its sketch
BEVELLING = "bevelling"


def trades_of(design: Design, pieces: Sequence[Part], joined: Joined) -> tuple[str, ...]:
    """Return the names of the acts that a pack asks for, in the order in which they come."""
    return tuple(_trades(design, pieces, joined)) if design.steps and pieces else ()


def _trades(design: Design, pieces: Sequence[Part], joined: Joined) -> Iterator[str]:
    used = things_used(design)
    bent = [part.bending for part in pieces if part.bending is not None]
    covered, slit = any(one.covered != "none" for one in bent), any(one.slits for one in bent)
    if any(board.peeled for board in design.boards):
        yield "peeling"
    if design.use == "trace" and any(part.printed != "sizes" for part in pieces):
        yield "tracing"
        yield "knife_off_the_card"
    yield "strokes"
    if any(part.outline.holes or part.openings for part in pieces):
        yield "corners"
    if any(isinstance(edge, Arc) for part in pieces for edge in part.outline.outer.edges):
        yield "turning"
    if steep_bevels(pieces):
        yield BEVELLING
    if covered or slit:
        yield "slitting" if not covered else "covering_and_slitting" if slit else "covering"
    if any(treatment.tabs for plan in design.parts for treatment in plan.treatments):
        yield "pushing"
    if "pins" in used:
        yield "pinning"
    if joined.layers:
        yield "weighing"
    if "file" in used:
        yield "sanding"


def steep_bevels(pieces: Sequence[Part]) -> tuple[float, ...]:
    """Return the bevels (degrees, of those that go outwards less than 0) that are cut along a guide."""
    return tuple(edge.bevel for part in pieces for edge in part.edges if abs(edge.bevel) >= STEEP_BEVEL)


def trade_pictures(design: Design, pieces: Sequence[Part], joined: Joined) -> tuple[DrawingPromise, ...]:
    """Return what the sketches of these acts show."""
    found = []
    for name in trades_of(design, pieces, joined):
        key = f"{TRADE}{name}"
        found.append(bevelling_picture(key, steep_bevels(pieces)) if name == BEVELLING else scene_promise(key, name))
    return tuple(found)


def bevelling_picture(key: str, bevels: Sequence[float]) -> DrawingPromise:
    """Return what shows how steep these bevels are cut: a board with what is kept at the left, on it the guide, along whose slope the cut
    goes on through the board, and a tick."""
    way = -1.0 if all(bevel < 0.0 for bevel in bevels) else 1.0  # outwards the guide stands on what is kept
    left, edge, right, low, top, tall = 4.0, 24.0, 48.0, 0.5, 8.0, 8.0
    rise = tan(radians(min(max(map(abs, bevels)), STEEPEST_DRAWN)))
    board = ((left, low), (right, low), (right, top), (left, top), (left, low))
    level = edge + way * tall * rise
    guide = ((edge, top), (level, top), (level, top + tall), (edge, top))
    cut = ((edge, top), (edge - way * (top - low) * rise, low))
    tick = ((right, 20.4), (right + 1.4, 19.0), (right + 4.0, 23.2))
    labels = (
        ("guide", (level + 5.0 * way, top + 6.0)),
        ("keep", (left + 4.0, top + 2.2)),
        ("waste", (right - 4.0, top + 2.2)),
    )
    return DrawingPromise(key, f"scene:{BEVELLING}", 54.0, 27.0, (board, guide, cut, tick), (), labels)
