"""Words from the picture of a page: a text reader that knows only how the letters of the embedded fonts look.

Ink of the size of letters is joined to runs. A few of a run's pieces vote for weight, size and base line; then a pen goes along the
line by the widths of the font and takes, at each place, the letter whose picture differs least from the ink. What differs too much from
every letter is no word, and is not read.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from tests.rehearsal.glyphs import LETTERS, Blot, Glyphs, Style, blots, glyphs, packed
from tests.rehearsal.raster import DOTS, Pieces

TALLEST, WIDEST = 11.0, 12.0  # mm, of a piece of ink that may be a letter
LEAST = 0.22  # mm: less is no stroke of a letter
JOIN = 1.3  # mm between letters of a run, and words of a line
VOTERS = 8
ALIKE = 0.34  # share of differing dots with which a piece may vote
NEAR = 0.06  # by which letters are alike, so that the ink decides, where one has this much more of it
MUCH = 1.2
READ = 0.33  # and with which a letter is read
BARS = ".,-–—'|·:’‘Il_…°"  # alone, these are bits of lines
WIDER = (0, -1, 1, -2, 2)  # after a blank
OFFS = (0, -1, 1)  # dots by which the pen may be off
SHORT = 5  # letters: of so few one that is not read is many
SLACK = 1  # dots by which a piece may be larger or smaller


@dataclass(frozen=True, slots=True)
class Read:
    """A line of words: its text, where its base line begins (mm from the upper left of the picture it was read in), its length and em
    in mm, its weight, and the share of its ink that differs from the letters."""

    text: str
    x: float
    y: float
    length: float
    em: float
    bold: bool
    doubt: float


Boxes = npt.NDArray[np.int32]


def read_words(seen: Pieces) -> tuple[Read, ...]:
    """Return the lines of words of a picture that stand upright in it."""
    labels, boxes = seen.labels, seen.boxes
    wide, high = boxes[:, 2], boxes[:, 3]
    fits = (high <= TALLEST * DOTS) & (wide <= WIDEST * DOTS) & (np.maximum(wide, high) >= LEAST * DOTS)
    fits[0] = False
    small = fits[labels]
    lines: list[Read] = []
    likeness = _Likeness(labels, boxes)
    pieces = np.array([piece for piece in np.flatnonzero(fits) if likeness.of(int(piece))], dtype=np.int64)
    for run in _runs(boxes, pieces):
        if any(map(likeness.tells, run)):
            lines += _lines(small, likeness, [piece for piece in run if piece not in likeness.used])
    return tuple(_joined(lines))


def _joined(lines: list[Read]) -> Iterator[Read]:
    """Yield lines, those as one that go on behind a blank."""
    rest = sorted(lines, key=lambda line: line.x)
    while rest:
        line = rest.pop(0)
        for other in list(rest):
            gap = other.x - line.x - line.length
            if (
                (other.em, other.bold) == (line.em, line.bold)
                and abs(other.y - line.y) < 0.1
                and -0.3 < gap < 0.6 * line.em
            ):
                blank = " " if gap > 0.15 * line.em else ""
                length, doubt = other.x + other.length - line.x, max(line.doubt, other.doubt)
                line = replace(line, text=line.text + blank + other.text, length=length, doubt=doubt)
                rest.remove(other)
        yield line


def _runs(boxes: Boxes, pieces: npt.NDArray[np.int64]) -> Iterator[list[int]]:
    """Yield pieces that stand beside each other, from left to right: the ink of a line of words."""
    order = pieces[np.argsort(boxes[pieces, 0])]
    left, top = boxes[order, 0], boxes[order, 1]
    right, bottom = left + boxes[order, 2], top + boxes[order, 3]
    parent = list(range(len(order)))

    def root(i: int) -> int:
        while parent[i] != i:
            parent[i] = parent[parent[i]]
            i = parent[i]
        return i

    for i in range(len(order)):
        end = np.searchsorted(left, right[i] + JOIN * DOTS)
        beside = np.arange(i + 1, end)
        shared = np.minimum(bottom[i], bottom[beside]) - np.maximum(top[i], top[beside])
        for j in beside[shared > 0]:
            parent[root(int(j))] = root(i)
    runs: dict[int, list[int]] = defaultdict(list)
    for i in range(len(order)):
        runs[root(i)].append(int(order[i]))
    yield from runs.values()


class _Likeness:
    """What letters the pieces of a page look like; each piece is looked at once."""

    def __init__(self, labels: npt.NDArray[np.int32], boxes: Boxes) -> None:
        self.labels, self.boxes = labels, boxes
        self.used: set[int] = set()
        self.known: dict[int, tuple[tuple[Blot, float, int, int], ...]] = {}

    def of(self, piece: int) -> tuple[tuple[Blot, float, int, int], ...]:
        """Return, of each style, the piece of a letter most like a piece of ink, the share that differs, and where the pen would stand."""
        if piece not in self.known:
            self.known[piece] = tuple(self._alike(piece))
        return self.known[piece]

    def tells(self, piece: int) -> bool:
        """Say whether a piece looks like more of a letter than a dot or a bar, which lines have too."""
        return any(b.letter not in BARS and len(b.bits) > 0.4 * b.style.em for b, *_ in self.of(piece))

    def use(self, left: float, top: float, right: float, bottom: float) -> None:
        """Mark all pieces whose middles lie in a box as read."""
        x, y = self.boxes[:, 0] + self.boxes[:, 2] / 2, self.boxes[:, 1] + self.boxes[:, 3] / 2
        self.used.update(np.flatnonzero((x >= left) & (x <= right) & (y >= top) & (y <= bottom)).tolist())

    def _alike(self, piece: int) -> Iterator[tuple[Blot, float, int, int]]:
        x, y, width, height, ink = (int(value) for value in self.boxes[piece])
        mine = np.pad(self.labels[y : y + height, x : x + width] == piece, SLACK)
        best: dict[Style, tuple[Blot, float, int, int]] = {}
        sizes = blots()
        for tall in range(height - SLACK, height + SLACK + 1):
            for broad in range(width - SLACK, width + SLACK + 1):
                shelf = sizes.get((tall, broad))
                if shelf is None:
                    continue
                down, right = (height - tall) // 2, (width - broad) // 2
                cut = mine[SLACK + down : SLACK + down + tall, SLACK + right : SLACK + right + broad]
                both = np.bitwise_count(packed(cut[None]) & shelf.flat).sum(axis=1, dtype=np.int64)
                doubts = 1.0 - both / (ink + shelf.inks - both)
                for number in np.flatnonzero(doubts < ALIKE):
                    blot, doubt = shelf.blots[number], float(doubts[number])
                    if blot.style not in best or doubt < best[blot.style][1]:
                        best[blot.style] = (blot, doubt, x + right - blot.right, y + down - blot.down)
        yield from best.values()


def _lines(small: npt.NDArray[np.bool_], likeness: _Likeness, run: list[int]) -> Iterator[Read]:
    """Yield the lines of a run: one, or more where weight or size changes in it."""
    left = list(run)
    while any(map(likeness.tells, left)):
        while not any(map(likeness.tells, left[:VOTERS])):
            left = left[1:]
        voted = _vote(likeness, left)
        if voted is None:
            return
        style, base, pen = voted
        line, end = _decode(small, glyphs(style), base, pen)
        if line is None or len(line.text) < SHORT:  # half a dot up or down is much of a small letter
            tries = [(line, end), *(_decode(small, glyphs(style), base + off, pen) for off in (-1, 1))]
            line, end = max(tries, key=lambda one: (len(one[0].text), -one[0].doubt) if one[0] else (0, 0.0))
        if line is None:
            left = left[1:]
            continue
        yield line
        likeness.use(pen, base - 0.8 * style.em, end, base + 0.25 * style.em)
        left = [piece for piece in left if piece not in likeness.used]


def _vote(likeness: _Likeness, run: list[int]) -> tuple[Style, int, float] | None:
    """Return weight and size, base line and first pen of a run, by the pieces at its beginning; None where they are no letters."""
    votes: dict[tuple[Style, int], float] = defaultdict(float)
    first: dict[tuple[Style, int], float] = {}
    for piece in run[:VOTERS]:
        for blot, doubt, x, y in likeness.of(piece):
            for off in (-1, 0, 1):
                key = (blot.style, y + off)
                votes[key] += (ALIKE - doubt) * len(blot.bits) * (1.0 if off == 0 else 0.7)
                first.setdefault(key, float(x))
    if not votes:
        return None
    best = max(votes, key=lambda key: votes[key])
    return (*best, first[best])


def _decode(small: npt.NDArray[np.bool_], style: Glyphs, base: int, start: float) -> tuple[Read | None, float]:
    """Go along a line with the pen; return what is read, or None, and the dot at which it ends."""
    em = style.style.em
    height, width = style.bits.shape[1:]
    reach = width + 2
    pen, text, doubts, blank = start, "", [], 0.0
    strip = np.zeros((height, small.shape[1] + 2 * reach), dtype=np.bool_)
    top = base - style.base
    low, high = max(0, top), min(small.shape[0], top + height)
    if low >= high:
        return None, start
    strip[low - top : high - top, reach:-reach] = small[low:high]
    flat, inks, ends = style.flat
    end = pen
    while pen < small.shape[1] and blank <= 1.3 * style.space + 1:
        at = round(pen) + reach - style.left
        if at < 2 or at + width + 2 > strip.shape[1]:
            break
        if not strip[:, at + style.left : at + style.left + max(2, round(0.8 * style.space))].any():
            pen += style.space
            blank += style.space
            continue
        offs = WIDER if blank else OFFS
        windows = np.stack([strip[:, at + off : at + off + width] for off in offs])
        within = np.cumsum(windows.sum(axis=1), axis=1, dtype=np.int32)
        own = within[:, ends] - within[:, [style.left - 1]]
        both = np.bitwise_count(packed(windows)[:, None] & flat).sum(axis=2, dtype=np.int32)
        doubt = 1.0 - both / (inks + own - both)
        off, number = divmod(int(np.argmin(doubt)), len(LETTERS))
        more = (doubt <= doubt[off, number] + NEAR) & (both >= MUCH * both[off, number])
        if more.any():  # a letter that is part of another: the h's stem is an l
            off, number = divmod(int(np.argmax(np.where(more, both, 0))), len(LETTERS))
        if doubt[off, number] > READ:
            break
        if blank:
            text, blank = text + " ", 0.0
        text += LETTERS[number]
        doubts.append(float(doubt[off, number]))
        pen += 0.6 * offs[off] + style.advances[number]
        end = pen
    if not text or (len(text) == 1 and text in BARS):
        return None, start
    weight = style.style.weight == "Bold"
    line = Read(text, start / DOTS, base / DOTS, (end - start) / DOTS, em / DOTS, weight, float(np.mean(doubts)))
    return line, end
