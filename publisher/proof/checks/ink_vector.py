"""All ink lies inside the printable limit: strokes with half their width, areas, letters, pictures."""

import numpy as np

from publisher.basics import Box, Check, Finding, Outcome, PagePromise, Severity
from publisher.proof.measuring import Case
from publisher.proof.reading import covers

ROUNDING = 0.02  # mm
WHITE = 0.98


def run(case: Case, check: Check[Case]) -> Outcome:
    """Compare the reach of everything painted with the limit."""
    found: list[Finding] = []
    looked = 0
    for promise in case.promises.pages:
        boxes = _boxes(case, promise.page)
        looked += len(boxes)
        worst = max(((_over(box, promise.limit), what, box) for what, box in boxes), key=lambda w: w[0], default=None)
        if worst is not None and worst[0] > ROUNDING:
            found.append(_finding(check, promise, *worst))
    return Outcome(looked, tuple(found))


def _boxes(case: Case, number: int) -> list[tuple[str, Box]]:
    page, ink = case.page(number), case.ink(number)
    if page is None or ink is None:
        return []
    boxes: list[tuple[str, Box]] = []
    if len(ink.piece):
        half = np.array([page.pieces[i].widest for i in ink.piece])[:, None] / 2
        reach = ink.bounds + half * (-1, -1, 1, 1)
        low, high = reach.min(axis=0), reach.max(axis=0)
        boxes.append(("a stroke", Box(float(low[0]), float(low[1]), float(high[2]), float(high[3]))))
    boxes += [("an area or picture", box) for _, grey, box, _ in covers(page) if grey is None or grey < WHITE]
    for text, why in zip(page.texts, case.hidden(number), strict=True):
        if not why and text.text.strip():
            xs, ys = sorted((text.x, text.end_x)), sorted((text.y, text.end_y))
            boxes.append((f"“{text.text.strip()[:40]}”", Box(xs[0], ys[0], xs[1], ys[1])))
    return boxes


def _over(box: Box, limit: Box) -> float:
    return max(limit.left - box.left, limit.bottom - box.bottom, box.right - limit.right, box.top - limit.top)


def _finding(check: Check[Case], promise: PagePromise, over: float, what: str, _: Box) -> Finding:
    return check.found(
        f"page {promise.page}: {what} reaches {over:.2f} mm beyond the printable limit",
        subject=f"page {promise.page}",
        hint="keep everything inside the limit that the corner marks show",
        value=over,
        limit=0.0,
    )


CHECK = Check(
    "proof/ink-outside-limit",
    "Ink inside the printable limit",
    "what lies outside the smallest printable area is missing on some printers",
    Severity.ERROR,
    run=run,
)
