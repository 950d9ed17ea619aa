"""Panels that do not lie on what they are said to rest on."""

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.panels import BARE, PANEL_TOUCH


@checked(
    "joints/does-not-rest",
    "A panel lies on the edges that it rests on",
    "a roof over an edge that it does not touch, or that ends before it, has nothing to be glued to and shows a gap; a "
    f"fillet of glue bridges {BARE:g} mm of its length; over its thickness it is held as a whole (common practice, no source)",
    may_be_empty=True,
)
def does_not_rest(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure every edge under the face that rests on it, both where they stand: gap, angle, and what of it stays bare."""
    looked_at = 0
    for mated in subject.panels:
        for resting in mated.restings:
            looked_at += 1
            if resting.touch.holds:
                continue
            touch, panel, on = resting.touch, resting.rest.panel, resting.on
            x, y, z = touch.at
            where = f"{x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up"
            if touch.gap > PANEL_TOUCH:
                askew = f", at an angle of {touch.angle:.2f}° to it" if touch.angle > 0.01 else ""
                what = f"{panel} rests on {on} and stands up to {touch.gap:.1f} mm over it{askew} ({where})"
                hint = "check the corner that the panel is joined at, and that the edges it rests on lie in one plane"
                value, limit = touch.gap, PANEL_TOUCH
            else:
                what = f"{panel} rests on {on} and leaves it {touch.bare_words} ({where})"
                hint = (
                    f"let {panel} reach over the whole of the edge, board and all, and move what is cut out of it there"
                )
                value, limit = touch.bare, BARE
            yield check.found(
                what,
                subject=mated.assembly.plan.name,
                hint=hint,
                place=resting.rest.place,
                value=value,
                limit=limit,
            )
    return looked_at
