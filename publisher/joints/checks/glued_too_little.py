"""Layers, panels on faces, and things on things, that lie on each other by a sliver."""

import shapely

from publisher.basics import Check, Finding, Findings, Severity, checked, record
from publisher.basics.wording import lengths_apart, rounded_up, shares_apart
from publisher.design import Board, PartPlan
from publisher.geometry import Part, polygon
from publisher.joints.assembled import Assembled
from publisher.joints.checks.layers_do_not_touch import LEAST
from publisher.joints.least_sizes import GLUED_SHARE, GLUED_STRIP, PAPERED, THICKNESS, least
from publisher.joints.outlines import widest_strip
from publisher.joints.panels import BARE, PanelAssembly, Seating
from publisher.joints.stacks import StackReport
from publisher.joints.wholes import Bearing, bearings_of

ALL = 0.99
"""Share of the smaller layer: one that lies on the other as a whole is as well glued as it can be."""

HOLLOW_SHAPE, HOLLOW_SIZE = "hill", "lap"
"""The shape, and the size of it by which its hollow layers reach under the next one."""

LAP_STEP, MOST_LAP = 0.5, 1000.0  # mm

SAME_SHARE, SAME_STRIP = 1e-6, 0.01
"""A share, and a strip in mm, that are less than this apart are the same."""


@checked(
    "joints/glued-too-little",
    f"Broad faces are glued over {GLUED_SHARE:.0%} of the smaller one, and a strip that holds",
    f"what is held by a sliver breaks off with the first figure on it: a strip of {GLUED_STRIP.foam:g} mm holds "
    f"in bare board up to {THICKNESS:g} mm, wider in thicker board, {PAPERED:g} of it with paper (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def glued_too_little(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at the share and the width of the contact of every layer that is glued to the one below, naming the worst of a stack,
    at the width of what every panel touches that lies on a face, and at both between things, glued or not."""
    boards = {board.id: board for board in subject.design.boards}
    parts = {part.id: part for part in subject.parts}
    looked_at = 0
    for report in subject.wholes:
        looked_at += yield from _of_stack(report, parts, boards, subject.design.parts, check)
    faces = [(m.assembly, s) for m in subject.panels for s in m.seatings if not s.seat.edge]
    looked_at += len(faces)
    yield from [
        finding for assembly, seating in faces if (finding := _on_a_face(seating, assembly, subject, check)) is not None
    ]
    for whole in subject.things:
        for bearing in bearings_of(whole):
            looked_at += 1
            found = _between_things(bearing, subject, whole.plan.name, check)
            if found is not None:
                yield found
    return looked_at


def _of_stack(
    report: StackReport,
    parts: dict[str, Part],
    boards: dict[str, Board],
    plans: tuple[PartPlan, ...],
    check: Check[Assembled],
) -> Findings:
    """Find the layer of a stack that is glued to the least of what it should be."""
    layers, loose = report.stack.layers, report.stack.loose
    # what is loose is not glued, and what hardly touches is found as hanging in the air
    glued = [k for k in range(len(layers) - 1) if k + 1 not in loose and report.plan.contact(k).area >= LEAST]
    slivers = [(_sliver(report, k, boards[parts[layers[k + 1].part].board]), k) for k in glued]
    worst, under = min(
        ((one, k) for one, k in slivers if one is not None), key=lambda one: one[0].share, default=(None, 0)
    )
    if worst is not None:
        lap = _lap_hint(report, under, boards[parts[layers[under + 1].part].board], plans)
        yield check.found(
            worst.words,
            subject=report.stack.name,
            hint=lap or "make the turn or shift smaller, the layers wider, or say at: centre",
            place=report.place,
            value=worst.value,
            limit=worst.limit,
        )
    return len(glued)


def _lap_hint(report: StackReport, under: int, board: Board, plans: tuple[PartPlan, ...]) -> str:
    """Say how wide the lap of a hollow layer must be by which it reaches under the next one; '' where it has none."""
    layers, outlines = report.stack.layers, report.plan.outlines
    plan = next((plan for plan in plans if plan.id == layers[under].part), None)
    lap = next((one.value for one in plan.parameters if one.name == HOLLOW_SIZE), 0.0) if plan is not None else 0.0
    if plan is None or plan.shape != HOLLOW_SHAPE or not isinstance(lap, float) or lap <= 0.0:
        return ""
    wanted = max(least(GLUED_STRIP, board), lap)
    while wanted < MOST_LAP and _share_with(outlines[layers[under + 1].part], lap, wanted) < GLUED_SHARE:
        wanted += LAP_STEP
    name = plan.family.name if plan.family else plan.id
    return f"make the lap of {name} {rounded_up(wanted, 1):g} mm or more: so far its hollow layers reach under the next one"


def _share_with(upper: shapely.Geometry, lap: float, wider: float) -> float:
    """Return which share of a layer the one below touches with a ``wider`` lap; what is hollow in the layer gets as much smaller."""
    whole = shapely.union_all([shapely.Polygon(piece.exterior) for piece in shapely.get_parts(upper)])
    hollow = shapely.buffer(shapely.difference(whole, upper), lap - wider)
    return float((whole.area - shapely.buffer(whole, -wider).area) / max(whole.area - hollow.area, 1e-9))


@record
class Sliver:
    """What is glued to too little of what carries it: the ``share`` that it has of what holds, and in words what it has; the
    ``value`` and its ``limit`` are shares of the smaller face, or widths of a strip in mm."""

    share: float
    words: str
    value: float
    limit: float


def _sliver(report: StackReport, under: int, board: Board) -> Sliver | None:
    """Return by how little the layer on layer ``under`` is glued to it; None where it holds."""
    lower, upper = report.stack.layers[under], report.stack.layers[under + 1]
    plan, on = report.plan, f"layer {upper.number} ({upper.part}) lies on layer {lower.number} ({lower.part})"
    share = plan.contact(under).share
    if share >= ALL:
        return None
    if (sliver := _share_of(share, on, "the smaller of them")) is not None:
        return sliver
    own = (widest_strip(plan.outlines[part]) for part in (lower.part, upper.part))
    return _strip_of(plan.strip(under), min(least(GLUED_STRIP, board), *own), on)


def _share_of(share: float, on: str, smaller: str) -> Sliver | None:
    """Return by how little of the ``smaller`` one it touches, or None where that share of it holds."""
    if share >= GLUED_SHARE - SAME_SHARE:
        return None
    has, holds = shares_apart(share, GLUED_SHARE)
    return Sliver(
        share / GLUED_SHARE, f"{on} with {has} of {smaller}; {holds} hold (common practice)", share, GLUED_SHARE
    )


def _strip_of(strip: float, wanted: float, on: str) -> Sliver | None:
    """Return by how narrow a strip (mm) it touches, or None where that holds."""
    if strip >= wanted - SAME_STRIP:
        return None
    has, holds = lengths_apart(strip, wanted)
    said = f"{on} with a strip {has} wide; {holds} hold (common practice)"
    return Sliver(strip / wanted, said, strip, wanted)


def _on_a_face(
    seating: Seating, assembly: PanelAssembly, subject: Assembled, check: Check[Assembled]
) -> Finding | None:
    """Find a panel that touches a face, on a quarter of its own or more, with strips alone; less than that is another finding.
    One that is narrow itself is held by what it has."""
    share = seating.glued.area / max(seating.area, 1e-9)
    panel = assembly.panel(seating.seat.panel)
    if panel is None or not GLUED_SHARE <= share < ALL:
        return None
    own = widest_strip(polygon(panel.part.outline))
    wanted = min(least(GLUED_STRIP, subject.design.board(panel.part.board)), own)
    seat = seating.seat
    sliver = _strip_of(widest_strip(seating.glued), wanted, f"{seat.panel} lies on {seat.host}")
    if sliver is None:
        return None
    return check.found(
        sliver.words,
        subject=assembly.plan.name,
        hint="move it off the opening, or make it wider",
        place=seat.place,
        value=sliver.value,
        limit=sliver.limit,
    )


def _between_things(bearing: Bearing, subject: Assembled, whole: str, check: Check[Assembled]) -> Finding | None:
    """Find a thing whose broad face lies on another with too little, or whose edges do where no broad face does.

    What several things carry shares its weight among them, and what lifts off is not glued: there a strip is enough, and edges
    of any width."""
    one = bearing.thing.thing
    sliver = _of_broad(bearing, subject) if bearing.broad.area > LEAST else _of_edges(bearing)
    if sliver is None:
        return None
    hint = "move it by at: [across, deep] so that more of it lies there, or make one of both wider"
    return check.found(sliver.words, subject=whole, hint=hint, place=one.place, value=sliver.value, limit=sliver.limit)


def _of_broad(bearing: Bearing, subject: Assembled) -> Sliver | None:
    """Return by how little of its broad face a thing lies on another, as layers do; None where it holds."""
    one, share = bearing.thing.thing, bearing.broad.area / max(bearing.smaller.area, 1e-9)
    on = f"{one.name} lies on {bearing.on.thing.name}"
    if share >= ALL:
        return None
    alone = len(one.on) == 1 and not one.lifts_off
    if alone and (sliver := _share_of(share, on, "the smaller face")) is not None:
        return sliver
    boards = [subject.design.board(panel.part.board) for panel in bearing.thing.panels]
    wanted = min(widest_strip(bearing.smaller), *(least(GLUED_STRIP, board) for board in boards))
    return _strip_of(widest_strip(bearing.broad), wanted, on)


def _of_edges(bearing: Bearing) -> Sliver | None:
    """Return by how little of their thickness the edges of a thing that is glued touch another; None where they hold."""
    one, strip, wanted = bearing.thing.thing, widest_strip(bearing.thin), bearing.board - BARE
    if bearing.thin.area <= LEAST or one.lifts_off or strip >= wanted - SAME_STRIP:
        return None
    has, holds = lengths_apart(strip, wanted)
    words = (
        f"{one.name} lies on {bearing.on.thing.name} with {has} of the thickness of its edges; "
        f"{holds}, a board less a fillet of glue, hold (common practice)"
    )
    return Sliver(strip / wanted, words, strip, wanted)
