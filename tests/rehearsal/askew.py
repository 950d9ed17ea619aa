"""Words that run along glue lines which lie askew on the page: they are read in a picture that is turned until they stand upright."""

from collections.abc import Iterable, Iterator

import cv2
import numpy as np

from tests.rehearsal.notes import Said
from tests.rehearsal.raster import DOTS, Grey, pieces_of
from tests.rehearsal.thin_lines import Points, Thin
from tests.rehearsal.words import read_words

STRAIGHT = 1.0  # degrees: words along a line that is turned by less are read as they stand
ALIKE = 0.5  # degrees by which lines of one direction differ at most
ROUND = 6.0  # mm round the lines that are looked at


def askew_words(ink: Grey, thin: Iterable[Thin]) -> Iterator[Said]:
    """Yield the words along the glue lines of a page that run neither across nor up it."""
    ways: dict[int, list[Points]] = {}
    for line in (one.points for one in thin if one.kind == "glue"):
        x, y = line[1] - line[0]
        turn = (float(np.degrees(np.arctan2(y, x))) + 90.0) % 180.0 - 90.0  # words are never upside down
        if STRAIGHT < abs(turn) < 90.0 - STRAIGHT:
            ways.setdefault(round(turn / ALIKE), []).append(line)
    for turn, lines in ways.items():
        yield from _along(ink, turn * ALIKE, np.vstack(lines))


def _along(ink: Grey, turn: float, points: Points) -> Iterator[Said]:
    """Yield the words about some points, that rise by so many degrees."""
    (left, bottom), (right, top) = points.min(axis=0) - ROUND, points.max(axis=0) + ROUND
    rows = slice(max(round(len(ink) - top * DOTS), 0), round(len(ink) - bottom * DOTS))
    columns = slice(max(round(left * DOTS), 0), round(right * DOTS))
    part = np.ascontiguousarray(ink[rows, columns])
    side = int(np.hypot(*part.shape)) + 1
    level = cv2.getRotationMatrix2D((part.shape[1] / 2, part.shape[0] / 2), -turn, 1.0)
    level[:, 2] += (side - part.shape[1]) / 2, (side - part.shape[0]) / 2
    turned = cv2.warpAffine(part, level, (side, side), flags=cv2.INTER_CUBIC)
    back = cv2.invertAffineTransform(level)
    for read in read_words(pieces_of(turned)):
        middle = np.array((read.x + read.length / 2, read.y - 0.3 * read.em)) * DOTS
        x, y = back[:, :2] @ middle + back[:, 2]
        yield Said(read.text, (x + columns.start) / DOTS, (len(ink) - y - rows.start) / DOTS, read.em, read.bold)
