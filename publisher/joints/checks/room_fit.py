"""Rooms and what goes into them, and strips round a tube: at true size and at the ends of the general band of print scale."""

from publisher.basics import Check, Finding, Findings, Severity, checked
from publisher.basics.wording import figures_apart
from publisher.joints.assembled import Assembled
from publisher.joints.budget import GENERAL, SEAM_SHOWN, size_on_paper
from publisher.joints.checks.slot_fit import OFF_AT_HOME, PLAY_DUST, each_meeting, twentieth_up
from publisher.joints.facts import nearest_fact
from publisher.joints.model import Meeting
from publisher.joints.wholes import LIFT_PLAY

LAP_OF_STRIP = 8.0
"""mm of a strip round a tube that lie over each other: enough for glue. An assumption."""


def _at_limits(met: Meeting, check: Check[Assembled]) -> Finding | None:
    """Judge a room, or a strip round a tube, at both ends of the general band."""
    percent = 100.0 * GENERAL
    small, large = met.cut_at(1.0 - GENERAL), met.cut_at(1.0 + GENERAL)
    if met.printed < met.unprinted_least - PLAY_DUST:
        return None  # told by another check
    if small < met.unprinted_least - PLAY_DUST:
        scale, size, limit, word = 100.0 - percent, small, met.unprinted_least, "at least"
        hint = f"make it {twentieth_up(limit - small):.2f} mm larger, so that any print within ±{percent:.1f} % will do"
    elif met.loosest is not None and met.printed <= met.loosest + PLAY_DUST < large:
        scale, size, limit, word = 100.0 + percent, large, met.loosest, "at most"
        more = twentieth_up(large - limit)
        hint = f"make it smaller or its loosest {more:.2f} mm larger, so that any print within ±{percent:.1f} % will do"
    else:
        return None
    if met.kind == "seam":  # it goes by the tube, and what is longer gapes no less at the other end
        hint = f"give it a lap, such as lap: {LAP_OF_STRIP:g} mm, under which its ends need not meet"
    has, needed = _shown(met, size, limit)
    return check.found(
        f"the {met.what} fits only when it prints nearly at 100 %: at {scale:.1f} % it {has} mm, {word} {needed} mm is needed",
        subject=met.part,
        hint=hint,
        place=met.place,
        value=size,
        limit=limit,
    )


def _shown(met: Meeting, size: float, limit: float) -> tuple[str, str]:
    """Return in words what a size is, and its limit as it is compared: between two printed sizes both without the board, as play."""
    board = met.boards * met.thickness if met.between else 0.0
    has, needed = figures_apart(size - board, limit - board, 2)
    return f"leaves a play of {has}" if met.between else f"is {has}", needed


def _does_not_go_in(room: Meeting, check: Check[Assembled]) -> Finding | None:
    if room.printed >= room.unprinted_least - PLAY_DUST:
        return None
    has, needed = _shown(room, room.printed, room.unprinted_least)
    return check.found(
        f"the {room.what} {has} mm; {needed} mm is needed, with spread and paint",
        subject=room.part,
        hint=f"make the room {twentieth_up(room.unprinted_least - room.printed):.2f} mm wider, or what goes in smaller",
        place=room.place,
        value=room.printed,
        limit=room.unprinted_least,
    )


def _too_loose(room: Meeting, check: Check[Assembled]) -> Finding | None:
    if room.loosest is None or room.printed <= room.loosest + PLAY_DUST:
        return None
    has, holds = _shown(room, room.printed, room.loosest)
    return check.found(
        f"the {room.what} {has} mm; at most {holds} mm holds",
        subject=room.part,
        hint=f"make the room {twentieth_up(room.printed - room.loosest):.2f} mm narrower"
        + (", or say a larger “loosest”" if room.name.startswith("fit.") else ""),
        place=room.place,
        value=room.printed,
        limit=room.loosest,
    )


def _gapes(strip: Meeting, check: Check[Assembled]) -> Finding | None:
    if strip.printed >= strip.unprinted_least - PLAY_DUST:
        return None
    gape, closed = figures_apart(strip.unprinted_least + SEAM_SHOWN - strip.printed, SEAM_SHOWN, 2)
    return check.found(
        f"the {strip.what} is {strip.printed:.2f} mm; with the thickest {strip.board} its ends gape by {gape} mm, more than "
        f"{closed} mm",
        subject=strip.part,
        hint="use thinner board or card, give the strip a lap, or measure the board again and write a smaller thickness_spread",
        place=strip.place,
        value=strip.printed,
        limit=strip.unprinted_least,
    )


@checked(
    "joints/fit-unknown",
    "A fit names rooms and things that there are",
    "a fit that names no size on paper is never judged",
    may_be_empty=True,
)
def no_such_room(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold the facts that fits name against those that there are, and that stand on paper as one size."""
    for fit in subject.design.fits:
        for name in (fit.into, fit.goes_fact):
            fact = subject.fact(name)
            if not name or (fact is not None and fact.kind == "length" and size_on_paper(subject, fact) is not None):
                continue
            near = nearest_fact(name, subject.facts)
            if fact is None:
                what = f"there is no fact “{name}”"
                hint = f"did you mean “{near}”?" if near else "“publisher check --facts” lists them all"
            else:
                what = f"“{name}” is no width on paper that a thing could go into or have"
                hint = "name the width or height of a part, an opening or a hole, the thickness of a part, or the room inside walls"
            yield check.found(what, subject=f"fit {fit.into}", hint=hint, place=fit.place)
    return len(subject.design.fits)


DOES_NOT_GO_IN = checked(
    "joints/does-not-go-in",
    "What goes into a room goes in, with its spread and with paint",
    "a dowel thicker than its hole, or a lid that took paint, is found when all is cut and painted; what lifts off needs "
    f"{LIFT_PLAY:g} mm, and the spread of each board that narrows its room, where nobody says a fit (common practice, no source)",
    may_be_empty=True,
)(each_meeting(_does_not_go_in, "fit"))
TOO_LOOSE = checked(
    "joints/goes-in-too-loosely",
    "What goes into a room is held there",
    "a dowel that wobbles in its hole leans, whatever glue is used",
    may_be_empty=True,
)(each_meeting(_too_loose, "fit"))
GAPES = checked(
    "joints/seam-gapes",
    "A strip of the thickest board goes round its tube",
    f"a strip keeps the length of its middle, so thicker board leaves its ends apart; filler closes {SEAM_SHOWN:g} mm "
    "(common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)(each_meeting(_gapes, "seam"))
AT_LIMITS = checked(
    "joints/fit-at-print-limits",
    "A room takes and holds what goes into it at every print scale that is generally allowed",
    OFF_AT_HOME,
    Severity.WARNING,
    may_be_empty=True,
)(each_meeting(_at_limits, "fit", "seam"))
