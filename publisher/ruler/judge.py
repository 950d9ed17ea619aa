"""The verdict on a printed sheet: scale on each axis, what allows it, what may have caused it, what to do."""

import json
from functools import cache
from pathlib import Path

from publisher.basics import Finding, Rule, Severity, record
from publisher.ruler.pack_facts import AllowedScale, Met, budget_of
from publisher.ruler.readings import Reading

COVERAGE = 2.0  # k = 2, about 95 % (JCGM 100, 6.3)

SCALE_BAD = Rule(
    "ruler/scale-bad",
    "The sheet printed at true size",
    "Parts of a sheet that shrank still fit each other, but not the board, the bases and the rods that did not shrink.",
    Severity.ERROR,
)
SCALE_DOUBTFUL = Rule(
    "ruler/scale-doubtful",
    "The readings settle whether the sheet printed at true size",
    "A ruler is read to about half a millimetre: near the limit only a finer reading can tell.",
    Severity.WARNING,
)


@record
class Scale:
    """Print scale on one axis: 1 is true size. ``u`` is the expanded uncertainty (k = 2)."""

    axis: str
    value: float
    u: float
    verdict: str  # good, doubtful, bad


@record
class Verdict:
    """What can be said: ``verdict`` is the worse of both axes; ``misfits`` what will not fit if used as printed."""

    verdict: str
    scales: tuple[Scale, ...]
    budget: AllowedScale
    uneven: bool
    causes: tuple[str, ...]
    misfits: tuple[str, ...]
    advice: tuple[str, ...]
    findings: tuple[Finding, ...]


def judge(
    across: Reading, down: Reading, meetings: tuple[Met, ...] = (), recorded: AllowedScale | None = None
) -> Verdict:
    """Judge two readings against what the pack says that it allows; without that, against the general limit and what the
    pack's own meetings allow."""
    budget = recorded or budget_of(meetings)
    scales = tuple(_scale(reading, budget) for reading in (across, down))
    order = ("good", "doubtful", "bad")
    verdict = max((s.verdict for s in scales), key=order.index)
    one, two = scales
    uneven = abs(one.value - two.value) > (one.u**2 + two.u**2) ** 0.5
    return Verdict(
        verdict,
        scales,
        budget,
        uneven,
        _causes(scales, verdict),
        _misfits(scales, meetings),
        _advice(verdict, uneven, scales),
        _findings(scales, budget),
    )


def _scale(reading: Reading, budget: AllowedScale) -> Scale:
    value = reading.read_mm / reading.true_mm
    u = COVERAGE * reading.u_mm / reading.true_mm
    if budget.least <= value <= budget.most:
        verdict = "good"
    elif budget.least - u <= value <= budget.most + u:
        verdict = "doubtful"
    else:
        verdict = "bad"
    return Scale(reading.axis, value, u, verdict)


@cache
def factors() -> tuple[tuple[float, str], ...]:
    """Return (factor, cause) of the common ways in which printing changes the scale, from ``factors.json``."""
    table = json.loads((Path(__file__).parent / "factors.json").read_text(encoding="utf-8"))
    return tuple((float(row["factor"]), str(row["cause"])) for row in table["factors"])


def _causes(scales: tuple[Scale, ...], verdict: str) -> tuple[str, ...]:
    """Return every common cause that both readings allow: several give the same figure, so none is named alone."""
    if verdict == "good":
        return ()
    return tuple(
        f"{cause} ({100 * factor:.1f} %)"
        for factor, cause in factors()
        if all(abs(s.value - factor) <= s.u for s in scales)
    )


def _misfits(scales: tuple[Scale, ...], meetings: tuple[Met, ...]) -> tuple[str, ...]:
    out = []
    for met in meetings:
        sizes = [met.cut(s.value) for s in scales]
        if min(sizes) < met.least - 1e-9 and met.least <= met.printed:
            out.append(f"{met.what}: {min(sizes):.2f} mm when cut, at least {met.least:.2f} mm is needed")
        elif met.most is not None and max(sizes) > met.most + 1e-9 and met.most >= met.printed:
            out.append(f"{met.what}: {max(sizes):.2f} mm when cut, at most {met.most:.2f} mm will hold")
    return tuple(out)


def _advice(verdict: str, uneven: bool, scales: tuple[Scale, ...]) -> tuple[str, ...]:
    if verdict == "good":
        return ("use the sheet; measure again after it is glued to card",)
    out = [
        "print one page again at 100 % or “actual size”, with any fitting, shrinking or enlarging to the page switched off, "
        "on the paper that the pack is made for, and measure that page",
        "do not correct it by typing a percentage: settings add up, and the next page may differ",
    ]
    if verdict == "doubtful":
        out.insert(
            0,
            "measure a longer line (the 180 mm and 240 mm rulers of the print-check page, with --of), or use a calliper",
        )
    if uneven:
        out.append(
            "the two directions differ: let the sheet lie until it is dry, and try another paper or feed before you print the rest"
        )
    if min(s.value for s in scales) < 1 and verdict == "bad":
        out.append("do not cut from this sheet: slots and treads come out smaller, board and bases do not")
    return tuple(out)


def _findings(scales: tuple[Scale, ...], budget: AllowedScale) -> tuple[Finding, ...]:
    out = []
    for scale in scales:
        if scale.verdict == "good":
            continue
        rule = SCALE_BAD if scale.verdict == "bad" else SCALE_DOUBTFUL
        limit, by = (budget.least, budget.least_by) if scale.value < 1 else (budget.most, budget.most_by)
        out.append(
            rule.found(
                f"{scale.axis} the sheet printed at {100 * scale.value:.1f} % (± {100 * scale.u:.1f} %); "
                f"{100 * budget.least:.1f} to {100 * budget.most:.1f} % is allowed (this end is set by {by})",
                subject=scale.axis,
                hint="print again at 100 % and measure again" if rule is SCALE_BAD else "take a finer reading",
                value=scale.value,
                limit=limit,
            )
        )
    return tuple(out)
