"""What names mean while values are worked out, and where findings are gathered."""

from collections.abc import Mapping
from math import isfinite

from publisher.basics import Finding, Place, Rule
from publisher.basics.wording import cut, listed, nearest
from publisher.brief import Value
from publisher.design.language.amounts import Amount, of_kind
from publisher.design.language.evaluate import evaluate
from publisher.design.language.field_values import settle
from publisher.design.language.lexer import Fault
from publisher.design.language.parser import parse
from publisher.design.language.wording import pick_hint
from publisher.design.records import Fact
from publisher.design.rules import expressions as rules

LONGEST_SHOWN = 60  # letters of an expression that a message repeats
FACTS_ELSEWHERE = "facts may be used in texts, needs and materials; use a size here"


class Scope:
    """Sizes (None: known, but without a value of its own) and, where allowed, facts; and the findings so far.

    ``facts`` is None where facts may not be used. ``unknown`` is the rule for a name that is neither.
    """

    def __init__(
        self,
        sizes: Mapping[str, Amount | None],
        findings: list[Finding],
        facts: Mapping[str, Fact] | None = None,
        unknown: Rule = rules.UNKNOWN_NAME,
        fact_hint: str = FACTS_ELSEWHERE,
    ) -> None:
        """Keep what names mean; findings are appended to the list given."""
        self.sizes = sizes
        self.findings = findings
        self.facts = facts
        self.unknown = unknown
        self.fact_hint = fact_hint

    def lookup(self, name: str, at: int) -> Amount:
        """Return what a name means. Raises Fault when it means nothing here."""
        if name in self.sizes:
            amount = self.sizes[name]
            if amount is None:
                raise Fault(None, "", "", at)
            return amount
        if self.facts is not None and name in self.facts:
            return of_kind(self.facts[name].value, self.facts[name].kind)
        if "." in name and self.facts is None:
            raise Fault(
                rules.FACT_IN_SIZE,
                f"“{name}” is a fact, and facts follow from the parts",
                self.fact_hint,
                at,
            )
        what = "fact" if "." in name else "size"
        raise Fault(self.unknown, f"there is no {what} “{name}”", self._hint(name), at, f"{what} {name}")

    def amount(self, value: Value, subject: str) -> Amount | None:
        """Work out an expression of any kind; None when it has no value (then a finding says why)."""
        try:
            expression = parse(value.text)
            if len(expression.steps) == 1 and expression.steps[0].is_name:
                return self.lookup(expression.steps[0].word, expression.steps[0].at)
            return evaluate(expression, self._closed_lookup)
        except Fault as fault:
            self.report(fault, value, subject)
            return None

    def number(self, value: Value, subject: str, kind: str = "") -> float | None:
        """Work out a field: mm, degrees, a whole number or a plain number by the field's kind. None after a finding."""
        amount = self.amount(value, subject)
        if amount is None:
            return None
        try:
            return settle(amount, kind or value.kind, value.text)
        except Fault as fault:
            self.report(fault, value, subject)
            return None

    def report(self, fault: Fault, value: Value, subject: str) -> None:
        """Make a finding of a fault, at the very word where its column is known."""
        if fault.rule is None:
            return
        shown = value.text.strip()
        message = f"“{shown}”: {fault.message}" if 0 < len(shown) <= LONGEST_SHOWN else fault.message
        place = column_of(value, fault.at)
        found = fault.rule.found(cut(message), subject=subject, hint=cut(fault.hint), place=place, cause=fault.cause)
        self.findings.append(found)

    def _hint(self, name: str) -> str:
        owner, dot, rest = name.partition(".")
        if not dot or not self.facts:
            return pick_hint(name, self.sizes, "sizes")
        siblings = [fact.removeprefix(owner + dot) for fact in self.facts if fact.startswith(owner + dot)]
        if near := nearest(rest, siblings):
            return f"did you mean “{owner}.{near}”?"
        return f"facts of {owner}: {listed(siblings)}" if siblings else pick_hint(name, self.facts, "facts")

    def _closed_lookup(self, name: str, at: int) -> Amount:
        amount = self.lookup(name, at)
        if not isfinite(amount.value):
            raise Fault(rules.NO_VALUE, f"“{name}” is open: nothing limits it", "it can only be printed as it is", at)
        return amount


def column_of(value: Value, offset: int) -> Place:
    """Return the place of the letter at ``offset`` in a value's text; the value's own place where it is not known."""
    place = value.place
    return Place(place.file, place.line, place.column + offset, place.pointer) if value.plain else place
