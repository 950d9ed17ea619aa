"""The page code is drawn in its box, module by module, with four light modules round it (ISO/IEC 18004, 6.3.3 and 6.3.8)."""

import numpy as np

from publisher.basics import Box, Check, CodePromise, Findings
from publisher.proof.checks.boxes import crowded, meets
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import Array, PageRead, PaintedPath

DARK_MODULE = 0.3
MODULE_OFF = 0.05  # mm by which a module may reach out of the code's box
CODE_SQUARE = 0.1  # mm between width and height
QUIET_MODULES = 4  # light modules all round (6.3.8)
FINDER = 7  # modules across a finder pattern
SIZES = range(21, 62, 4)  # modules of versions 1 to 11


@judged(
    "proof/page-code",
    "Page code as promised",
    "a scan of a printed page finds out by its code which page it is",
    may_be_empty=True,
)
def code_drawn(case: Case, check: Check[Case]) -> Findings:
    """Look at the dark areas inside each promised box."""
    codes = case.there(case.promises.codes)
    for promise, page in codes:
        fault = _fault(page, case.boxes(promise.page), promise)
        if fault:
            hint = "draw the code's dark modules as filled squares in its box"
            yield about(check, page_name(promise.page), f": the page code {fault}", hint)
    return len(codes)


def _fault(page: PageRead, others: tuple[tuple[int, Box], ...], promise: CodePromise) -> str:
    inside = [p for p in page.pieces if _is_module(p, promise.box)]
    if not inside:
        return "is not drawn"
    first = min(p.order for p in inside)
    if _covered(page, others, first, promise.box):
        return "lies under something else"
    box = Box.round(corner for piece in inside for corner in piece.box.corners())
    if abs(box.width - box.height) > CODE_SQUARE or box.width < 0.6 * promise.box.width:
        return f"is {box.width:.1f} × {box.height:.1f} mm, which is no square that fills its box"
    size = _size(inside, box)
    if size not in SIZES:
        return "has no finder pattern at its upper left"
    dark = _modules(inside, box, size)
    if not _finders(dark):
        return "lacks one of its three finder patterns"
    quiet = promise.box.grown(QUIET_MODULES * promise.box.width / size)
    crowd = f"has something in the {QUIET_MODULES} light modules round it"
    return _other(dark, promise.modules) or (
        crowd if crowded(page.pieces, others, quiet, lambda piece: _is_module(piece, promise.box)) else ""
    )


def _is_module(piece: PaintedPath, box: Box) -> bool:
    if piece.fill_grey is None or piece.fill_grey > DARK_MODULE or not piece.visible:
        return False
    return piece.box.beyond(box) <= MODULE_OFF


def _covered(page: PageRead, others: tuple[tuple[int, Box], ...], first: int, box: Box) -> bool:
    """Say whether anything but dark modules is painted over the code: areas, strokes, pictures, letters."""
    boxes = [
        p.box.grown(0.0 if p.grey is None else p.widest / 2)
        for p in page.pieces
        if p.order > first
        and p.visible
        and (p.grey is not None or (p.fill_grey is not None and p.fill_grey > DARK_MODULE))
    ]
    boxes += [other for order, other in others if order > first]
    return any(meets(b, box) for b in boxes)


def _size(pieces: list[PaintedPath], box: Box) -> int:
    """Return how many modules the code has across: the first dark run of its top row is a finder pattern's edge."""
    steps = 2000
    xs = box.left + (np.arange(steps) + 0.5) / steps * box.width
    row = _dark_along(pieces, xs, box.top - box.height / 200)
    run = steps if row.all() else int(np.argmin(row))
    return round(FINDER * steps / run) if run else 0


def _modules(pieces: list[PaintedPath], box: Box, size: int) -> Array:
    """Return which modules are dark, rows from the top: their middles are tried by the crossing rule."""
    middles = (np.arange(size) + 0.5) / size
    xs, ys = box.left + middles * box.width, box.top - middles * box.height
    return np.array([_dark_along(pieces, xs, float(y)) for y in ys])


def _dark_along(pieces: list[PaintedPath], xs: Array, y: float) -> Array:
    """Return which points of a level line lie in a piece by the even-odd rule."""
    dark = np.zeros(len(xs), dtype=bool)
    for piece in pieces:
        last = piece.starts[1:] - 1
        a, b = piece.points, np.roll(piece.points, -1, axis=0)
        b[last] = piece.points[piece.starts[:-1]]
        met = (a[:, 1] > y) != (b[:, 1] > y)
        at = np.sort(a[met, 0] + (y - a[met, 1]) / (b[met, 1] - a[met, 1]) * (b[met, 0] - a[met, 0]))
        dark |= (len(at) - np.searchsorted(at, xs)) % 2 == 1
    return dark


def _other(dark: Array, modules: tuple[str, ...]) -> str:
    """Return in words how the modules differ from the promised ones."""
    wanted = np.array([[m == "1" for m in row] for row in modules])
    if wanted.shape != dark.shape:
        return f"has {len(dark)} modules on a side; promised are {len(modules)}"
    wrong = int((wanted != dark).sum())
    return f"says something else than promised: {wrong} of its {dark.size} modules differ" if wrong else ""


def _finders(dark: Array) -> bool:
    """Say whether three corners show a finder pattern: a ring of light between a dark ring and a dark middle."""
    away = np.abs(np.arange(FINDER) - FINDER // 2)
    pattern = np.maximum(away[:, None], away[None, :]) != 2
    corners = (dark[:FINDER, :FINDER], dark[:FINDER, -FINDER:], dark[-FINDER:, :FINDER])
    return all(bool((corner == pattern).all()) for corner in corners)
