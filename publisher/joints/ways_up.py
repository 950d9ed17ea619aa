"""Which end of a part is up and which face is outside, said at the step that puts it together: a part that goes in wrongly is scrap.
Worked out here, before any page, and promised word for word."""

from collections.abc import Iterator

from publisher.basics import SentencePromise, SidePromise
from publisher.basics.wording import series
from publisher.design import StepPlan
from publisher.joints.acts_of_steps import JOINED, InHand, parts_in_hand

WAYS_UP = "ways:"
"""Begins the keys of these sentences: ``ways:3`` for the third step of the design."""


def ways_up(works: InHand, sides: tuple[SidePromise, ...]) -> Iterator[SentencePromise]:
    """Yield what each step says of its parts that stand in the piece; nothing for a step that puts nothing of that kind together."""
    plain = {side.part: side for side in sides if not side.mirrored}
    for number, step in enumerate(works.design.steps, 1):
        if said := _of_step(works, step, plain):
            yield SentencePromise(f"{WAYS_UP}{number}", said, ())


def _of_step(works: InHand, step: StepPlan, sides: dict[str, SidePromise]) -> str:
    if step.stage not in JOINED:
        return ""
    standing = [side for part in parts_in_hand(works, step) if (side := sides[part.id]).top]
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
