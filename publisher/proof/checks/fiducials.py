"""Fiducial marks stand where a fitted picture looks for them, whole, with white round them."""

import numpy as np
import shapely

from publisher.basics import Box, Check, FiducialPromise, Findings, Point
from publisher.proof.checks.boxes import crowded, line_meets
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import SAME_WIDTH, Case, Ink
from publisher.proof.reading import PageRead, PaintedPath

FIDUCIAL_OFF = 0.02  # mm that an end of a line may be off: a quarter of a dot of 300 to the inch


@judged(
    "proof/fiducial",
    "Fiducial marks in their places",
    "a photograph or a scan is fitted from these marks: one that is off, or is taken for something beside it, bends the whole page; "
    f"their ends may be {FIDUCIAL_OFF:g} mm off",
    may_be_empty=True,
)
def fiducial_marks(case: Case, check: Check[Case]) -> Findings:
    """Look for the lines of each promised mark, and for anything else in the space that is kept clear round it."""
    marks = case.there(case.promises.fiducials)
    pages = {page.number: page for _, page in marks}
    near = {number: _near(page, [mark for mark, _ in marks if mark.page == number]) for number, page in pages.items()}
    for promise, page in marks:
        ink = case.ink(promise.page)
        who = f"{page_name(promise.page)}: the mark at the {promise.place}"
        if ink is None or not all(_drawn(ink, line, promise.width) for line in promise.lines):
            yield about(
                check, who, "is missing, covered, or out of its place", "draw its lines where they are promised"
            )
        elif _crowded(near[page.number], case.boxes(promise.page), promise):
            yield about(check, who, "has something else close by", "keep the white round it clear")
    return len(marks)


def _drawn(ink: Ink, line: tuple[Point, Point], width: float) -> bool:
    """Say whether a line of this width shows whole, with its ends where they should be."""
    starts, ends, owners = ink.segments
    if not len(owners):
        return False
    alike = (np.abs(ink.width[owners] - width) <= SAME_WIDTH) & ~ink.dashed[owners]
    a, b = np.array(line)
    met = np.zeros(len(owners), dtype=bool)
    for one, two in ((starts, ends), (ends, starts)):
        met |= (np.abs(one - a) <= FIDUCIAL_OFF).all(axis=1) & (np.abs(two - b) <= FIDUCIAL_OFF).all(axis=1)
    return bool((met & alike).any())


def _near(page: PageRead, marks: list[FiducialPromise]) -> list[PaintedPath]:
    """Return what is painted near the marks of a page: little of all that is."""
    rooms = np.array([box.sides for mark in marks for box in mark.clear])
    boxes = np.array([piece.box.grown(piece.widest / 2).sides for piece in page.pieces]).reshape(-1, 4)[:, None]
    meet = np.all(boxes[..., :2] <= rooms[:, 2:], axis=-1) & np.all(boxes[..., 2:] >= rooms[:, :2], axis=-1)
    return [page.pieces[i] for i in np.flatnonzero(np.any(meet, axis=1))]


def _crowded(near: list[PaintedPath], others: tuple[tuple[int, Box], ...], promise: FiducialPromise) -> bool:
    """Say whether anything but a mark's own lines shows in the space round it."""
    own = shapely.union_all([shapely.LineString(line).buffer(FIDUCIAL_OFF) for line in promise.lines])

    def is_own(piece: PaintedPath) -> bool:
        if piece.fill_grey is not None or piece.widest > promise.width + SAME_WIDTH:
            return False
        seen = (line for line in piece.lines() for box in promise.clear if line_meets(line, piece.widest / 2, box))
        return all(own.covers(shapely.LineString(line)) for line in seen)

    return any(crowded(near, others, box, is_own) for box in promise.clear)
