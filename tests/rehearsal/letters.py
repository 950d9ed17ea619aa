"""The letters of parts: large and bold in tags, square frames with a cut corner.

A letter's size follows from its height, as tags come in several sizes; it is held against the bold capitals drawn as large.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

import cv2
import numpy as np
import numpy.typing as npt
from PIL import Image, ImageDraw, ImageFont

from tests.rehearsal.glyphs import FONTS
from tests.rehearsal.raster import DOTS, Pieces

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
LEAST, LARGEST = 4.2, 9.5  # mm of height
TALL = 96  # dots to which a letter is drawn to be compared
ALIKE = 0.16  # share of differing dots
CUT_OFF = 0.2  # of a letter's height that a frame's cut corner takes at most
CAP = 0.714  # height of capitals in ems (table OS/2 of the font)


@dataclass(frozen=True, slots=True)
class Tag:
    """A part's letter in its frame: the frame's sides in mm from the lower left of the page; ``turned``: it is read from below up."""

    letter: str
    left: float
    bottom: float
    right: float
    top: float
    turned: bool = False


@cache
def _capitals() -> tuple[tuple[str, npt.NDArray[np.bool_]], ...]:
    font = ImageFont.truetype(FONTS / "NotoSans-Bold.ttf", 4 * TALL)
    found = []
    for letter in LETTERS:
        image = Image.new("L", (6 * TALL, 6 * TALL))
        ImageDraw.Draw(image).text((TALL, 5 * TALL), letter, font=font, fill=255, anchor="ls")
        found.append((letter, _scaled(np.asarray(image.crop(image.getbbox())))))
    return tuple(found)


def _scaled(grey: npt.NDArray[np.uint8]) -> npt.NDArray[np.bool_]:
    width = max(1, round(grey.shape[1] * TALL / grey.shape[0]))
    return cv2.resize(grey, (width, TALL), interpolation=cv2.INTER_AREA) > 127


def tags(seen: Pieces) -> tuple[Tag, ...]:
    """Return the tags of a page's picture that stand upright."""
    labels, boxes = seen.labels, seen.boxes
    black = (labels > 0).astype(np.uint8)
    found: list[tuple[str, int, int, int, int]] = []
    for number in range(1, len(boxes)):
        x, y, width, height, _ = (int(value) for value in boxes[number])
        if not LEAST * DOTS <= height <= LARGEST * DOTS or not 0.15 * height <= width <= 1.4 * height:
            continue
        letter = _letter(255 * (labels[y : y + height, x : x + width] == number).astype(np.uint8))
        if letter:
            found.append((letter, x, y, width, height))
    return tuple(_framed(found, black))


def _letter(grey: npt.NDArray[np.uint8]) -> str:
    """Return the letter that ink is; "" where it is none."""
    mine = _scaled(grey)
    best = (ALIKE, "")
    for letter, bits in _capitals():
        if abs(bits.shape[1] - mine.shape[1]) > 4:
            continue
        width = min(bits.shape[1], mine.shape[1])
        a, b = mine[:, :width], bits[:, :width]
        best = min(best, (float((a ^ b).sum()) / float((a | b).sum()), letter))
    return best[1]


def _framed(found: list[tuple[str, int, int, int, int]], black: npt.NDArray[np.uint8]) -> Iterator[Tag]:
    """Yield letters that stand alone or in a row within a frame."""
    rest = sorted(found, key=lambda one: one[1])
    while rest:
        text, x, y, width, height = rest.pop(0)
        for other in list(rest):
            if abs(other[2] - y) <= 0.06 * height and 0 <= other[1] - x - width < 0.3 * height:
                text, width = text + other[0], other[1] + other[3] - x
                rest.remove(other)
        sides = _sides(black, x, y, width, height)
        if sides:
            left, top, right, bottom = sides
            tall = len(black)
            yield Tag(text, left / DOTS, (tall - bottom) / DOTS, right / DOTS, (tall - top) / DOTS)


def _sides(
    black: npt.NDArray[np.uint8], x: int, y: int, width: int, height: int
) -> tuple[float, float, float, float] | None:
    """Return where a frame's lines lie round a letter (left, top, right, bottom in dots); None where there is no such frame.

    A frame's lines go along the whole letter, at one distance above and below it; but its upper right corner is cut off, which beside a
    small letter reaches below that one's top.
    """
    far = round(0.6 * height)
    rows, columns = slice(y, y + height), slice(x, x + width)

    def first(strip: npt.NDArray[np.uint8], along: int) -> int | None:
        full = np.flatnonzero(strip.mean(axis=along) > 0.95)
        return int(full[0]) if len(full) else None

    above = first(black[max(0, y - far) : y, columns][::-1], 1)
    below = first(black[y + height : y + height + far, columns], 1)
    left = first(black[rows, max(0, x - far - width) : x][:, ::-1], 0)
    right = first(black[y + round(CUT_OFF * height) : y + height, x + width : x + 2 * width + far], 0)
    if above is None or below is None or left is None or right is None or abs(above - below) > 4:
        return None
    return x - left, y - above, x + width + right, y + height + below
