"""Parts that do not lie on the face that they are put on."""

from collections.abc import Iterator

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import say_length, shares_apart, trimmed
from publisher.joints.assembled import Assembled
from publisher.joints.least_sizes import GLUED_SHARE
from publisher.joints.panels import BARE, PANEL_TOUCH, Seating

ASKEW = 0.05
"""Degrees that a face may lie off what is said: 0.05 mm over a board's thickness of 57 mm."""

SeatFault = tuple[str, str, float, float]


@checked(
    "joints/off-its-face",
    "A part lies on the face that it is put on, within its rim",
    f"a part that reaches past the rim, leans or stands off by more than {PANEL_TOUCH:g} mm has nothing to be glued to there; an "
    f"edge may leave {BARE:g} mm bare, a face must touch with {GLUED_SHARE:.0%} (common practice, no source)",
    may_be_empty=True,
)
def off_its_face(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Measure what lies or stands on each face: gap, angle, what reaches over its rim, what is glued to nothing, its place."""
    looked_at = 0
    for mated in subject.panels:
        for seating in mated.seatings:
            looked_at += 1
            seat = seating.seat
            verb = "stands" if seat.edge else "lies"
            x, y, z = seating.at
            where = f"({x:.0f} mm across, {y:.0f} mm deep and {z:.0f} mm up)"
            for what, hint, value, limit in list(_faults(seating))[:1]:  # the first is the cause of the others
                yield check.found(
                    f"{seat.panel} {verb} on {seat.host} and {what} {where}",
                    subject=mated.assembly.plan.name,
                    hint=hint,
                    place=seat.place,
                    value=value,
                    limit=limit,
                )
    return looked_at


def _faults(seating: Seating) -> Iterator[SeatFault]:
    seat = seating.seat
    if seating.tilt > ASKEW:
        yield (
            f"leans by {trimmed(seating.tilt, 2)}°: it is cut for a slope of {trimmed(seat.slope or 0.0, 2)}°, and that "
            f"face rises by {trimmed(seating.rises, 2)}°",
            f"say slope: {trimmed(seating.rises, 2)} deg, if the face rises up its template, or an expression that gives it",
            seating.tilt,
            ASKEW,
        )
    if seating.gap > PANEL_TOUCH:
        askew = f", at an angle of {seating.angle:.2f}° to it" if seating.angle > 0.01 else ""
        yield (
            f"is up to {seating.gap:.1f} mm off its face{askew}",
            "check the joins that hold it and its turn: what stands on a face must reach it and not enter it",
            seating.gap,
            PANEL_TOUCH,
        )
    if seating.off > PANEL_TOUCH:
        yield (
            f"its joins hold it {say_length(seating.off)} from where at: puts it",
            "remove at, or one of the joins",
            seating.off,
            PANEL_TOUCH,
        )
    if seating.past > PANEL_TOUCH:
        yield (
            f"reaches {say_length(seating.past)} over the rim of its {seat.face}",
            "at is where the middle of what touches lies: move it inwards, or make the part smaller",
            seating.past,
            PANEL_TOUCH,
        )
    share = seating.glued.area / max(seating.area, 1e-9)
    if seat.edge and share < 1.0:
        bare = (1.0 - share) * seating.length
        if bare > BARE:
            yield (
                f"leaves {say_length(bare)} of its edge over an opening",
                "an edge is glued along its whole length: move it off the opening",
                bare,
                BARE,
            )
    elif share < GLUED_SHARE:
        touches, wanted = shares_apart(share, GLUED_SHARE)
        yield (
            f"touches it with {touches} of its own face",
            f"let it touch with {wanted} or more, which glue needs (common practice, no source)",
            share,
            GLUED_SHARE,
        )
