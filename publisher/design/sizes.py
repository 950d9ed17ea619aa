"""The named sizes of a design, worked out in the order in which they need each other."""

from dataclasses import dataclass

from publisher.basics import Finding, Place
from publisher.brief import Brief, Table, Value
from publisher.design import rules_expressions as rules
from publisher.design.amounts import Amount
from publisher.design.functions import CONSTANTS, FUNCTIONS
from publisher.design.lexer import Fault
from publisher.design.model import Kind, Size
from publisher.design.names import pick_hint
from publisher.design.parser import parse
from publisher.design.scope import Scope
from publisher.design.units import UNIT_BY_NAME

MOST_SIZES = 2000
SIZE_KINDS: tuple[Kind | None, ...] = ("length", "angle", "count", "number", "ratio")


@dataclass(frozen=True, slots=True)
class Given:
    """What a size was given as: its expression, and where (the spec, a variant, ``--set``)."""

    text: str
    place: Place


def variants(brief: Brief) -> tuple[str, ...]:
    """Return the names of the variants as written, without the base ''."""
    return tuple(entry.key for entry in brief.fields.table("variants").entries)


def given_sizes(
    brief: Brief, variant: str, sets: tuple[tuple[str, str], ...], findings: list[Finding]
) -> dict[str, Given]:
    """Return every size as given, in the order of the spec: the variant's words over the spec's, ``sets`` over both."""
    given: dict[str, Given] = {}
    for entry in brief.fields.table("sizes").entries:
        if isinstance(entry.node, Value) and _name_is_free(entry.key, entry.place, findings):
            given[entry.key] = Given(entry.node.text, entry.node.place)
    if variant:
        _override_by_variant(brief, variant, given, findings)
    for name, text in sets:
        place = Place(f"--set {name}")
        if name in given:
            given[name] = Given(text, place)
        else:
            findings.append(
                rules.UNKNOWN_SET.found(
                    f"there is no size “{name}” in this design",
                    subject=brief.slug,
                    hint=pick_hint(name, given, "sizes"),
                    place=place,
                )
            )
    return given


def _override_by_variant(brief: Brief, variant: str, given: dict[str, Given], findings: list[Finding]) -> None:
    known = brief.fields.table("variants")
    wanted = known.get(variant)
    if not isinstance(wanted, Table):
        hint = pick_hint(variant, variants(brief), "variants")
        findings.append(
            rules.UNKNOWN_VARIANT.found(
                f"there is no variant “{variant}”", subject=brief.slug, hint=hint, place=known.place
            )
        )
        return
    for entry in wanted.table("sizes").entries:
        if not isinstance(entry.node, Value):
            continue
        if entry.key in given:
            given[entry.key] = Given(entry.node.text, entry.node.place)
        else:
            hint = pick_hint(entry.key, given, "sizes")
            findings.append(
                rules.UNKNOWN_VARIANT.found(
                    f"the variant “{variant}” changes “{entry.key}”, but there is no such size",
                    subject=f"variant {variant}",
                    hint=hint,
                    place=entry.place,
                )
            )


def _name_is_free(name: str, place: Place, findings: list[Finding]) -> bool:
    what = "a unit" if name in UNIT_BY_NAME else "a function" if name in FUNCTIONS else ""
    what = what or ("a constant" if name in CONSTANTS else "")
    if what:
        findings.append(
            rules.RESERVED.found(
                f"“{name}” is {what} of the language and cannot name a size",
                subject=f"size {name}",
                hint=f"choose another name, such as {name}_size",
                place=place,
            )
        )
    elif not name.isidentifier():
        findings.append(
            rules.RESERVED.found(
                f"“{name}” cannot be used in an expression",
                subject=f"size {name}",
                hint="a size's name has letters, digits and _, and does not start with a digit",
                place=place,
            )
        )
    else:
        return True
    return False


def work_out_sizes(
    given: dict[str, Given], findings: list[Finding]
) -> tuple[tuple[Size, ...], dict[str, Amount | None]]:
    """Work out all sizes, in the order given; and the amounts for later expressions (None: known but without value).

    A size that fails has one finding; those that use it have none of their own. No recursion: chains may be long.
    """
    if len(given) > MOST_SIZES:
        place = list(given.values())[MOST_SIZES].place
        findings.append(
            rules.TOO_MANY_SIZES.found(f"there are {len(given)} sizes; at most {MOST_SIZES} are read", place=place)
        )
        return (), dict.fromkeys(given)
    amounts: dict[str, Amount | None] = {}
    scope = Scope(dict.fromkeys(given), findings)
    needs = {name: _names_in(name, what, scope) for name, what in given.items()}
    order, circular = _order(needs)
    for circle in circular:
        first = min(circle, key=list(given).index)
        turned = circle[circle.index(first) :] + circle[: circle.index(first)]
        findings.append(
            rules.SIZE_CYCLE.found(
                f"these sizes go round in a circle: {' → '.join([*turned, first])}",
                subject=f"size {first}",
                hint="give one of them a value of its own",
                place=given[first].place,
            )
        )
        amounts.update(dict.fromkeys(circle))
    scope.sizes = _Growing(amounts, given)
    for name in order:
        if name not in amounts:
            amounts[name] = None if needs[name] is None else _work_out(name, given[name], scope)
    sizes = [
        Size(name, amount.value, kind, given[name].text.strip(), given[name].place)
        for name in given
        if (amount := amounts[name]) is not None and (kind := amount.kind()) is not None
    ]
    return tuple(sizes), {name: amounts[name] for name in given}


class _Growing(dict[str, Amount | None]):
    """The amounts so far; a name that is given but not yet worked out counts as known."""

    def __init__(self, amounts: dict[str, Amount | None], given: dict[str, Given]) -> None:
        super().__init__(dict.fromkeys(given))
        self.amounts = amounts

    def __getitem__(self, name: str) -> Amount | None:
        return self.amounts.get(name)


def _names_in(name: str, given: Given, scope: Scope) -> list[str] | None:
    """The sizes that an expression needs; None when it cannot be read (then a finding says why)."""
    try:
        return list(dict.fromkeys(word for word, _ in parse(given.text).names if word in scope.sizes))
    except Fault as fault:
        scope.report(fault, given.text, given.place, f"size {name}")
        return None


def _work_out(name: str, given: Given, scope: Scope) -> Amount | None:
    amount = scope.amount(given.text, given.place, f"size {name}")
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
