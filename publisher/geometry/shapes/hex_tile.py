"""A six-sided floor tile, sized across its flats as game boards are."""

from math import pi, sqrt

from publisher.basics import polar
from publisher.geometry.model import ParameterInfo
from publisher.geometry.registry import Shape, Values, cornered, length, shape_kind

EDGES = ("side1", "side2", "side3", "side4", "side5", "side6")


def build(values: Values) -> Shape:
    """Return the tile about its middle; sides run anticlockwise, ``side1`` is the lowest on the right.

    Across flats w, less the gap on all sides: side w/√3, area √3/2·w².
    """
    flats = values.number("across_flats") - values.number("gap")
    radius = flats / sqrt(3.0)
    first = -pi / 2.0 if values.word("stands_on") == "corner" else -pi / 3.0
    return cornered([(polar(radius, first + k * pi / 3.0), EDGES[k]) for k in range(6)], EDGES)


KIND = shape_kind(
    "hex_tile",
    "a six-sided floor tile, sized across its flats",
    (
        length("across_flats", "distance between opposite sides: the pitch of the tiles", None, 5.0),
        ParameterInfo("stands_on", "choice", "what points down", "corner", choices=("corner", "side")),
        length("gap", "joint between neighbouring tiles, taken off the tile", 0.0, 0.0, 2.0),
    ),
    EDGES,
    build,
    origin="its middle",
)
