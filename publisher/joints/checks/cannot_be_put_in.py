"""Parts that a step adds when what stands leaves them no way in."""

from collections.abc import Iterator

from publisher.basics import Check, Finding, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.building import built_by_steps, called, items_of, locked_in, order_of, sites_of, woven_in

LEAST_WOVEN = 4  # laps: two panels each way
LOCKED = "turn the joints where they meet so that all of one part open the same way, or leave one of these joins open"


@checked(
    "joints/cannot-be-put-in",
    "What a step adds has a way in",
    "a wall whose tabs go into closed slots on both sides does not go in once both sides stand: it is found with glue on the fingers. "
    "Tried are straight moves, one or two, up and along the axes of all boards; what meets by less than 0.5 mm counts as free, and what "
    "is bent, or hangs on a fold, is not tried",
    may_be_empty=True,
)
def cannot_be_put_in(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Move all that the steps add out of what stands at that time; where nothing is free, look for an order that works."""
    building = built_by_steps(subject)
    sites = sites_of(subject)
    locked: set[str] = set()  # found once: what is blocked after it follows from that
    for blocked in building.blocked:
        site = sites[blocked.assembly]
        if site.name in locked:
            continue
        name, by = called(blocked.names), called(blocked.by)
        if blocked.locked:
            them = called(blocked.locked)
            yield check.found(
                f"{name} of {site.name} are said to be joined before, and {them} lock each other: no order of straight moves joins them",
                subject=f"step {blocked.step}",
                hint=f"{LOCKED}; what goes in one after another is written without “with”",
                place=blocked.place,
            )
            continue
        order = order_of(site)
        stand = "stands" if len(blocked.by) == 1 else "stand"
        said = f"{name} of {site.name} cannot be put in any more: {by} {stand} in the way, and no other way is free"
        hint = LOCKED
        if order is None:
            locked.add(site.name)
            said += f"; {called(locked_in(site))} lock each other, and no order of straight moves puts them together"
        else:
            hint = f"this order works: adds: [{', '.join(items_of(site, order))}]"
        yield check.found(said, subject=f"step {blocked.step}", hint=hint, place=blocked.place)
    woven = [*_woven(subject, check)] if not building.additions else []
    yield from woven
    return building.looked_at + len(woven)


def _woven(subject: Assembled, check: Check[Assembled]) -> Iterator[Finding]:
    """Find laps that lock each other whatever the order: no step has to say what it adds for that."""
    for mated in subject.panels:
        plan = mated.assembly.plan
        laps = [(join.a.panel, join.b.panel) for join in plan.joins if join.at is not None]
        site = sites_of(subject).get(plan.name) if len(laps) >= LEAST_WOVEN else None
        woven = woven_in(site, laps) if site is not None else ()
        if woven:
            yield check.found(
                f"{called(woven)} of {plan.name} are woven into each other: no order of straight moves puts them together",
                subject=plan.name,
                hint="let the slots of all that run one way open to the same side",
                place=plan.place,
            )
