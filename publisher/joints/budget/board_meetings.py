"""Meetings of what is printed with board: slots of tabs, panels and ribs that cross, rabbets, strips round a tube."""

from collections.abc import Iterator
from dataclasses import replace
from math import hypot, pi

from publisher.design import Board, Join
from publisher.geometry import DrawnFor, Part
from publisher.joints.assembled import MatedPanels
from publisher.joints.budget.paper_sizes import untraced_lines
from publisher.joints.budget.scale_budget import GENERAL
from publisher.joints.facts import slot_width, slots_of
from publisher.joints.model import Meeting
from publisher.joints.panels import PANEL_TOUCH, PostFound

STEP_SHOWN = 0.5
"""mm: boards, or a stack of them, may stand this much higher or lower than what is beside them before the step shows.
Common practice, no source."""
SEAM_SHOWN = 1.0
"""mm: the ends of a strip round a tube may gape by this much, and filler closes it, or overlap, and the knife trims it.
Common practice, no source."""
SAME_THICKNESS = 1e-6  # mm
MOST_PLAY = 1.0
"""mm: twice the most that foam board is given (0.2 to 0.5 mm). Common practice, no source."""


def slot_meeting(name: str, slotted: Part, what: str, width: float, board: Board, join: Join | None = None) -> Meeting:
    """Return the meeting of a slot ``width`` mm wide with the board that goes into it.

    It goes in while the cut width is at least t + spread less what the board gives, and holds while it is at most
    t − spread + loosest. Where no join names a ``loosest`` it is what the thinnest board has at 100 % or, if that is more,
    what keeps the general band of print scale.
    """
    grown = 2.0 * slotted.trace_allowance
    thinnest = board.thickness - board.spread
    said = None if join is None else join.loosest
    most = kept_in_band(width, grown) if said is None else thinnest + said
    least = board.thickness + board.spread - board.squeeze
    place = slotted.place if join is None else join.place
    return Meeting(
        name, slotted.id, what, width, least, most, grown, "slot", place, board.id, board.thickness, board.spread, 1.0,
        untraced_lines(slotted, 2.0),
    )  # fmt: skip


def kept_in_band(width: float, grown: float) -> float:
    """Return the greatest width (mm) that is cut while the sheet keeps the general band of print scale."""
    return max(width, (1.0 + GENERAL) * (width + grown) - grown)


def of_panels(mated: MatedPanels, parts: dict[str, Part], boards: dict[str, Board]) -> Iterator[Meeting]:
    """Board in the slots of tabs and of panels that cross, and level with the panel that it is rabbeted into."""
    part_at = {p.name: p.part for p in mated.assembly.plan.places}
    for join in mated.assembly.plan.joins:
        one, other = parts.get(part_at.get(join.a.panel, "")), parts.get(part_at.get(join.b.panel, ""))
        if one is None or other is None:
            continue
        if join.at is not None:
            yield from _laps(join, one, other, boards)
        elif join.joint == "tab_and_slot":
            yield _tabs(join, one, other, boards[other.board])
        elif join.joint == "rabbet":
            yield _rabbet(join, one, boards[other.board])


def of_posts(mated: MatedPanels, boards: dict[str, Board]) -> Iterator[Meeting]:
    """The board and the edge of each post in the opening that takes its end; a post that is askew there has a finding."""
    for post in mated.posts:
        own, host = mated.assembly.panel(post.seat.panel), mated.assembly.panel(post.seat.host)
        if own is None or host is None or post.round is None or post.askew > PANEL_TOUCH:
            continue
        board = boards[own.part.board]
        yield (
            _round_post(post, own.part, host.part, board)
            if post.round
            else _board_of_post(post, own.part, host.part, board)
        )
        if not post.round:
            yield _edge_of_post(post, own.part, host.part)


def _whose(post: PostFound, host: Part) -> tuple[str, str]:
    """Return the name of a post's meeting, and the opening in words."""
    return f"{host.id}.{post.seat.opening}.{post.seat.panel}", f"opening of part {host.letter} for the"


def _board_of_post(post: PostFound, own: Part, host: Part, board: Board) -> Meeting:
    name, whose = _whose(post, host)
    met = slot_meeting(name, host, f"{whose} board of part {own.letter}", post.across, board)
    return replace(met, place=post.seat.place, opening=post.seat.opening)


def _edge_of_post(post: PostFound, own: Part, host: Part) -> Meeting:
    """Both the edge and its opening are printed; play is what they are apart."""
    name, whose = _whose(post, host)
    return Meeting(
        f"{name}.{post.seat.edge}", host.id, f"play of {whose} edge of part {own.letter}", post.along - post.wide, 0.0, MOST_PLAY,
        2.0 * (host.trace_allowance + own.trace_allowance), "fit", post.seat.place,
        untraced=(*untraced_lines(host, 2.0), *untraced_lines(own, 2.0)),
    )  # fmt: skip


def _round_post(post: PostFound, own: Part, host: Part, board: Board) -> Meeting:
    """A round opening d wide takes a post w wide and t thick from corner to corner: √(w² + t²), of which w shrinks with the paper
    too. Traced they are drawn d + 2a and w - 2b wide; what is left between both is taken straight, as it changes at true size."""
    name, whose = _whose(post, host)
    t, wide = board.thickness, post.wide
    corner = hypot(wide, t)
    changes = post.across + 2.0 * host.trace_allowance - wide / corner * (wide - 2.0 * own.trace_allowance)
    return Meeting(
        name, host.id, f"{whose} post, part {own.letter}, from corner to corner", post.across,
        hypot(wide, t + board.spread - board.squeeze), corner + MOST_PLAY, changes - post.across,
        "fit", post.seat.place, board.id, t, board.spread, t / corner,
        (*untraced_lines(host, 2.0), *untraced_lines(own, 2.0 * wide / corner)),
    )  # fmt: skip


def of_shape(part: Part, boards: dict[str, Board]) -> Iterator[Meeting]:
    """What the part's own shape meets: board in a rib's slots, the tube that a strip goes round."""
    for number, drawn in enumerate(part.drawn_for, 1):
        yield _seam(part, drawn, number, boards) if drawn.kind == "seam" else _ribs(part, drawn, number, boards)


def _tabs(join: Join, slotted: Part, tabbed: Part, board: Board) -> Meeting:
    wide = tabbed.thickness + join.play
    # the slot as it is cut: the closed one whose width is nearest to what the join asks for
    cut = [slot_width(slotted, slot) for slot in slots_of(slotted)] if join.inset > 0 else []
    printed = min(cut, key=lambda width: abs(width - wide), default=wide)
    what = f"slot of part {slotted.letter} for the tab of part {tabbed.letter}"
    return slot_meeting(f"{slotted.id}.slot.{tabbed.id}.{join.a.edge}", slotted, what, printed, board, join)


def _laps(join: Join, one: Part, other: Part, boards: dict[str, Board]) -> Iterator[Meeting]:
    """Each of two panels that cross is board in the other's slot."""
    for slotted, crossing, edge in ((one, other, join.a.edge), (other, one, join.b.edge)):
        what = f"slot of part {slotted.letter} in which part {crossing.letter} crosses it"
        width = crossing.thickness + join.play
        yield slot_meeting(f"{slotted.id}.lap.{crossing.id}.{edge}", slotted, what, width, boards[crossing.board], join)


def _rabbet(join: Join, part: Part, board: Board) -> Meeting:
    """The foam is cut away as wide as the other board is thick, from the outline, which is drawn smaller, to a copied mark."""
    return Meeting(
        f"{part.id}.rabbet.{join.a.edge}", part.id, f"rabbet of part {part.letter}", board.thickness,
        board.thickness + board.spread - STEP_SHOWN, board.thickness - board.spread + STEP_SHOWN,
        -part.trace_allowance, "level", join.place, board.id, board.thickness, board.spread, 1.0,
        untraced_lines(part, -1.0),
    )  # fmt: skip


def _ribs(part: Part, drawn: DrawnFor, number: int, boards: dict[str, Board]) -> Meeting:
    own = boards[part.board]
    every = (own, *boards.values())
    board = next((b for b in every if abs(b.thickness - drawn.thing) < SAME_THICKNESS), None)
    what = f"slot of part {part.letter} for the rib that crosses it"
    name = f"{part.id}.rib_slot.{number}"
    if board is not None:
        return slot_meeting(name, part, what, drawn.size, board)
    grown = 2.0 * part.trace_allowance  # board that this design does not cut: as thick as its shape says
    return Meeting(
        name, part.id, what, drawn.size, drawn.thing, kept_in_band(drawn.size, grown), grown, "slot", part.place,
        "crossing board", drawn.thing, untraced=untraced_lines(part, 2.0),
    )  # fmt: skip


def _seam(part: Part, drawn: DrawnFor, number: int, boards: dict[str, Board]) -> Meeting:
    """A strip keeps the length of its middle: thicker by 0.1 mm it has to be longer by π · 0.1 mm."""
    board = boards[part.board]
    spread = pi * board.spread
    return Meeting(
        f"{part.id}.seam.{number}", part.id, f"length of part {part.letter} round its tube", drawn.size,
        drawn.size + spread - SEAM_SHOWN, drawn.size - spread + SEAM_SHOWN,
        -2.0 * part.trace_allowance, "seam", part.place, board.id, board.thickness, board.spread, pi,
        untraced_lines(part, -2.0),
    )  # fmt: skip
