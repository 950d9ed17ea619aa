"""A reading taken with a ruler or a calliper, in mm, with its uncertainty."""

import math

from publisher.basics import Refusal, Rule, Severity, record
from publisher.ruler.slips import near, slip_of
from publisher.ruler.written import FINEST_MARKS, MM_PER_INCH, UNITS, Written, read_length

CLASS_II = 0.5  # mm: what a rule of class II may be off up to 1 m (2014/32/EU, Annex X); taken for inch rules too
STEPS = {"0.5mm": FINEST_MARKS, "1mm": 1.0, "1/16in": MM_PER_INCH / 16.0, "1/32in": MM_PER_INCH / 32.0}
"""Distance (mm) of the marks of rulers that people have."""
ONE_IN_TWENTY = 1.645  # quantile of the normal distribution: 95 of 100 errors are less on one side
ONE_IN_400 = 2.81  # 9975 of 10,000 are


@record
class Tool:
    """What a distance up to 1 m between two line edges is measured with, in mm: ``u_mm`` the standard uncertainty (k = 1), ``sure_mm``
    the error that 19 of 20 readings stay below on one side, ``never_mm`` the one that hardly any is beyond; ``coarse``: there are
    finer marks.
    """

    u_mm: float
    sure_mm: float
    never_mm: float
    coarse: bool = False


def ruler(step: float) -> Tool:
    """Return a ruler of class II that is read to ``step`` mm at both ends.

    u = √(2·(step/√12)² + (h/√3)²) with h = 0.5 (JCGM 100, 4.3.7): 0.354 for half millimetres. Readings of a coarse ruler fall on its
    marks: on a rule that is off by e, uniform within ±h, a line reads the mark that is d beyond its end where e > d − step, and then
    in (step − d + e)/step of the ways to lay it: one reading in twenty is d = step + h − √(0.2·h·step) beyond, none step + h.
    """
    u = math.hypot(math.sqrt(2.0) * step / math.sqrt(12.0), CLASS_II / math.sqrt(3.0))
    coarse = step > FINEST_MARKS + 1e-9
    marks = step + CLASS_II - math.sqrt(0.2 * CLASS_II * step)
    return Tool(u, max(ONE_IN_TWENTY * u, marks) if coarse else ONE_IN_TWENTY * u, step + CLASS_II, coarse)


# calliper: 0.02 mm display and ±0.02 mm limit (DIN 862), and aiming ±0.1 mm at each line's edge: √(2·(0.1/√3)² + …) = 0.083
CALLIPER = Tool(0.083, ONE_IN_TWENTY * 0.083, ONE_IN_400 * 0.083)
TOOLS = {"ruler": ruler(FINEST_MARKS), "calliper": CALLIPER} | {name: ruler(step) for name, step in STEPS.items()}
"""What a sheet may be measured with. ``ruler`` is one whose marks follow from how a reading is
written; a number that was not written is taken as read to half a millimetre."""

LEAST_LINE, MOST_LINE = 10.0, 2000.0  # mm: a printed line that anybody measures
POSSIBLE = (0.4, 2.5)  # no printer is farther off

READING_UNUSABLE = Rule(
    "ruler/reading-unusable",
    "A reading is a length that can be judged",
    "A slip of the keyboard or of the unit must not become a verdict about a printer.",
    Severity.ERROR,
)


@record
class Reading:
    """A line that should be ``true_mm`` long was read as ``read_mm`` with a ``tool``. ``slip`` is what may have gone wrong with a
    reading that is far off, ``read_to`` how finely it was taken, ``also`` which other line it may be of, all in words. ``inches``: it
    was read on the inch side."""

    axis: str
    read_mm: float
    true_mm: float
    tool: Tool
    slip: str = ""
    read_to: str = ""
    inches: bool = False
    also: str = ""


def take_readings(
    across: float | str,
    down: float | str,
    unit: str = "mm",
    true_mm: tuple[float, float] = (100.0, 100.0),
    tool: str = "ruler",
) -> tuple[Reading, Reading]:
    """Return both readings of one sheet. They were taken with one ruler: where one of them shows finer marks, the other has them too.

    Raises Refusal as ``take_reading`` does.
    """
    read = [_written(axis, value, unit) for axis, value in (("across", across), ("down", down))]
    if read[0].metric == read[1].metric:
        step = min(one.step for one in read)
        read = [Written(one.mm, one.unit, step, one.said) for one in read]
    one, two = (
        _reading(axis, written, true, tool)
        for axis, written, true in zip(("across", "down"), read, true_mm, strict=True)
    )
    if true_mm[0] != true_mm[1] and all(near(a.read_mm, b.true_mm) for a, b in ((one, two), (two, one))):
        raise Refusal(
            READING_UNUSABLE.found(
                f"the readings across and down are {one.read_mm:g} and {two.read_mm:g} mm, for rulers of {true_mm[0]:g} and "
                f"{true_mm[1]:g} mm",
                subject="rulers",
                hint="they look exchanged: give the ruler that runs across the page first",
            )
        )
    return one, two


def take_reading(axis: str, value: float | str, unit: str, true_mm: float, tool: str) -> Reading:
    """Return a reading in mm: a number in ``unit`` (mm, cm, in), or as somebody wrote it (``3 15/16 in``, ``97,3``) with a unit of its own.

    Raises Refusal for what no printed line of that length can give.
    """
    return _reading(axis, _written(axis, value, unit), true_mm, tool)


def _written(axis: str, value: float | str, unit: str) -> Written:
    if isinstance(value, str):
        written = read_length(value, unit)
        if written is None:
            raise Refusal(
                READING_UNUSABLE.found(
                    f"the reading {axis} is “{value[:40]}”: a length above zero was expected",
                    subject=axis,
                    hint="write what the ruler shows: 97.3, “97 mm”, “9.7 cm” or “3 15/16 in”",
                )
            )
        return written
    if not math.isfinite(value) or value <= 0:
        raise Refusal(
            READING_UNUSABLE.found(
                f"the reading {axis} is {value}: a length above zero was expected",
                subject=axis,
                hint="measure the square from edge to edge and give the number that the ruler shows",
            )
        )
    return Written(value * UNITS[unit], unit, FINEST_MARKS, f"{value:g}")


def _reading(axis: str, written: Written, true_mm: float, tool: str) -> Reading:
    if not math.isfinite(true_mm) or not LEAST_LINE <= true_mm <= MOST_LINE:
        raise Refusal(
            READING_UNUSABLE.found(
                f"--of is {true_mm:g} mm: the printed length was expected, between {LEAST_LINE:g} and {MOST_LINE:g} mm",
                subject="of",
                hint="give the number that is printed beside the line, in mm (100 for the large square)",
            )
        )
    slip = slip_of(axis, written, true_mm)
    if not POSSIBLE[0] < written.mm / true_mm < POSSIBLE[1]:
        raise Refusal(
            READING_UNUSABLE.found(
                f"the reading {axis} is {written.said} {written.unit} for a line of {true_mm:g} mm: no printer is that far off",
                subject=axis,
                hint=slip or "measure again; --of says how long the printed line should be",
            )
        )
    if tool == "ruler":  # how fine its marks are follows from how the reading is written
        return Reading(
            axis, written.mm, true_mm, ruler(written.step), slip, f"read to {_said_step(written)}", not written.metric
        )
    return Reading(
        axis,
        written.mm,
        true_mm,
        TOOLS[tool],
        slip,
        f"read with {'a calliper' if tool == 'calliper' else f'marks of {tool}'}",
        not written.metric,
    )


def _said_step(written: Written) -> str:
    marks = MM_PER_INCH / written.step
    if written.metric:
        return f"{written.step:g} mm"
    return (
        f"1/{marks:.0f} in"
        if abs(marks - round(marks)) < 1e-6 and round(marks) in {16, 32, 64}
        else f"{1 / marks:g} in"
    )
