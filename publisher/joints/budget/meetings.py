"""Meetings of printed sizes with things that do not shrink with the paper (trade notes, section 5).

Sizes are those of the finished piece. A traced template is drawn with the pencil's allowance, which does not shrink with the
paper: an opening w wide is drawn w + 2a and cut s·(w + 2a) − 2a at the print scale s, an outline s·(w − 2a) + 2a.
"""

from publisher.basics import record
from publisher.basics.wording import say_length
from publisher.design import Board, Join
from publisher.geometry import Part
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.budget.scale_budget import GENERAL
from publisher.joints.facts import same_kind, slot_size, slots_of
from publisher.joints.model import Meeting

STANDS = ("base_that_stands", "base_that_does_not_tip")
INSIDE = ("inside_width", "inside_depth")

DECK_STEP_SHOWN = 0.5
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


def slot_meeting(name: str, slotted: Part, what: str, width: float, board: Board, join: Join) -> Meeting:
    """Return the meeting of a slot ``width`` mm wide with the board that goes into it.

    It goes in while the cut width is at least t + spread less what the board gives, and holds while it is at most
    t − spread + loosest. Where the join names no ``loosest`` it is what the thinnest board has at 100 % or, if that is more,
    what keeps the general band of print scale.
    """
    grown = 2.0 * slotted.trace_allowance
    thinnest = board.thickness - board.spread
    widest = (1.0 + GENERAL) * (width + grown) - grown
    most = max(width, widest) if join.loosest is None else thinnest + join.loosest
    least = board.thickness + board.spread - board.squeeze
    return Meeting(
        name, slotted.id, what, width, least, most, grown, "slot", join.place, board.id, board.thickness
    )  # fmt: skip


def _slots(mated: MatedPanels, parts: dict[str, Part], boards: dict[str, Board]) -> list[Meeting]:
    """Board in the slots of tabs, and of panels that cross."""
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
        what = f"slot of part {slotted.letter} for the tab of part {tabbed.letter}"
        found.append(slot_meeting(f"{slotted.id}.slot.{tabbed.id}.{join.a.edge}", slotted, what, printed, board, join))
    return found


def _laps(join: Join, part_at: dict[str, str], parts: dict[str, Part], boards: dict[str, Board]) -> list[Meeting]:
    """Each of two panels that cross is board in the other's slot."""
    found: list[Meeting] = []
    for own, other in ((join.a, join.b), (join.b, join.a)):
        slotted, crossing = parts.get(part_at.get(own.panel, "")), parts.get(part_at.get(other.panel, ""))
        if slotted is None or crossing is None:
            continue
        what = f"slot of part {slotted.letter} in which part {crossing.letter} crosses it"
        width = crossing.thickness + join.play
        name = f"{slotted.id}.lap.{crossing.id}.{own.edge}"
        found.append(slot_meeting(name, slotted, what, width, boards[crossing.board], join))
    return found


def _needs(subject: Assembled, parts: dict[str, Part]) -> list[Meeting]:
    """Sizes on paper that a need holds against a figure base or another thing on the table."""
    found: list[Meeting] = []
    for need in subject.design.needs:
        fact = subject.fact(need.fact)
        if fact is None or need.at_least is None or not same_kind(need, fact) or fact.kind != "length":
            continue
        meets = _meets(subject, parts, need.fact, say_length(need.at_least), need.at_most is not None)
        if meets is None:
            continue
        most = need.at_most + DECK_STEP_SHOWN if meets.beside and need.at_most is not None else None
        least = need.at_least - DECK_STEP_SHOWN if meets.beside else need.at_least
        found.append(Meeting(need.fact, meets.part, meets.what, fact.value, least, most, meets.grown, place=need.place))
    return found


@record
class _Meets:
    """What a need's fact is on paper: the part (or ''), words for both, mm that the template is drawn larger. ``beside``: it is to
    be as high as something else, a stack of boards or another pack's deck."""

    part: str
    what: str
    grown: float
    beside: bool = False


def _meets(subject: Assembled, parts: dict[str, Part], fact: str, limit: str, bounded: bool) -> _Meets | None:
    """Return what a fact meets; None when it does not stand on paper as one size."""
    owner, _, name = fact.partition(".")
    panels = [m.assembly.panels for m in subject.panels if m.assembly.plan.name == owner]
    # an outline is drawn smaller by the allowance on both sides; of several parts the one with the least is the safe one
    outline = -2.0 * min((placed.part.trace_allowance for placed in panels[0]), default=0.0) if panels else 0.0
    if name == "height" and panels:
        return _Meets("", f"height of {owner} beside what is {limit} high", outline, True) if bounded else None
    if name in INSIDE:
        return _Meets("", f"room inside {owner} for {limit}", outline)
    if name in STANDS:
        return _base(parts.get(_tread_part(subject, owner)), limit)
    return _on_part(parts[owner], name, limit) if owner in parts else None


def _base(tread: Part | None, limit: str) -> _Meets:
    """Return what stands on a tread meets; ``tread`` is the part that has it, None when no layer has one."""
    if tread is None:
        return _Meets("", f"base of {limit}", 0.0)
    return _Meets(tread.id, f"base of {limit} on part {tread.letter}", -2.0 * tread.trace_allowance)


def _on_part(part: Part, name: str, limit: str) -> _Meets | None:
    """Return what a size of a part or of one of its openings meets; None for another fact."""
    opening, _, measure = name.partition(".")
    if measure in ("width", "height"):
        hole = next(o for o in part.openings if o.name == opening)
        # a door's height runs from the outline, drawn higher, to its head, drawn higher by as much
        grown = 0.0 if measure == "height" and hole.sill <= 0.0 else 2.0 * part.trace_allowance
        return _Meets(part.id, f"{opening} of part {part.letter} for {limit}", grown)
    if name in ("width", "height"):
        return _Meets(part.id, f"{name} of part {part.letter} for {limit}", -2.0 * part.trace_allowance)
    return None


def _tread_part(subject: Assembled, stack: str) -> str:
    """Return the part whose tread is the narrowest of a stack."""
    report = next((r for r in subject.stacks if r.stack.name == stack), None)
    if report is None or not report.treads:
        return ""
    tread = min(report.treads, key=lambda t: t.base_stands)
    return report.stack.layers[tread.layer].part
