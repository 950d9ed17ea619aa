"""Which end of a part is up and which face is outside, said at the step that puts it together: a part that goes in wrongly is scrap."""

from publisher.basics.wording import series
from publisher.design import StepPlan
from publisher.joints import parts_in_hand
from publisher.pages.sheet import Context

BUILT = ("dry_fit", "glue")
"""Stages of steps that put parts together."""


def ways_up(context: Context, step: StepPlan) -> str:
    """Return the sentences that a step says of its parts that stand in the piece; "" where it puts nothing of that kind together."""
    if step.stage not in BUILT:
        return ""
    parts = parts_in_hand(context, step)
    standing = [side for side in (context.side(part, mirrored=False) for part in parts) if side.top]
    outer = [side.letter for side in standing if side.outer and not side.alike]
    either = [side.letter for side in standing if side.alike]
    said = []
    if standing:
        said.append(f"Once it stands, the word “top” is up on {series(side.letter for side in standing)}.")
    if outer:
        said.append(f"The outside face of {series(outer)} looks outwards.")
    if either:
        said.append(f"Either face of {series(either)} may be its outside.")
    return " ".join(said)
