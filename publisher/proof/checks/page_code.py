"""The page code is drawn in its box: dark squares in a square field, with its three finder patterns (ISO/IEC 18004, 6.3.3)."""

from typing import Any

import numpy as np
import shapely

from publisher.basics import Box, Check, CodePromise, Outcome, Severity
from publisher.proof.case import Case
from publisher.proof.ink import bounds, filled_area
from publisher.proof.model import PageRead, Piece

DARK = 0.3
SQUARE = 0.1  # mm between width and height
SHARES = (0.3, 0.7)  # of dark area; masks keep codes near one half (7.8.3)
FINDER = 7  # modules across a finder pattern
SIZES = range(21, 62, 4)  # modules of versions 1 to 11


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look at the dark areas inside each promised box."""
    promises = [p for p in case.promises.codes if case.page(p.page) is not None]
    found = []
    for promise in promises:
        page = case.page(promise.page)
        fault = _fault(page, promise) if page is not None else ""
        if fault:
            message = f"page {promise.page}: the page code {fault}"
            found.append(
                check.found(
                    message,
                    subject=f"page {promise.page}",
                    hint="draw the code's dark modules as filled squares in its box",
                )
            )
    return Outcome(len(promises), tuple(found))


def _fault(page: PageRead, promise: CodePromise) -> str:
    inside = [p for p in page.pieces if _is_module(p, promise.box)]
    if not inside:
        return "is not drawn"
    area = shapely.union_all([filled_area(p) for p in inside])
    left, bottom, right, top = area.bounds
    if abs((right - left) - (top - bottom)) > SQUARE or right - left < 0.6 * promise.box.width:
        return f"is {right - left:.1f} × {top - bottom:.1f} mm, which is no square that fills its box"
    share = area.area / ((right - left) * (top - bottom))
    if not SHARES[0] <= share <= SHARES[1]:
        return f"is {share:.0%} dark, unlike a code"
    if not any(_finders(area, size) for size in SIZES):
        return "lacks one of its three finder patterns"
    return ""


def _is_module(piece: Piece, box: Box) -> bool:
    if piece.fill_grey is None or piece.fill_grey > DARK or not piece.visible:
        return False
    own, room = bounds(piece.lines), box.grown(0.05)
    return own.left >= room.left and own.bottom >= room.bottom and own.right <= room.right and own.top <= room.top


def _finders(area: Any, size: int) -> bool:
    """Say whether three corners show a finder pattern when the code has this many modules across."""
    left, bottom, right, top = area.bounds
    step = (right - left) / size
    index = np.arange(FINDER)
    column, row = (a.ravel() for a in np.meshgrid(index, index))
    ring = np.maximum(np.abs(column - 3), np.abs(row - 3))
    dark = ring != 2
    shapely.prepare(area)
    for x0, y0 in ((left, top - FINDER * step), (right - FINDER * step, top - FINDER * step), (left, bottom)):
        points = shapely.points(x0 + (column + 0.5) * step, y0 + (row + 0.5) * step)
        if (shapely.contains(area, points) != dark).any():
            return False
    return True


CHECK = Check(
    "proof/page-code",
    "Page code there",
    "a scan of a printed page finds out by its code which page it is",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
