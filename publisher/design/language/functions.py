"""Functions of the language: how many values they take and what they do with dimensions. Angles are degrees."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from math import acos, asin, atan, ceil, cos, degrees, floor, pi, radians, sin, sqrt

from publisher.basics import record
from publisher.design.language.amounts import Amount, Origin, is_whole
from publisher.design.language.lexer import Fault
from publisher.design.rules import expressions as rules

CONSTANTS = {"pi": pi}
CONSTANT_WORDS = (("pi", "circumference of a circle over its diameter, 3.14159…"),)
_EXACT_ANGLES = {0.0: 0.0, 0.5: 30.0, 1.0: 90.0}
_EXACT_SINES = {0.0: 0.0, 30.0: 0.5, 90.0: 1.0, 150.0: 0.5, 180.0: 0.0, 210.0: -0.5, 270.0: -1.0, 330.0: -0.5}


_UNIT_OF = {"length": "mm", "angle": "deg"}
_DUST = 1e-9  # of divisions: a ratio that is 1 but for it is 1


@record
class Function:
    """A function: the least and most values that it takes, what it does (amounts, name, offset in the text), and that in words."""

    least: int
    most: int
    run: Callable[[Sequence[Amount], str, int], Amount]
    meaning: str


def sine(degrees: float) -> float:
    """Return the sine, exact where it is 0, ±1/2 or ±1."""
    turned = degrees % 360.0
    return _EXACT_SINES[turned] if turned in _EXACT_SINES else sin(radians(degrees))


def cosine(degrees: float) -> float:
    """Return the cosine, exact where it is 0, ±1/2 or ±1."""
    turned = (degrees + 90.0) % 360.0
    return _EXACT_SINES[turned] if turned in _EXACT_SINES else cos(radians(degrees))


def tangent(degrees: float) -> float:
    """Return the tangent, exact at multiples of 45°. Raises ZeroDivisionError at odd quarter turns."""
    if degrees % 90.0 == 45.0:
        return 1.0 if degrees % 180.0 == 45.0 else -1.0
    return sine(degrees) / cosine(degrees)


def arc_sine(value: float) -> float:
    """Return the angle in degrees, exact where it is a multiple of 30°. Raises ValueError beyond -1 … 1."""
    return _EXACT_ANGLES.get(abs(value), degrees(asin(abs(value)))) * (-1.0 if value < 0 else 1.0)


def arc_cosine(value: float) -> float:
    """Return the angle in degrees, exact where it is a multiple of 30°. Raises ValueError beyond -1 … 1."""
    return 90.0 - arc_sine(value) if abs(value) in _EXACT_ANGLES else degrees(acos(value))


def arc_tangent(value: float) -> float:
    """Return the angle in degrees, from -90 to 90, exact where it is a multiple of 45°."""
    return 45.0 * value if value in (-1.0, 0.0, 1.0) else degrees(atan(value))


def _round_half_away(value: float) -> float:
    return float(floor(value + 0.5) if value >= 0 else ceil(value - 0.5))


def _rounding(how: Callable[[float], float]) -> Callable[[Sequence[Amount], str, int], Amount]:
    def run(amounts: Sequence[Amount], name: str, at: int) -> Amount:
        amount = amounts[0]
        if not amount.plain:
            unit = _UNIT_OF.get(amount.kind() or "")
            hint = (
                f"say the step: {name}(x / 1 {unit}) * 1 {unit}"
                if unit
                else "divide by something of its own kind first"
            )
            raise Fault(rules.ROUNDED_LENGTH, f"{name} cannot round {amount.words()}", hint, at)
        # dust of divisions: 20.999999999 boards are 21, and 2.4999999999 is the half that it was meant to be
        doubled = amount.value * 2.0
        value = round(doubled) / 2.0 if is_whole(doubled) else amount.value
        return Amount(float(how(value)), origin=min(amount.origin, Origin.ROUNDED))

    return run


def _trigonometry(how: Callable[[float], float]) -> Callable[[Sequence[Amount], str, int], Amount]:
    def run(amounts: Sequence[Amount], name: str, at: int) -> Amount:
        amount = amounts[0]
        if not amount.plain and amount.kind() != "angle":
            raise Fault(
                rules.WRONG_KIND, f"{name} takes an angle; here it has {amount.words()}", "write degrees: deg", at
            )
        if amount.origin is not Origin.PLAIN:
            raise Fault(
                rules.RATIO_AS_SIZE,
                f"{name} takes an angle; here it has a ratio",
                "a quotient of lengths is not an angle in degrees",
                at,
            )
        if amount.plain and amount.value != 0.0:
            number = f"{amount.value:.6g}"
            hint = f"write {name}({number} deg), or give the size in it a unit"
            raise Fault(rules.NO_UNIT, f"{name} takes an angle; here it has the plain number {number}", hint, at)
        try:
            value = how(amount.value)
        except ZeroDivisionError:
            raise Fault(
                rules.NO_VALUE, f"{name} of {amount.value:g}° has no value", "choose another angle", at
            ) from None
        return Amount(value, origin=Origin.RATIO)

    return run


def _inverse(how: Callable[[float], float]) -> Callable[[Sequence[Amount], str, int], Amount]:
    def run(amounts: Sequence[Amount], name: str, at: int) -> Amount:
        amount = amounts[0]
        if not amount.plain:
            raise Fault(
                rules.WRONG_KIND,
                f"{name} takes a plain number; here it has {amount.words()}",
                f"divide by something of its own kind: {name}(rise / run)",
                at,
            )
        value = amount.value
        if name != "atan" and 1.0 < abs(value) < 1.0 + _DUST:
            value = 1.0 if value > 0 else -1.0
        try:
            return Amount(how(value), deg=1)
        except ValueError:
            hint = "the sine and the cosine of an angle lie from -1 to 1"
            raise Fault(rules.NO_VALUE, f"{name} of {value:g} has no value", hint, at) from None

    return run


def _choosing(how: Callable[[Sequence[float]], float]) -> Callable[[Sequence[Amount], str, int], Amount]:
    def run(amounts: Sequence[Amount], name: str, at: int) -> Amount:
        first = amounts[0]
        for other in amounts[1:]:
            if other.dimension != first.dimension:
                raise Fault(
                    rules.MIXED,
                    f"{name} compares {first.words()} with {other.words()}",
                    "give all values the same unit: 0 mm, not 0",
                    at,
                )
        return replace(first, value=how([a.value for a in amounts]), origin=max(a.origin for a in amounts))

    return run


def _absolute(amounts: Sequence[Amount], _name: str, _at: int) -> Amount:
    return replace(amounts[0], value=abs(amounts[0].value))


def _square_root(amounts: Sequence[Amount], name: str, at: int) -> Amount:
    amount = amounts[0]
    if amount.value < 0:
        raise Fault(rules.NO_VALUE, f"{name} of a negative number has no value", f"it came out as {amount.value:g}", at)
    return root(amount, at)


def root(amount: Amount, at: int) -> Amount:
    """Return the square root. Raises Fault when the dimension has none: the root of a length is nothing."""
    if any(exponent % 2 for exponent in amount.dimension):
        raise Fault(
            rules.WRONG_KIND,
            f"the root of {amount.words()} is not a size",
            "take the root of a plain number or of an area",
            at,
        )
    mm, deg, grams, newtons = (exponent // 2 for exponent in amount.dimension)
    return replace(amount, value=sqrt(amount.value), mm=mm, deg=deg, grams=grams, newtons=newtons)


_MANY = 150  # an expression of 300 letters holds no more values than that

FUNCTIONS = {
    "min": Function(2, _MANY, _choosing(min), "the least of several values: min(a, b, …)"),
    "max": Function(2, _MANY, _choosing(max), "the greatest of several values: max(a, b, …)"),
    "sqrt": Function(1, 1, _square_root, "square root of a number or an area: sqrt(run^2 + rise^2)"),
    "sin": Function(1, 1, _trigonometry(sine), "sine of an angle: sin(pitch)"),
    "cos": Function(1, 1, _trigonometry(cosine), "cosine of an angle"),
    "tan": Function(1, 1, _trigonometry(tangent), "tangent of an angle"),
    "asin": Function(1, 1, _inverse(arc_sine), "angle with this sine"),
    "acos": Function(1, 1, _inverse(arc_cosine), "angle with this cosine"),
    "atan": Function(1, 1, _inverse(arc_tangent), "angle with this tangent: atan(rise / run)"),
    "abs": Function(1, 1, _absolute, "the value without its sign"),
    "floor": Function(1, 1, _rounding(floor), "whole number below: floor(height / board)"),
    "ceil": Function(1, 1, _rounding(ceil), "whole number above"),
    "round": Function(1, 1, _rounding(_round_half_away), "nearest whole number"),
}


def function_words() -> tuple[tuple[str, str], ...]:
    """Return every function of formulas with its meaning."""
    return tuple((name, function.meaning) for name, function in FUNCTIONS.items())
