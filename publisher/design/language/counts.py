"""Whole numbers within bounds."""

from publisher.basics import Finding, Place
from publisher.basics.wording import CHECK_COUNT, beyond
from publisher.brief import Value
from publisher.design.language.scope import Scope
from publisher.design.rules import plans as rules

MOST_OF_ONE_PART = 10_000


def read_count(value: Value | None, default: int, least: int, most: int, what: str, scope: Scope, subject: str) -> int:
    """Return a whole number from ``least`` to ``most``; ``default`` when unsaid or after a finding."""
    if value is None:
        return default
    number = scope.number(value, subject, "count")
    if number is None:
        return default
    if not least <= number <= most:
        limit = most if number > most else least
        scope.findings.append(count_beyond(int(number), limit, what, value.place, subject))
        return default
    return int(number)


def count_beyond(number: int, limit: int, what: str, place: Place, subject: str) -> Finding:
    """Return the finding for a count beyond its limit, whoever knows that: a field's reader, or the registry of shapes."""
    return rules.COUNT_RANGE.found(
        beyond(what, str(number), str(limit), most=number > limit),
        subject=subject,
        hint=CHECK_COUNT,
        place=place,
        value=float(number),
        limit=float(limit),
    )
