"""Slots that a pencil makes narrower, because the template allows for none."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.facts import slot_width, slots_of

PENCIL_WIDTH = 0.4
"""mm that a pencil runs beside a template's edge, 0.3 to 0.5. Common practice, no source."""


@checked(
    "joints/traced-without-allowance",
    "Templates with slots allow for the pencil",
    f"a pencil runs inside a slot by as much as it runs outside an outline, {PENCIL_WIDTH:g} mm (common "
    f"practice, no source): a slot of 5.3 mm traced comes out as {5.3 - 2 * PENCIL_WIDTH:.1f} mm",
    Severity.WARNING,
    may_be_empty=True,
)
def traced_without_allowance(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every part with closed slots, in designs whose templates are traced."""
    looked_at = 0
    for part in subject.parts:
        slots = slots_of(part)
        if subject.design.use != "trace" or not slots:
            continue
        looked_at += 1
        if part.trace_allowance > 0.0:
            continue
        width = min(slot_width(part, slot) for slot in slots)
        traced = width - 2.0 * PENCIL_WIDTH
        yield check.found(
            f"part {part.letter} ({part.name}) is traced without an allowance: a pencil inside its slot of {say_length(width)} "
            f"leaves one of about {say_length(traced)}",
            subject=part.id,
            hint=f"give the part a trace_allowance of {PENCIL_WIDTH:g} mm: outlines shrink and slots grow by it on the template",
            place=part.place,
            value=traced,
            limit=width,
        )
    return looked_at
