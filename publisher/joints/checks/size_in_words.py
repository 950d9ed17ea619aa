"""Sizes that a designer wrote into a sentence as figures, and that nothing of the design has."""

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from publisher.basics import Check, Findings, Place, Severity, checked
from publisher.basics.units import INCH_MM
from publisher.basics.wording import trimmed
from publisher.design import Design, TextPlan
from publisher.geometry import dimensions_of, polygon
from publisher.joints.assembled import Assembled

WRITTEN = re.compile(
    r"(?<![\w.,/])(?:(?P<plain>\d+(?:[.,]\d+)?)[\s-]?(?P<unit>mm|cm|inch(?:es)?|″)|(?P<inch>\d+\.\d\d+|\d+ \d+/\d+|\d+/\d+)[\s-]?in)(?!\w)"
)
"""Millimetres, centimetres and inches. Metres are amounts of ribbon and wire; “4 in” may be four in a row, “1.2 in” a
version in two parts."""

IN_MM = {"mm": 1.0, "cm": 10.0}
FURNITURE = (INCH_MM, 4.0 * INCH_MM, 40.0, 50.0, 100.0, 53.98, 85.6)
"""mm: what every pack bears: squares of 1 in, 40, 50 and 100 mm and 4 in, and the sides of a bank card."""

SAID_OFF = 0.05
"""mm that a size without decimals may be off what it says; one with decimals half of its last."""


@checked(
    "joints/size-in-words",
    "Sizes in sentences are sizes of the design",
    "a size that is written out stays as it is when the sizes of the design change, and a buyer measures by it: a blank such as "
    "{wall.height in mm} is filled anew each time. Amounts, times, ages, counts, and numbers in words are no sizes",
    Severity.WARNING,
    may_be_empty=True,
)
def size_in_words(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look for sizes in the words of the summary, the steps and their pictures, beside their blanks."""
    known: tuple[float, ...] | None = None
    looked_at = 0
    for text in _texts(subject.design):
        for words, value, off in _written(text):
            looked_at += 1
            known = known if known is not None else _known(subject)
            if not any(abs(value - size) <= off for size in known):
                yield check.found(
                    f"a sentence says {words}, and nothing in this design measures that",
                    subject=words,
                    hint=_hint(subject, value),
                    place=text.place,
                    value=value,
                )
    return looked_at


def _texts(design: Design) -> Iterator[TextPlan]:
    yield design.summary
    for step in design.steps:
        yield from (step.title, step.say)
        if step.picture is not None and step.picture.alt is not None:
            yield step.picture.alt


def _written(text: TextPlan) -> Iterator[tuple[str, float, float]]:
    """Yield each size that is written out: its words, its value and how far it may be off, in mm."""
    for piece in text.pieces:
        for found in WRITTEN.finditer(piece) if isinstance(piece, str) else ():
            if figure := found["plain"]:
                unit = IN_MM.get(found["unit"], INCH_MM)
                decimals = len(figure.replace(",", ".").partition(".")[2])
                off = 0.5 * 10.0**-decimals * unit if decimals else SAID_OFF
                yield found[0], float(figure.replace(",", ".")) * unit, off + 1e-6
            else:
                *whole, part = found["inch"].split(" ")
                off = 0.5 * 10.0 ** -len(part.partition(".")[2]) if "." in part else 1.0 / 64.0
                yield found[0], float(sum(map(Fraction, (*whole, part)))) * INCH_MM, off * INCH_MM + 1e-6


def _known(subject: Assembled) -> tuple[float, ...]:
    """Return every length (mm) that the design has: facts, all that the spec states, pieces, what is checked on them, furniture."""
    found = {*FURNITURE, *(fact.value for fact in subject.facts if fact.kind == "length"), *_stated(subject.design)}
    for part in subject.parts:
        for region in (part.outline, part.template):
            left, bottom, right, top = polygon(region).bounds
            found |= {right - left, top - bottom}
        found |= {length for one in dimensions_of(part) for length in one.lengths}
        found |= {side for opening in part.openings for side in (opening.width, opening.height, opening.sill)}
    found |= {met.printed for met in subject.meetings}
    return tuple(found)


def _stated(value: Any) -> Iterator[float]:
    """Yield every number with a unit that stands anywhere in what was read of a spec."""
    if isinstance(value, float):
        yield value
    elif isinstance(value, tuple | list):
        for one in value:
            yield from _stated(one)
    elif is_dataclass(value) and not isinstance(value, Place):
        for field in fields(value):
            yield from _stated(getattr(value, field.name))


def _hint(subject: Assembled, value: float) -> str:
    """Return what to do: name the fact that comes nearest, or a size of one's own."""
    lengths = [fact for fact in subject.facts if fact.kind == "length"]
    near = min(lengths, key=lambda fact: abs(fact.value - value), default=None)
    if near is not None and abs(near.value - value) <= 0.1 * value:
        return f"write {{{near.name}}}, which is {trimmed(near.value, 2)} mm, or the number in words if it is no size of the design"
    return "give it a name under sizes and write that in braces, or write the number in words if it is no size of the design"
