"""A fact as a size on paper: how much of it is printed, how far the pencil moves its template, how many boards are in it.

A pasted part is cut as it is printed: ``s·w`` at the print scale s. A traced one is drawn with the pencil's allowance a, which
does not shrink with the paper: an outline ``s·(w − 2a) + 2a``, an opening ``s·(w + 2a) − 2a``; between two edges that the pencil
moves the same way, as between two centres, both allowances cancel: ``s·d``. Board comes on top as thick as it is.
"""

from publisher.basics import record
from publisher.design import Fact, Join
from publisher.geometry import Part
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.facts import bores_of, pockets_of
from publisher.joints.panels import Panel, inside_walls
from publisher.joints.stacks import StackReport

STANDS = {"base_that_stands": "base_stands", "base_that_does_not_tip": "base_holds"}
INSIDE = {"inside_width": 0, "inside_depth": 1}
LAYERED = ("height", "climb", "rise")


@record
class PaperSize:
    """A size: ``printed`` mm of it are on paper, drawn larger by ``grown`` mm, and ``boards`` thicknesses of ``board`` come on
    top (below zero: off it). ``part`` is whose ('' for an assembly), ``what`` says it in words. ``beside``: the height of
    panels, which matters only where something else is to be as high."""

    part: str
    what: str
    printed: float
    grown: float = 0.0
    boards: float = 0.0
    board: str = ""
    thickness: float = 0.0
    beside: bool = False
    untraced: tuple[tuple[str, float], ...] = ()  # as a meeting's


def untraced_lines(part: Part, lines: float) -> tuple[tuple[str, float], ...]:
    """Return what a meeting says of these lines of a part, which the pencil moves, where no allowance takes it back."""
    return () if part.trace_allowance > 0.0 or part.printed == "sizes" else ((part.id, lines),)


def size_on_paper(subject: Assembled, fact: Fact) -> PaperSize | None:
    """Return what a fact is on paper; None for one that is no single size there."""
    owner, _, name = fact.name.partition(".")
    part = next((p for p in subject.parts if p.id == owner), None)
    if part is not None:
        return _of_part(part, name, fact.value)
    panels = next((m for m in subject.panels if m.assembly.plan.name == owner), None)
    if panels is not None and panels.assembly.panels:
        return _of_panels(panels, owner, name, fact.value)
    report = next((r for r in subject.stacks if r.stack.name == owner), None)
    return None if report is None else _of_stack(report, subject.parts, owner, name, fact.value)


def _of_part(part: Part, name: str, value: float) -> PaperSize | None:
    whose, outline = f"of part {part.letter}", -2.0 * part.trace_allowance
    if name in ("width", "height"):
        return PaperSize(part.id, f"{name} {whose}", value, outline, untraced=untraced_lines(part, -2.0))
    if name == "thickness":
        return PaperSize(part.id, f"board {whose}", 0.0, 0.0, 1.0, part.board, part.thickness)
    if name == "slot_width":
        return PaperSize(part.id, f"slot {whose}", value, -outline, untraced=untraced_lines(part, 2.0))
    return _of_room(part, name, value)


def _of_room(part: Part, name: str, value: float) -> PaperSize | None:
    """Return what the size of an opening, a hole or a pocket is on paper."""
    whose, inside = f"of part {part.letter}", 2.0 * part.trace_allowance
    opening, _, measure = name.partition(".")
    hole = next((o for o in part.openings if o.name == opening), None)
    if hole is not None and measure in ("width", "height"):
        # a door's height runs from the outline, drawn higher, to its head, drawn higher by as much
        if measure == "height" and hole.sill <= 0.0:
            return PaperSize(part.id, f"{opening} {whose}", value)
        return PaperSize(part.id, f"{opening} {whose}", value, inside, untraced=untraced_lines(part, 2.0))
    if measure == "width" and opening in bores_of(part):
        return PaperSize(part.id, f"hole “{opening}” {whose}", value, inside, untraced=untraced_lines(part, 2.0))
    if measure == "width" and opening in pockets_of(part):  # its line is copied point by point: no pencil runs round it
        return PaperSize(part.id, f"pocket “{opening}” {whose}", value)
    return None


def _of_panels(mated: MatedPanels, owner: str, name: str, value: float) -> PaperSize | None:
    panels = mated.assembly.panels
    # an outline is drawn smaller by the allowance on both sides; of several parts the one with the least is the safe one
    own = min((panel.part for panel in panels), key=lambda part: part.trace_allowance)
    outline, untraced = -2.0 * own.trace_allowance, untraced_lines(own, -2.0)
    if name == "height":
        return PaperSize("", f"height of {owner}", value, outline, beside=True, untraced=untraced)
    if name not in INSIDE:
        return None
    walls = inside_walls(panels, INSIDE[name])
    boards = sum(_board_of_wall(wall, mated.assembly.plan.joins) for wall in walls)
    part = walls[0].part
    return PaperSize(
        "",
        f"room inside {owner}",
        value + boards * part.thickness,
        outline,
        -boards,
        part.board,
        part.thickness,
        untraced=untraced,
    )


def _board_of_wall(wall: Panel, joins: tuple[Join, ...]) -> float:
    """Return how much of a wall's thickness lies between the printed length of the panels beside it and the room inside.

    A panel that butts on the wall is as long as the room; one that runs past it is longer by the wall's thickness; slots for
    the wall's tabs are drawn about its middle.
    """
    for join in joins:
        if wall.name not in (join.a.panel, join.b.panel):
            continue
        if join.joint == "butt":
            return 0.0 if join.through == wall.name else 1.0
        if join.joint == "tab_and_slot":
            return 0.5 if join.tabs_on == wall.name else 0.0
        return 0.5 if join.joint == "cross_lap" else 1.0
    return 0.0


def _of_stack(report: StackReport, parts: tuple[Part, ...], owner: str, name: str, value: float) -> PaperSize | None:
    if name in STANDS:
        return _tread(report, parts, STANDS[name], value)
    boards = {part.board: part.thickness for part in parts for layer in report.stack.layers if layer.part == part.id}
    if name not in LAYERED or len(boards) != 1:
        return None
    ((board, thickness),) = boards.items()
    return PaperSize("", f"{name} of {owner}", 0.0, 0.0, round(value / thickness, 6), board, thickness)


def _tread(report: StackReport, parts: tuple[Part, ...], measure: str, value: float) -> PaperSize:
    """Return the narrowest tread. Where the next layer lies on it both its edges are outlines that the pencil moves the same way."""
    if not report.treads:
        return PaperSize("", "base", value)
    tread = min(report.treads, key=lambda t: float(getattr(t, measure)))
    part = next(p for p in parts if p.id == report.stack.layers[tread.layer].part)
    bare = tread.layer == len(report.stack.layers) - 1
    what = f"base on part {part.letter}"
    if not bare:
        return PaperSize(part.id, what, value)
    return PaperSize(part.id, what, value, -2.0 * part.trace_allowance, untraced=untraced_lines(part, -2.0))
