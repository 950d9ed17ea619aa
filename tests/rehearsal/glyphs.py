"""The letters of the embedded open fonts as a page shows them: bitmaps by weight and size, to hold ink against.

A size is the em in dots. Letters are drawn three times as large and averaged, so that no hinting moves an edge.
"""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

import cv2
import numpy as np
import numpy.typing as npt
from PIL import Image, ImageDraw, ImageFont

from tests.rehearsal.raster import DOTS

FONTS = Path(__file__).parents[2] / "publisher" / "pages" / "type" / "fonts"
Weight = Literal["Regular", "Bold"]
LETTERS = (
    "".join(chr(n) for n in range(0x21, 0x7F)) + "ÄÖÜäöüßéèêçñáíóúàâåæøÆØÅ" + "“”‘’„–—…·×°−±½¼¾€§≤≥→"
)  # no glyph twice
SIZES = (2.3, 2.7, 3.2, 3.9, 4.6)  # mm of the em: what words on pages with parts are set in
FINER = 3
UP, DOWN, LEFT = 1.05, 0.3, 0.12  # ems above and below the base line, and left of the pen, that a bitmap shows

Bits = npt.NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Style:
    """A weight and the em in dots."""

    weight: Weight
    em: float


@dataclass(frozen=True, slots=True, eq=False)
class Glyphs:
    """All letters of a style. ``bits``: letter, row, column; the pen stands on row ``base`` and column ``left``."""

    style: Style
    advances: npt.NDArray[np.float64]
    bits: Bits
    base: int
    left: int
    space: float
    flat: tuple[npt.NDArray[np.uint64], npt.NDArray[np.int64], npt.NDArray[np.int64]]
    """All bitmaps packed, the ink of each, and the column of a bitmap at which the next letter begins."""


@dataclass(frozen=True, slots=True, eq=False)
class Blot:
    """A connected piece of a letter's ink; ``right`` and ``down``: from the pen to its upper left corner, in dots."""

    style: Style
    letter: str
    bits: Bits
    right: int
    down: int


@cache
def styles() -> tuple[Style, ...]:
    """Return the styles in which words are looked for."""
    return tuple(Style(weight, size * DOTS) for size in SIZES for weight in ("Regular", "Bold"))


@cache
def glyphs(style: Style) -> Glyphs:
    """Draw the letters of a style."""
    font = ImageFont.truetype(
        FONTS / f"NotoSans-{style.weight}.ttf", style.em * FINER, layout_engine=ImageFont.Layout.BASIC
    )
    up, down, left = (round(share * style.em) for share in (UP, DOWN, LEFT))
    advances = np.array([font.getlength(letter) / FINER for letter in LETTERS])
    width = left + int(advances.max()) + 2
    bits = np.zeros((len(LETTERS), up + down, width), dtype=np.bool_)
    for number, letter in enumerate(LETTERS):
        image = Image.new("L", (width * FINER, (up + down) * FINER))
        ImageDraw.Draw(image).text((left * FINER, up * FINER), letter, font=font, fill=255, anchor="ls")
        bits[number] = cv2.resize(np.asarray(image), (width, up + down), interpolation=cv2.INTER_AREA) > 127
    ends = np.minimum(np.round(advances).astype(np.int64) + left, width - 1)
    return Glyphs(
        style, advances, bits, up, left, font.getlength(" ") / FINER, (packed(bits), bits.sum(axis=(1, 2)), ends)
    )


@dataclass(frozen=True, slots=True, eq=False)
class Shelf:
    """Pieces of letters of one size: packed, with the ink of each."""

    blots: tuple[Blot, ...]
    flat: npt.NDArray[np.uint64]
    inks: npt.NDArray[np.int64]


@cache
def blots() -> dict[tuple[int, int], Shelf]:
    """Return the pieces of all letters of all styles by height and width in dots."""
    found: dict[tuple[int, int], list[Blot]] = {}
    for style in styles():
        drawn = glyphs(style)
        for letter, bits in zip(LETTERS, drawn.bits, strict=True):
            count, labels, boxes, _ = cv2.connectedComponentsWithStats(bits.astype(np.uint8), connectivity=8)
            for number in range(1, count):
                x, y, width, height, _ = (int(value) for value in boxes[number])
                piece = labels[y : y + height, x : x + width] == number
                found.setdefault((height, width), []).append(Blot(style, letter, piece, x - drawn.left, y - drawn.base))
    return {size: _shelf(tuple(pieces)) for size, pieces in found.items()}


def _shelf(pieces: tuple[Blot, ...]) -> Shelf:
    bits = np.stack([piece.bits for piece in pieces])
    return Shelf(pieces, packed(bits), bits.sum(axis=(1, 2)))


def packed(bits: Bits) -> npt.NDArray[np.uint64]:
    """Return bitmaps with 64 dots in a number, so that what two share is counted fast."""
    flat = np.packbits(bits.reshape(len(bits), -1), axis=1)
    return np.pad(flat, ((0, 0), (0, -flat.shape[1] % 8))).view(np.uint64)
