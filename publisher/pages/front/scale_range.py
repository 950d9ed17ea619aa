"""The print-scale budget as the pages say it: the range that joints worked out, with the meetings that bind."""

from publisher.basics import record
from publisher.joints import Joined, Meeting


@record
class ScaleRange:
    """Allowed print scale (1 = true size), and the meeting that bounds it on each side (None: the general band does)."""

    least: float
    most: float
    tightest: Meeting | None
    loosest: Meeting | None


def budget(joined: Joined) -> ScaleRange:
    """Return what joints allows, each end with the meeting that sets it."""
    allowed = joined.budget
    return ScaleRange(allowed.least, allowed.most, joined.meeting(allowed.least_by), joined.meeting(allowed.most_by))
