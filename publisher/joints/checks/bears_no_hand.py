"""Steps and decks that break under a finger, of pieces that are handled in play."""

from publisher.basics import Check, Findings, Place, Severity, checked
from publisher.design import say
from publisher.joints.assembled import Assembled
from publisher.joints.checks.deck_bends import decks_in

FINGER_PRESSES = 5.0
"""N: what a finger presses with. An assumption."""


@checked(
    "joints/bears-no-hand",
    "What is handled bears a finger",
    f"a finger presses with {FINGER_PRESSES:g} N (an assumption), more than any thin step bears; looked at where the spec says "
    "handled: true",
    Severity.WARNING,
    may_be_empty=True,
)
def bears_no_hand(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare what the weakest step and deck of every assembly carry with a finger's push, where the spec says handled: true."""
    carried = _carried(subject) if subject.design.handled else []
    for name, what, carries, place in carried:
        if carries >= FINGER_PRESSES:
            continue
        least = say(carries, "force", "down")
        yield check.found(
            f"{what} of {name} breaks under {least} at its worst place, and a finger presses with {say(FINGER_PRESSES, 'force')}",
            subject=name,
            hint="double it, prop it, or bring its supports nearer; or leave out handled: true, and the pack says where to lift",
            place=place,
            value=carries,
            limit=FINGER_PRESSES,
        )
    return len(carried)


def _carried(subject: Assembled) -> list[tuple[str, str, float, Place]]:
    """Return the assembly, what of it is the weakest, the newtons that it carries, and where the spec has it."""
    judged = [*((r.stack.name, r.place) for r in subject.wholes if r.own_roots),
              *((p.stack.name, p.place) for p in subject.piles if p.own_roots)]  # fmt: skip
    steps = [
        (name, "the weakest step", fact.value, place)
        for name, place in dict(judged).items()
        if (fact := subject.fact(f"{name}.step_carries")) is not None
    ]
    decks = [(name, deck.panel.name, deck.carries, place) for name, place, deck in decks_in(subject)]
    return [*steps, *decks]
