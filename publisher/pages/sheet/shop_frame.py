"""Pages that become pictures for a shop: their shapes. Nothing on them is at true size, nothing is printed."""

from publisher.basics import Box
from publisher.pages.model import Paper
from publisher.pages.sheet.frame import Frame

SHOP_SHORT, SHOP_LONG = 150.0, 200.0  # mm: at the dots of the pictures the long side has 2000 and a few more
SHOP_EDGE = 9.0  # mm of white round all that shows


def shop_frame(paper: Paper, width: float, height: float) -> Frame:
    """Return the frame of a picture of this size (mm), beside the pack for a paper."""
    inside = Box(SHOP_EDGE, SHOP_EDGE, width - SHOP_EDGE, height - SHOP_EDGE)
    limit = inside.grown(SHOP_EDGE / 2)
    return Frame(paper, width > height, width, height, limit, limit, inside, None, None, ())
