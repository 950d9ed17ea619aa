"""What follows from records alone is worked out once: a record never changes, so that the same one gives the same again.

A record is known again by being the same object. Its hash would be that of all that it holds, which takes longer than most works.
"""

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

MOST = 1000
"""Results that are kept of one function; then the oldest goes."""

MOST_WHOLES = 64
"""The same where each holds a whole assembly: else a sweep or a batch keeps hundreds of former designs alive."""

MOST_LATELY = 2
"""The same where each belongs to one pack, and the next pack asks for none of the last one's."""

Given = ParamSpec("Given")
Result = TypeVar("Result")


def remembered(work: Callable[Given, Result]) -> Callable[Given, Result]:
    """Return a pure function of records, and of tuples of them, that does its work once for each.

    What it returns is shared by all who ask: nobody may change it.
    """
    return _once(work, MOST)


def remembered_few(work: Callable[Given, Result]) -> Callable[Given, Result]:
    """Return the same of a function of whole assemblies, of which few results are kept."""
    return _once(work, MOST_WHOLES)


def remembered_lately(work: Callable[Given, Result]) -> Callable[Given, Result]:
    """Return the same of a function of all that a pack is made of: the pack at hand and the one before are known."""
    return _once(work, MOST_LATELY)


def _once(work: Callable[Given, Result], most: int) -> Callable[Given, Result]:
    known: dict[tuple[object, ...], tuple[object, Result]] = {}

    @wraps(work)
    def once(*given: Given.args, **named: Given.kwargs) -> Result:
        key = (*map(id, given), *named.items())
        if key not in known:
            result = work(*given, **named)
            if len(known) >= most:
                del known[next(iter(known))]
            known[key] = (given, result)  # what was given is kept: while it is there, no other object has its id
        return known[key][1]

    return once
