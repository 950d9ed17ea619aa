"""What all checks of this floor share: each is an error, and each finding begins with what it is about."""

import re
from collections.abc import Callable, Iterator

from publisher.basics import Carried, Check, Finding, Findings, OutlinePromise, checked
from publisher.proof.measuring import Case, lines_in
from publisher.proof.reading import normal, unbroken

ROUND_DUST = 1e-3  # of the last digit of a figure: as near as this below it is still that figure
RUN = r"\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*"  # of pages, as words give it
MOST_SAID = 3  # findings of one check about one page; the rest are counted

Test = Callable[[Case, Check[Case]], Findings]


def judged(name: str, title: str, rationale: str, *, may_be_empty: bool = False) -> Callable[[Test], Check[Case]]:
    """Make a check of the test that stands below."""
    return checked(name, title, rationale, may_be_empty=may_be_empty)


def about(
    check: Check[Case], subject: str, what: str, hint: str, value: float | None = None, limit: float | None = None
) -> Finding:
    """Return a finding whose message is the subject and ``what`` is wrong with it; what begins with a colon joins closely."""
    message = f"{subject}{'' if what.startswith(':') else ' '}{what.lstrip()}"
    return check.found(message, subject=subject, hint=hint, value=value, limit=limit)


def carried_faults(
    case: Case, check: Check[Case], key: str, who: str, hint: str, fault: Callable[[Carried], str], on: str = ""
) -> Iterator[Finding]:
    """Yield that what a page should carry stands on none, or what is wrong with it where it stands; ``on``: how it is called there."""
    places = case.carried(key)
    if not places:
        yield about(check, who, "stands on no page", hint)
    for where in places:
        if said := fault(where):
            yield about(check, page_name(where.page) + on, said, hint)


def words_at(case: Case, where: Carried) -> str:
    """Return the words that stand where a page carries them, as a reader would say them."""
    return normal(unbroken(" ".join(line.text for line in lines_in(case.lines(where.page), where.box))))


def without_name(said: str, name: str) -> str:
    """Return words less the name of a part, which may hold counts and sizes that are none of ours, and may be broken into lines."""
    letters = normal(name).replace(" ", "")
    pattern = r"\s*".join(map(re.escape, letters))
    return re.sub(rf"(?<!\w){pattern}(?!\w)", "", said) if letters else said


def page_name(number: int) -> str:
    """Return how messages call a page, from 1."""
    return f"page {number}"


def copy_name(promise: OutlinePromise) -> str:
    """Return how a reader knows this copy of a part."""
    tile = f", tile row {promise.row} column {promise.column}" if promise.row else ""
    return f"part {promise.letter} ({promise.part}), copy {promise.copy}{tile}"


def numbers_in(run: str) -> set[int]:
    """Return the numbers of a run as words give it: ``2, 4-8``."""
    found: set[int] = set()
    for part in run.split(", "):
        first, _, last = part.partition("-")
        found.update(range(int(first), int(last or first) + 1))
    return found
