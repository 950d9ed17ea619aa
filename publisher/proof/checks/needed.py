"""What a step takes in hand: its list names each part by its letter, with how many copies."""

import re
from functools import partial

from publisher.basics import Carried, Check, Findings, NeededPromise
from publisher.proof.checks.frame import carried_faults, judged, words_at
from publisher.proof.measuring import Case


@judged(
    "proof/needed",
    "What a step takes in hand",
    "a buyer lays ready what the list of a step names, and cuts once more what seems to be missing: each part of the step stands there "
    "with its letter, and with as many copies as the step takes",
    may_be_empty=True,
)
def parts_needed(case: Case, check: Check[Case]) -> Findings:
    """Look for each part of each step where a page says that it lists them."""
    hint = "list the parts of the step as they were counted"
    for promise in case.promises.needed:
        what = f"the list of what step {promise.key.split(':')[1]} takes in hand"
        yield from carried_faults(case, check, promise.key, what, hint, partial(_fault, case, promise), f": {what}")
    return len(case.promises.needed)


def _fault(case: Case, promise: NeededPromise, where: Carried) -> str:
    """Return in words what a list lacks; empty when nothing."""
    said = words_at(case, where)
    for letter, count in promise.parts:
        wanted = f"{letter} {count} ×" if count else letter
        if not re.search(rf"(?<![\w.]){re.escape(wanted)}(?![\w.])", said):
            return f"does not say “{wanted}”"
    return ""
