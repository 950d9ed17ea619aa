"""The heads of arrows on a page: small black triangles."""

import numpy as np
import shapely

from publisher.proof.measuring.stray_ink import HEAD_MOST
from publisher.proof.reading import Array, PageRead

BLACK = 0.5  # grey of a head, at most
LEAST_HEAD = 0.1  # mm²


def arrow_heads(page: PageRead) -> list[Array]:
    """Return the arrow heads of a page, their three corners in mm."""
    return [
        line[:3]
        for piece in page.pieces
        if piece.fill_grey is not None and piece.fill_grey <= BLACK and piece.visible
        for line in piece.lines()
        if len(line) in (3, 4) and np.ptp(line, axis=0).max() <= HEAD_MOST and _firm(line)
    ]


def _firm(line: Array) -> bool:
    """Say whether a ring is a triangle with corners apart."""
    corners = line[:3]
    return (len(line) == 3 or np.array_equal(line[0], line[3])) and shapely.Polygon(corners).area > LEAST_HEAD
