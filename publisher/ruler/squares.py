"""Which square of the print-check page was measured: 100 mm, or the one of 4 in that stands round it where rulers show inches."""

from dataclasses import replace

from publisher.basics import Finding, Refusal, Rule, Severity
from publisher.ruler.pack_facts import PackFacts
from publisher.ruler.readings import Reading, take_readings
from publisher.ruler.slips import near
from publisher.ruler.written import MM_PER_INCH

INNER = 100.0  # mm
OUTER = 4.0 * MM_PER_INCH

SQUARE_NOT_SAID = Rule(
    "ruler/square-not-said",
    "It is known which of two squares was measured",
    "The squares of 100 mm and 4 in differ by 1.6 %: judged as the other, a true sheet is called bad, and one that shrank true.",
    Severity.ERROR,
)
NO_SUCH_SQUARE = Rule(
    "ruler/no-such-square",
    "A square that was measured is one that the pack has",
    "Held against a length that stands nowhere on the sheet, readings of the 100 mm square give a verdict about another scale.",
    Severity.ERROR,
)
SAME_LINE = 0.01  # mm: lengths are recorded to 0.0001 mm, and nobody writes 4 in less exactly


def check_square(true_mm: tuple[float, float], facts: PackFacts | None) -> None:
    """Raise Refusal where lines of 4 in (``true_mm``: across, down) are said to be measured, and the pack is known to have none."""
    if facts is None or not facts.lines or not any(abs(line - OUTER) < SAME_LINE for line in true_mm):
        return
    if any(abs(line - OUTER) < SAME_LINE for line in facts.lines):
        return
    raise Refusal(
        NO_SUCH_SQUARE.found(
            "--of is 4 in, but this pack has no square of 4 in, and no other line that is marked so: its print check has the square of "
            "100 mm alone",
            subject="of",
            hint="say --of 100mm if you measured the square; if the sheet has a square of 4 in, give --pack the pack that it is from; "
            "for the edge of a piece, leave --pack out",
        )
    )


def square_readings(
    across: float | str, down: float | str, unit: str, tool: str, facts: PackFacts | None
) -> tuple[Reading, Reading]:
    """Return readings of the 100 mm square. Where they may be those of the one of 4 in as well, each says so in ``also``.

    Raises Refusal for readings in inches where the pack is known to have both squares, and as ``take_readings`` does.
    """
    readings = take_readings(across, down, unit, (INNER, INNER), tool)
    if (facts is not None and not facts.outer_square) or not all(near(one.read_mm, OUTER) for one in readings):
        return readings
    in_inches = any(reading.inches for reading in readings)
    if facts is not None and in_inches:
        raise Refusal(_not_said(readings))
    nearer = all(abs(one.read_mm - OUTER) < abs(one.read_mm - INNER) for one in readings)
    if not in_inches and not nearer:
        return readings
    one, two = readings
    return replace(one, also=_of_the_other(readings)), replace(two, also=_of_the_other(readings))


def _shown(readings: tuple[Reading, Reading], side: float) -> str:
    return " and ".join(f"{100.0 * one.read_mm / side:.1f} % {one.axis}" for one in readings)


def _of_the_other(readings: tuple[Reading, Reading]) -> str:
    return (
        "judged as the square of 100 mm; was it the one of 4 in that stands round it on papers of North America? "
        f"Of that they show {_shown(readings, OUTER)}: say so with --of 4in"
    )


def _not_said(readings: tuple[Reading, Reading]) -> Finding:
    return SQUARE_NOT_SAID.found(
        f"the print check of this pack has two squares: of the outer, 4 in, the readings show {_shown(readings, OUTER)}; of the inner, "
        f"100 mm, {_shown(readings, INNER)}",
        subject="of",
        hint="say which one was measured: --of 4in for the outer square, --of 100mm for the inner one",
    )
