"""A reading taken with a ruler or a calliper, in mm, with its uncertainty."""

import math

from publisher.basics import Refusal, Rule, Severity, record

MM_PER_INCH = 25.4  # international inch of 1959

# Standard uncertainty in mm of a distance up to 1 m between two line edges:
# ruler: read to 0.5 mm at both ends (0.5/√12 each, JCGM 100) and a class II rule (±0.5 mm, 2014/32/EU Annex X), a/√3:
#        √(2·(0.5/√12)² + (0.5/√3)²) = 0.354
# calliper: 0.02 mm display and ±0.02 mm limit (DIN 862), and aiming ±0.1 mm at each line's edge: √(2·(0.1/√3)² + …) = 0.083
TOOLS = {"ruler": 0.354, "calliper": 0.083}

READING_UNUSABLE = Rule(
    "ruler/reading-unusable",
    "A reading is a length that can be judged",
    "A slip of the keyboard or of the unit must not become a verdict about a printer.",
    Severity.ERROR,
)


@record
class Reading:
    """A line that should be ``true_mm`` long was read as ``read_mm``; ``u_mm`` is the standard uncertainty."""

    axis: str
    read_mm: float
    true_mm: float
    u_mm: float


def take_reading(axis: str, value: float, unit: str, true_mm: float, tool: str) -> Reading:
    """Return the reading in mm. Raises Refusal for a number that no printed line of that length can give."""
    if not math.isfinite(value) or value <= 0:
        raise Refusal(
            READING_UNUSABLE.found(
                f"the reading {axis} is {value}: a length above zero was expected",
                subject=axis,
                hint="measure the square from edge to edge and give the number that the ruler shows",
            )
        )
    if not math.isfinite(true_mm) or not 10.0 <= true_mm <= 2000.0:
        raise Refusal(
            READING_UNUSABLE.found(
                f"--of is {true_mm:g} mm: the printed length was expected, between 10 and 2000 mm",
                subject="of",
                hint="give the number that is printed beside the line, in mm (100 for the large square)",
            )
        )
    read_mm = value * MM_PER_INCH if unit == "in" else value
    ratio = read_mm / true_mm
    if not 0.4 < ratio < 2.5:
        raise Refusal(
            READING_UNUSABLE.found(*_slip(axis, value, unit, true_mm), subject=axis, hint=_hint(value, unit, true_mm))
        )
    return Reading(axis, read_mm, true_mm, TOOLS[tool])


def _slip(axis: str, value: float, unit: str, true_mm: float) -> tuple[str]:
    return (f"the reading {axis} is {value:g} {unit} for a line of {true_mm:g} mm: no printer is that far off",)


def _hint(value: float, unit: str, true_mm: float) -> str:
    if unit == "mm" and 0.4 < value * MM_PER_INCH / true_mm < 2.5:
        return f"if the ruler shows inches, say --unit in ({value:g} in is {value * MM_PER_INCH:.1f} mm)"
    if unit == "mm" and 0.4 < value * 10 / true_mm < 2.5:
        return f"if the ruler shows centimetres, say {value * 10:g}"
    if unit == "in" and 0.4 < value / true_mm < 2.5:
        return "if the ruler shows millimetres, leave --unit out"
    return "measure again; --of says how long the printed line should be"
