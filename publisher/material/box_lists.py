"""A list of rectangles (or of parts that nearly fill one) laid at right angles on as few sheets as it takes.

Each rectangle goes into one of the largest empty upright rectangles that are left, in several orders and by several rules (maximal
rectangles and guillotine cuts, as surveyed by Jylänki, *A Thousand Ways to Pack the Bin*, 2010; cited from memory). Lengths are whole
steps, as in ``boxes``.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

from publisher.material.blocks import LaidBox
from publisher.material.boxes import NEARLY, BoxForm, box_form, box_item, room_of, steps
from publisher.material.model import Piece
from publisher.material.packing import Packed, numbered
from publisher.material.problem import Problem

MOST_BOXES = 400  # for more copies other engines lay whole sheets first
Rect = tuple[int, int, int, int]  # left, bottom, width, height in steps


@dataclass(frozen=True, slots=True)
class _Kind:
    """Copies of one piece: sides in steps with the gap."""

    piece: int
    form: BoxForm
    wide: int
    high: int
    mirrored: bool


@dataclass(slots=True)
class _Sheet:
    """What lies on a sheet, and its largest empty rectangles."""

    free: list[Rect]
    laid: list[tuple[_Kind, LaidBox]] = field(default_factory=list)


def box_lists(pieces: tuple[Piece, ...], problem: Problem) -> Iterator[Packed]:
    """Yield layouts of the whole list at right angles, one for each order and rule; none unless all pieces nearly fill a rectangle
    and there are at most ``MOST_BOXES`` copies."""
    kinds, room = _kinds(pieces, steps(problem.board.knife_gap)), room_of(problem)
    if not kinds:
        return
    for order, guillotine, rule in product((_area, _long, _short), (True, False), (_least_left_over, _lowest)):
        sheets = _filled(sorted(kinds, key=order), room, guillotine, rule)
        if sheets is not None:
            found = [
                [box_item(pieces[kind.piece], kind.form, box, problem, kind.mirrored) for kind, box in sheet.laid]
                for sheet in sheets
            ]
            yield Packed(numbered(pieces, found), "straight cuts" if guillotine else "largest rectangles", 0)


def _kinds(pieces: tuple[Piece, ...], gap: int) -> list[_Kind]:
    """Return every copy of a list; none when there are too many, or one does not nearly fill a rectangle."""
    forms = [box_form(piece) for piece in pieces]
    if sum(piece.count for piece in pieces) > MOST_BOXES or any(form.filled < NEARLY for form in forms):
        return []
    return [
        _Kind(number, form, steps(form.width) + gap, steps(form.height) + gap, copy >= piece.count - piece.mirrored)
        for number, (piece, form) in enumerate(zip(pieces, forms, strict=True))
        for copy in range(piece.count)
    ]


def _area(kind: _Kind) -> tuple[int, ...]:
    return (-kind.wide * kind.high, kind.piece, kind.mirrored)


def _long(kind: _Kind) -> tuple[int, ...]:
    return (-max(kind.wide, kind.high), -min(kind.wide, kind.high), kind.piece, kind.mirrored)


def _short(kind: _Kind) -> tuple[int, ...]:
    return (-min(kind.wide, kind.high), -max(kind.wide, kind.high), kind.piece, kind.mirrored)


BoxRule = Callable[[Rect, int, int], tuple[int, ...]]


def _least_left_over(free: Rect, wide: int, high: int) -> tuple[int, ...]:
    """Rank an empty rectangle by the narrower strip that is left beside a box, then the wider."""
    over = sorted((free[2] - wide, free[3] - high))
    return (*over, free[1], free[0])


def _lowest(free: Rect, wide: int, high: int) -> tuple[int, ...]:
    """Rank an empty rectangle by how far up the box comes to lie."""
    return (free[1] + high, free[0], free[2] - wide)


def _filled(queue: Sequence[_Kind], room: tuple[int, int], guillotine: bool, rule: BoxRule) -> list[_Sheet] | None:
    """Lay the queue on as many sheets as it takes; None when one fits none."""
    sheets: list[_Sheet] = []
    for kind in queue:
        if any(_lay(sheet, kind, guillotine, rule) for sheet in sheets):
            continue
        fresh = _Sheet([(0, 0, *room)])
        if not _lay(fresh, kind, guillotine, rule):
            return None
        sheets.append(fresh)
    return sheets


def _lay(sheet: _Sheet, kind: _Kind, guillotine: bool, rule: BoxRule) -> bool:
    """Lay one more box where the rule likes it best; say whether there was room."""
    sides = {(kind.wide, kind.high), (kind.high, kind.wide)} if kind.form.quarter else {(kind.wide, kind.high)}
    places = [
        (rule(free, wide, high), (free[0], free[1], wide, high), free)
        for free in sheet.free
        for wide, high in sorted(sides)
        if wide <= free[2] and high <= free[3]
    ]
    if not places:
        return False
    _, box, free = min(places)
    x, y, wide, high = box
    sheet.laid.append((kind, LaidBox(x, y, high > wide)))
    if guillotine:
        sheet.free.remove(free)
        sheet.free += _cut(free, wide, high)
    else:
        sheet.free = _largest([rest for one in sheet.free for rest in _without(one, box)])
    return True


def _cut(free: Rect, wide: int, high: int) -> list[Rect]:
    """Return what two straight cuts leave of an empty rectangle beside a box in its corner: the larger piece whole."""
    left, bottom, width, height = free
    across = (width - wide) * height >= width * (height - high)
    right = (left + wide, bottom, width - wide, height if across else high)
    above = (left, bottom + high, wide if across else width, height - high)
    return [rest for rest in (right, above) if rest[2] > 0 and rest[3] > 0]


def _without(free: Rect, box: Rect) -> list[Rect]:
    """Return the largest rectangles that a box leaves of an empty one."""
    left, bottom, width, height = free
    x, y, wide, high = box
    if x >= left + width or x + wide <= left or y >= bottom + height or y + high <= bottom:
        return [free]
    rests = (
        (left, bottom, x - left, height),
        (x + wide, bottom, left + width - x - wide, height),
        (left, bottom, width, y - bottom),
        (left, y + high, width, bottom + height - y - high),
    )
    return [rest for rest in rests if rest[2] > 0 and rest[3] > 0]


def _largest(free: Sequence[Rect]) -> list[Rect]:
    """Return empty rectangles without those that lie in another."""
    kept: list[Rect] = []
    for one in sorted(set(free), key=lambda r: (-r[2] * r[3], r)):
        left, bottom, width, height = one
        if not any(
            k[0] <= left and k[1] <= bottom and left + width <= k[0] + k[2] and bottom + height <= k[1] + k[3]
            for k in kept
        ):
            kept.append(one)
    return kept
