"""Things that are to lift off and cannot."""

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import listed
from publisher.joints.assembled import Assembled
from publisher.joints.wholes import locked_by


@checked(
    "joints/lift-off-locked",
    "What lifts off has a free way up",
    "a roof under another one's eave is never opened again, and what is behind it is never reached",
    may_be_empty=True,
)
def lift_off_locked(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look straight up from every thing that lifts off, with all that stands on it."""
    looked_at = 0
    for whole in subject.things:
        for one in whole.things:
            if not one.thing.lifts_off:
                continue
            looked_at += 1
            over = locked_by(whole, one.thing.name)
            if over:
                yield check.found(
                    f"{one.thing.name} lifts off, and {listed(over)} {'reaches' if len(over) == 1 else 'reach'} over it",
                    subject=whole.plan.name,
                    hint=f"let {over[0]} stand on {one.thing.name}, or move one of both aside",
                    place=one.thing.place,
                )
    return looked_at
