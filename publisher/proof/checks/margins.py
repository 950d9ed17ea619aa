"""The margins of a page: no ink in them, and a mark in each corner of the printable limit."""

from itertools import product

import numpy as np

from publisher.basics import Box, Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case, Ink

INK_ROUNDING = 0.02  # mm
WHITE = 0.98  # grey from which an area is no ink
LEAST_ARM = 2.0  # mm
CORNER_OFF = 0.06  # mm, beside half the stroke's width: a mark may stand with its middle or its outer edge on the limit
CORNERS = {(0, 0): "lower left", (1, 0): "lower right", (0, 1): "upper left", (1, 1): "upper right"}
INSIDE = "keep everything inside the limit that the corner marks show"


@judged(
    "proof/ink-outside-limit",
    "Ink inside the printable limit",
    f"what lies outside the smallest printable area (by more than {INK_ROUNDING:g} mm) is missing on some printers",
)
def ink_by_lines(case: Case, check: Check[Case]) -> Findings:
    """Compare the reach of everything painted with the limit: strokes with half their width, areas, letters, pictures."""
    looked = 0
    for promise in case.promises.pages:
        boxes = _inked(case, promise.page)
        looked += len(boxes)
        reach = ((box.beyond(promise.limit), what) for what, box in boxes)
        over, what = max(reach, key=lambda w: w[0], default=(0.0, ""))
        if over > INK_ROUNDING:
            reaches = f": {what} reaches {over:.2f} mm beyond the printable limit"
            yield about(check, page_name(promise.page), reaches, INSIDE, over, 0.0)
    return looked


def _inked(case: Case, number: int) -> list[tuple[str, Box]]:
    """Return what is painted on a page, in words, and how far it reaches."""
    page, ink = case.page(number), case.ink(number)
    if page is None or ink is None:
        return []
    boxes: list[tuple[str, Box]] = []
    if len(ink.piece):
        half = np.array([page.pieces[i].widest for i in ink.piece])[:, None] / 2
        reach = ink.bounds + half * (-1, -1, 1, 1)
        low, high = reach.min(axis=0), reach.max(axis=0)
        boxes.append(("a stroke", Box(float(low[0]), float(low[1]), float(high[2]), float(high[3]))))
    boxes += [("an area or picture", box) for _, grey, box, _ in case.covers(number) if grey is None or grey < WHITE]
    for text, why in zip(page.texts, case.hidden(number), strict=True):
        if not why and text.text.strip():
            box = Box.round(((text.x, text.y), (text.end_x, text.end_y)))
            boxes.append((f"“{text.text.strip()[:40]}”", box))
    return boxes


@judged(
    "proof/ink-in-margin-by-pixels",
    "Margins stay white",
    "the same as the ink check by a second reader, which also sees letters' true shapes, patterns and notes",
)
def ink_by_pixels(case: Case, check: Check[Case]) -> Findings:
    """Look at the margins of every page at low resolution, as the second reader draws it."""
    readings = case.pixels()
    if readings.trouble:
        message = f"the second reader gives up: {readings.trouble}"
        yield check.found(message, subject=case.file.name, hint="make the file again")
    for margin in readings.margins:
        if margin.pixels:
            x, y = margin.at
            what = f": there is ink outside the printable limit, for one at {x:.1f}, {y:.1f} mm"
            yield about(check, page_name(margin.page), what, INSIDE, float(margin.pixels), 0.0)
    return len(readings.margins)


@judged(
    "proof/corner-mark",
    "Four corner marks",
    "a buyer sees a clipped page by its missing corner marks: a page may be clipped although its scale is true; "
    f"each has two arms of at least {LEAST_ARM:g} mm",
)
def corner_marks(case: Case, check: Check[Case]) -> Findings:
    """Look for two arms in each corner of the printable limit where corner marks are promised."""
    looked = 0
    for promise in case.promises.pages:
        ink = case.ink(promise.page)
        if not promise.corners or ink is None:
            continue
        for right, top in product((0, 1), (0, 1)):
            looked += 1
            if not _marked(ink, promise.limit, bool(right), bool(top)):
                what = f": the corner mark at the {CORNERS[right, top]} is missing or out of its place"
                hint = "draw all four corner marks at the corners of the printable limit"
                yield about(check, page_name(promise.page), what, hint)
    return looked


def _marked(ink: Ink, limit: Box, right: bool, top: bool) -> bool:
    """Say whether two arms run inwards from a corner of the limit."""
    corner = np.array((limit.right if right else limit.left, limit.top if top else limit.bottom))
    inward = np.array((-1.0 if right else 1.0, -1.0 if top else 1.0))
    starts, ends, owners = ink.segments
    if not len(owners):
        return False
    allowed = ink.width[owners] / 2 + CORNER_OFF
    met = [False, False]
    for a, b in ((starts, ends), (ends, starts)):
        at_corner = (np.abs(a - corner) <= allowed[:, None]).all(axis=1)
        arm = (b - a) * inward
        for axis in (0, 1):
            straight = np.abs(arm[:, 1 - axis]) < 0.01
            met[axis] = met[axis] or bool((at_corner & straight & (arm[:, axis] >= LEAST_ARM)).any())
    return met[0] and met[1]
