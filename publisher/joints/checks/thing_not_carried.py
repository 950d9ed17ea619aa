"""Things that are not carried by what they are said to stand on."""

from math import inf

from publisher.basics import Check, Finding, Findings, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.checks.layers_do_not_touch import LEAST
from publisher.joints.footing import hull_sides, narrowest
from publisher.joints.panels import PANEL_TOUCH
from publisher.joints.wholes import PlacedThing, PlacedWhole, bearings_of

LEAST_FOOT = 1.0
"""mm: what touches on less width rocks on it as on a line. An assumption."""


@checked(
    "joints/thing-not-carried",
    "A thing lies on all that is to carry it, and does not fall off",
    f"a thing that ends more than {PANEL_TOUCH:g} mm over what is to carry it rocks; one whose weight, with all that stands on it, "
    f"falls outside what it touches, or that touches on less than {LEAST_FOOT:g} mm of width, comes down; what is glued with a broad "
    "face is held as the layers of a stack are, and joints/neck-too-weak looks at that",
    may_be_empty=True,
)
def thing_not_carried(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Set every thing down from above; look whether it touches all that is to carry it, and whether its weight, with that of
    all that stands on it alone, falls inside what it touches."""
    looked_at = 0
    for whole in subject.things:
        for one in whole.things:
            looked_at += 1
            if one.thing.on:  # what stands on the table and falls over has a rule of its own
                yield from _hollow(whole, one, check) or _falls(whole, one, check)
    return looked_at


def _hollow(whole: PlacedWhole, one: PlacedThing, check: Check[Assembled]) -> tuple[Finding, ...]:
    """Find the first of what is to carry a thing that it does not touch."""
    name = one.thing.name
    hairs = _touched_by_a_hair(whole, one) if len(one.thing.on) > 1 else ()  # one that stands on a hair alone falls off
    gaps = ((other, inf if other in hairs else gap) for other, gap in one.gaps)
    other, gap = next(((other, gap) for other, gap in gaps if gap > PANEL_TOUCH), ("", 0.0))
    if not gap:
        return ()
    beside = gap == inf
    found = check.found(
        f"{name} stands on {other} and {'lies beside it' if beside else f'ends {say_length(gap)} over it'}",
        subject=whole.plan.name,
        hint=f"move {name} by at: [across, deep]: its middle is put over the middle of what carries it"
        if beside
        else f"make all that carries {name} equally high, or leave {other} out",
        place=one.thing.place,
        value=None if beside else gap,
        limit=PANEL_TOUCH,
    )
    return (found,)


def _touched_by_a_hair(whole: PlacedWhole, one: PlacedThing) -> set[str]:
    """Return the names of what a thing touches with the rim of a broad face alone, on less than holds: it lies beside that."""
    own = [bearing for bearing in bearings_of(whole) if bearing.thing.thing.name == one.thing.name]
    return {
        bearing.on.thing.name
        for bearing in own
        if 0.0 < bearing.broad.area < LEAST and bearing.thin.area < LEAST and bearing.only_broad
    }


def _is_glued(whole: PlacedWhole, one: PlacedThing) -> bool:
    """Tell whether a thing is glued with a broad face to what carries it, as a layer of a stack is to the next lower one."""
    if one.thing.lifts_off:
        return False
    own = [bearing for bearing in bearings_of(whole) if bearing.thing.thing.name == one.thing.name]
    return any(bearing.broad.area > LEAST for bearing in own)


def _falls(whole: PlacedWhole, one: PlacedThing, check: Check[Assembled]) -> tuple[Finding, ...]:
    """Find a thing whose weight falls outside what it touches, or on its very edge, or that touches in a line alone."""
    normals, limits = hull_sides(one.foot)
    _, at = whole.load(one.thing.name)
    margin = float((limits - normals @ at).min())
    line = narrowest(one.foot) < LEAST_FOOT
    if not line and (margin >= PANEL_TOUCH or _is_glued(whole, one)):
        return ()
    line = line or margin == -inf
    low_x, low_y, high_x, high_y = one.foot.bounds
    at_a_point = max(high_x - low_x, high_y - low_y) < LEAST_FOOT
    out = (
        f"it touches {'at a point' if at_a_point else 'in a line'}"
        if line
        else f"its weight falls {say_length(max(-margin, 0.0))} outside that"
    )
    carries = " and ".join(one.thing.on)
    found = check.found(
        f"{one.thing.name} stands on {carries} and falls off: {out}",
        subject=whole.plan.name,
        hint="move it by at: [across, deep], or let more things carry it",
        place=one.thing.place,
        value=None if line else margin,
        limit=PANEL_TOUCH,
    )
    return (found,)
