"""The designer's sentences as filled: word for word, and each number the value that was worked out."""

import re
from fractions import Fraction
from functools import partial
from math import isinf

from publisher.basics import Carried, Check, Findings, NumberPromise, SentencePromise, record
from publisher.proof.checks.frame import carried_faults, judged
from publisher.proof.checks.left_out import may_be_missing
from publisher.proof.measuring import Case, lines_in
from publisher.proof.reading import MM_PER_INCH, normal, unbroken

UNITS = {
    "mm": 1.0,
    "in": MM_PER_INCH,
    "°": 1.0,
    "cm²": 100.0,
    "sq in": MM_PER_INCH * MM_PER_INCH,
    "g": 1.0,
    "N": 1.0,
    "": 1.0,
}
NUMBER = re.compile(r"(\d+[ -]\d+/\d+|\d+/\d+|-?\d+(?:\.\d+)?) ?(cm²|sq in|mm|in|°|g|N|)(?![\w.])")
OPEN = "open"
IMPERIAL = ("in", "sq in")
SIXTEENTH_MM = 0.1
"""A sixteenth of an inch may stand for a length within this of it."""

GRAMS_PER_NEWTON = 1000.0 / 9.80665
PUSH_STEP, LIGHT = 10.0, 20.0
"""A push is said as the weight of so many grams, to ten from twenty on."""

RELIED_ON = re.compile(r"(\w+\.)*(\w*carries|push_to_\w+)")
"""Facts of pushes that a buyer relies on: never said as more than they are."""

ROUNDED_MM = 0.1
"""A length from 10 mm up is rounded to this before it is said in inches."""


@judged(
    "proof/sentence",
    "Sentences and their numbers as worked out",
    "a buyer measures and cuts by the numbers of a step: each differs from its value by less than one of its last digit",
    may_be_empty=True,
)
def sentences(case: Case, check: Check[Case]) -> Findings:
    """Read each promised text where its page carries it, and hold its numbers against their values."""
    hint = "fill the sentence from the facts of this design"
    for promise in case.promises.sentences:
        if (normal(promise.text) or case.carried(promise.key)) and not may_be_missing(case, promise):
            judge = partial(_fault, case, promise)
            yield from carried_faults(case, check, promise.key, f"“{promise.text[:60]}”", hint, judge)
    return len(case.promises.sentences)


def _fault(case: Case, promise: SentencePromise, where: Carried) -> str:
    """Return in words what a text says otherwise than promised; empty when nothing."""
    said = unbroken(" ".join(line.text for line in lines_in(case.lines(where.page), where.box)))
    if _letters(said) != _letters(promise.text):
        return f": the words “{_differs(said, promise.text)}” are not those of the spec, filled from its facts"
    for number in promise.numbers:
        if _letters(number.text) not in _letters(promise.text) or not _true(number):
            return f": “{number.text}” is not {number.value:g}, which {{{number.expression}}} comes to"
    return ""


def _letters(text: str) -> str:
    """Return a text without blanks, as it may be broken anywhere."""
    return normal(text).replace(" ", "").replace("\u2010", "-")


def _differs(said: str, wanted: str) -> str:
    """Return the words that are printed where the promised ones end to be the same."""
    words, expected = normal(said).split(" "), normal(wanted).split(" ")
    same = next(
        (i for i, (a, b) in enumerate(zip(words, expected, strict=False)) if a != b), min(len(words), len(expected))
    )
    return " ".join(words[max(0, same - 1) : same + 4])[:60]


def _true(number: NumberPromise) -> bool:
    """Say whether every figure in a number's words is the value: to one of its last digit, and the inches beside millimetres to
    one of theirs of what those say."""
    if isinf(number.value):
        return number.text == OPEN
    figures = [_Figure.read(*found.groups()) for found in NUMBER.finditer(normal(number.text))]
    if number.kind == "force" and [figure.unit for figure in figures] == ["g"]:
        return _weighed(figures[0], number)
    metric = [figure for figure in figures if figure.unit not in IMPERIAL]
    if not all(figure.near(number.value) for figure in metric):
        return False
    shown = metric[0].value if metric else number.value
    lost = 0.0 if metric else ROUNDED_MM
    return bool(figures) and all(figure.near(shown, lost) for figure in figures if figure.unit in IMPERIAL)


def _weighed(weight: "_Figure", number: NumberPromise) -> bool:
    """Say whether a push is the weight that is said: to half a step, or less by no whole one where it is rounded down."""
    step = PUSH_STEP if weight.value >= LIGHT else weight.step
    over = (weight.value - number.value * GRAMS_PER_NEWTON) / step
    low, high = (-1.0, 0.0) if RELIED_ON.fullmatch(number.expression) else (-0.5, 0.5)
    return low - 1e-5 <= over <= high + 1e-5


@record
class _Figure:
    """A figure as printed: its value in mm, degrees, mm², g or plain, one of its last digit in the same, its unit."""

    value: float
    step: float
    unit: str

    @staticmethod
    def read(figure: str, unit: str) -> "_Figure":
        """Read a decimal, a fraction, or a whole number and a fraction."""
        if "/" in figure:
            *whole, part = re.split(r"[ -]", figure)
            value, step = float(Fraction(part)) + float(whole[0] if whole else 0), SIXTEENTH_MM / UNITS[unit]
        else:
            value, step = float(figure), 10.0 ** -len(figure.partition(".")[2])
            if unit == "in" and "." not in figure:  # whole inches stand for sixteenths
                step = SIXTEENTH_MM / UNITS[unit]
        return _Figure(value * UNITS[unit], step * UNITS[unit], unit)

    def near(self, value: float, lost: float = 0.0) -> bool:
        """Say whether it is a value to one of its last digit; ``lost``: what was rounded away before."""
        return abs(self.value - value) < (self.step + lost) * (1 + 1e-6)
