"""One slope of a gabled roof."""

from math import cos, radians

from publisher.geometry.model import ShapeInfo
from publisher.geometry.paths import straight
from publisher.geometry.registry import LOWER_LEFT, Shape, ShapeKind, Values, angle, edges_of, length, nothing_to_check

EDGES = ("eave", "right_verge", "ridge", "left_verge")


def build(values: Values) -> Shape:
    """Return a roof slope seen from above the roof, eave at the bottom, lower left corner at the origin.

    The sizes hold on the underside, which lies on the gables: span/(2·cos(pitch)) from the ridge to the gables' ends,
    then ``overhang``; the width is length + 2·verge. The ridge's nominal edge is therefore on the inside face: a mitre of
    bevel b makes the drawn upper face longer by thickness·tan(b).
    """
    slope = values.number("span") / 2.0 / cos(radians(values.number("pitch")))
    w, h = values.number("length") + 2.0 * values.number("verge"), slope + values.number("overhang")
    outer = straight((((0.0, 0.0), "eave"), ((w, 0.0), "right_verge"), ((w, h), "ridge"), ((0.0, h), "left_verge")))
    return Shape(outer, edges_of(outer, EDGES, inside=("ridge",)))


KIND = ShapeKind(
    ShapeInfo(
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
        openings=False,
        origin=LOWER_LEFT,
    ),
    build,
    nothing_to_check,
)
