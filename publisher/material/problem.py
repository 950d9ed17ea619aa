"""What is asked of the engines: pieces, a sheet, a gap, the turns that the board's grain and the part allow."""

import hashlib
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from publisher.basics import Box, Point, record
from publisher.design import Board, SheetSize
from publisher.geometry import Part
from publisher.material.judge import Flaw, flaws, flaws_of_turns
from publisher.material.model import Item, Piece
from publisher.material.outlines import solid

RULES_OF_LAYOUT = "1"  # raised when the meaning of a stored layout changes: every stored one is then stale
# Outlines are rounded to 1/1024 mm for the key: no size in decimal mm or binary inches falls midway between two steps,
# where the last bit of a float would decide
KEY_STEPS = 1024

MOST_ON_SHEETS = 20_000  # copies; nobody cuts more


@record
class Problem:
    """One layout to find. ``alone``: as many copies of one piece as one sheet takes; else: all copies on few sheets.

    ``frames``: how the whole sheet may be turned under the pieces (degrees); the pieces' angles hold for frame 0.
    """

    pieces: tuple[Piece, ...]
    board: Board
    sheet: SheetSize
    frames: tuple[float, ...]
    alone: bool

    def free(self) -> Box:
        """Return the sheet inside its crushed edges, in mm."""
        return Box(0.0, 0.0, self.sheet.width, self.sheet.height).grown(-self.board.edge_margin)

    def rings(self) -> tuple[tuple[Point, ...], ...]:
        """Return the free area as a container."""
        return (self.free().corners(),)

    def framed(self) -> tuple[tuple[Piece, ...], ...]:
        """Return the pieces with their allowed angles on the sheet, once for each frame that differs."""
        frames: list[tuple[Piece, ...]] = []
        for frame in self.frames:
            pieces = tuple(replace(p, angles=tuple(sorted((a + frame) % 360.0 for a in p.angles))) for p in self.pieces)
            if pieces not in frames:
                frames.append(pieces)
        return tuple(frames)

    def least_sheets(self) -> int:
        """Return the number of sheets that no layout of all copies goes below: by area."""
        free = self.free()
        area = sum(net_area(piece) * piece.count for piece in self.pieces)
        return int(np.ceil(area / (free.width * free.height) - 1e-9))

    def flaws(self, sheets: Sequence[Sequence[Item]], held: Sequence[int] = ()) -> tuple[Flaw, ...]:
        """Return what is wrong with a layout; () when it holds. Each sheet may lie in the frame that suits it. ``held``: so many
        first items of each sheet are known to hold among themselves."""
        anyhow = tuple(replace(piece, angles=()) for piece in self.pieces)
        found = flaws(anyhow, self.rings(), self.board.knife_gap, sheets, not self.alone, held)
        if found:
            return found
        framed = self.framed()
        each = ([flaws_of_turns(pieces, sheet) for pieces in framed] for sheet in sheets)
        return tuple(flaw for turned in each if all(turned) for flaw in turned[-1])

    def key(self) -> str:
        """Return the name of the problem: equal for equal outlines, sheet, gap, margin, angles and numbers of copies."""
        digest = hashlib.sha256()

        def say(*words: object) -> None:
            digest.update(("|".join(str(w) for w in words) + "\n").encode())

        def steps(mm: float) -> int:
            return round(mm * KEY_STEPS)

        say("layout", RULES_OF_LAYOUT, "alone" if self.alone else "list", *self.frames)
        say(
            steps(self.sheet.width),
            steps(self.sheet.height),
            steps(self.board.knife_gap),
            steps(self.board.edge_margin),
        )
        if self.board.prefer != "ease":
            say("prefer", self.board.prefer)
        for piece in self.pieces:
            numbers = () if self.alone else (piece.count, piece.mirrored)
            say(piece.id, *numbers, *(f"{a:.6f}" for a in piece.angles))
            for ring in piece.rings:
                digest.update(np.rint(np.asarray(ring) * KEY_STEPS).astype("<i8").tobytes())
                say("ring", len(ring))
        return digest.hexdigest()


def allowed_turns(turning: str, grain: str) -> tuple[float, ...]:
    """Return the turns (degrees) of a part on its sheet; () for any. Along a grain a part lies as drawn, or upside down."""
    if turning == "none":
        return (0.0,)
    if turning == "half" or grain != "none":
        return (0.0, 180.0)
    return (0.0, 90.0, 180.0, 270.0) if turning == "quarter" else ()


def frames(grain: str) -> tuple[float, ...]:
    """Return how a sheet may lie under its parts: a part's x runs with the grain; without grain the sheet may be turned."""
    return {"along": (0.0,), "across": (90.0,)}.get(grain, (0.0, 90.0))


def piece_of(part: Part, board: Board) -> Piece:
    """Return a part's finished outline with its holes, turns and copies (spares included)."""
    rings = (part.outline.outer.points, *(hole.points for hole in part.outline.holes))
    turns = allowed_turns(part.turning, board.grain)
    return Piece(part.id, rings, turns, part.count + part.spare, part.mirrored)


def alone(piece: Piece, board: Board, sheet: SheetSize) -> Problem:
    """Return the problem of one part alone; its number of copies is bounded by area, and by what anyone would cut."""
    room = Box(0.0, 0.0, sheet.width, sheet.height).grown(-board.edge_margin)
    # a part as large as the sheet is one, whatever the last bit of its area says
    most = max(1, min(MOST_ON_SHEETS, int(room.width * room.height / net_area(piece) + 1e-9)))
    return Problem((replace(piece, count=most, mirrored=0),), board, sheet, frames(board.grain), True)


def net_area(piece: Piece) -> float:
    """Return a piece's area without its holes, in mm²."""
    return float(solid(piece.rings[0]).area - sum(solid(ring).area for ring in piece.rings[1:]))
