"""The print-scale budget: between which scales the printed sizes of a design still meet what does not shrink.

If all on paper shrinks alike the parts still fit each other; what breaks is what meets board, bases, rods.
"""

from math import inf

from publisher.joints.model import Meeting, ScaleBudget

GENERAL = 0.005
"""±0.5 %: the band that a ruler can judge on 100 mm. Common practice, no source."""

PENCIL_SPREAD = 0.1
"""mm a side: how far a sharp pencil's line wanders from its usual width. It stands beside the budget, and is not counted in it.
Common practice, no source."""


def budget_of(meetings: tuple[Meeting, ...]) -> ScaleBudget:
    """Intersect what every meeting allows with the general band.

    A meeting holds at scale s while ``cut_at(s)`` lies from ``unprinted_least`` to ``loosest``. True size is never shut out of
    the budget: a meeting that fails at scale 1 is a finding of its own (``joints/slot-too-narrow``, ``joints/need-not-met``),
    not a matter of printing.
    """
    low, high, low_by, high_by = 1.0 - GENERAL, 1.0 + GENERAL, "", ""
    least, most, least_by, most_by = 0.0, inf, "", ""
    for meeting in meetings:
        if meeting.printed + meeting.grown <= 0.0:
            continue
        tight = meeting.scale_for(meeting.unprinted_least)
        loose = inf if meeting.loosest is None else meeting.scale_for(meeting.loosest)
        if tight > least:
            least, least_by = tight, meeting.name
        if loose < most:
            most, most_by = loose, meeting.name
        if min(1.0, tight) > low:
            low, low_by = min(1.0, tight), meeting.name
        if max(1.0, loose) < high:
            high, high_by = max(1.0, loose), meeting.name
    return ScaleBudget(low, high, low_by, high_by, least, most, least_by, most_by)
