"""Meetings of printed sizes with things that do not shrink with the paper (trade notes, section 5).

A traced template's allowance is made so that the traced piece has the outline's size, so the sizes here are the finished
outline's, for tracing and for pasting alike.
"""

from publisher.design import Board, Join, say_length
from publisher.geometry import Part
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.facts import same_kind, slot_size, slots_of
from publisher.joints.model import Meeting

STANDS = ("base_that_stands", "base_that_does_not_tip")
INSIDE = ("inside_width", "inside_depth")

STEP = 0.5
"""mm: a stack of boards may stand this much higher or lower than the printed panels beside it before the step shows in a deck.
Common practice, no source."""


def meetings_of(subject: Assembled) -> tuple[Meeting, ...]:
    """Return every meeting once, joins first, then needs, in the order of the spec."""
    parts = {part.id: part for part in subject.parts}
    boards = {board.id: board for board in subject.design.boards}
    found: dict[str, Meeting] = {}
    for mated in subject.panels:
        for meeting in _slots(mated, parts, boards):
            found.setdefault(meeting.name, meeting)
    for meeting in _needs(subject, parts):
        found.setdefault(meeting.name, meeting)
    return tuple(found.values())


def _slots(mated: MatedPanels, parts: dict[str, Part], boards: dict[str, Board]) -> list[Meeting]:
    """Board in slots: goes in while s·w ≥ t + spread, holds while s·w ≤ t − spread + loosest."""
    part_at = {p.name: p.part for p in mated.assembly.plan.places}
    found: list[Meeting] = []
    for join in mated.assembly.plan.joins:
        if join.at is not None:
            found.extend(_laps(join, part_at, parts, boards))
            continue
        slotted, tabbed = parts.get(part_at.get(join.a.panel, "")), parts.get(part_at.get(join.b.panel, ""))
        if join.joint != "tab_and_slot" or slotted is None or tabbed is None:
            continue
        board = boards[tabbed.board]
        wide = tabbed.thickness + join.play
        # the slot as it is cut: the closed one whose width is nearest to what the join asks for
        cut = [slot_size(slot)[0] for slot in slots_of(slotted)] if join.inset > 0 else []
        printed = min(cut, key=lambda width: abs(width - wide), default=wide)
        found.append(
            Meeting(
                f"{slotted.id}.slot.{tabbed.id}.{join.a.edge}",
                slotted.id,
                f"slot of part {slotted.letter} for the tab of part {tabbed.letter}",
                printed,
                tabbed.thickness + board.spread,
                tabbed.thickness - board.spread + join.loosest,
            )
        )
    return found


def _laps(join: Join, part_at: dict[str, str], parts: dict[str, Part], boards: dict[str, Board]) -> list[Meeting]:
    """Each of two panels that cross is board in the other's slot: limits as for tabs."""
    found: list[Meeting] = []
    for own, other in ((join.a, join.b), (join.b, join.a)):
        slotted, crossing = parts.get(part_at.get(own.panel, "")), parts.get(part_at.get(other.panel, ""))
        if slotted is None or crossing is None:
            continue
        board = boards[crossing.board]
        found.append(
            Meeting(
                f"{slotted.id}.lap.{crossing.id}.{own.edge}",
                slotted.id,
                f"slot of part {slotted.letter} in which part {crossing.letter} crosses it",
                crossing.thickness + join.play,
                crossing.thickness + board.spread,
                crossing.thickness - board.spread + join.loosest,
            )
        )
    return found


def _needs(subject: Assembled, parts: dict[str, Part]) -> list[Meeting]:
    """Sizes on paper that a need holds against a figure base or another thing on the table."""
    found: list[Meeting] = []
    panelled = {mated.assembly.plan.name for mated in subject.panels}
    for need in subject.design.needs:
        fact = subject.fact(need.fact)
        if fact is None or need.at_least is None or not same_kind(need, fact) or fact.kind != "length":
            continue
        owner, _, name = need.fact.partition(".")
        limit = say_length(need.at_least)
        part = parts.get(owner)
        if name == "height" and owner in panelled:
            if (
                need.at_most is not None
            ):  # it is to be as high as something else: a stack of boards, another pack's deck
                what = f"height of {owner} beside what is {limit} high"
                found.append(Meeting(need.fact, "", what, fact.value, need.at_least - STEP, need.at_most + STEP))
        elif name in STANDS:
            tread = _tread_part(subject, owner)
            letter = parts[tread].letter if tread in parts else ""
            found.append(Meeting(need.fact, tread, f"base of {limit} on part {letter}", fact.value, need.at_least))
        elif part is not None and name.partition(".")[2] in ("width", "height"):
            what = f"{name.partition('.')[0]} of part {part.letter} for {limit}"
            found.append(Meeting(need.fact, part.id, what, fact.value, need.at_least))
        elif part is not None and name in ("width", "height"):
            what = f"{name} of part {part.letter} for {limit}"
            found.append(Meeting(need.fact, part.id, what, fact.value, need.at_least))
        elif name in INSIDE:
            found.append(Meeting(need.fact, "", f"room inside {owner} for {limit}", fact.value, need.at_least))
    return found


def _tread_part(subject: Assembled, stack: str) -> str:
    """Return the part whose tread is the narrowest of a stack."""
    report = next((r for r in subject.stacks if r.stack.name == stack), None)
    if report is None or not report.treads:
        return ""
    tread = min(report.treads, key=lambda t: t.base_stands)
    return report.stack.layers[tread.layer].part
