"""Rows of a stack that begin aside of a row that says at: centre."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.design import StackPlan, StackRow
from publisher.geometry import middle_of
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import find

ROW_ASIDE = 0.5
"""mm: a middle this near to another lies over it, as a hand lays it."""


@checked(
    "joints/row-off-the-middle",
    "What follows a row that says at: centre lies over its middle",
    "where one row says at: centre and the next does not, the next one's origin lies over that middle: a part whose origin is its "
    f"corner lies aside, by more than {ROW_ASIDE:g} mm, which is seldom meant",
    Severity.WARNING,
    may_be_empty=True,
)
def row_off_the_middle(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every row without at: centre, turn or shift of its own that follows one with it, in a section or under it."""
    parts = {part.id: part for part in subject.parts}
    looked_at = 0
    for plan in subject.design.stacks:
        for before, row in _followed(plan, subject.design.stacks):
            part = parts.get(row.part)
            if not before.centred or row.centred or row.shift != (0.0, 0.0) or part is None:
                continue
            looked_at += 1
            aside = hypot(*middle_of(part))
            if aside > ROW_ASIDE:
                yield check.found(
                    f"{row.part} of {plan.name} lies with its origin over the middle of {before.part}, which says at: centre: its own "
                    f"middle lies {say_length(aside)} aside",
                    subject=plan.name,
                    hint="say at: centre here too, or say a shift if it is to lie there",
                    place=row.place,
                    value=aside,
                    limit=ROW_ASIDE,
                )
    return looked_at


def _followed(plan: StackPlan, plans: tuple[StackPlan, ...]) -> Iterator[tuple[StackRow, StackRow]]:
    """Yield every two rows of which the second lies on the first, with the last row of the section below."""
    rows = {other.name: other.rows for other in plans}
    below = find(plan.on, rows) if plan.on else None
    yield from pairwise((*(rows[below][-1:] if below else ()), *plan.rows))
