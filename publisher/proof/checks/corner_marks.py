"""A mark stands in every corner of the printable limit where corner marks are promised."""

from itertools import product

import numpy as np

from publisher.basics import Box, Check, Finding, Outcome, Severity
from publisher.proof.measuring import Case, Ink

LEAST_ARM = 2.0  # mm
NEAR = 0.06  # mm, beside half the stroke's width: a mark may stand with its middle or its outer edge on the limit
NAMES = {(0, 0): "lower left", (1, 0): "lower right", (0, 1): "upper left", (1, 1): "upper right"}


def run(case: Case, check: Check[Case]) -> Outcome:
    """Look for two arms in each corner."""
    found: list[Finding] = []
    looked = 0
    for promise in case.promises.pages:
        ink = case.ink(promise.page)
        if not promise.corners or ink is None:
            continue
        for right, top in product((0, 1), (0, 1)):
            looked += 1
            if not _marked(ink, promise.limit, bool(right), bool(top)):
                found.append(
                    check.found(
                        f"page {promise.page}: the corner mark at the {NAMES[right, top]} is missing or out of its place",
                        subject=f"page {promise.page}",
                        hint="draw all four corner marks at the corners of the printable limit",
                    )
                )
    return Outcome(looked, tuple(found))


def _marked(ink: Ink, limit: Box, right: bool, top: bool) -> bool:
    corner = np.array((limit.right if right else limit.left, limit.top if top else limit.bottom))
    inward = np.array((-1.0 if right else 1.0, -1.0 if top else 1.0))
    starts, ends, owners = ink.segments
    if not len(owners):
        return False
    allowed = ink.width[owners] / 2 + NEAR
    met = [False, False]
    for a, b in ((starts, ends), (ends, starts)):
        at_corner = (np.abs(a - corner) <= allowed[:, None]).all(axis=1)
        arm = (b - a) * inward
        for axis in (0, 1):
            straight = np.abs(arm[:, 1 - axis]) < 0.01
            met[axis] = met[axis] or bool((at_corner & straight & (arm[:, axis] >= LEAST_ARM)).any())
    return met[0] and met[1]


CHECK = Check(
    "proof/corner-mark",
    "Four corner marks",
    "a buyer sees a clipped page by its missing corner marks: a page may be clipped although its scale is true",
    Severity.ERROR,
    run=run,
)
