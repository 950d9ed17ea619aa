"""Small marks on a template: match letters, angles of bevels, the arrow whose word is “top”."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np

from tests.rehearsal.raster import DOTS, Pieces

MATCH = re.compile(r"^[a-z]{1,2}$")
BEVEL = re.compile(r"(?:bevel |^)(\d+(?:\.\d+)?)°( out)?$")
SEAT = re.compile(r"^[A-Z]\d*(?:, (?:inside|below).*| on .*)?$")
HEAD_INK, HEAD_LONG, HEAD_FAR = (2.4, 4.2), 4.0, 45.0  # mm² and mm of an arrow's head; mm from the word to it
LARGEST = 3.3  # mm of the em of a match letter
FULL = (0.37, 0.7)  # share of its box that is ink: a round spot is fuller
DASHES = 4
LEAST_LETTER = 0.2  # of the em: both sides of the box of a letter
ARROW_LONG, ARROW_WIDE = (3.5, 9.5), (1.2, 3.2)  # mm over an arrow, along and across
TAPER = 0.45  # mm beside the widest place of a head
ARROW_FAR = 9.0  # mm from the word to its arrow


@dataclass(frozen=True, slots=True)
class Note:
    """A mark in mm of the page; ``way``: where an arrow points, as a unit vector."""

    kind: Literal["match", "bevel", "top", "climbs", "seat"]
    text: str
    x: float
    y: float
    way: tuple[float, float] = (0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Said:
    """Words with the middle of them in mm of the page, their em and weight."""

    text: str
    x: float
    y: float
    em: float
    bold: bool


def notes_of(words: Iterable[Said], seen: Pieces) -> Iterator[Note]:
    """Yield the small marks that words and arrows of a page are."""
    words = tuple(words)
    columns = Counter((said.text, round(said.x)) for said in words)
    for said in words:
        if columns[said.text, round(said.x)] >= DASHES:
            continue  # an upright dashed line looks like many an i
        if said.bold and said.em < LARGEST and MATCH.match(said.text) and not _in_a_word(said, seen):
            yield Note("match", said.text, said.x, said.y)
        for found in BEVEL.finditer(said.text) if len(said.text) < 20 else ():
            yield Note("bevel", f"{found[1]}{found[2] or ''}", said.x, said.y)
        if said.bold and said.em < LARGEST and (seat := SEAT.match(said.text)):
            yield Note("seat", seat[0], said.x, said.y)
        if said.text == "climbs" and (head := _head(said, seen)) is not None:
            yield head
        if said.text == "top" and (arrow := _arrow(said, seen)) is not None:
            yield arrow


def _in_a_word(said: Said, seen: Pieces) -> bool:
    """Say whether a letter has others on both sides: it is one of a word that stands askew, which is not read."""
    boxes = seen.boxes / DOTS
    x, y = boxes[:, 0] + boxes[:, 2] / 2, len(seen.labels) / DOTS - boxes[:, 1] - boxes[:, 3] / 2
    sides = boxes[:, 2:4]
    letters = (sides.min(axis=1) > LEAST_LETTER * said.em) & (sides.max(axis=1) < said.em)
    near = letters & (np.hypot(x - said.x, y - said.y) < said.em)
    return int(near[1:].sum()) > len(said.text) + 1


def _head(word: Said, seen: Pieces) -> Note | None:
    """Return the full head of an arrow beside the word, whose shaft is dots: most of its ink is far from its tip."""
    tall = len(seen.labels) / DOTS
    boxes = seen.boxes / DOTS
    ink = seen.boxes[:, 4] / DOTS**2
    x, y = boxes[:, 0] + boxes[:, 2] / 2, tall - boxes[:, 1] - boxes[:, 3] / 2
    away = np.hypot(x - word.x, y - word.y)
    fits = (ink > HEAD_INK[0]) & (ink < HEAD_INK[1]) & (boxes[:, 2:4].max(axis=1) < HEAD_LONG) & (away < HEAD_FAR)
    full = ink / np.maximum(boxes[:, 2] * boxes[:, 3], 1e-9)
    near = [int(n) for n in np.flatnonzero(fits & (full > FULL[0]) & (full < FULL[1])) if n]
    if not near:
        return None
    number = min(near, key=lambda n: float(away[n]))
    left, top, width, height, _ = (int(value) for value in seen.boxes[number])
    rows, columns = np.nonzero(seen.labels[top : top + height, left : left + width] == number)
    points = np.column_stack((columns, -rows)).astype(float)
    middle = points.mean(axis=0)
    _, ways = np.linalg.eigh(np.cov((points - middle).T))
    along = (points - middle) @ ways[:, 1]
    way = ways[:, 1] if along.max() > -along.min() else -ways[:, 1]  # the tip is farther from the middle of the ink
    return Note("climbs", "climbs", float(x[number]), float(y[number]), (float(way[0]), float(way[1])))


def _arrow(word: Said, seen: Pieces) -> Note | None:
    """Return the arrow beside the word, which points to where its head narrows."""
    tall = len(seen.labels)
    boxes = seen.boxes / DOTS
    long_side, wide = boxes[:, 2:4].max(axis=1), boxes[:, 2:4].min(axis=1)
    fits = (long_side > ARROW_LONG[0]) & (long_side < ARROW_LONG[1]) & (wide > ARROW_WIDE[0]) & (wide < ARROW_WIDE[1])
    x, y = boxes[:, 0] + boxes[:, 2] / 2, tall / DOTS - boxes[:, 1] - boxes[:, 3] / 2
    away = np.hypot(x - word.x, y - word.y)
    near = [int(n) for n in np.flatnonzero(fits & (away < ARROW_FAR)) if n]
    if not near:
        return None
    number = min(near, key=lambda n: float(away[n]))
    left, top, width, height, _ = (int(value) for value in seen.boxes[number])
    rows, columns = np.nonzero(seen.labels[top : top + height, left : left + width] == number)
    along = (0.0, -1.0) if height > width else (1.0, 0.0)  # on the page: down the rows is -y
    ink = np.bincount(rows if height > width else columns, minlength=max(width, height)).astype(float)
    widest, aside = int(ink.argmax()), round(TAPER * DOTS)
    before, after = (ink[n] if 0 <= n < len(ink) else 0.0 for n in (widest - aside, widest + aside))
    sign = 1.0 if after > before else -1.0  # a head narrows slowly to its tip, and at once to its shaft
    return Note("top", "top", float(x[number]), float(y[number]), (sign * along[0], sign * along[1]))
