"""Parts laid as upright rectangles: those that are rectangles, and those that nearly fill one (walls with tabs, arches).

Counting is exact: lengths are taken in whole steps of a nanometre, which holds every decimal millimetre and every binary
fraction of an inch that anyone writes (1 in = 127/5 mm), so no tolerance ever lays one more copy.
"""

from dataclasses import dataclass
from functools import lru_cache
from math import floor

import numpy as np
import shapely

from publisher.basics import Point, Pose
from publisher.material.blocks import LaidBox, lay_boxes
from publisher.material.box_bound import most_boxes
from publisher.material.model import Item, Piece
from publisher.material.outlines import turned, upright_turn
from publisher.material.problem import Problem

STEPS = 1_000_000  # in a millimetre
NEARLY = 0.8  # of its rectangle: a part that fills less of it is laid better by its true outline
RECTANGLE = 1.0 - 1e-7
PLACE_DECIMALS = 4  # decimals of a place in mm, as the store writes it


def steps(mm: float) -> int:
    """Return a length in whole steps, rounded down: what is left over is less than a nanometre, and no knife's."""
    return floor(round(mm * STEPS, 3))


@dataclass(frozen=True, slots=True)
class BoxForm:
    """The upright rectangle of a piece: the turn (degrees) at which the piece stands in it, its sides in mm, the share of it that
    the piece fills, and whether the piece may lie in it turned by a quarter."""

    turn: float
    width: float
    height: float
    filled: float
    quarter: bool

    @property
    def rectangle(self) -> bool:
        """Say whether the piece is the whole rectangle."""
        return self.filled > RECTANGLE


def box_form(piece: Piece) -> BoxForm:
    """Return the upright rectangle in which a piece is laid: of the turns that it may have, that which it fills most."""
    return _box_form(piece.rings[0], piece.angles)


@lru_cache(maxsize=256)
def _box_form(points: tuple[Point, ...], angles: tuple[float, ...]) -> BoxForm:
    ring = np.asarray(points, dtype=np.float64)
    area = float(shapely.Polygon(ring).area)
    turns = angles or (0.0, upright_turn(points))
    quarters = {round(turn % 180.0, 6) for turn in turns}

    def form(turn: float) -> BoxForm:
        width, height = (float(v) for v in np.ptp(turned(ring, turn), axis=0))
        may = not angles or round((turn + 90.0) % 180.0, 6) in quarters
        return BoxForm(turn % 360.0, width, height, area / (width * height), may)

    return max((form(turn) for turn in turns), key=lambda f: (round(f.filled, 9), -f.turn))


def room_of(problem: Problem) -> tuple[int, int]:
    """Return the free area's sides in steps, each longer by the gap: every rectangle brings its own on two sides."""
    free, gap = problem.free(), steps(problem.board.knife_gap)
    return steps(free.width) + gap, steps(free.height) + gap


def most_at_right_angles(problem: Problem) -> int | None:
    """Return how many copies of the one piece of ``problem`` a sheet cannot exceed at right angles; None unless it is a rectangle."""
    room, gap = room_of(problem), steps(problem.board.knife_gap)
    found = []
    for (piece,) in problem.framed():
        form = box_form(piece)
        if not form.rectangle:
            return None
        sides = (steps(form.width) + gap, steps(form.height) + gap)
        found.append(most_boxes(*room, max(sides), min(sides)) if form.quarter else _in_rows(room, sides))
    return max(found)


def _in_rows(room: tuple[int, int], sides: tuple[int, int]) -> int:
    return (room[0] // sides[0]) * (room[1] // sides[1])


def laid_as_boxes(piece: Piece, problem: Problem, more: int = 0) -> tuple[Item, ...]:
    """Lay as many copies of a piece on the problem's sheet as go on it in upright rectangles, at most ``piece.count`` and ``more``;
    () for one that fills too little of its rectangle.

    Copies are not numbered yet.
    """
    form = box_form(piece)
    if form.filled < NEARLY:
        return ()
    room, gap = room_of(problem), steps(problem.board.knife_gap)
    wide, high = steps(form.width) + gap, steps(form.height) + gap
    boxes = _upright_rows(room, (wide, high))
    if form.quarter:
        blocks = lay_boxes(*room, max(wide, high), min(wide, high))
        boxes = max(boxes, _upright_rows(room, (high, wide)), blocks, key=len)
    return tuple(box_item(piece, form, box, problem) for box in boxes[: piece.count + more])


def _upright_rows(room: tuple[int, int], sides: tuple[int, int]) -> tuple[LaidBox, ...]:
    """Return plain rows of rectangles ``sides`` wide and high, from below."""
    wide, high = sides
    return tuple(
        LaidBox(x * wide, y * high, high > wide) for y in range(room[1] // high) for x in range(room[0] // wide)
    )


def box_item(piece: Piece, form: BoxForm, box: LaidBox, problem: Problem, mirrored: bool = False) -> Item:
    """Return a copy of the piece in its rectangle on the sheet, not numbered yet."""
    # what is mirrored stands upright at the opposite turn
    upright = -form.turn if mirrored else form.turn
    turn = upright if box.upright == (form.height > form.width) else upright + 90.0
    if piece.angles:  # half a turn more is the same rectangle: take the turn that is allowed
        turn = next((a for a in piece.angles if abs((a - turn + 90.0) % 180.0 - 90.0) < 1e-6), turn)
    low = turned(np.asarray(piece.rings[0], dtype=np.float64), turn, mirrored).min(axis=0)
    free = problem.free()
    x, y = (
        corner + at / STEPS - float(least)
        for corner, at, least in zip((free.left, free.bottom), (box.x, box.y), low, strict=True)
    )
    return Item(piece.id, 0, Pose(round(x, PLACE_DECIMALS), round(y, PLACE_DECIMALS), round(turn, 6) % 360.0, mirrored))
