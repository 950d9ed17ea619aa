"""The kinds of openings, registered once. The order is the order in lists and docs."""

from publisher.geometry.model import ShapeInfo
from publisher.geometry.openings.headed import headed
from publisher.geometry.openings.holes import PIN_HOLE, POCKET, ROUND_HOLE
from publisher.geometry.openings.kind import OpeningKind

OPENINGS: tuple[OpeningKind, ...] = (
    headed("door", "a door; with sill 0 it is open at the bottom edge", 0.0),
    headed("window", "a window", None),
    headed("slit", "a narrow slit", None),
    ROUND_HOLE,
    POCKET,
    PIN_HOLE,
)


def opening_infos() -> tuple[ShapeInfo, ...]:
    """Return the kinds of openings with their parameters, as ``shape_infos`` does for shapes."""
    return tuple(kind.info for kind in OPENINGS)
