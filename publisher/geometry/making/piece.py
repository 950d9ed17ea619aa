"""A finished piece as a cut file shows it: its lines, and its words where they stand."""

from math import hypot

import shapely

from publisher.basics import PieceLine, PiecePromise, PieceWord, Point
from publisher.geometry.model import Part
from publisher.geometry.paths import polygon

LETTER = (2.0, 8.0)  # mm: the least and the greatest em of a piece's letter
WORDS = 3.0  # mm: the em of all other words
OF_ROOM = 1.0  # em of the letter for each mm from the middle of the widest place to the nearest cut
RISE = 0.35  # of an em: half the height of a capital, by which a baseline lies under the middle of its words
CHORDS_OFF = 0.002  # mm from the arcs of a ring: a file of one piece is laid over it by its box, and an arc is the farthest that it reaches
NEAR_ENOUGH = 0.1  # mm: of the middle of the widest place
FROM_ITS_LINE = 2.0  # mm from a line to the words that belong to it


def promised_piece(part: Part) -> PiecePromise:
    """Return what the cut files of a part must show."""
    lines = tuple(PieceLine(mark.kind.value, mark.path.travelled) for mark in part.marks if mark.path.length > 0.0)
    rings = tuple(path.flattened(CHORDS_OFF) for path in part.outline.paths)
    return PiecePromise(part.id, part.letter, part.name, rings, lines, piece_words(part))


def piece_words(part: Part) -> tuple[PieceWord, ...]:
    """Return the words of a piece's cut file: its letter in the middle of its widest place, and the words of its marks, those that
    stand at one point in one line."""
    region = polygon(part.outline)
    widest = shapely.maximum_inscribed_circle(region, tolerance=NEAR_ENOUGH)
    (x, y), rim = widest.coords[0], widest.coords[-1]
    height = min(max(OF_ROOM * hypot(rim[0] - x, rim[1] - y), LETTER[0]), LETTER[1])
    said: dict[Point, list[str]] = {}
    for mark in part.marks:
        if mark.text:
            left, bottom = mark.path.edges[0].start
            aside = FROM_ITS_LINE if mark.path.length > 0.0 else 0.0
            said.setdefault(_rounded(left, bottom + aside - RISE * WORDS), []).append(mark.text)
    letter = PieceWord(part.letter, _rounded(x, y - RISE * height), height)
    return (letter, *(PieceWord(" ".join(texts), at, WORDS) for at, texts in said.items()))


def _rounded(x: float, y: float) -> Point:
    """Return a point to 0.01 mm: where words stand is no matter of microns, and the same on every machine."""
    return (round(float(x), 2), round(float(y), 2))
