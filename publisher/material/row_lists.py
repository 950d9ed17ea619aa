"""A list laid with rows first: the part that takes most of the board in regular rows, the others beside and above them.

Rows are the easiest to trace: a list that needs no more sheets this way is laid this way.
"""

from collections.abc import Sequence
from dataclasses import replace

from publisher.material.bottom_left import Bin, CopySpot, FilledSheet, fill
from publisher.material.container import Container
from publisher.material.model import Piece
from publisher.material.outlines import NESTING_GRID
from publisher.material.packing import Packed, items, kinds_of, numbered

LEAST_IN_ROWS = 4  # copies; fewer make no rows


def main_piece(pieces: Sequence[Piece], areas: Sequence[float]) -> int | None:
    """Return which piece takes most of the board, mirrored copies left aside; None when there are too few copies of it."""
    taken = [area * (p.count - p.mirrored) for p, area in zip(pieces, areas, strict=True)]
    most = max(range(len(pieces)), key=lambda i: (taken[i], -i))
    return most if pieces[most].count - pieces[most].mirrored >= LEAST_IN_ROWS else None


def rows_first(
    pieces: tuple[Piece, ...], main: int, spots: Sequence[CopySpot], free: Container, gap: float
) -> Packed | None:
    """Lay the copies of ``pieces[main]`` in the rows of ``spots`` (a full sheet), all others by bottom-left placement.

    Of rows filled from below and from the left the one with fewer sheets, and the last less full, is returned; None without
    rows.
    """
    if not spots:
        return None
    left = tuple(replace(p, count=p.mirrored) if i == main else p for i, p in enumerate(pieces))
    queue = [k for k in sorted(kinds_of(left, gap), key=lambda k: -k.outline.area) for _ in range(k.count)]
    best: tuple[tuple[int, float], Packed] | None = None
    for across in (False, True):
        sheets = fill(free, queue, None, across, _rowed(pieces[main], spots, free, across), empty={})
        score = (len(sheets), round(sheets[-1].used(across) / NESTING_GRID, 3))
        if best is None or score < best[0]:
            best = (score, Packed(numbered(pieces, items(pieces, sheets)), "rows, then bottom-left", int(across)))
    return best[1] if best else None


def _rowed(piece: Piece, spots: Sequence[CopySpot], free: Container, across: bool) -> list[Bin]:
    """Return sheets with all plain copies of the piece in rows; the last sheet holds the first rows only."""
    axis = 0 if across else 1

    def reach(spot: CopySpot) -> tuple[int, int]:
        far = spot.kind.outline.path(spot.turn, False, grown=False).max(axis=0)
        at = (spot.x + int(far[0]), spot.y + int(far[1]))
        return at[axis], at[1 - axis]

    ordered = sorted(spots, key=reach)
    wanted = piece.count - piece.mirrored
    sheets: list[Bin] = []
    while wanted > 0:
        room = FilledSheet(free)
        sheet = Bin([room])
        for spot in ordered[:wanted]:
            sheet.put(room, spot)
        sheets.append(sheet)
        wanted -= min(wanted, len(ordered))
    return sheets
