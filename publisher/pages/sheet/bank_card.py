"""The outline of a bank card: everybody has one, and it does not shrink with the paper."""

from publisher.basics import Box, Layer, LengthPromise
from publisher.pages.model import Arc, Path, Stroke
from publisher.pages.sheet.draft import Body
from publisher.pages.type import GAUGE

# ISO/IEC 7810, card size ID-1: mm; the standard rounds its inch values separately, they must not be converted back
CARD_WIDTH = 85.60
CARD_HEIGHT = 53.98
CARD_RADIUS = 3.18
CARD_INCHES = "3.370 × 2.125 in"

_STEPS = 8  # points per corner, for those who look at the points; the press draws the true arc


def card(left: float, top: float, page: int) -> Body:
    """Draw the outline of an ID-1 card with its upper left corner (were it square) at (left, top); promise its straight sides."""
    from math import cos, pi, sin

    box = Box(left, top - CARD_HEIGHT, left + CARD_WIDTH, top)
    r = CARD_RADIUS
    centres = (
        (box.right - r, box.bottom + r, -90),
        (box.right - r, box.top - r, 0),
        (box.left + r, box.top - r, 90),
        (box.left + r, box.bottom + r, 180),
    )
    points: list[tuple[float, float]] = []
    arcs: list[Arc] = []
    exact = {-90: (0.0, -1.0), 0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}
    for x, y, begin in centres:
        arcs.append(Arc(len(points), len(points) + _STEPS, (x, y), r))
        for step in range(_STEPS + 1):
            turn = begin + 90 * step // _STEPS if step in {0, _STEPS} else begin + 90 * step / _STEPS
            c, s = (
                exact.get(int(turn), (0.0, 0.0))
                if step in {0, _STEPS}
                else (cos(turn * pi / 180), sin(turn * pi / 180))
            )
            points.append((x + r * c, y + r * s))
    last = _STEPS + 1
    sides = tuple((points[i * last - 1], points[(i * last) % len(points)]) for i in range(1, 5))
    lengths = tuple(
        LengthPromise(page, a, b, (CARD_WIDTH if i % 2 else CARD_HEIGHT) - 2 * r, "card")
        for i, (a, b) in enumerate(sides)
    )
    return Body((Stroke(GAUGE, (Path(tuple(points), True, tuple(arcs)),), Layer.PAGE),), lengths=lengths)
