"""What a pencil makes narrower or wider, because the template allows for none."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.joints.assembled import Assembled
from publisher.joints.checks.slot_fit import PLAY_DUST
from publisher.joints.model import Meeting

PENCIL_WIDTH = 0.4
"""mm that a pencil runs beside a template's edge, 0.3 to 0.5. Common practice, no source."""


@checked(
    "joints/traced-without-allowance",
    "Templates of what meets something allow for the pencil",
    f"a pencil runs inside an opening by as much as it runs outside an outline, {PENCIL_WIDTH:g} mm (common "
    f"practice, no source): a slot of 5.3 mm traced comes out as {5.3 - 2 * PENCIL_WIDTH:.1f} mm",
    Severity.WARNING,
    may_be_empty=True,
)
def traced_without_allowance(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every meeting, in designs whose templates are traced: every slot, and all else that would no longer fit. Each part
    is told once, by the meeting that loses most."""
    if subject.design.use != "trace":
        return 0
    parts = {part.id: part for part in subject.parts}
    worst: dict[str, tuple[float, Meeting]] = {}
    for met in subject.meetings:
        traced = met.printed - PENCIL_WIDTH * sum(lines for _, lines in met.untraced)
        for part, _ in met.untraced if met.kind == "slot" or _spoils(met, traced) else ():
            if part not in worst or abs(traced - met.printed) > abs(worst[part][0] - worst[part][1].printed):
                worst[part] = traced, met
    for part, (traced, met) in worst.items():
        own = parts[part]
        yield check.found(
            f"part {own.letter} ({own.name}) is traced without an allowance: the pencil makes the {met.what}, which is "
            f"{met.printed:.2f} mm, about {traced:.2f} mm",
            subject=part,
            hint=f"give the part a trace_allowance of {PENCIL_WIDTH:g} mm: outlines shrink and openings grow by it on the template",
            place=own.place,
            value=traced,
            limit=met.printed,
        )
    return len(subject.meetings)


def _spoils(met: Meeting, traced: float) -> bool:
    """Tell whether what fits as printed no longer does as traced."""

    def fits(size: float) -> bool:
        return size >= met.unprinted_least - PLAY_DUST and (met.loosest is None or size <= met.loosest + PLAY_DUST)

    return fits(met.printed) and not fits(traced)
