"""Whether a piece fits a sheet at all, and how many a careless grid of bounding boxes gives. Millimetres, degrees."""

import numpy as np
import shapely

from publisher.geometry import next_of
from publisher.material.model import Piece
from publisher.material.outlines import FloatPath

EXACT = 1e-4  # mm; a piece as large as the sheet fits it
ROOM_ENOUGH = 0.01  # mm; a turn that leaves so much room needs no better one


def sizes(points: FloatPath, turns: FloatPath) -> FloatPath:
    """Return the overall widths and heights (k × 2) of points (n × 2) at k turns (degrees)."""
    angle = np.radians(turns)
    c, s = np.cos(angle), np.sin(angle)
    quarters = np.rint(turns / 90.0)
    exact = np.abs(turns - 90.0 * quarters) < 1e-12
    c = np.where(exact, np.rint(c), c)
    s = np.where(exact, np.rint(s), s)
    x = np.outer(c, points[:, 0]) - np.outer(s, points[:, 1])
    y = np.outer(s, points[:, 0]) + np.outer(c, points[:, 1])
    return np.column_stack((np.ptp(x, axis=1), np.ptp(y, axis=1)))


def best_turn(piece: Piece, width: float, height: float, frames: tuple[float, ...]) -> tuple[float, float]:
    """Return the turn at which a piece is least too large for a width × height, and by how much (≤ 0: it fits)."""
    ring = np.asarray(piece.rings[0], dtype=np.float64)
    turns = np.unique([(a + f) % 360.0 for a in piece.angles or (0.0, 90.0) for f in frames])
    over = (sizes(ring, turns) - (width, height)).max(axis=1)
    if piece.angles or over.min() <= EXACT:
        # of turns that do, the least is taken, so that a part that fits unturned is not turned
        best = int(np.nonzero(over <= max(over.min(), 0.0) + EXACT)[0][0])
        return float(turns[best]), float(over[best])
    hull = np.asarray(shapely.get_coordinates(shapely.convex_hull(shapely.multipoints(ring))), dtype=np.float64)
    edge = next_of(hull) - hull
    flat = -np.degrees(np.arctan2(edge[:, 1], edge[:, 0]))
    turns = np.unique(np.concatenate((np.arange(0.0, 180.0), flat % 180.0, (flat + 90.0) % 180.0)))

    def excess(at: FloatPath) -> FloatPath:
        return np.asarray((sizes(hull, at) - (width, height)).max(axis=1))

    over = excess(turns)
    best = int(over.argmin())
    turn, least, step = float(turns[best]), float(over[best]), 1.0
    while least > -ROOM_ENOUGH and step > 1e-7:
        near = turn + step * np.linspace(-1.0, 1.0, 9)
        over = excess(near)
        k = int(over.argmin())
        if over[k] < least:
            turn, least = float(near[k]), float(over[k])
        step /= 3.0
    return turn % 360.0, least


def grid_count(piece: Piece, width: float, height: float, gap: float, frames: tuple[float, ...]) -> int:
    """Return how many bounding boxes stand in a grid on width × height with ``gap`` between them: upright or on their side."""

    def along(room: float, size: float) -> int:
        return max(0, int((room + gap) / (size + gap) + EXACT / size))

    return max((along(width, wide) * along(height, high) for wide, high in _boxes(piece, frames)), default=0)


def _boxes(piece: Piece, frames: tuple[float, ...]) -> list[tuple[float, float]]:
    """Return the width and height of a piece's bounding box upright and on its side, as far as its turns allow them."""
    wide, high = (float(v) for v in np.ptp(np.asarray(piece.rings[0]), axis=0))
    turns = {(a + f) % 180.0 for a in piece.angles for f in frames} or {0.0, 90.0}
    return [box for turn, box in ((0.0, (wide, high)), (90.0, (high, wide))) if turn in turns]


def grid_sheets(pieces: tuple[Piece, ...], width: float, height: float, gap: float, frames: tuple[float, ...]) -> int:
    """Return how many sheets the whole list takes when bounding boxes are laid in strips, tallest first: the careless way."""
    boxes: list[tuple[float, float]] = []
    for piece in pieces:
        fitting = [box for box in _boxes(piece, frames) if box[0] <= width + EXACT and box[1] <= height + EXACT]
        if fitting:
            boxes += [min(fitting, key=lambda b: b[1])] * piece.count
    sheets, room, strip, x = 0, -1.0, 0.0, 0.0
    for wide, high in sorted(boxes, key=lambda b: (-b[1], -b[0])):
        if strip and x + wide <= width + EXACT:
            x += wide + gap
            continue
        room -= strip + gap
        if sheets == 0 or high > room + EXACT:
            sheets, room = sheets + 1, height
        strip, x = high, wide + gap
    return sheets
