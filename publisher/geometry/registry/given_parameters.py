"""A shape's sizes as its builder sees them: complete, in range, each with the place where the designer wrote it."""

from collections.abc import Iterable, Iterator
from math import isfinite

from publisher.basics import Finding, Path, Place, record
from publisher.basics.wording import MOST_KNOWN, beyond, did_you_mean, listed, told_apart
from publisher.basics.wording import written_angle as deg
from publisher.basics.wording import written_length as mm
from publisher.design import Parameter, count_beyond
from publisher.geometry.model import ParameterInfo
from publisher.geometry.rules import IMPOSSIBLE_SIZES, OUT_OF_RANGE


@record
class Values:
    """The sizes of one shape, opening or pattern. Lengths are mm, angles degrees. ``thickness``: of the part's board, mm.

    For a layer of several: ``layer`` from 1 at the table, of ``layers``; ``outline`` is the designer's drawing, if there is one.
    """

    subject: str
    place: Place
    given: tuple[Parameter, ...]
    infos: tuple[ParameterInfo, ...]
    thickness: float = 0.0
    layer: int = 1
    layers: int = 1
    outline: Path | None = None

    def _value(self, name: str) -> float | str:
        for parameter in self.given:
            if parameter.name == name:
                return parameter.value
        default = next(info.default for info in self.infos if info.name == name)
        assert default is not None, name  # the schema lets no needed size be missing
        return default

    def number(self, name: str) -> float:
        """Return a length in mm, an angle in degrees or a plain number."""
        return float(self._value(name))

    def count(self, name: str) -> int:
        """Return a whole number."""
        return round(self.number(name))

    def word(self, name: str) -> str:
        """Return a choice."""
        return str(self._value(name))

    def says(self, name: str) -> bool:
        """Say whether the designer gave this size."""
        return any(parameter.name == name for parameter in self.given)

    def where(self, name: str) -> Place:
        """Return where the designer wrote this size, or the whole shape if it was left out."""
        return next((parameter.place for parameter in self.given if parameter.name == name), self.place)

    def wrong(self, name: str, message: str, hint: str = "", limit: float | None = None) -> Finding:
        """Return the finding that this size cannot go with the others."""
        value = self._value(name)
        return IMPOSSIBLE_SIZES.found(
            message,
            subject=self.subject,
            hint=hint,
            place=self.where(name),
            value=None if isinstance(value, str) else value,
            limit=limit,
        )


def amount(value: float, kind: str, more: int = 0) -> str:
    """Return a value of this kind in words, with so many ``more`` decimals than usual."""
    return mm(value, more) if kind == "length" else deg(value, more) if kind == "angle" else f"{value:.10g}"


def known_words_hint(word: str, known: Iterable[str]) -> str:
    """Return a hint that proposes the nearest known word and lists the known ones."""
    words = tuple(known)
    near = did_you_mean(word, words)
    all_known = listed(words, MOST_KNOWN)
    return f"{near} It knows: {all_known}" if near else f"it knows: {all_known}"


def checked(
    what: str,
    infos: tuple[ParameterInfo, ...],
    given: tuple[Parameter, ...],
    subject: str,
    place: Place,
    thickness: float = 0.0,
) -> tuple[Values, tuple[Finding, ...]]:
    """Hold what was given against the ranges of what ``what`` (``shape disc``) takes.

    Names are no question here: the schema, which is written from the same registry, lets pass neither an unknown size nor
    a shape that lacks one.
    """
    known = {info.name: info for info in infos}
    found = tuple(
        finding for parameter in given for finding in _in_range(what, known[parameter.name], parameter, subject)
    )
    return Values(subject, place, given, infos, thickness), found


def _in_range(what: str, info: ParameterInfo, parameter: Parameter, subject: str) -> Iterator[Finding]:
    """Find a value of the wrong kind, or beyond the parameter's range."""
    value, name = parameter.value, info.name
    message, hint = "", ""
    if info.kind == "choice":
        if value not in info.choices:
            message, hint = f"“{value}” is no {name} that {what} knows", known_words_hint(str(value), info.choices)
    elif isinstance(value, str):
        if value != info.default:
            message, hint = f"{name} of {what} is a {info.kind}, but “{value}” was given", "write a number"
    elif not isfinite(value):
        message, hint = f"{name} of {what} is no finite number", "check the sizes that it uses"
    elif info.kind == "count" and abs(value - round(value)) > 1e-9:
        message = f"{name} of {what} is a whole number, but {value:.10g} was given"
        hint = "use round(…) if it is worked out"
    else:
        yield from _beyond(what, info, parameter, value, subject)
    if message:
        number = None if isinstance(value, str) or not isfinite(value) else value
        yield OUT_OF_RANGE.found(message, subject=subject, hint=hint, place=parameter.place, value=number)


def _beyond(what: str, info: ParameterInfo, parameter: Parameter, value: float, subject: str) -> Iterator[Finding]:
    for limit, most in ((info.least, False), (info.most, True)):
        if limit is not None and (value - limit if most else limit - value) > 1e-9:
            named = f"{info.name} of {what}"
            if info.kind == "count":
                yield count_beyond(round(value), round(limit), named, parameter.place, subject)
                continue
            yield OUT_OF_RANGE.found(
                beyond(
                    named, *told_apart(value, limit, lambda number, more: amount(number, info.kind, more)), most=most
                ),
                subject=subject,
                hint=f"change {info.name}, the {info.meaning}, or check its unit",
                place=parameter.place,
                value=value,
                limit=limit,
            )
