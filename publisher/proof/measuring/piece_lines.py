"""The lines that were worked out of a piece, looked for on its prints: what a page maker forgot is promised by no page."""

from collections.abc import Iterable, Sequence

import numpy as np
import shapely

from publisher.basics import Box, OutlinePromise, Point, PrintPromise, record
from publisher.proof.measuring.outlines import StrokeSegments
from publisher.proof.measuring.strewn import placed_lines
from publisher.proof.reading import Array, TextLine

SHOWN_KINDS = ("score", "fold", "draw", "glue", "reference")
POINT_STEP = 2.0  # mm between the points of a line that are tried
LINE_AWAY = 0.1  # mm from a line to the stroke that shows it
WORDS_ROUND = 2.5  # mm round words where lines of a surface are broken
GLUE_OFF = 1.5  # mm from other lines within which no glue line is drawn: it would be taken for those
EACH = ("score", "fold")  # kinds of which each line is worked along by itself
LEAST_TRIED = 4  # points: of fewer nothing is said


LinesOf = tuple[str, int]  # a kind of lines, and which of them: 0 for all of a kind together


@record
class LinesShown:
    """How many points of the lines of one kind were tried on the prints of one copy, and how many have their stroke; of ``EACH`` kind a
    reading for each line."""

    outline: OutlinePromise
    kind: str
    tried: int
    met: int


class PieceLines:
    """The lines of a piece, as far as one print shows them, by kind: points on the page."""

    def __init__(
        self, piece: PrintPromise, outline: OutlinePromise, words: Iterable[TextLine], labels: Iterable[Box]
    ) -> None:
        """Place the lines; what stands under words, or beyond the window, is not tried."""
        silent = [shapely.buffer(line.area(), WORDS_ROUND) for line in words]
        self.silent = shapely.union_all([*silent, *(shapely.box(*box.grown(WORDS_ROUND).sides) for box in labels)])
        shapely.prepare(self.silent)
        self.window = outline.window.grown(-WORDS_ROUND) if outline.window else None
        known = {kind: [line.points for line in piece.lines if line.kind == kind] for kind in SHOWN_KINDS}
        self.placed = {
            (kind, number): shapely.multilinestrings(_strings(outline, some))
            for kind, lines in known.items()
            for number, some in enumerate([[line] for line in lines] if kind in EACH else [lines] if lines else [])
        }
        self.rings = shapely.MultiLineString([outline.pose.apply_all((*ring, ring[0])) for ring in outline.rings])

    def tried(self, key: LinesOf) -> Array:
        """Return the points of lines that a print must show."""
        lines = self.placed.get(key)
        if lines is None:
            return np.zeros((0, 2))
        points = shapely.get_coordinates(shapely.segmentize(lines, POINT_STEP))
        keep = ~shapely.contains_xy(self.silent, points)
        if self.window is not None:
            left, bottom, right, top = self.window.sides
            keep &= (points >= (left, bottom)).all(axis=1) & (points <= (right, top)).all(axis=1)
        if key[0] == "glue":
            others = shapely.union_all(
                [self.rings, *(line for (kind, _), line in self.placed.items() if kind != "glue")]
            )
            keep &= ~shapely.dwithin(shapely.points(points), others, GLUE_OFF)
        tried: Array = points[keep]
        return tried


def _strings(outline: OutlinePromise, lines: Sequence[Sequence[Point]]) -> Array:
    """Return lines of a piece as they lie on a page, all made at once: a wall has thousands."""
    points, owner = placed_lines(outline.pose, lines)
    strings: Array = shapely.linestrings(points, indices=owner)
    return strings


def lines_shown(prints: Iterable[tuple[OutlinePromise, PieceLines, StrokeSegments]]) -> list[LinesShown]:
    """Return for one copy, over all its prints (one, or its tiles), how much of the lines of each kind they show."""
    counted: dict[LinesOf, tuple[OutlinePromise, int, int]] = {}
    for outline, lines, drawn in prints:
        for key in lines.placed:
            points = lines.tried(key)
            first, tried, met = counted.get(key, (outline, 0, 0))
            counted[key] = first, tried + len(points), met + int(drawn.near(points, LINE_AWAY).sum())
    return [LinesShown(outline, kind, tried, met) for (kind, _), (outline, tried, met) in counted.items()]
