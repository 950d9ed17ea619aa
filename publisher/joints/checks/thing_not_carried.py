"""Things that are not carried by what they are said to stand on."""

from math import inf

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.footing import hull_sides, narrowest
from publisher.joints.panels import PANEL_TOUCH

LEAST_FOOT = 1.0
"""mm: what touches on less width rocks on it as on a line. An assumption."""


@checked(
    "joints/thing-not-carried",
    "A thing lies on all that is to carry it, and does not fall off",
    f"a thing that ends more than {PANEL_TOUCH:g} mm over what is to carry it rocks; one whose weight, with all that stands on it, "
    "falls outside what it touches, or that touches on less than "
    f"{LEAST_FOOT:g} mm of width, comes down",
    may_be_empty=True,
)
def thing_not_carried(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Set every thing down from above; look whether it touches all that is to carry it, and whether its weight, with that of
    all that stands on it alone, falls inside what it touches."""
    looked_at = 0
    for whole in subject.things:
        for one in whole.things:
            looked_at += 1
            name, place = one.thing.name, one.thing.place
            hollow = next(((other, gap) for other, gap in one.gaps if gap > PANEL_TOUCH), None)
            if hollow is not None:
                other, gap = hollow
                beside = gap == inf
                yield check.found(
                    f"{name} stands on {other} and {'lies beside it' if beside else f'ends {say_length(gap)} over it'}",
                    subject=whole.plan.name,
                    hint=f"move {name} by at: [across, deep]: its middle is put over the middle of what carries it"
                    if beside
                    else f"make all that carries {name} equally high, or leave {other} out",
                    place=place,
                    value=None if beside else gap,
                    limit=PANEL_TOUCH,
                )
                continue
            normals, limits = hull_sides(one.foot)
            _, at = whole.load(name)
            margin = float((limits - normals @ at).min())
            line = bool(one.thing.on) and narrowest(one.foot) < LEAST_FOOT
            if line or margin < PANEL_TOUCH:  # on the very edge it falls as well
                low_x, low_y, high_x, high_y = one.foot.bounds
                at_a_point = max(high_x - low_x, high_y - low_y) < LEAST_FOOT
                out = (
                    f"it touches {'at a point' if at_a_point else 'in a line'}"
                    if line or margin == -inf
                    else f"its weight falls {say_length(max(-margin, 0.0))} outside that"
                )
                carries = " and ".join(one.thing.on) or "the table"
                yield check.found(
                    f"{name} stands on {carries} and falls off: {out}",
                    subject=whole.plan.name,
                    hint="move it by at: [across, deep], or let more things carry it",
                    place=place,
                    value=None if line or margin == -inf else margin,
                    limit=PANEL_TOUCH,
                )
    return looked_at
