"""Layers that are glued by a sliver."""

from publisher.basics import Check, Outcome, Severity
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.checks.layers_do_not_touch import LEAST
from publisher.joints.least_sizes import GLUED_SHARE, GLUED_STRIP, PAPERED, THICKNESS, least

ALL = 0.99
"""Share of the smaller layer: one that lies on the other as a whole is as well glued as it can be."""


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look at the share and the width of the contact of every layer that is glued to the one below; name the worst of a stack."""
    boards = {board.id: board for board in subject.design.boards}
    parts = {part.id: part for part in subject.parts}
    looked_at, found = 0, []
    for report in subject.wholes:
        layers = report.stack.layers
        worst: tuple[float, str, float, float] | None = None
        for k in range(len(layers) - 1):
            contact = report.plan.contact(k)
            if k + 1 in report.stack.loose or contact.area < LEAST:
                continue  # not glued, or found as hanging in the air
            looked_at += 1
            if contact.share >= ALL:
                continue
            strip, wanted = report.plan.strip(k), least(GLUED_STRIP, boards[parts[layers[k + 1].part].board])
            on = f"layer {layers[k + 1].number} ({layers[k + 1].part}) lies on layer {layers[k].number} ({layers[k].part})"
            if contact.share < GLUED_SHARE - 1e-6:
                what = f"{on} with {contact.share:.0%} of the smaller of them; {GLUED_SHARE:.0%} hold (common practice)"
                case = (contact.share / GLUED_SHARE, what, contact.share, GLUED_SHARE)
            elif strip < wanted - 0.01:
                what = f"{on} with a strip {say_length(strip)} wide; {say_length(wanted)} hold (common practice)"
                case = (strip / wanted, what, strip, wanted)
            else:
                continue
            worst = case if worst is None or case[0] < worst[0] else worst
        if worst is not None:
            found.append(
                check.found(
                    worst[1],
                    subject=report.stack.name,
                    hint="make the turn or shift smaller, the layers wider, or say at: centre",
                    place=report.place,
                    value=worst[2],
                    limit=worst[3],
                )
            )
    return Outcome(looked_at, tuple(found))


CHECK = Check(
    "joints/glued-too-little",
    f"Layers are glued over {GLUED_SHARE:.0%} of the smaller one, and a strip that holds",
    f"a layer that is held by a sliver breaks off with the first figure on it: a strip of {GLUED_STRIP.foam:g} mm holds "
    f"in bare board up to {THICKNESS:g} mm, wider in thicker board, {PAPERED:g} of it with paper (common practice, no source)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
