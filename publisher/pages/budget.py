"""The print-scale budget: between which scales the printed sizes of a design still meet what does not shrink."""

from dataclasses import dataclass

from publisher.joints import Meeting

GENERAL = 0.005  # ±0.5 %: the band that a ruler can judge on 100 mm


@dataclass(frozen=True, slots=True)
class Budget:
    """Allowed print scale (1 = true size), and the meeting that bounds it on each side (None: the general band does)."""

    least: float
    most: float
    tightest: Meeting | None
    loosest: Meeting | None


def budget(meetings: tuple[Meeting, ...]) -> Budget:
    """Intersect what every meeting allows with the general band of ±0.5 %.

    A meeting holds at scale s while s · printed ≥ unprinted_least and s · printed ≤ loosest. True size is never shut out:
    a meeting that fails at scale 1 is a fit finding of its own, not a matter of printing.
    """
    low, high = 1.0 - GENERAL, 1.0 + GENERAL
    tightest: Meeting | None = None
    loosest: Meeting | None = None
    for meeting in meetings:
        if meeting.printed <= 0.0:
            continue
        least = min(1.0, meeting.unprinted_least / meeting.printed)
        if least > low:
            low, tightest = least, meeting
        if meeting.loosest is not None:
            most = max(1.0, meeting.loosest / meeting.printed)
            if most < high:
                high, loosest = most, meeting
    return Budget(low, high, tightest, loosest)
