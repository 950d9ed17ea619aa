"""The verdict on a printed sheet: scale on each axis, what allows it, what may have caused it, what to do."""

from publisher.basics import Finding, record
from publisher.ruler import answers
from publisher.ruler.pack_facts import AllowedScale, Met, budget_of
from publisher.ruler.readings import Reading
from publisher.ruler.scales import Scale, scale_of
from publisher.ruler.slips import LONG_RULERS


@record
class Verdict:
    """What can be said: ``verdict`` is the worse of both axes; ``misfits`` what will not fit if used as printed; ``reply`` is for
    the answer to the buyer who sent the readings."""

    verdict: str
    scales: tuple[Scale, ...]
    budget: AllowedScale
    uneven: bool
    causes: tuple[str, ...]
    misfits: tuple[str, ...]
    advice: tuple[str, ...]
    findings: tuple[Finding, ...]
    readings: tuple[Reading, ...] = ()
    reply: str = ""


def judge(
    across: Reading,
    down: Reading,
    meetings: tuple[Met, ...] = (),
    recorded: AllowedScale | None = None,
    rulers: tuple[float, float] = LONG_RULERS,
) -> Verdict:
    """Judge two readings against what the pack says that it allows; without that, against the general limit and what the
    pack's own meetings allow. ``rulers``: how long (mm) the long rulers of its print-check page are, across and down."""
    budget = recorded or budget_of(meetings)
    readings = (across, down)
    one, two = scales = tuple(scale_of(reading, budget) for reading in readings)
    order = ("good", "doubtful", "bad")
    verdict = max((s.verdict for s in scales), key=order.index)
    uneven = abs(one.value - two.value) > (one.u**2 + two.u**2) ** 0.5
    how = answers.finer(readings, budget, rulers, recorded is not None)
    return Verdict(
        verdict,
        scales,
        budget,
        uneven,
        () if verdict == "good" else answers.causes(scales),
        answers.misfits(scales, meetings),
        answers.advice(verdict, uneven, scales, readings, how),
        tuple(
            answers.finding(scale, reading, budget, how)
            for scale, reading in zip(scales, readings, strict=True)
            if scale.verdict != "good"
        ),
        readings,
        answers.reply(verdict, scales, readings, rulers),
    )
