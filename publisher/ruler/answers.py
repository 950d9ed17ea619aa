"""What is said of two scales: likely causes, what will not fit, what to do, and what to write to the buyer."""

import json
from functools import cache
from math import ceil, floor
from pathlib import Path

from publisher.basics import Finding, Rule, Severity
from publisher.ruler.pack_facts import AllowedScale, Met
from publisher.ruler.readings import Reading
from publisher.ruler.scales import SCALE_DUST, Scale, good_between

SCALE_BAD = Rule(
    "ruler/scale-bad",
    "The sheet printed at true size",
    "Parts of a sheet that shrank still fit each other, but not the board, the bases and the rods that did not shrink.",
    Severity.ERROR,
)
SCALE_DOUBTFUL = Rule(
    "ruler/scale-doubtful",
    "The readings settle whether the sheet printed at true size",
    "No ruler is read better than its marks allow: near the limit only a finer reading, or a longer line, can tell.",
    Severity.WARNING,
)
AGAIN = "at 100 % or “actual size”, with any fitting, shrinking or enlarging to the page switched off"


def say_range(least: float, most: float, *, inwards: bool) -> str:
    """Return ``98.8 … 101.2 %`` of two scales: rounded outwards, or inwards for what is allowed; two decimals where one cannot tell
    the ends apart."""
    up, down = (ceil, floor) if inwards else (floor, ceil)
    dust = SCALE_DUST if inwards else -SCALE_DUST
    for decimals in (1, 2, 3):
        unit = 10.0**decimals
        low, high = up((100.0 * least - dust) * unit) / unit, down((100.0 * most + dust) * unit) / unit
        if low <= high:
            return f"{low:.{decimals}f} … {high:.{decimals}f} %"
    return f"{100.0 * least:.3f} … {100.0 * most:.3f} %"


@cache
def factors() -> tuple[tuple[float, str], ...]:
    """Return (factor, cause) of the common ways in which printing changes the scale, from ``factors.json``."""
    table = json.loads((Path(__file__).parent / "factors.json").read_text(encoding="utf-8"))
    return tuple((float(row["factor"]), str(row["cause"])) for row in table["factors"])


def causes(scales: tuple[Scale, ...]) -> tuple[str, ...]:
    """Return every common cause that both readings allow: several give the same figure, so none is named alone."""
    return tuple(
        f"{cause} ({100 * factor:.1f} %)"
        for factor, cause in factors()
        if all(abs(s.value - factor) <= s.u for s in scales)
    )


def misfits(scales: tuple[Scale, ...], meetings: tuple[Met, ...]) -> tuple[str, ...]:
    """Return what will not fit when cut from a sheet of these scales."""
    out = []
    for met in meetings:
        sizes = [met.cut(s.value) for s in scales]
        if min(sizes) < met.least - 1e-9 and met.least <= met.printed:
            out.append(f"{met.what}: {min(sizes):.2f} mm when cut, at least {met.least:.2f} mm is needed")
        elif met.most is not None and max(sizes) > met.most + 1e-9 and met.most >= met.printed:
            out.append(f"{met.what}: {max(sizes):.2f} mm when cut, at most {met.most:.2f} mm will hold")
    return tuple(out)


def finer(readings: tuple[Reading, ...], budget: AllowedScale, rulers: tuple[float, float], packed: bool) -> str:
    """Return how to measure so that a doubt is settled: on the long rulers of the page, or with a finer tool."""
    coarse = any(reading.tool.coarse for reading in readings)
    if all(reading.true_mm >= long for reading, long in zip(readings, rulers, strict=True)):
        return (
            "take a ruler with finer marks (half a millimetre, or 1/32 in)"
            if coarse
            else "measure the 100 mm square with a calliper: publisher measure --across ACROSS --down DOWN --tool calliper"
        )
    command = f"publisher measure --rulers ACROSS DOWN{' --pack PACK.pdf' if packed else ''}"
    settles = all(good_between(budget, r.tool, long) for r, long in zip(readings, rulers, strict=True))
    return (
        f"measure the long rulers of the print-check page, {rulers[0]:g} mm across and {rulers[1]:g} mm down"
        f"{'' if settles else ', with a finer ruler'}: {command}"
    )


def advice(
    verdict: str, uneven: bool, scales: tuple[Scale, ...], readings: tuple[Reading, ...], how: str
) -> tuple[str, ...]:
    """Return what to do, first things first. ``how``: to settle a doubt."""
    other = tuple(dict.fromkeys(reading.also for reading in readings if reading.also))
    if verdict == "good":
        return (*other, "use the sheet; measure again after it is glued to card")
    out = [*other, *dict.fromkeys(f"{r.axis}: {r.slip}" for r in readings if r.slip)]
    again = f"print one page again {AGAIN}, on the paper that the pack is made for, and measure that page"
    if verdict == "doubtful":
        out.append(how)
        if any(r.tool.coarse for r in readings):
            out.append("if your ruler has finer marks than your numbers show, say so: --tool 0.5mm, or --tool 1/32in")
        again = f"if it stays in doubt, {again}"
    out += [again, "do not correct it by typing a percentage: settings add up, and the next page may differ"]
    if uneven:
        out.append(
            "the two directions differ: let the sheet lie until it is dry, and try another paper or feed before you print the rest"
        )
    if min(s.value for s in scales) < 1 and verdict == "bad":
        out.append("do not cut from this sheet: slots and treads come out smaller, board and bases do not")
    return tuple(out)


def finding(scale: Scale, reading: Reading, budget: AllowedScale, how: str) -> Finding:
    """Return the finding about a scale that is not good."""
    bad = scale.verdict == "bad"
    limit, by = (budget.least, budget.least_by) if scale.value < 1 else (budget.most, budget.most_by)
    shows = f"{scale.axis} the reading shows a true scale of {say_range(*scale.true, inwards=False)}"
    allowed = f"{say_range(budget.least, budget.most, inwards=True)} is allowed (this end is set by {by})"
    return (SCALE_BAD if bad else SCALE_DOUBTFUL).found(
        f"{shows}; {allowed}" if bad else f"{shows}, which does not settle it; {allowed}",
        subject=scale.axis,
        hint=(reading.slip or "print again at 100 % and measure again") if bad else how,
        value=scale.value,
        limit=limit,
    )


def reply(verdict: str, scales: tuple[Scale, ...], readings: tuple[Reading, ...], rulers: tuple[float, float]) -> str:
    """Return a sentence or two to paste into the answer to the buyer who sent the readings."""
    shown = " and ".join(f"{100 * s.value:.1f} % {s.axis}" for s in scales)
    if any(reading.also for reading in readings):
        return (
            "Which square did you measure: the outer one, which should be 4 in, or the inner one, which should be 100 mm? Your two "
            "numbers mean another thing for each; please tell me before you cut."
        )
    if verdict == "good":
        return (
            f"By your readings the sheet printed at {shown}, which is true enough for this pack: "
            "go on and use it, and measure once more after you have glued a template to card."
        )
    doubt = (
        "Could you read your ruler once more? One of the two numbers is farther off than printers usually are. "
        if any(r.slip for r in readings)
        else ""
    )
    if verdict == "bad":
        return (
            f"{doubt}By your readings the sheet printed at {shown} in place of 100 %, so please do not cut from it. "
            f"Print one page again {AGAIN}, on the paper that the file is named after, and send me the two readings of that page."
        )
    long_ones = all(reading.true_mm >= long for reading, long in zip(readings, rulers, strict=True))
    if long_ones and not any(r.tool.coarse for r in readings):
        ask = "measure the 100 mm square of the print-check page with a calliper"
    else:
        ask = (
            f"measure the two long rulers of the print-check page{' again' if long_ones else ''}, {rulers[0]:g} mm along the bottom and "
            f"{rulers[1]:g} mm up the side, {'with a finer ruler' if long_ones else 'as finely as your ruler shows it'}"
        )
    return f"{doubt}Your sheet may well be right, but these readings cannot tell. Please {ask}, and send me both numbers before you cut."
