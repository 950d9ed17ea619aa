"""Bent parts that do not lie along the edges that they are bent along."""

from collections.abc import Iterator

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.panels import BARE, LiningFound

CURVE_GAP = 0.3
"""mm: what a bent strip may be off its curve; it is pressed on and glued, and bends between."""


@checked(
    "joints/off-its-curve",
    "A bent part lies along the curved edges that it is bent along",
    f"a soffit for another arch leaves a gap that no glue fills; it may be {CURVE_GAP:g} mm off its edge, and leave {BARE:g} mm of it "
    "bare (common practice, no source)",
    may_be_empty=True,
)
def off_its_curve(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure how far the outside of every bent part is off its edges, where its ends lie, and what of the edges stays bare."""
    looked_at = 0
    for mated in subject.panels:
        for one in mated.linings:
            looked_at += 1
            x, y, z = one.at
            where = f"({x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up)"
            for what, hint, value, limit in list(_faults(one))[:1]:
                yield check.found(
                    f"{one.lining.panel} bends along {one.along} and {what} {where}",
                    subject=mated.assembly.plan.name,
                    hint=hint,
                    place=one.lining.place,
                    value=value,
                    limit=limit,
                )
    return looked_at


def _faults(one: LiningFound) -> Iterator[tuple[str, str, float, float]]:
    sizes = "give it the span, the rise and the form of the arch that it lies in, by the same named sizes"
    if one.gap > CURVE_GAP:
        yield f"is up to {say_length(one.gap)} off it", sizes, one.gap, CURVE_GAP
    if one.ends > BARE:
        yield f"ends {say_length(one.ends)} from its end", sizes, one.ends, BARE
    if one.bare > BARE:
        yield (
            f"leaves {say_length(one.bare)} of its board bare",
            "make it as wide as both panels stand apart, outside to outside",
            one.bare,
            BARE,
        )
