"""The outline of a bank card: everybody has one, and it does not shrink with the paper."""

from publisher.basics import Arc, Box, Layer, LengthPromise, Line, Path, Point
from publisher.pages.model import Stroke
from publisher.pages.sheet.draft import Body
from publisher.pages.type import GAUGE

# ISO/IEC 7810, card size ID-1: mm; the standard rounds its inch values separately, they must not be converted back
CARD_WIDTH = 85.60
CARD_HEIGHT = 53.98
CARD_RADIUS = 3.18
CARD_INCHES = "3.370 × 2.125 in"


def card(left: float, top: float, page: int) -> Body:
    """Draw the outline of an ID-1 card with its upper left corner (were it square) at (left, top); promise its straight sides."""

    box = Box(left, top - CARD_HEIGHT, left + CARD_WIDTH, top)
    r = CARD_RADIUS
    left_, bottom, right, top_ = box.left + r, box.bottom + r, box.right - r, box.top - r
    corners = ((right, bottom, -90.0), (right, top_, 0.0), (left_, top_, 90.0), (left_, bottom, 180.0))
    bends = tuple(_corner((x, y), r, begin) for x, y, begin in corners)
    sides = tuple((bends[i - 1].end, bends[i % 4].start) for i in range(1, 5))
    lengths = tuple(
        LengthPromise(page, a, b, (CARD_WIDTH if i % 2 else CARD_HEIGHT) - 2 * r, "card")
        for i, (a, b) in enumerate(sides)
    )
    edges = tuple(edge for bend, side in zip(bends, sides, strict=True) for edge in (bend, Line("", *side)))
    return Body((Stroke(GAUGE, (Path(edges),), Layer.PAGE),), lengths=lengths)


def _corner(centre: Point, radius: float, begin: float) -> Arc:
    """Return a quarter turn from a direction in whole quarters (degrees); its ends are exact."""
    (x, y), r = centre, radius
    ends = ((x, y - r), (x + r, y), (x, y + r), (x - r, y), (x, y - r))
    k = int(begin // 90.0) + 1
    return Arc("", ends[k], ends[k + 1], centre, radius, 90.0)
