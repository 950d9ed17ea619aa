"""Things that touch what carries them in a few places and gape over the rest."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.wholes import bearings_of

COVERED = 0.9
"""Of the rim of one of the two, of the part that the other is over: what touches on less is not shaped for it. An assumption."""


@checked(
    "joints/thing-gapes",
    "A thing lies on the rim of what carries it, or with its own rim",
    f"what touches in a few spots stands, and shows a gap between them: a hip roof that is turned by a quarter, a storey that is set "
    f"aside from the walls below it; {COVERED:.0%} of the rim of one of both is to be touched (an assumption)",
    Severity.WARNING,
    may_be_empty=True,
)
def thing_gapes(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Follow the rims of every thing and of what carries it, as far as the one is over the other, and measure what is bare."""
    looked_at = 0
    for whole in subject.things:
        for bearing in bearings_of(whole):
            looked_at += 1
            if bearing.share >= COVERED:
                continue
            name, on = bearing.thing.thing.name, bearing.on.thing.name
            (x, y), gap = bearing.at, bearing.gap
            gapes = (
                f" and gapes up to {say_length(gap)} over it ({x:.0f} mm across, {y:.0f} mm deep)" if gap > 0.0 else ""
            )
            yield check.found(
                f"{name} stands on {on} and leaves {say_length(bearing.bare)} of the rim between them bare{gapes}",
                subject=whole.plan.name,
                hint=f"turn {name} (turn: 90 deg), move it by at: [across, deep], or make its foot as wide and as deep as {on}",
                place=bearing.thing.thing.place,
                value=bearing.share,
                limit=COVERED,
            )
    return looked_at
