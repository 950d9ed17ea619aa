"""Marks of an axis: a small cross where a pin goes through, and ticks at a rim from which a crossing of lines is drawn."""

from math import pi

from publisher.basics import LineKind, Purpose, polar, polyline
from publisher.geometry.model import Mark

ARM = 3.0  # mm: half a cross
CENTRE_TICK = 4.0  # mm


def cross() -> tuple[Mark, ...]:
    """Return a cross at the origin: two lines of 6 mm."""
    lines = (((-ARM, 0.0), (ARM, 0.0)), ((0.0, -ARM), (0.0, ARM)))
    return tuple(Mark(LineKind.REFERENCE, Purpose.CENTRE, polyline(line), name="centre") for line in lines)


def quarter_ticks(radius: float, inner: float = 0.0) -> tuple[Mark, ...]:
    """Return four ticks from a rim inwards, a quarter apart, the first to the right; half the wall at most to a hole."""
    deep = min(CENTRE_TICK, (radius - inner) / 2.0)
    return tuple(
        Mark(LineKind.DRAW, Purpose.CENTRE, polyline((polar(radius, at), polar(radius - deep, at))), name="quarter")
        for at in (0.0, pi / 2.0, pi, 1.5 * pi)
    )
