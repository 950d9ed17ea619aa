"""Layers, panels on faces, and things on things, that lie on each other by a sliver."""

from publisher.basics import Check, Finding, Findings, Severity, checked, record
from publisher.basics.wording import lengths_apart, shares_apart
from publisher.design import Board
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
        looked_at += yield from _of_stack(report, parts, boards, check)
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
    report: StackReport, parts: dict[str, Part], boards: dict[str, Board], check: Check[Assembled]
) -> Findings:
    """Find the layer of a stack that is glued to the least of what it should be."""
    layers, loose = report.stack.layers, report.stack.loose
    # what is loose is not glued, and what hardly touches is found as hanging in the air
    glued = [k for k in range(len(layers) - 1) if k + 1 not in loose and report.plan.contact(k).area >= LEAST]
    slivers = [_sliver(report, k, boards[parts[layers[k + 1].part].board]) for k in glued]
    worst = min((one for one in slivers if one is not None), key=lambda one: one.share, default=None)
    if worst is not None:
        yield check.found(
            worst.words,
            subject=report.stack.name,
            hint="make the turn or shift smaller, the layers wider, or say at: centre",
            place=report.place,
            value=worst.value,
            limit=worst.limit,
        )
    return len(glued)


@record
class Sliver:
    """A layer that is glued to too little of the one below: the ``share`` that it has of what holds, and in words what it has."""

    share: float
    words: str
    value: float
    limit: float


def _sliver(report: StackReport, under: int, board: Board) -> Sliver | None:
    """Return by how little the layer on layer ``under`` is glued to it; None where it holds."""
    lower, upper = report.stack.layers[under], report.stack.layers[under + 1]
    share = report.plan.contact(under).share
    if share >= ALL:
        return None
    on = f"layer {upper.number} ({upper.part}) lies on layer {lower.number} ({lower.part})"
    if share < GLUED_SHARE - 1e-6:
        has, holds = shares_apart(share, GLUED_SHARE)
        words = f"{on} with {has} of the smaller of them; {holds} hold (common practice)"
        return Sliver(share / GLUED_SHARE, words, share, GLUED_SHARE)
    strip, wanted = report.plan.strip(under), least(GLUED_STRIP, board)
    if strip >= wanted - 0.01:
        return None
    has, holds = lengths_apart(strip, wanted)
    words = f"{on} with a strip {has} wide; {holds} hold (common practice)"
    return Sliver(strip / wanted, words, strip, wanted)


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
    strip = widest_strip(seating.glued)
    if strip >= wanted - 0.01:
        return None
    seat, (has, holds) = seating.seat, lengths_apart(strip, wanted)
    return check.found(
        f"{seat.panel} lies on {seat.host} with a strip {has} wide; {holds} hold (common practice)",
        subject=assembly.plan.name,
        hint="move it off the opening, or make it wider",
        place=seat.place,
        value=strip,
        limit=wanted,
    )


def _between_things(bearing: Bearing, subject: Assembled, whole: str, check: Check[Assembled]) -> Finding | None:
    """Find a thing whose broad face lies on another with too little, or whose edges do where no broad face does.

    What several things carry shares its weight among them, and what lifts off is not glued: there a strip is enough, and edges
    of any width."""
    one = bearing.thing.thing
    said = f"{one.name} lies on {bearing.on.thing.name}"
    if bearing.broad.area > LEAST:
        share = bearing.broad.area / max(bearing.smaller.area, 1e-9)
        strip, own = widest_strip(bearing.broad), widest_strip(bearing.smaller)
        boards = [subject.design.board(panel.part.board) for panel in bearing.thing.panels]
        wanted = min(own, *(least(GLUED_STRIP, board) for board in boards))
        if share >= ALL:
            return None
        if share < GLUED_SHARE - 1e-6 and len(one.on) == 1 and not one.lifts_off:
            value, limit = share, GLUED_SHARE
            has, holds = shares_apart(value, limit)
            what = f"{said} with {has} of the smaller face; {holds} hold (common practice)"
        else:
            value, limit = strip, wanted
            has, holds = lengths_apart(value, limit)
            what = f"{said} with a strip {has} wide; {holds} hold (common practice)"
    elif bearing.thin.area > LEAST and not one.lifts_off:
        value, limit = widest_strip(bearing.thin), bearing.board - BARE
        has, holds = lengths_apart(value, limit)
        what = f"{said} with {has} of the thickness of its edges; {holds}, a board less a fillet of glue, hold (common practice)"
    else:
        return None
    if value >= limit - 0.01:
        return None
    hint = "move it by at: [across, deep] so that more of it lies there, or make one of both wider"
    return check.found(what, subject=whole, hint=hint, place=one.place, value=value, limit=limit)
