"""Ranges of sizes to try: ``reach = 80 mm to 120 mm``."""

import re

from publisher.basics import Place, Refusal, record
from publisher.basics.wording import cut
from publisher.design.language import Fault, pick_hint, read_literal, say
from publisher.design.records import Kind, Size
from publisher.design.rules import expressions as rules

_SPAN = re.compile(r"\s*(?P<name>[^=\s]+)\s*=\s*(?P<least>.+?)\s*(?:\bto\b|…|\.\.+)\s*(?P<most>.+?)\s*\Z")
_EXAMPLE = "write “NAME = LEAST to GREATEST”, such as “reach = 80 mm to 120 mm”"
UNIT_OF: dict[Kind, str] = {"length": "mm", "angle": "deg"}


@record
class SizeSpan:
    """A size as it stands, and the values between which it is tried (mm, degrees or plain, as the size)."""

    size: Size
    least: float
    most: float

    @property
    def whole(self) -> bool:
        """Whether only whole values are tried: the size and both ends are plain whole numbers."""
        return self.size.kind == "count" and self.least == round(self.least) and self.most == round(self.most)


def size_span(text: str, sizes: tuple[Size, ...]) -> SizeSpan:
    """Return a range given on the command line for one of the sizes. Raises Refusal when it is none, or of another kind."""
    place = Place("--vary")
    found = _SPAN.match(text) if len(text) <= 200 else None
    if found is None:
        words = f"“{cut(text.strip(), 60)}” is no range of a size"
        raise Refusal(rules.NO_RANGE.found(words, subject="--vary", hint=_EXAMPLE, place=place))
    name = found["name"]
    size = next((s for s in sizes if s.name == name), None)
    if size is None:
        words, hint = (
            f"there is no size “{cut(name, 60)}” in this design",
            pick_hint(name, [s.name for s in sizes], "sizes"),
        )
        raise Refusal(rules.UNKNOWN_SET.found(words, subject=name, hint=hint, place=place))
    least, most = (_end(found[end], size, place) for end in ("least", "most"))
    if least >= most:
        words = f"the range of “{name}” is empty: {say(least, size.kind)} is not less than {say(most, size.kind)}"
        hint = "write the smaller value first" if least > most else "give two different values"
        raise Refusal(rules.NO_RANGE.found(words, subject=name, hint=hint, place=place, value=least, limit=most))
    return SizeSpan(size, least, most)


def two_ranges(spans: tuple[SizeSpan, ...]) -> tuple[SizeSpan, ...]:
    """Return one or two ranges of different sizes. Raises Refusal for more, or for two of one size."""
    names = [span.size.name for span in spans]
    if len(spans) > 2 or len(set(names)) < len(names):
        words = f"ranges were given for {', '.join(names)}; one size or two different ones are varied at a time"
        raise Refusal(rules.NO_RANGE.found(words, subject="--vary", hint=_EXAMPLE, place=Place("--vary")))
    return spans


def _end(text: str, size: Size, place: Place) -> float:
    """Return one end of a range. Raises Refusal when it is no literal of the size's kind."""
    try:
        amount = read_literal(text)
    except Fault as fault:
        raise Refusal(
            rules.NO_RANGE.found(f"“{cut(text, 60)}”: {fault.message}", subject=size.name, hint=fault.hint, place=place)
        ) from fault
    if amount is None:
        words = f"“{cut(text, 60)}” is no number with its unit"
        raise Refusal(rules.NO_RANGE.found(words, subject=size.name, hint=_EXAMPLE, place=place))
    unit = UNIT_OF.get(size.kind)
    if unit is not None and amount.plain and amount.value:
        words, hint = f"“{text}” has no unit, and “{size.name}” is of kind {size.kind}", f"write {text} {unit}"
        raise Refusal(rules.NO_UNIT.found(words, subject=size.name, hint=hint, place=place))
    if (not amount.plain) if unit is None else (amount.kind() != size.kind and amount.value):
        words = f"“{text}” is {amount.words()}, and “{size.name}” is of kind {size.kind} ({say(size.value, size.kind)})"
        raise Refusal(rules.WRONG_KIND.found(words, subject=size.name, hint=_EXAMPLE, place=place))
    return amount.value
