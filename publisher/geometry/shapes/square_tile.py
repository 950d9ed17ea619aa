"""A square floor tile, plain or with its own smaller squares drawn."""

from collections.abc import Iterator

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import Mark
from publisher.geometry.registry import LOWER_LEFT, SIDES, Shape, Values, count, length, mm, rectangle, shape_kind

LEAST_FIELD = 2.0  # mm: smaller fields cannot be drawn by hand


def check(values: Values) -> Iterator[Finding]:
    """Find fields too small to draw."""
    side, fields = values.number("side"), values.count("fields")
    if side / fields < LEAST_FIELD:
        yield values.wrong(
            "fields",
            f"{fields} fields on a tile of {mm(side)} are {mm(side / fields)} wide",
            f"nobody can draw them smaller than {mm(LEAST_FIELD)}: at most {int(side / LEAST_FIELD)}",
            side / LEAST_FIELD,
        )


def build(values: Values) -> Shape:
    """Return the tile, lower left corner at the origin: the side less the gap; its fields are at the tiles' pitch.

    The fields' lines lie at multiples of side/fields from the middle of the joint, so that they meet across tiles.
    """
    side, gap, fields = values.number("side"), values.number("gap"), values.count("fields")
    s = side - gap
    marks = []
    for k in range(1, fields):
        at = k * side / fields - gap / 2.0
        marks.append(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((at, 0.0), (at, s))), name="field"))
        marks.append(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, at), (s, at))), name="field"))
    return rectangle(s, s, marks=tuple(marks))


KIND = shape_kind(
    "square_tile",
    "a square floor tile; smaller fields can be drawn on it",
    (
        length("side", "pitch of the tiles: their side and one joint", None, 5.0),
        length("gap", "joint between neighbouring tiles, taken off the tile", 0.0, 0.0, 2.0),
        count("fields", "fields along each side (1 = none drawn)", 1, 50, 1),
    ),
    SIDES,
    build,
    check,
    origin=LOWER_LEFT,
)
