"""Regular rows of one outline: each row repeats one copy P, or a pair P and Q = P turned by 180°, at a pitch; each row
lies at a distance over the last one, shifted along it.

What may stand where follows from two no-fit polygons, N of P beside P and M of P beside Q, both turned with the lattice.
A row is known to clear the rows under it when it lies over their upper envelopes. Millimetres.
"""

import numpy as np
import numpy.typing as npt

from publisher.basics import record
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


def envelope(rings: tuple[FloatPath, ...], upper: bool = True) -> Envelope:
    """Return the border of rings (n × 2) seen from above or from below. Between breakpoints it errs to the safe side."""
    at = np.unique(np.concatenate([ring[:, 0] for ring in rings]))
    return Envelope(at, crossings(rings, at, upper), -np.inf if upper else np.inf)


def crossings(rings: tuple[FloatPath, ...], at: Floats, upper: bool) -> Floats:
    """Return for each x in ``at`` the greatest (or least) y of the rings there; ∓infinity where they do not reach."""
    nothing = -np.inf if upper else np.inf
    best = np.full(len(at), nothing)
    for ring in rings:
        x0, y0 = ring[:, 0], ring[:, 1]
        x1, y1 = np.roll(x0, -1), np.roll(y0, -1)
        run = x1 - x0
        steep = np.where(np.abs(run) < 1e-12, 1.0, run)
        share = np.clip((at[:, None] - x0) / steep, 0.0, 1.0)
        y = y0 + share * (y1 - y0)
        y = np.where(run == 0, np.maximum(y0, y1) if upper else np.minimum(y0, y1), y)
        hit = (at[:, None] >= np.minimum(x0, x1)) & (at[:, None] <= np.maximum(x0, x1))
        y = np.where(hit, y, nothing)
        best = np.maximum(best, y.max(axis=1)) if upper else np.minimum(best, y.min(axis=1))
    return best


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

    def __init__(self, n: tuple[FloatPath, ...], m: tuple[FloatPath, ...] | None) -> None:
        """Take the rings of N and M (mm), turned already; M is None when Q is not allowed."""
        self.n, self.m = n, m
        self.over_n = envelope(n)
        self.tall = float(max(ring[:, 1].max() for ring in n))
        swapped = tuple(ring[:, ::-1] for ring in n)
        self.least_pitch = float(crossings(swapped, np.array([0.0]), upper=True)[0])
        if m is not None:
            self.over_m, self.under_m = envelope(m), envelope(m, upper=False)
            self.wide = float(max(ring[:, 0].max() for ring in m) - min(ring[:, 0].min() for ring in m))
        else:
            self.wide = float(2 * max(ring[:, 0].max() for ring in n))

    def rise(self, shift: Floats, rows: "tuple[Floats, Floats, Floats]") -> Floats:
        """Return the least distance of a row shifted by ``shift`` over another; pitch, dx, dy broadcast with it."""
        pitch, dx, dy = rows
        reach = int(np.ceil(self.wide / float(pitch.min()))) + 1
        steps = np.arange(-reach, reach + 1, dtype=float)
        x = shift[..., None] + steps * pitch[..., None]
        up = self.over_n(x).max(axis=-1)
        if self.m is not None:
            up = np.maximum(up, self.over_m(x + dx[..., None]).max(axis=-1) - dy)
            up = np.maximum(up, dy - self.under_m(dx[..., None] - x).min(axis=-1))
        return np.asarray(np.maximum(up, 1e-3))


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
        right, left = crossings(swapped, dy, upper=True), crossings(swapped, dy, upper=False)
        good = np.isfinite(right)
        dy, dx, left = dy[good], right[good], left[good]
        pitch = np.maximum(borders.least_pitch, dx - left)
    rows = (pitch[:, None], dx[:, None], dy[:, None])
    base = pitch[:, None] * (np.arange(shifts) / shifts)
    fine = _finer(borders, base, rows, zigzag=False)
    swung = _finer(borders, base, rows, zigzag=True)
    still = np.zeros_like(fine)
    shift = np.concatenate((fine, swung, still))
    zigzag = np.concatenate((np.zeros(len(fine), bool), np.ones(len(fine), bool), np.zeros(len(fine), bool)))
    pitch, dx, dy = np.tile(pitch, 3), np.tile(dx, 3), np.tile(dy, 3)
    rise = least_rise(borders, shift, (pitch, dx, dy), zigzag)
    return Rows(turn, borders.m is not None, pitch, dx, dy, rise, shift, zigzag)


def least_rise(
    borders: Borders, shift: Floats, rows: tuple[Floats, Floats, Floats], zigzag: npt.NDArray[np.bool_]
) -> Floats:
    """Return the least rise at which each row also clears the rows further down."""
    rise = borders.rise(shift, rows)
    rise = np.where(zigzag, np.maximum(rise, borders.rise(-shift, rows)), rise)
    tall = np.abs(rows[2]) + 2 * borders.tall
    for down in (2, 3, 4):
        apart = np.where(zigzag, shift * (down % 2), shift * down)
        rise = np.maximum(rise, borders.rise(apart, rows) / down)
    return np.asarray(np.maximum(rise, tall / 5 * (5 * rise < tall)))


def _finer(borders: Borders, base: Floats, rows: tuple[Floats, Floats, Floats], zigzag: bool) -> Floats:
    """Return for each lattice the shift of least rise: the best of ``base``, made finer twice."""
    step = rows[0] * (base[0, 1] / rows[0][0, 0]) if base.shape[1] > 1 else rows[0]
    tried = base
    best = base[:, 0]
    for _ in range(3):
        flags = np.full(tried.shape, zigzag)
        rise = least_rise(borders, tried, tuple(np.broadcast_to(r, tried.shape) for r in rows), flags)  # type: ignore[arg-type]
        best = tried[np.arange(len(tried)), rise.argmin(axis=1)]
        step = step / 4
        tried = best[:, None] + step * np.arange(-4, 5)
    return best
