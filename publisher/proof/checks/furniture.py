"""Header, footer and page code keep to their boxes, and nothing else comes into them; what is kept clear is."""

import numpy as np

from publisher.basics import Box, Check, Findings
from publisher.proof.checks.boxes import BOX_TOUCH, PAPER, crowded, line_meets, meets
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import PageRead, PaintedPath


@judged(
    "proof/furniture",
    "Header, footer and page code in their boxes",
    "pages are compared, and scans are read, with these boxes covered: what reaches in or out by more than "
    f"{BOX_TOUCH:g} mm is lost or counted twice",
    may_be_empty=True,
)
def furniture_apart(case: Case, check: Check[Case]) -> Findings:
    """Look at each promised box: it holds something, and all that shows lies wholly in it or wholly outside."""
    furniture = case.there(case.promises.furniture)
    for promise, page in furniture:
        held, crossing = _looked_at(page, case.boxes(promise.page), promise.box)
        who = page_name(promise.page)
        hint = "draw header, footer and page code inside their boxes, and all else outside"
        if not held:
            yield about(check, who, f": the box of its {promise.kind} is empty", hint)
        elif crossing:
            what = f": {crossing} things reach across the edge of the box of its {promise.kind}"
            yield about(check, who, what, hint, float(crossing), 0.0)
    return len(furniture)


@judged(
    "proof/clear-space",
    "Clear space where a card or a ruler is laid",
    "its edge is read against white paper, by an eye or in a photograph: what is printed there hides it",
    may_be_empty=True,
)
def space_clear(case: Case, check: Check[Case]) -> Findings:
    """Look for anything that shows in the boxes that are kept clear."""
    spaces = case.there(case.promises.clear)
    for promise, page in spaces:
        if crowded(page.pieces, case.boxes(promise.page), promise.box):
            what = f": something stands in the clear space beside the place of the {promise.kind}"
            yield about(check, page_name(promise.page), what, "leave the space that is promised there white")
    return len(spaces)


def _looked_at(page: PageRead, others: tuple[tuple[int, Box], ...], box: Box) -> tuple[int, int]:
    """Return how many things lie in a box, and how many reach across its edge."""
    held = crossing = 0
    for piece in page.pieces:
        if piece.visible and (piece.grey is not None or piece.fill_grey is not None):
            inside, across = _piece(piece, box)
            held, crossing = held + inside, crossing + across
    for _, other in others:
        if other.beyond(box) <= BOX_TOUCH:
            held += 1
        elif meets(box, other):
            crossing += 1
    return held, crossing


def _piece(piece: PaintedPath, box: Box) -> tuple[int, int]:
    """Count the subpaths of a piece that lie in a box, and those that show on both sides of its edge."""
    room = box.common(piece.clip.box)
    half = piece.widest / 2 if piece.grey is not None else 0.0
    if min(room.width, room.height) <= 0.0 or piece.box.overlap(box) < -(half + BOX_TOUCH):
        return 0, 0
    low = np.minimum.reduceat(piece.points, piece.starts[:-1], axis=0) - half
    high = np.maximum.reduceat(piece.points, piece.starts[:-1], axis=0) + half
    least, most = np.array(box.sides).reshape(2, 2)
    inside = ((low >= least - BOX_TOUCH) & (high <= most + BOX_TOUCH)).all(axis=1)
    near = ((low < most - BOX_TOUCH) & (high > least + BOX_TOUCH)).all(axis=1) & ~inside
    lines = piece.lines()
    area = piece.fill_grey is not None and piece.fill_grey < PAPER
    across = [i for i in np.flatnonzero(near) if area or line_meets(lines[i], half, room)]
    return int(inside.sum()), len(across)
