"""The middle of a part: the point over which another layer is centred."""

from publisher.basics import Point, Purpose
from publisher.geometry.making.named_shapes import kind_of
from publisher.geometry.model import Part
from publisher.geometry.paths import polygon


def middle_of(part: Part) -> Point:
    """Return the middle of a part in its own coordinates (mm): the axis of a shape that has one, where its centre is marked
    or at the origin; else the middle of the upright box about its outline."""
    kind = kind_of(part.shape)
    if kind is not None and kind.info.axis:
        cross = next((m for m in part.marks if m.purpose is Purpose.CENTRE and m.name == "centre"), None)
        ends = cross.path.points if cross is not None else ((0.0, 0.0),)
        return sum(x for x, _ in ends) / len(ends), sum(y for _, y in ends) / len(ends)
    left, bottom, right, top = polygon(part.outline).bounds
    return (left + right) / 2.0, (bottom + top) / 2.0
