"""Slots and the board that goes into them: at true size, at the ends of the general band of print scale, and beyond all use."""

from collections.abc import Callable
from dataclasses import replace
from math import ceil, inf

from publisher.basics import Check, Cure, Finding, Findings, Severity, checked
from publisher.basics.wording import figures_apart
from publisher.joints.assembled import Assembled
from publisher.joints.budget import GENERAL, MOST_PLAY
from publisher.joints.model import Meeting

PLAY_DUST = 1e-9

OFF_AT_HOME = (
    f"a home printer is off by up to {100 * GENERAL:g} % and a ruler cannot see it; "
    "a design that needs more narrows its own range"
)

MeetingJudge = Callable[[Meeting, Check[Assembled]], Finding | None]


def each_meeting(look: MeetingJudge, *kinds: str) -> Callable[[Assembled, Check[Assembled]], Findings]:
    """Return the test of a check that looks at every meeting of these kinds."""

    def test(subject: Assembled, check: Check[Assembled]) -> Findings:
        meetings = [meeting for meeting in subject.meetings if meeting.kind in kinds]
        for meeting in meetings:
            if (found := look(meeting, check)) is not None:
                yield _in_all(subject, meeting, found)
        return len(meetings)

    return test


def least_play(slot: Meeting) -> float:
    """Return the play (mm, a twentieth up) with which the thickest board goes in at the least print scale of the general band."""
    width = (slot.unprinted_least + slot.grown) / (1.0 - GENERAL) - slot.grown
    return twentieth_up(width - slot.thickness)


def _more_play(slot: Meeting) -> Cure | None:
    """Return the play that a hint names, as words of the spec."""
    if slot.place is None or slot.opening:
        return None
    return Cure((slot.place,), "play", f"{least_play(slot):.2f} mm")


def _wider(slot: Meeting) -> str:
    """Return what makes a slot wide enough: its play, or the size of the opening that takes a post, which has none."""
    if slot.opening:
        return f"make the opening {slot.opening} {least_play(slot) + slot.thickness:.2f} mm or more across the board of the post"
    return f"make its play {least_play(slot):.2f} mm or more"


def _in_all(subject: Assembled, slot: Meeting, finding: Finding) -> Finding:
    """Return a finding whose cure is written into all joins that give the part such slots: it is cut the same wherever it stands."""
    if finding.cure is None:
        return finding
    joins = [(panels, join) for panels in subject.design.panels for join in panels.joins]
    own = next((join for _, join in joins if join.place == slot.place), None)
    if own is None:
        return finding
    alike = dict.fromkeys(
        join.place
        for panels, join in joins
        if (join.joint, join.play) == (own.joint, own.play)
        and any(one.part == slot.part and one.name in (join.a.panel, join.b.panel) for one in panels.places)
    )
    if len(alike) < 2:
        return finding
    cure = replace(finding.cure, places=tuple(alike))
    return replace(finding, cure=cure, hint=f"{finding.hint} (in all {len(alike)} joins of this part that are made so)")


def twentieth_up(length: float) -> float:
    """Return a length (mm) rounded up to a twentieth."""
    return ceil(length * 20.0 - PLAY_DUST) / 20.0


def _too_narrow(slot: Meeting, check: Check[Assembled]) -> Finding | None:
    if slot.printed >= slot.unprinted_least - PLAY_DUST:
        return None
    wide, needed = figures_apart(slot.printed, slot.unprinted_least, 2)
    return check.found(
        f"the {slot.what} is {wide} mm wide; the thickest {slot.board} needs {needed} mm "
        f"(measured {slot.thickness:.2f} mm, with its spread)",
        subject=slot.part,
        hint=f"{_wider(slot)}, or measure the board again and write a smaller thickness_spread",
        cure=_more_play(slot),
        place=slot.place,
        value=slot.printed,
        limit=slot.unprinted_least,
    )


def _too_wide(slot: Meeting, check: Check[Assembled]) -> Finding | None:
    if (
        slot.loosest is None
        or slot.printed <= slot.loosest + PLAY_DUST
        or slot.printed < slot.unprinted_least - PLAY_DUST
    ):
        return None
    thinnest = slot.thickness - slot.spread
    enough = twentieth_up(slot.cut_at(1.0 + GENERAL) - thinnest)
    wide, holds = figures_apart(slot.printed, slot.loosest, 2)
    return check.found(
        f"the {slot.what} is {wide} mm wide; it holds the thinnest {slot.board} up to {holds} mm "
        f"({thinnest:.2f} mm and what its “loosest” says)",
        subject=slot.part,
        hint=f"make its loosest {enough:.2f} mm or more, if so much play holds; else measure the board again and write a smaller "
        "thickness_spread",
        place=slot.place,
        value=slot.printed,
        limit=slot.loosest,
    )


def _at_limits(slot: Meeting, check: Check[Assembled]) -> Finding | None:
    small, large = slot.cut_at(1.0 - GENERAL), slot.cut_at(1.0 + GENERAL)
    percent = 100.0 * GENERAL
    if slot.printed < slot.unprinted_least - PLAY_DUST or (slot.loosest or inf) + PLAY_DUST < slot.printed:
        return None  # told by the checks before
    if small < slot.unprinted_least - PLAY_DUST:
        wide, needed = figures_apart(small, slot.unprinted_least, 2)
        return check.found(
            f"the {slot.what} takes the thickest {slot.board} only when it prints nearly at 100 %: at {100 - percent:.1f} % it is "
            f"{wide} mm wide, {needed} mm is needed",
            subject=slot.part,
            hint=f"{_wider(slot)}, so that any print within ±{percent:.1f} % will do",
            cure=_more_play(slot),
            place=slot.place,
            value=small,
            limit=slot.unprinted_least,
        )
    if slot.loosest is not None and large > slot.loosest + PLAY_DUST:
        more = twentieth_up(large - slot.loosest)
        wide, holds = figures_apart(large, slot.loosest, 2)
        return check.found(
            f"the {slot.what} no longer holds the thinnest {slot.board} when it prints at {100 + percent:.1f} %: it is {wide} mm "
            f"wide, at most {holds} mm holds",
            subject=slot.part,
            hint=f"make its play smaller or its loosest {more:.2f} mm larger, so that any print within ±{percent:.1f} % will do",
            place=slot.place,
            value=large,
            limit=slot.loosest,
        )
    return None


def _beyond_use(slot: Meeting, check: Check[Assembled]) -> Finding | None:
    play = slot.printed - slot.thickness
    if play <= MOST_PLAY + PLAY_DUST:
        return None
    has, most = figures_apart(play, MOST_PLAY, 2)
    return check.found(
        f"the {slot.what} has a play of {has} mm; 0.2 to 0.5 mm is usual, and more than {most} mm holds nothing",
        subject=slot.part,
        hint=f"make the opening {slot.opening} 0.2 to 0.5 mm wider than the board"
        if slot.opening
        else "give it a play of 0.2 to 0.5 mm",
        place=slot.place,
        value=play,
        limit=MOST_PLAY,
    )


TOO_NARROW = checked(
    "joints/slot-too-narrow",
    "A slot takes the thickest board",
    "board is not nominal: a slot narrower than the thickest board of its kind cannot be put together at all",
    may_be_empty=True,
)(each_meeting(_too_narrow, "slot"))
TOO_WIDE = checked(
    "joints/slot-too-wide",
    "A slot holds the thinnest board",
    "a slot that is wider than the thinnest board and the most play that holds it is loose on every sheet that prints true",
    may_be_empty=True,
)(each_meeting(_too_wide, "slot"))
AT_LIMITS = checked(
    "joints/slot-at-print-limits",
    "A slot fits at every print scale that is generally allowed",
    OFF_AT_HOME,
    Severity.WARNING,
    may_be_empty=True,
)(each_meeting(_at_limits, "slot"))
BEYOND_USE = checked(
    "joints/slot-play-beyond-use",
    "A slot holds its board",
    f"with more than {MOST_PLAY:g} mm of play glue has nothing to bridge and the panel leans (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)(each_meeting(_beyond_use, "slot"))
