"""What names mean while values are worked out, and where findings are gathered."""

from collections.abc import Mapping
from math import isfinite

from publisher.basics import Finding, Place, Rule
from publisher.brief import Value
from publisher.design import rules_expressions as rules
from publisher.design.amounts import Amount
from publisher.design.evaluate import evaluate
from publisher.design.fields import settle
from publisher.design.lexer import Fault
from publisher.design.names import pick_hint
from publisher.design.parser import parse


class Scope:
    """Sizes (None: known, but without a value of its own) and, where allowed, facts; and the findings so far.

    ``facts`` is None where facts may not be used. ``unknown`` is the rule for a name that is neither.
    """

    def __init__(
        self,
        sizes: Mapping[str, Amount | None],
        findings: list[Finding],
        facts: Mapping[str, Amount] | None = None,
        unknown: Rule = rules.UNKNOWN_NAME,
    ) -> None:
        """Keep what names mean; findings are appended to the list given."""
        self.sizes = sizes
        self.findings = findings
        self.facts = facts
        self.unknown = unknown

    def lookup(self, name: str, at: int) -> Amount:
        """Return what a name means. Raises Fault when it means nothing here."""
        if name in self.sizes:
            amount = self.sizes[name]
            if amount is None:
                raise Fault(None, "", "", at)
            return amount
        if self.facts is not None and name in self.facts:
            return self.facts[name]
        if "." in name and self.facts is None:
            raise Fault(
                rules.FACT_IN_SIZE,
                f"“{name}” is a fact, and facts follow from the parts",
                "facts may be used in texts, needs and materials; use a size here",
                at,
            )
        known = [*self.sizes, *(self.facts or ())]
        hint = pick_hint(name, known, "sizes" if self.facts is None else "sizes and facts")
        raise Fault(
            self.unknown, f"there is no size “{name}”" if "." not in name else f"there is no fact “{name}”", hint, at
        )

    def amount(self, text: str, place: Place, subject: str) -> Amount | None:
        """Work out an expression of any kind; None when it has no value (then a finding says why)."""
        try:
            expression = parse(text)
            if len(expression.steps) == 1 and expression.steps[0].is_name:
                return self.lookup(expression.steps[0].word, expression.steps[0].at)
            amount = evaluate(expression, self._closed_lookup)
        except Fault as fault:
            self.report(fault, text, place, subject)
            return None
        return amount

    def number(self, value: Value, subject: str, kind: str = "") -> float | None:
        """Work out a field: mm, degrees, a whole number or a plain number by the field's kind. None after a finding."""
        amount = self.amount(value.text, value.place, subject)
        if amount is None:
            return None
        try:
            return settle(amount, kind or value.kind)
        except Fault as fault:
            self.report(fault, value.text, value.place, subject)
            return None

    def report(self, fault: Fault, text: str, place: Place, subject: str) -> None:
        """Make a finding of a fault, with the column of the very word where the text stands in one line."""
        if fault.rule is None:
            return
        message = fault.message if len(text) > 60 or not text.strip() else f"“{text.strip()}”: {fault.message}"
        self.findings.append(
            fault.rule.found(message, subject=subject, hint=fault.hint, place=column_of(place, text, fault.at))
        )

    def _closed_lookup(self, name: str, at: int) -> Amount:
        amount = self.lookup(name, at)
        if not isfinite(amount.value):
            raise Fault(rules.NO_VALUE, f"“{name}” is open: nothing limits it", "it can only be printed as it is", at)
        return amount


def column_of(place: Place, text: str, offset: int) -> Place:
    """Return the place of the letter at ``offset`` in a value's text; the value's own place when it has several lines."""
    if not place.line or not place.column or "\n" in text or not offset:
        return place
    return Place(place.file, place.line, place.column + offset, place.pointer)
