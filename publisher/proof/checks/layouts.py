"""The pictures of laid-out sheets: every copy where it was laid, with its letter, and nothing else."""

import re
from functools import partial

import numpy as np
import shapely

from publisher.basics import Box, Carried, Check, Findings, LayoutPromise
from publisher.proof.checks.frame import carried_faults, judged
from publisher.proof.measuring import CARRIED_TOLERANCE, Case, carried_lines, lines_in, met_by, only, strokes_in
from publisher.proof.reading import Array, TextLine, normal, says

BESIDE = 9.0  # mm beside and over a picture in which the distances of its rows stand
LEVEL = 1.2  # mm between a distance's words and the end of its line
HALF_STEP = 0.05  # mm on the sheet: half of the last digit of a distance
DISTANCE = re.compile(r"\d+\.\d")
SMALL_ONES = "too small for a letter:"


@judged(
    "proof/layout-picture",
    "Layouts drawn as laid out",
    "a buyer copies them onto board: a piece elsewhere, of another letter or lying over its neighbour spoils the sheet; lines "
    f"may be {CARRIED_TOLERANCE:g} mm off on the page, the distance of a row {HALF_STEP:g} mm on the sheet",
    may_be_empty=True,
)
def layout_pictures(case: Case, check: Check[Case]) -> Findings:
    """Look for each promised sheet on the pages: its frame, its pieces with their letters, its rows, and no other line."""
    hint = "draw each picture from the layout of its own sheet"
    for promise in case.promises.layouts:
        who = f"{promise.board.replace('_', ' ')}, {promise.sheet}: sheet {promise.number}"
        judge = partial(_fault, case, promise)
        yield from carried_faults(case, check, promise.key, who, hint, judge, f": the picture of {who}")
    return len(case.promises.layouts)


def _fault(case: Case, promise: LayoutPromise, where: Carried) -> str:
    """Return in words what is wrong with a picture; empty when nothing."""
    ink = case.ink(where.page)
    if ink is None:
        return "is missing"
    sheet = Box(0.0, 0.0, promise.width, promise.height).corners()
    frame, *_ = carried_lines(where, [(*sheet, sheet[0])])
    box = Box(*frame.min(axis=0).tolist(), *frame.max(axis=0).tolist())
    pieces = [carried_lines(where, place.rings) for place in promise.places]
    rings = [np.vstack((ring, ring[:1])) for piece in pieces for ring in piece]
    strokes = strokes_in(ink, box, solid=True)
    for wanted, what in (([frame], "has no frame of the sheet"), (rings, "lacks a piece or has it elsewhere")):
        found = met_by(wanted, strokes)
        if found.missing:
            return f"{what}: no line at {found.at[0]:.1f}, {found.at[1]:.1f} mm"
    stray = only(strokes, [frame, *rings])
    if stray.missing:
        return f"shows a line that no piece has, at {stray.at[0]:.1f}, {stray.at[1]:.1f} mm"
    lines = case.lines(where.page)
    return _lettered(promise, pieces, lines_in(lines, box), lines) or _rows(case, where, box)


def _lettered(
    promise: LayoutPromise, pieces: list[list[Array]], inside: list[TextLine], page: tuple[TextLine, ...]
) -> str:
    """Return what is wrong with the letters: each piece holds its own; the caption names those that are too small."""
    small = [line.text.partition(SMALL_ONES)[2] for line in page if SMALL_ONES in line.text]
    spots = [(normal(line.text), shapely.Point(line.middle())) for line in inside]
    grounds = [shapely.Polygon(rings[0], rings[1:]) for rings in pieces]
    letters = {place.letter for place in promise.places}
    for ground, place in zip(grounds, promise.places, strict=True):
        shapely.prepare(ground)
        held = [text for text, spot in spots if text in letters and ground.contains(spot)]
        if held != [place.letter] and (held or not any(says(words, place.letter) for words in small)):
            return f"has {' and '.join(held) or 'no letter'} in a piece of part {place.letter}"
    return ""


def _rows(case: Case, where: Carried, box: Box) -> str:
    """Return what is wrong with the distances of rows: each stands at the end of a dashed line that is so far from the edge."""
    ink = case.ink(where.page)
    assert ink is not None
    starts, ends, owners = ink.segments
    across = ends - starts
    for level in (True, False):
        axis, long = (1, box.width) if level else (0, box.height)
        whole = ink.dashed[owners] & (np.abs(across[:, axis]) < CARRIED_TOLERANCE)
        whole &= np.abs(np.abs(across[:, 1 - axis]) - long) < CARRIED_TOLERANCE
        low, high = (box.bottom, box.top) if level else (box.left, box.right)
        whole &= (starts[:, axis] > low - CARRIED_TOLERANCE) & (starts[:, axis] < high + CARRIED_TOLERANCE)
        drawn = starts[whole, axis]
        beside = (
            Box(box.right, box.bottom - LEVEL, box.right + BESIDE, box.top + LEVEL)
            if level
            else Box(box.left - LEVEL, box.top, box.right + LEVEL, box.top + BESIDE / 2)
        )
        for line in lines_in(case.lines(where.page), beside):
            text = normal(line.text)
            if not DISTANCE.fullmatch(text):
                continue
            spot = line.middle()[axis]
            near = drawn[np.abs(drawn - spot) < LEVEL]
            away = np.abs((near - low) / where.scale - float(text))
            if not len(away) or away.min() > HALF_STEP + CARRIED_TOLERANCE * 0.1 / where.scale:
                return f"names a distance of {text} mm where no row is"
    return ""
