"""Boxes to tick on a label are as many as pieces are cut, and a label says that its print is traced where it is."""

import re

import numpy as np

from publisher.basics import Carried, Check, Findings, RowPromise
from publisher.proof.checks.frame import about, judged, page_name, words_at
from publisher.proof.measuring import Case

FOR_EACH = re.compile(r"one box for every (\d+)")
FEWEST_PER_BOX = 2  # pieces: a box that stands for one needs no word
NUMBERED = re.compile(r"this is \d+ of \d+|\b\d+ of \d+\b")
PENCIL = "pencil line"
TICK_BOX = (1.0, 4.0)  # mm: sides of boxes to tick, at least and at most
SIDES_OFF = 0.02  # mm by which sides of one box differ at most
LABEL_OVER = 0.6  # mm by which what belongs to a label may reach over its box


@judged(
    "proof/tick-boxes",
    "Labels count their pieces, and say how they are cut",
    "a box is ticked for each piece that is cut: one too few, and the last piece is never cut; and a print that is traced is cut on the "
    "pencil line, one that is pasted along its own",
    may_be_empty=True,
)
def tick_boxes(case: Case, check: Check[Case]) -> Findings:
    """Look at the boxes of each label, and at what it says of pencil lines."""
    rows, pieces = {row.part: row for row in case.promises.rows}, {piece.part: piece for piece in case.promises.prints}
    looked = 0
    for side in case.promises.sides:
        row, piece = rows.get(side.part), pieces.get(side.part)
        for where in case.carried(side.key) if row is not None and piece is not None else ():
            looked += 1
            said, boxes = words_at(case, where), _boxes(case, where)
            fault = _wrong_boxes(boxes, said, row) if row is not None else ""
            if not fault and piece is not None:
                fault = _wrong_way(said, boxes, piece.traced)
            if fault:
                who = f"{page_name(where.page)}: part {side.letter} ({side.part})"
                yield about(check, who, fault, "label each print from its row of the cut list")
    return looked


def _wrong_boxes(boxes: int, said: str, row: RowPromise) -> str:
    """Return in words that a label has boxes for another number of pieces; it may have none, and a print of one piece has one."""
    each = FOR_EACH.search(said)
    per = int(each[1]) if each else 1
    if each and per < FEWEST_PER_BOX:
        return f": its label says “{each[0]}”"
    wanted = sum(-(-count // per) for count in (row.count - row.mirrored, row.mirrored, row.spare)) if per else 0
    if boxes in (0, wanted) or (boxes == 1 and NUMBERED.search(said)):
        return ""
    return f": its label has {boxes} boxes to tick; {wanted} are wanted for {row.count} and {row.spare} to spare"


def _wrong_way(said: str, boxes: int, traced: bool) -> str:
    """Return in words that a label says a wrong way to cut; a short label without boxes may say none."""
    if traced and boxes and PENCIL not in said:
        return ": its label does not say that it is traced, and cut on the pencil line"
    return ": its label tells to cut on a pencil line, and nobody draws one" if PENCIL in said and not traced else ""


def _boxes(case: Case, where: Carried) -> int:
    """Return how many boxes to tick stand in a label."""
    page, label = case.page(where.page), where.box.grown(LABEL_OVER)
    count = 0
    for piece in page.pieces if page is not None else ():
        box = piece.box
        if piece.grey is None or box.left > label.right or box.right < label.left or box.bottom > label.top:
            continue
        for line in piece.lines():
            if (
                len(line) != 5 or not (line[0] == line[-1]).all()
            ):  # few of the thousands of lines under a label are boxes
                continue
            (left, bottom), (right, top) = line.min(axis=0), line.max(axis=0)
            inside = label.left <= left and label.bottom <= bottom and right <= label.right and top <= label.top
            if inside:
                sides = np.hypot(*np.diff(line, axis=0).T)
                count += bool(TICK_BOX[0] <= sides.min() and sides.max() <= TICK_BOX[1] and np.ptp(sides) <= SIDES_OFF)
    return count
