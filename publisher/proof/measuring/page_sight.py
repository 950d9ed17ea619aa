"""The pixel witness of whole pages: what the walk through a page found must be dark in the dots that PDFium draws, and nothing else.

Both ways, over every line and every letter. How something was lost or added does not matter: by a form, a pattern, a soft mask, a
note, a layer, a clip, a letter drawn by operators of its own. Lines and letters are those that a reader sees by the walk, so that what
differs is what one of the two readers does not follow.
"""

import numpy as np

from publisher.basics import Box, Point, record
from publisher.proof.measuring.ink import PALEST_LINE, Ink
from publisher.proof.measuring.strewn import along, filled_dots
from publisher.proof.reading import Array, PageRead, PaintedPath, TextRun

SEEN_STRETCH = 1.0  # mm: in each stretch so long of a line there is a dark dot
DASH_PERIODS = 1.6  # periods of a dashed line, in which a whole dash lies
FEW_DOTS = 2.0  # a dash that is no longer may be darkest beside the middle of its line
LEAST_SOUGHT = 0.35  # mm: shorter lines may fall between dots
LINE_SHARE = 0.4  # of the darkness that the darkest dot of a line has at the least
LETTER_SHARE = 0.2  # the same of a letter, whose thinnest strokes are narrower than a dot
STRAY_DOT = 24  # of 255: what counts as ink where none should be
PALEST_AREA = 1.0 - STRAY_DOT / 255.0  # lighter areas leave no dot that counts
BESIDE_INK = 1  # dots that a dot may lie beside the ink that makes it dark: one that it touches, and one more
CLIP_ROUNDING = 1.5  # dots by which what is clipped may show over the clip: readers clip to whole dots
WIDEST_HALF = 40  # dots of half a stroke's width that are looked at
SHARPEST_MITRE = 10.0  # times half the width that a mitred corner reaches out at the most (ISO 32000-1, table 52)
FARTHEST_WORDS = 1e6  # mm: no number of a page's words is larger
LETTER_SET = 0.75  # dots by which a reader may set a small letter off its place
SHARES_ACROSS = 5
SHARES = np.array(
    [
        ((i + (j + 0.5) / SHARES_ACROSS) / SHARES_ACROSS, (j + (i + 0.5) / SHARES_ACROSS) / SHARES_ACROSS)
        for i in range(SHARES_ACROSS)
        for j in range(SHARES_ACROSS)
    ],
    dtype=np.float32,
)  # of a letter's box, across and up: no two in one column or row

Crop = tuple[Array, float, float, float, float]  # darkness, mm of column 0, dots per mm, mm of row 0, dots per mm


@record
class Unseen:
    """A line or words of which nothing dark is seen at a place (mm): the text, empty for a line; how many more of a page are alike."""

    at: Point
    text: str
    more: int


@record
class StrayDots:
    """Dots of a page that are dark where nothing was drawn: how many, and one of them in mm."""

    dots: int
    at: Point


@record
class PageSight:
    """A page by its dots: how many stretches of lines and letters were looked for; lines and words of which something is not seen;
    what is dark beside all of them."""

    page: int
    stretches: int
    letters: int
    line: Unseen | None = None
    words: Unseen | None = None
    stray: StrayDots | None = None


class _Dots:
    """The dots of a page, and where places in mm lie on them."""

    def __init__(self, crop: Crop) -> None:
        self.dark, self.x0, self.kx, self.y0, self.ky = crop
        self.rows, self.columns = self.dark.shape

    def on(self, points: Array) -> Array:
        """Return (column, row) of places, fractions kept."""
        placed: Array = (points - (self.x0, self.y0)) * (self.kx, -self.ky)
        return placed

    def flat(self, placed: Array) -> Array:
        """Return the dots in which places lie, those outside the page at its edge."""
        return self.cells(placed[..., 0], placed[..., 1])

    def cells(self, columns: Array, rows: Array) -> Array:
        """Return the dots in which places lie by column and row, those outside the page at its edge."""
        column = np.minimum(np.maximum(columns, 0.0), self.columns - 1).astype(np.int32)
        row = np.minimum(np.maximum(rows, 0.0), self.rows - 1).astype(np.int32)
        found: Array = row * np.int32(self.columns) + column
        return found

    def place(self, dot: int) -> Point:
        """Return the middle of a dot in mm."""
        row, column = divmod(dot, self.columns)
        return (self.x0 + (column + 0.5) / self.kx, self.y0 - (row + 0.5) / self.ky)


def see_page(crop: Crop, page: PageRead, ink: Ink, hidden: tuple[str, ...]) -> PageSight:
    """Return what the dots of a page show of what the walk found on it; ``hidden``: why each run of letters cannot be seen, or ""."""
    dots = _Dots(crop)
    lines = _Lines(ink, dots)
    said = [
        (run, why)
        for run, why in zip(page.texts, hidden, strict=True)
        if run.letters and run.visible and not run.invisible and _on_paper(run)
    ]
    words, dark = (
        _Letters(tuple(run for run, _ in said), dots),
        [not why and run.grey <= PALEST_LINE for run, why in said],
    )
    stretches, line = lines.unseen()
    letters, unseen = words.unseen(np.array(dark, dtype=bool))
    return PageSight(page.number, stretches, letters, line, unseen, _stray(dots, page, lines, words))


def _on_paper(run: TextRun) -> bool:
    """Say whether a run's numbers are such as a page can hold."""
    return all(abs(number) < FARTHEST_WORDS for number in (*run.frame, run.end_x, run.end_y))


class _Lines:
    """The lines of a page strewn with points, one to a dot."""

    def __init__(self, ink: Ink, dots: _Dots) -> None:
        self.ink, self.dots = ink, dots
        self.points, self.line, self.arc = along(dots.on(ink.points), ink.starts, 1.0)
        self.flat = dots.flat(self.points)

    def unseen(self) -> tuple[int, Unseen | None]:
        """Return how many stretches were looked at, and the first in which there is no dark dot."""
        ink = self.ink
        if not len(self.line):
            return 0, None
        periods = np.array([_period(piece) for piece in ink.page.pieces])[ink.piece]
        lengths = np.zeros(len(ink.piece))
        np.maximum.at(lengths, self.line, self.arc)
        stretch = np.maximum(SEEN_STRETCH, DASH_PERIODS * periods) * self.dots.kx
        parts = np.maximum(1, np.floor(lengths / stretch)).astype(int)
        part = np.minimum((self.arc / stretch[self.line]).astype(int), parts[self.line] - 1)
        begins = np.flatnonzero(np.concatenate(([True], (part[1:] != part[:-1]) | (self.line[1:] != self.line[:-1]))))
        dark = self.dots.dark.ravel()[self.flat]
        # what covers a line may end beside it, in the midst of a dot; and a printed dot may lie between four of ours
        small = np.array([min(piece.dash, default=FEW_DOTS) * self.dots.kx < FEW_DOTS for piece in ink.page.pieces])
        beside = (np.isin(ink.piece, list(ink.cut)) | small[ink.piece])[self.line]
        if beside.any():
            dark[beside] = self._around(self.points[beside])
        darkest = np.maximum.reduceat(dark, begins)
        wanted = LINE_SHARE * 255.0 * (1.0 - ink.grey) * np.minimum(1.0, ink.width * self.dots.kx / 2.0)
        owner = self.line[begins]
        looked = lengths[owner] >= np.where(periods > 0.0, stretch, LEAST_SOUGHT * self.dots.kx)[owner]
        light = np.flatnonzero(looked & (darkest < wanted[owner]))
        if not len(light):
            return int(looked.sum()), None
        where = self.dots.place(int(self.flat[begins[light[0]]]))
        return int(looked.sum()), Unseen(where, "", len(light) - 1)

    def _around(self, points: Array) -> Array:
        """Return the greatest darkness of the dot at each point and of the eight around it."""
        dark = self.dots.dark.ravel()
        greatest: Array = np.maximum.reduce(
            [dark[self.dots.flat(points + np.array((x, y)))] for x in (-1.0, 0.0, 1.0) for y in (-1.0, 0.0, 1.0)]
        )
        return greatest


def _period(piece: PaintedPath) -> float:
    """Return the length after which the dashes of a stroke begin anew; 0 for a solid one."""
    return sum(piece.dash) * (1 + len(piece.dash) % 2)


class _Letters:
    """The letters of a page that leave ink: the box of each, in em from the beginning of its run."""

    def __init__(self, runs: tuple[TextRun, ...], dots: _Dots) -> None:
        self.runs, self.dots = runs, dots
        counts = [len(run.letters) for run in runs]
        self.owner = np.repeat(np.arange(len(runs)), counts)
        at = np.array([at for run in runs for at, _ in run.letters])
        boxes = np.array([box for run in runs for _, box in run.letters]).reshape(-1, 4)
        self.low, self.high = boxes[:, :2].copy(), boxes[:, 2:].copy()
        self.low[:, 0] += at
        self.high[:, 0] += at
        frames = np.array([run.frame for run in runs]).reshape(-1, 6)
        self.turns, self.origins = frames[:, :4].reshape(-1, 2, 2), frames[:, 4:]
        self.starts = np.cumsum([0, *counts[:-1]]) if counts else np.zeros(0, dtype=int)

    def unseen(self, dark: Array) -> tuple[int, Unseen | None]:
        """Return how many letters were looked for, those of runs that are to be ``dark``, and the first words of which one is not."""
        letters = np.flatnonzero(dark[self.owner]) if len(self.owner) else self.owner
        if not len(letters):
            return 0, None
        # column and row of a place in a letter's box are linear in its shares of the box
        owner = self.owner[letters]
        room = (LETTER_SET / self.dots.kx / np.maximum(np.hypot(*np.moveaxis(self.turns, 2, 0)), 1e-9))[owner]
        low = self.low[letters] - room
        size = self.high[letters] + room - low
        turns = self.turns[owner] * (self.dots.kx, -self.dots.ky)
        begins = self.dots.on(self.origins[owner] + np.einsum("ni,nij->nj", low, self.turns[owner]))
        across, up = (turns * size[:, :, None]).astype(np.float32).transpose(1, 2, 0)
        columns, rows = (
            begins[:, k, None].astype(np.float32) + across[k][:, None] * SHARES[:, 0] + up[k][:, None] * SHARES[:, 1]
            for k in (0, 1)
        )
        darkest = self.dots.dark.ravel()[self.dots.cells(columns, rows)].max(axis=1)
        greys = np.array([run.grey for run in self.runs])
        light = np.flatnonzero(darkest < LETTER_SHARE * 255.0 * (1.0 - greys[owner]))
        if not len(light):
            return len(letters), None
        x, y = float(columns[light[0]].mean()), float(rows[light[0]].mean())
        of = np.unique(owner[light])
        return len(letters), Unseen(
            self.dots.place(int(y) * self.dots.columns + int(x)), self.runs[int(of[0])].text.strip(), len(of) - 1
        )

    def corners(self) -> Array:
        """Return the four corners (runs, 4, 2) in mm of the box round the ink of each run."""
        if not len(self.runs):
            return np.zeros((0, 4, 2))
        low = np.minimum.reduceat(self.low, self.starts)
        high = np.maximum.reduceat(self.high, self.starts)
        corners = np.stack(
            (low, np.stack((high[:, 0], low[:, 1]), axis=1), high, np.stack((low[:, 0], high[:, 1]), axis=1)), axis=1
        )
        found: Array = corners @ self.turns + self.origins[:, None, :]
        return found


def _stray(dots: _Dots, page: PageRead, lines: _Lines, words: _Letters) -> StrayDots | None:
    """Return the dots that are dark although no ink of the page lies in them or beside them."""
    allowed, ink = _Allowed(dots), lines.ink
    allowed.areas(
        [p for p in page.pieces if p.fill_grey is not None and p.fill_grey < PALEST_AREA and p.solid_fill and p.visible]
    )
    for image in page.images:
        if image.visible:
            allowed.box(Box.round(image.corners).common(image.clip.box))
    allowed.words(words.corners())
    halves = (
        np.array([piece.widest / 2.0 for piece in page.pieces])[ink.piece] * dots.kx if page.pieces else np.zeros(0)
    )
    spikes, reach = _spikes(dots.on(ink.points), ink.starts, halves)
    flat, wide = [lines.flat, dots.flat(spikes)], [halves[lines.line], reach]
    for i, piece in enumerate(page.pieces):
        if (
            piece.grey is not None
            and piece.grey < PALEST_AREA
            and piece.visible
            and (piece.grey > PALEST_LINE or i in ink.cut)
        ):
            whole = _whole(piece, dots)
            flat.append(dots.flat(whole))
            wide.append(np.full(len(whole), piece.widest / 2.0 * dots.kx))
    allowed.near(np.concatenate(flat), np.concatenate(wide))
    left = allowed.left()
    return StrayDots(len(left), dots.place(int(left[len(left) // 2]))) if len(left) else None


def _whole(piece: PaintedPath, dots: _Dots) -> Array:
    """Return points (column, row) along a stroke that is cut or pale: what hides its middle may leave its edge; a clip is the only thing
    that ends it for certain."""
    half = piece.widest / 2.0
    points, halves = dots.on(piece.points), np.full(len(piece.starts) - 1, half * dots.kx)
    points = np.concatenate((along(points, piece.starts, 1.0)[0], _spikes(points, piece.starts, halves)[0]))
    shown = piece.clip.box.grown(half + CLIP_ROUNDING / dots.kx)
    low, high = dots.on(np.array(((shown.left, shown.top), (shown.right, shown.bottom))))
    found: Array = points[((points >= low) & (points <= high)).all(axis=1)]
    return found


class _Allowed:
    """Where dots of a page may be dark: a grid with a rim, each cell with 1 more than how many dots around it may be."""

    def __init__(self, dots: _Dots) -> None:
        self.dots = dots
        self.rim = WIDEST_HALF + BESIDE_INK + 1
        self.wide = dots.columns + 2 * self.rim
        self.grid = np.zeros((dots.rows + 2 * self.rim, self.wide), dtype=np.uint8)
        self.inside = self.grid[self.rim : -self.rim, self.rim : -self.rim]
        self.most = BESIDE_INK

    def near(self, flat: Array, halves: Array) -> None:
        """Allow dots about points of strokes, half as wide (in dots) as these."""
        reach = np.minimum(np.floor(np.nan_to_num(halves) + 0.5), WIDEST_HALF).astype(np.uint8) + np.uint8(BESIDE_INK)
        row, column = np.divmod(flat, np.int32(self.dots.columns))
        cells = (row + self.rim) * self.wide + column + self.rim
        for far in np.unique(reach):  # the wider ones last: a cell keeps what reaches farthest
            self.grid.ravel()[cells[reach == far]] = far + 1
            self.most = max(self.most, int(far))

    def box(self, box: Box) -> None:
        """Allow all dots of an upright box (mm)."""
        low, high = self.dots.on(np.array(((box.left, box.top), (box.right, box.bottom))))
        left, top = np.maximum(np.floor(low).astype(int), 0)
        right, bottom = np.maximum(np.ceil(high).astype(int), 0)
        self.inside[top:bottom, left:right] = BESIDE_INK + 1

    def words(self, corners: Array) -> None:
        """Allow all dots of boxes that may stand askew, by their corners in mm."""
        placed = self.dots.on(corners)
        sides = np.abs(np.diff(placed, axis=1)[:, :2])
        upright = (sides.min(axis=2) < 0.5).all(axis=1)
        for left, top, right, bottom in (
            np.hstack((np.floor(placed[upright].min(axis=1)), np.ceil(placed[upright].max(axis=1))))
            .astype(int)
            .clip(0)
            .tolist()
        ):
            self.inside[top:bottom, left:right] = BESIDE_INK + 1
        askew = placed[~upright]
        if len(askew):
            self._fill(askew.reshape(-1, 2), np.arange(0, 4 * len(askew) + 1, 4), np.arange(len(askew)))

    def areas(self, pieces: list[PaintedPath]) -> None:
        """Allow all dots of filled paths, inside the boxes that they are clipped to."""
        for piece in [p for p in pieces if p.clip.box.common(p.box) != p.box]:
            self.box(piece.box.common(piece.clip.box))  # cut by a clip: its box will do
        whole = [p for p in pieces if p.clip.box.common(p.box) == p.box]
        if not whole:
            return
        counts = np.concatenate([np.diff(p.starts) for p in whole])
        rings = [len(p.starts) - 1 for p in whole]
        shape = np.repeat(np.arange(len(whole)), rings)
        if not all(p.even_odd for p in whole):
            own = np.repeat([not p.even_odd for p in whole], rings)
            shape = np.where(own, len(whole) + np.arange(len(shape)), shape)
        points = self.dots.on(np.concatenate([p.points for p in whole]))
        self._fill(points, np.concatenate(([0], np.cumsum(counts))), shape)

    def _fill(self, points: Array, starts: Array, shapes: Array) -> None:
        """Allow the dots in closed rings, by (column, row), and those that their edges touch."""
        ends = np.insert(points, starts[1:], points[starts[:-1]], axis=0)
        edges, _, _ = along(ends, starts + np.arange(len(starts)), 1.0)
        flat = np.concatenate(
            (filled_dots(points, starts, shapes, self.dots.rows, self.dots.columns), self.dots.flat(edges))
        )
        row, column = np.divmod(flat, self.dots.columns)
        self.grid.ravel()[(row + self.rim) * self.wide + column + self.rim] = BESIDE_INK + 1

    def left(self) -> Array:
        """Return the dark dots that nothing explains."""
        dark = np.flatnonzero((self.dots.dark > STRAY_DOT) & (self.inside == 0))
        row, column = np.divmod(dark.astype(np.int32), np.int32(self.dots.columns))
        cells, grid = (row + self.rim) * self.wide + column + self.rim, self.grid.ravel()
        for far in range(1, self.most + 1):
            for y in range(-far, far + 1):
                for x in range(-far, far + 1) if abs(y) == far else (-far, far):
                    if not len(dark):
                        return dark
                    keep = grid[cells + np.int32(y * self.wide + x)] <= far
                    dark, cells = dark[keep], cells[keep]
        return dark


def _spikes(points: Array, starts: Array, halves: Array) -> tuple[Array, Array]:
    """Return points, all in dots, on what mitred corners of lines reach out, and half the strokes' widths there (8.4.3.5). Line i is
    ``points[starts[i]:starts[i + 1]]``, half as wide as ``halves[i]``; one that ends where it begins has a corner there."""
    none = np.zeros((0, 2)), np.zeros(0)
    inner = np.ones(len(points), dtype=bool)
    inner[starts[1:] - 1] = False
    first = np.flatnonzero(inner)
    if len(first) < 2:
        return none
    line = np.repeat(np.arange(len(starts) - 1), np.diff(starts) - 1)
    ends, ahead = points[first + 1], points[first + 1] - points[first]
    ahead = ahead / np.maximum(np.hypot(ahead[:, 0], ahead[:, 1]), 1e-9)[:, None]
    lasts = np.flatnonzero(np.append(line[1:] != line[:-1], True))
    after = np.arange(1, len(line) + 1)
    after[lasts] = np.concatenate(([0], lasts[:-1] + 1))
    meets = (np.abs(ends - points[first[after]]) < 1e-6).all(axis=1)
    half = np.sqrt(np.maximum(0.5 * (1.0 + (ahead * ahead[after]).sum(axis=1)), 1e-12))  # the cosine of half the turn
    wide = np.minimum(np.nan_to_num(halves[line]), WIDEST_HALF)
    sharp = np.flatnonzero(meets & (wide / half - wide > 0.25) & (half > 0.9 / SHARPEST_MITRE))
    if not len(sharp):
        return none
    out = ahead[sharp] - ahead[after[sharp]]
    out /= np.maximum(np.hypot(out[:, 0], out[:, 1]), 1e-9)[:, None]
    wide = wide[sharp]
    tips = ends[sharp] + out * (wide / half[sharp])[:, None]
    spikes, which, _ = along(
        np.stack((ends[sharp], tips), axis=1).reshape(-1, 2), np.arange(0, 2 * len(sharp) + 1, 2), 1.0
    )
    return spikes, wide[which]
