"""Things that are to lift off and cannot."""

from publisher.basics import Check, Outcome, Severity
from publisher.basics.wording import listed
from publisher.joints.assembled import Assembled
from publisher.joints.wholes import locked_by


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look straight up from every thing that lifts off, with all that stands on it."""
    looked_at, found = 0, []
    for whole in subject.things:
        for one in whole.things:
            if not one.thing.lifts_off:
                continue
            looked_at += 1
            over = locked_by(whole, one.thing.name)
            if over:
                found.append(
                    check.found(
                        f"{one.thing.name} lifts off, and {listed(over)} {'reaches' if len(over) == 1 else 'reach'} over it",
                        subject=whole.plan.name,
                        hint=f"let {over[0]} stand on {one.thing.name}, or move one of both aside",
                        place=one.thing.place,
                    )
                )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/lift-off-locked",
    "What lifts off has a free way up",
    "a roof under another one's eave is never opened again, and what is behind it is never reached",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
