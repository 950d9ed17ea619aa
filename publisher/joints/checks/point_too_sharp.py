"""Points of parts that break off."""

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import figures_apart, say_length
from publisher.joints.assembled import Assembled
from publisher.joints.facts import SHARP, points_of
from publisher.joints.least_sizes import BLUNT, least

WHOLE = 0.01  # degrees and mm: what turns less is a rounding


@checked(
    "joints/point-too-sharp",
    f"Points under {SHARP:.0f}° are blunted",
    f"a point of foam crumbles under the knife and breaks off in the hand; blunted to {BLUNT.foam:g} mm it stays (common practice, no "
    "source)",
    Severity.WARNING,
    may_be_empty=True,
)
def point_too_sharp(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every corner of every part; name the sharpest of each."""
    boards = {board.id: board for board in subject.design.boards}
    for part in subject.parts:
        wanted = least(BLUNT, boards[part.board])
        sharp = [one for one in points_of(part, wanted) if one.angle < SHARP - WHOLE and one.blunt < wanted - WHOLE]
        if not sharp:
            continue
        worst = min(sharp, key=lambda one: one.angle)
        x, y = worst.at
        cut = f", cut off only {say_length(worst.blunt)} wide" if worst.blunt > 0.0 else ""
        more = f" and {len(sharp) - 1} more like it" if len(sharp) > 1 else ""
        angle, limit = figures_apart(worst.angle, SHARP, 0)
        yield check.found(
            f"part {part.letter} ({part.name}) has a point of {angle}° ({x:.0f} mm across and {y:.0f} mm up){cut}"
            f"{more}; one under {limit}° is blunted to {say_length(wanted)} (common practice)",
            subject=part.id,
            hint=f"cut the point off where it is {say_length(wanted)} wide, or cut the part from card",
            place=part.place,
            value=worst.angle,
            limit=SHARP,
        )
    return len(subject.parts)
