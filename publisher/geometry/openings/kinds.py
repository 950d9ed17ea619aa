"""The kinds of openings and their sizes, registered once."""

from publisher.geometry.model import ParameterInfo, ShapeInfo
from publisher.geometry.openings.heads import HEADS
from publisher.geometry.shapes.shape import length

MIDDLE = "middle"


def _kind(name: str, meaning: str, sill: float | None) -> ShapeInfo:
    heads = tuple(head.name for head in HEADS)
    return ShapeInfo(
        name,
        meaning,
        (
            ParameterInfo("head", "choice", "form of the upper end", "square", choices=heads),
            length("width", "clear width"),
            length("height", "overall height, head included"),
            ParameterInfo("centre", "length", "distance of its middle from the panel's left end", MIDDLE, 0.0),
            length("sill", "height of its lower end over the panel's bottom edge", sill, 0.0),
        ),
        (),
        False,
    )


OPENINGS: tuple[ShapeInfo, ...] = (
    _kind("door", "a door; with sill 0 it is open at the bottom edge", 0.0),
    _kind("window", "a window", None),
    _kind("slit", "a narrow slit", None),
)


def opening_infos() -> tuple[ShapeInfo, ...]:
    """Return the kinds of openings with their parameters, as ``shape_infos`` does for shapes."""
    return OPENINGS
