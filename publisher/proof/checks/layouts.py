"""The pictures of laid-out sheets: every copy where it was laid, with its letter, and nothing else."""

import re
from functools import partial

import numpy as np
import shapely

from publisher.basics import Box, Carried, Check, Findings, LayoutPromise
from publisher.proof.checks.frame import carried_faults, judged
from publisher.proof.measuring import (
    CARRIED_TOLERANCE,
    Case,
    StrokeSegments,
    carried_lines,
    lines_in,
    met_by,
    only,
    strokes_in,
)
from publisher.proof.reading import Array, TextLine, normal

NAME = re.compile(r"(\d+) (\S+)(?: →.*)?")  # a copy's number in the order of cutting and its letter


@judged(
    "proof/layout-picture",
    "Layouts drawn as laid out",
    "a buyer copies them onto board: a piece elsewhere, of another letter or lying over its neighbour spoils the sheet, and so does a "
    f"straight cut elsewhere; lines may be {CARRIED_TOLERANCE:g} mm off on the page",
    may_be_empty=True,
)
def layout_pictures(case: Case, check: Check[Case]) -> Findings:
    """Look for each promised sheet on the pages: its frame, its pieces with their names, its straight cuts, and no other line."""
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
    return _dashed(promise, where, strokes_in(ink, box), [frame, *rings]) or _lettered(
        promise, pieces, lines_in(case.lines(where.page), box)
    )


def _dashed(promise: LayoutPromise, where: Carried, strokes: StrokeSegments, solid: list[Array]) -> str:
    """Return what is wrong with the straight cuts and the offcut: each is drawn, and nothing else but the pieces."""
    ends = [
        ((cut.start, cut.at), (cut.end, cut.at)) if cut.level else ((cut.at, cut.start), (cut.at, cut.end))
        for cut in promise.cuts
    ]
    corners = promise.offcut.corners() if promise.offcut else ()
    lines = carried_lines(where, [*ends, *(((*corners, corners[0]),) if corners else ())])
    found = met_by(lines, strokes)
    if found.missing:
        return f"lacks a straight cut or the offcut at {found.at[0]:.1f}, {found.at[1]:.1f} mm"
    stray = only(strokes, [*lines, *solid])
    return f"shows a line of nothing laid, at {stray.at[0]:.1f}, {stray.at[1]:.1f} mm" if stray.missing else ""


def _lettered(promise: LayoutPromise, pieces: list[list[Array]], inside: list[TextLine]) -> str:
    """Return what is wrong with the names of pieces: each that is named bears its own number and letter, and no other’s."""
    spots = [(name[0], shapely.Point(line.middle())) for line in inside if (name := NAME.fullmatch(normal(line.text)))]
    grounds = [shapely.Polygon(rings[0], rings[1:]) for rings in pieces]
    for ground, place in zip(grounds, promise.places, strict=True):
        shapely.prepare(ground)
        held = [NAME.fullmatch(text) for text, spot in spots if ground.contains(spot)]
        if held and [(name[1], name[2]) for name in held if name] != [(str(place.order), normal(place.letter))]:
            said = " and ".join(name[0] for name in held if name)
            return f"has {said} in piece {place.order} of part {place.letter}"
    return ""
