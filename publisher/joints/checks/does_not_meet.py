"""Boards that do not touch where a join says that they meet."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.checks import ring_does_not_close
from publisher.joints.checks.edge_lengths_differ import MOST_DIFFERENCE
from publisher.joints.panels import BARE, PANEL_TOUCH


@checked(
    "joints/does-not-meet",
    "Boards touch all along the edges that are joined",
    "edges may agree on paper and the boards still not reach each other: a window where a wall should be glued on, or an edge "
    f"that is cut for another board; a fillet of glue bridges {BARE:g} mm (common practice, no source)",
    may_be_empty=True,
)
def does_not_meet(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure every join on the boards as they are cut and stand: gap, angle, and what of the edge stays bare."""
    looked_at = 0
    for mated in subject.panels:
        for mating in mated.matings:
            touch, join = mating.touch, mating.join
            if touch is None:
                continue
            looked_at += 1
            differ = abs(mating.length_a - mating.length_b) > MOST_DIFFERENCE
            if touch.holds or differ or not ring_does_not_close.meets(mating):
                continue  # what is wrong with the stated sizes is said elsewhere
            x, y, z = touch.at
            where = f"{x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up"
            if touch.gap > PANEL_TOUCH:
                askew = f", at an angle of {touch.angle:.2f}° to it" if touch.angle > ring_does_not_close.ANGLE else ""
                what = f"{join.b} ends up to {touch.gap:.1f} mm before {join.a}, which it meets{askew} ({where})"
                hint = "look at what else is joined to these edges: each gives room for one board and one corner"
                value, limit = touch.gap, PANEL_TOUCH
            else:
                what = f"{join.b} meets {join.a} and is left {touch.bare_words} ({where})"
                hint = "move the opening or the cut that lies there, or make the panel reach over the whole of the edge"
                value, limit = touch.bare, BARE
            yield check.found(
                what, subject=mated.assembly.plan.name, hint=hint, place=join.place, value=value, limit=limit
            )
    return looked_at
