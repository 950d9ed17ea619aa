"""Regular rows of one outline: each row repeats one copy P, or a pair P and Q = P turned by 180°, at a pitch; each row
lies at a distance over the last one, shifted along it.

What may stand where follows from two no-fit polygons, N of P beside P and M of P beside Q, both turned with the lattice.
A row is known to clear the rows under it when it lies over their upper envelopes. Millimetres.
"""

import numpy as np
import numpy.typing as npt

from publisher.basics import record
from publisher.geometry import next_of
from publisher.material.outlines import FloatPath

Floats = npt.NDArray[np.float64]
COPY_TOUCH = 1e-6  # mm; outlines that touch at the very end of an envelope do not count


@record
class Envelope:
    """The upper (or lower) border of rings over a line: straight between its breakpoints, nothing outside them."""

    at: Floats
    height: Floats
    nothing: float

    def __call__(self, x: Floats) -> Floats:
        """Return the border's height over each x; ``nothing`` (∓infinity) where the rings do not reach."""
        inside = (x > self.at[0] + COPY_TOUCH) & (x < self.at[-1] - COPY_TOUCH)
        return np.where(inside, np.interp(x, self.at, self.height), self.nothing)


def envelopes(rings: tuple[FloatPath, ...]) -> tuple[Envelope, Envelope]:
    """Return the border of rings (n × 2) seen from below and from above. Between breakpoints it errs to the safe side."""
    at = np.unique(np.concatenate([ring[:, 0] for ring in rings]))
    least, most = crossings(rings, at)
    return Envelope(at, least, np.inf), Envelope(at, most, -np.inf)


def crossings(rings: tuple[FloatPath, ...], at: Floats) -> tuple[Floats, Floats]:
    """Return for each x in ``at`` the least and the greatest y of the rings there; ±infinity where they do not reach."""
    least, most = np.full(len(at), np.inf), np.full(len(at), -np.inf)
    for ring in rings:
        x0, y0 = ring[:, 0], ring[:, 1]
        x1, y1 = next_of(x0), next_of(y0)
        run = x1 - x0
        steep = np.where(np.abs(run) < 1e-12, 1.0, run)
        share = np.clip((at[:, None] - x0) / steep, 0.0, 1.0)
        y = y0 + share * (y1 - y0)
        hit = (at[:, None] >= np.minimum(x0, x1)) & (at[:, None] <= np.maximum(x0, x1))
        upright = hit & (run == 0)
        low, high = np.where(hit, y, np.inf), np.where(hit, y, -np.inf)
        if upright.any():
            low, high = np.where(upright, np.minimum(y0, y1), low), np.where(upright, np.maximum(y0, y1), high)
        least, most = np.minimum(least, low.min(axis=1)), np.maximum(most, high.max(axis=1))
    return least, most


@record
class Rows:
    """Lattices, one per entry of the arrays, all at one turn of P (degrees).

    ``pitch`` along the row; Q stands at (``dx``, ``dy``) from P when ``paired``; row i lies ``i * rise`` up, shifted by
    ``i * shift`` or, when ``zigzag``, by ``shift`` in every second row.
    """

    turn: float
    paired: bool
    pitch: Floats
    dx: Floats
    dy: Floats
    rise: Floats
    shift: Floats
    zigzag: npt.NDArray[np.bool_]


class Borders:
    """The envelopes of N and M at one turn."""

    def __init__(
        self, n: tuple[FloatPath, ...], m: tuple[FloatPath, ...] | None, over_n: Envelope | None = None
    ) -> None:
        """Take the rings of N and M (mm), turned already; M is None when Q is not allowed. ``over_n``: N from above, where it is
        known."""
        self.n, self.m = n, m
        self.over_n = over_n or envelopes(n)[1]
        self.tall = float(max(ring[:, 1].max() for ring in n))
        swapped = tuple(ring[:, ::-1] for ring in n)
        self.least_pitch = float(crossings(swapped, np.array([0.0]))[1][0])
        if m is not None:
            self.under_m, self.over_m = envelopes(m)

    def rise(self, shift: Floats, rows: "tuple[Floats, Floats, Floats]") -> Floats:
        """Return the least distance of a row shifted by ``shift`` over another; pitch, dx, dy broadcast with it."""
        pitch, dx, dy = rows
        left, right = self.over_n.at[0], self.over_n.at[-1]
        up = self.over_n(_row(shift, pitch, left, right)).max(axis=-1)
        if self.m is not None:
            left, right = self.over_m.at[0], self.over_m.at[-1]
            over = _row(shift, pitch, left - dx, right - dx) + dx[..., None]
            under = dx[..., None] - _row(shift, pitch, dx - right, dx - left)
            up = np.maximum(up, self.over_m(over).max(axis=-1) - dy)
            up = np.maximum(up, dy - self.under_m(under).min(axis=-1))
        return np.asarray(np.maximum(up, 1e-3))

    def most_rise(self, dy: Floats) -> Floats:
        """Return a distance of rows over each other that is enough at any shift."""
        most = np.full_like(dy, self.over_n.height.max())
        if self.m is not None:
            most = np.maximum(most, np.maximum(self.over_m.height.max() - dy, dy - self.under_m.height.min()))
        return np.asarray(most)


def _row(shift: Floats, pitch: Floats, left: Floats | float, right: Floats | float) -> Floats:
    """Return the places of a row's copies (``shift`` and whole pitches from it) from ``left`` to ``right``, along a last axis; some
    may lie beyond."""
    first = np.ceil((left - shift) / pitch)
    number = int((np.floor((right - shift) / pitch) - first).max()) + 1
    return np.asarray(shift[..., None] + (first[..., None] + np.arange(max(1, number))) * pitch[..., None])


def lattices(borders: Borders, turn: float, level: float, heights: int, shifts: int) -> Rows:
    """Work out lattices at one turn: about ``heights`` places of Q against P, each with its best few shifts, found among
    ``shifts`` even steps and then more finely. ``level``: the height of Q at which P and Q reach equally high and low."""
    if borders.m is None:
        pitch, dx, dy = np.array([borders.least_pitch]), np.zeros(1), np.zeros(1)
    else:
        swapped = tuple(ring[:, ::-1] for ring in borders.m)
        ys = np.unique(np.concatenate([ring[:, 1] for ring in borders.m]))
        # corners of M first: outlines lock there; Q level with P; even steps between
        steps = np.linspace(ys[0], ys[-1], heights + 2)[1:-1]
        dy = np.unique(np.concatenate((ys[:: max(1, len(ys) // heights)], steps, [level])))
        left, right = crossings(swapped, dy)
        good = np.isfinite(right)
        dy, dx, left = dy[good], right[good], left[good]
        pitch = np.maximum(borders.least_pitch, dx - left)
    rows = (pitch[:, None], dx[:, None], dy[:, None])
    base = pitch[:, None] * (np.arange(shifts) / shifts)
    fine = _finer(borders, base, rows, zigzag=False)
    swung = _finer(borders, base, rows, zigzag=True)
    still = np.zeros_like(fine)
    rise = [
        least_rise(borders, shift, (pitch, dx, dy), zigzag)
        for shift, zigzag in ((fine, False), (swung, True), (still, False))
    ]
    shift = np.concatenate((fine, swung, still))
    zigzag = np.repeat((False, True, False), len(fine))
    pitch, dx, dy = np.tile(pitch, 3), np.tile(dx, 3), np.tile(dy, 3)
    return Rows(turn, borders.m is not None, pitch, dx, dy, np.concatenate(rise), shift, zigzag)


def least_rise(borders: Borders, shift: Floats, rows: tuple[Floats, Floats, Floats], zigzag: bool) -> Floats:
    """Return the least rise at which each row also clears the rows further down."""
    rise = borders.rise(shift, rows)
    if zigzag:
        rise = np.maximum(rise, borders.rise(-shift, rows))
    most = borders.most_rise(rows[2])
    for down in (
        (2,) if zigzag else (2, 3, 4)
    ):  # of a zigzag the row two down lies straight under, that three down as the next one
        near = rise * down < most
        if near.any():
            apart, pitch, dx, dy = (
                np.broadcast_to(of, rise.shape)[near] for of in (shift * (0 if zigzag else down), *rows)
            )
            rise[near] = np.maximum(rise[near], borders.rise(apart, (pitch, dx, dy)) / down)
    tall = np.abs(rows[2]) + 2 * borders.tall
    return np.asarray(np.maximum(rise, tall / 5 * (5 * rise < tall)))


def _finer(borders: Borders, base: Floats, rows: tuple[Floats, Floats, Floats], zigzag: bool) -> Floats:
    """Return for each lattice the shift of least rise: the best of ``base``, made finer twice."""
    step = rows[0] * (base[0, 1] / rows[0][0, 0]) if base.shape[1] > 1 else rows[0]
    tried = base
    best = base[:, 0]
    for _ in range(3):
        rise = least_rise(borders, tried, rows, zigzag)
        best = tried[np.arange(len(tried)), rise.argmin(axis=1)]
        step = step / 4
        tried = best[:, None] + step * np.arange(-4, 5)
    return best
