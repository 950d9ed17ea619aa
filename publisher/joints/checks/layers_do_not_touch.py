"""Layers that hang in the air."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled

LEAST = 1.0
"""mm²: what is less holds no glue."""


@checked(
    "joints/layers-do-not-touch",
    "Every layer lies on the one below",
    f"a layer that touches with less than {LEAST:g} mm² cannot be glued and falls",
    may_be_empty=True,
)
def layers_do_not_touch(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at the contact of every layer with the one below."""
    looked_at = 0
    for report in subject.wholes:
        layers = report.stack.layers
        for k in range(len(layers) - 1):
            looked_at += 1
            area = report.plan.contact(k).area
            if area < LEAST:
                yield check.found(
                    f"layer {layers[k + 1].number} ({layers[k + 1].part}) does not lie on layer {layers[k].number} "
                    f"({layers[k].part}): it would hang in the air",
                    subject=report.stack.name,
                    hint="make the turn or shift smaller, or the layers wider, so that they overlap",
                    place=report.place,
                    value=area,
                    limit=LEAST,
                )
    return looked_at
