"""The named sizes of a design, worked out in the order in which they need each other."""

from publisher.basics import Finding
from publisher.brief import Value
from publisher.design.language.amounts import Amount, of_kind
from publisher.design.language.lexer import Fault
from publisher.design.language.parser import parse
from publisher.design.language.scope import Scope
from publisher.design.records import Kind, Size
from publisher.design.rules import expressions as rules

MOST_SIZES = 2000
LONGEST_CIRCLE = 12  # names that a message shows
SIZE_KINDS: tuple[Kind | None, ...] = ("length", "angle", "count", "number", "ratio")


def work_out_sizes(
    given: dict[str, Value], findings: list[Finding], tried: tuple[Size, ...] = ()
) -> tuple[tuple[Size, ...], dict[str, Amount | None]]:
    """Work out all sizes, in the order given; and the amounts for later expressions (None: known but without value).

    A size that is ``tried`` has the value that it brings, and its expression is not read.
    A size that fails has one finding; those that use it have none of their own. No recursion: chains may be long.
    """
    if len(given) > MOST_SIZES:
        place = list(given.values())[MOST_SIZES].place
        findings.append(
            rules.TOO_MANY_SIZES.found(f"there are {len(given)} sizes; at most {MOST_SIZES} are read", place=place)
        )
        return (), dict.fromkeys(given)
    amounts: dict[str, Amount | None] = dict.fromkeys(given)
    scope = Scope(amounts, findings)
    values = {size.name: of_kind(size.value, size.kind).named() for size in tried}
    needs = {name: [] if name in values else _names_in(name, what, scope) for name, what in given.items()}
    order, circles = _order(needs)
    circular: set[str] = set()
    for circle in circles:
        # circles that only cross those already named would be repeated a thousandfold
        if not circular.issuperset(circle):
            findings.append(_circle_finding(circle, given))
        circular.update(circle)
    for name in order:
        if name not in circular and needs[name] is not None:
            amounts[name] = values[name] if name in values else _work_out(name, given[name], scope)
    sizes = [
        Size(name, amount.value, kind, given[name].text.strip(), given[name].place)
        for name, amount in amounts.items()
        if amount is not None and (kind := amount.kind()) is not None
    ]
    return tuple(sizes), amounts


def _circle_finding(circle: list[str], given: dict[str, Value]) -> Finding:
    numbers = {name: number for number, name in enumerate(given)}
    first = min(circle, key=numbers.__getitem__)
    at = circle.index(first)
    turned = [*circle[at:], *circle[:at], first]
    if len(turned) > LONGEST_CIRCLE:
        turned = [*turned[: LONGEST_CIRCLE - 2], "…", first]
    return rules.SIZE_CYCLE.found(
        f"these sizes go round in a circle: {' → '.join(turned)}",
        subject=f"size {first}",
        hint="give one of them a value of its own",
        place=given[first].place,
    )


def _names_in(name: str, given: Value, scope: Scope) -> list[str] | None:
    """The sizes that an expression needs; None when it cannot be read (then a finding says why)."""
    try:
        return list(dict.fromkeys(word for word, _ in parse(given.text).names if word in scope.sizes))
    except Fault as fault:
        scope.report(fault, given, f"size {name}")
        return None


def _work_out(name: str, given: Value, scope: Scope) -> Amount | None:
    amount = scope.amount(given, f"size {name}")
    if amount is None:
        return None
    if amount.kind() not in SIZE_KINDS:
        scope.findings.append(
            rules.WRONG_KIND.found(
                f"the size {name} comes out as {amount.words()}",
                subject=f"size {name}",
                hint="a size is a length, an angle or a plain number: divide by a length, or take sqrt of an area",
                place=given.place,
            )
        )
        return None
    return amount.named()


def _order(needs: dict[str, list[str] | None]) -> tuple[list[str], list[list[str]]]:
    """An order in which every size comes after those that it needs, and the circles that were met on the way."""
    order: list[str] = []
    circles: list[list[str]] = []
    done: set[str] = set()
    for start, first in needs.items():
        if start in done:
            continue
        path = {start: iter(first or ())}
        while path:
            name = next(reversed(path))
            following = next((n for n in path[name] if n not in done), None)
            if following is None:
                del path[name]
                done.add(name)
                order.append(name)
            elif following in path:
                names = list(path)
                circles.append(names[names.index(following) :])
            else:
                path[following] = iter(needs[following] or ())
    return order, circles
