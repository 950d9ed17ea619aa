"""One slope of a gabled roof."""

from math import cos, radians

from publisher.geometry.registry import LOWER_LEFT, Shape, Values, angle, length, rectangle, shape_kind

EDGES = ("eave", "right_verge", "ridge", "left_verge")


def build(values: Values) -> Shape:
    """Return a roof slope seen from above the roof, eave at the bottom, lower left corner at the origin.

    The sizes hold on the underside, which lies on the gables: span/(2·cos(pitch)) from the ridge to the gables' ends,
    then ``overhang``; the width is length + 2·verge. The ridge's nominal edge is therefore on the inside face: a mitre of
    bevel b makes the drawn upper face longer by thickness·tan(b).
    """
    slope = values.number("span") / 2.0 / cos(radians(values.number("pitch")))
    w, h = values.number("length") + 2.0 * values.number("verge"), slope + values.number("overhang")
    return rectangle(w, h, EDGES, inside=("ridge",))


KIND = shape_kind(
    "roof_panel",
    "one slope of a gabled roof, seen from above; it lies on the gables with its underside",
    (
        length("span", "width that both slopes cover together, measured level on the underside"),
        length("length", "length of the building along the ridge"),
        angle("pitch", "angle of the slope against the horizontal", 1.0, 85.0),
        length("overhang", "how far the eave runs on down the slope beyond the span", 0.0, 0.0),
        length("verge", "how far the roof runs past the building at each end", 0.0, 0.0),
    ),
    EDGES,
    build,
    origin=LOWER_LEFT,
)
