"""Steps whose words say how long something dries, and that have no wait: no clock is drawn there."""

import re

from publisher.basics import Check, Findings, Severity, checked
from publisher.joints.assembled import Assembled

TIME = re.compile(r"\b(\d+(?:[.,]\d+)?)\s?(h|hours?|d|days?)\b")
"""A time over which work stops: a number, and h or d, or a whole word for one. Minutes are often those of an act, such as soaking."""


@checked(
    "joints/waits-unsaid",
    "A time to dry that a step says in words is its wait",
    "pictures show a clock where a step has a wait: where only words say 24 h, a buyer who goes by the pictures, and by the clocks of the "
    "other steps, goes on with wet glue",
    Severity.WARNING,
    may_be_empty=True,
)
def waits_unsaid(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look for times in the words of the steps, and for these among their waits."""
    looked_at = 0
    for number, step in enumerate(subject.design.steps, 1):
        text = "".join(piece if isinstance(piece, str) else "#" for piece in step.say.pieces)
        times = [f"{found[1]} {found[2][0]}" for found in TIME.finditer(text)]
        looked_at += len(times)
        if times and not step.wait:
            yield check.found(
                f"the step says “{times[0]}” in words and has no wait: no clock shows that time",
                subject=f"step {number}",
                hint=f"write wait: {times[0]}",
                place=step.say.place,
            )
    return looked_at
