"""A shape made into a part: openings and joins cut, walls and outline checked, template traced, marks drawn."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from publisher.basics import SAME_POINT, Finding, Line, Path, Place, closed_path, errors
from publisher.basics.wording import beyond, told_apart
from publisher.design import LONGEST_MM, PartPlan
from publisher.geometry.making.board_left import Void, wall_findings
from publisher.geometry.making.flush_lines import SharedEnds
from publisher.geometry.making.joint_places import glue_lines, joint_places
from publisher.geometry.making.labels import edge_words
from publisher.geometry.making.marks_left import shortened
from publisher.geometry.making.tab_rows import Reaches
from publisher.geometry.making.treatments import Treated, treat
from publisher.geometry.model import Mark, Part, Region
from publisher.geometry.openings import DrawnOpening, draw_openings
from publisher.geometry.paths import Bump, eroded, fault, let_in, polygon
from publisher.geometry.registry import Shape, mm
from publisher.geometry.rules import BROKEN_OUTLINE, LOST_IN_TRACING, OPENING_OVER_EDGE, OUT_OF_RANGE, TAB_OFF_EDGE
from publisher.geometry.surfaces import surface_marks


def finish(
    plan: PartPlan, shape: Shape, reaches: Reaches | None = None, ends: SharedEnds | None = None
) -> tuple[Part | None, tuple[Finding, ...]]:
    """Return the part (mm), or None and the findings that say why it cannot be. ``reaches``: of its rows of tabs and slots,
    as its mates agree; unsaid: as the part alone allows. ``ends``: of its joint lines, what shorter mates meet."""
    treated, found = treat(shape, plan, reaches)
    drawn, problems = draw_openings(plan.openings, _middle(shape), f"part {plan.id}", plan.thickness)
    found = (*found, *problems) or tuple(_swallowed(plan, treated, drawn))
    if found:
        return None, found
    drawn = tuple(_from_edge(door, treated) if door.open_below else door for door in drawn)
    outer, found = _let_in(plan, treated, drawn)
    if found:
        return None, found
    outline = _outline(shape, outer, treated, drawn)
    body = polygon(outline)
    found = tuple(_unsound(plan, body))
    if found:
        return None, found
    template, lost = eroded(outline, plan.trace_allowance)
    traced = body if template is outline else polygon(template)
    joints = joint_places(treated.edges, shape.outer, plan, ends)
    words = edge_words(treated.edges, joints, body, plan.thickness)
    # the pages break a pattern round every word they set; pictures of the finished piece show it whole
    pattern, problems = surface_marks(plan, _face(shape, body), (), treated.edges)
    found = (*_vanished(plan, lost, traced), *problems)
    if errors(found):
        return None, found
    pockets = [opening.mark for opening in drawn if opening.mark]
    marks = (*shortened([*shape.marks, *glue_lines(joints)], traced), *pockets, *shortened(words, traced), *pattern)
    part = _part(plan, outline, template, drawn, marks, treated)
    return replace(part, drawn_for=shape.drawn_for, bending=shape.bending), found


def _let_in(plan: PartPlan, treated: Treated, drawn: Sequence[DrawnOpening]) -> tuple[Path, tuple[Finding, ...]]:
    """Return the outer outline with tabs, notches and doors let in, and findings for walls too thin and for what cannot be let in,
    each said once."""
    doors = (_door_bump(door) for door in drawn if door.open_below)
    outer, refused = let_in(treated.outer, (*treated.bumps, *doors))
    walls = tuple(wall_findings(_voids(plan, treated, drawn), treated.outer, f"part {plan.id}", plan.thickness))
    unsaid = [(bump, why) for bump, why in refused if not any(bump.what in wall.message for wall in walls)]
    return outer, (*walls, *_off_edge(plan, unsaid))


def _outline(shape: Shape, outer: Path, treated: Treated, drawn: Sequence[DrawnOpening]) -> Region:
    """Return the finished piece: the outer outline with the holes of the shape, of openings and of closed slots."""
    holes = (
        *shape.holes,
        *(opening.path.reversed() for opening in drawn if not (opening.open_below or opening.mark)),
        *(slot.path.reversed() for slot in treated.slots),
    )
    return Region(closed_path(outer.edges), tuple(closed_path(hole.edges) for hole in holes))


def _face(shape: Shape, body: shapely.Polygon) -> shapely.Geometry:
    """Return where a surface pattern may go: the part without what its shape keeps plain."""
    return shapely.difference(body, shapely.union_all([*map(shapely.Polygon, shape.plain)])) if shape.plain else body


def _middle(shape: Shape) -> float:
    """Return the middle of the bottom edge, where an opening stands that does not say where; 0 for shapes without one."""
    return next(((e.nominal_start[0] + e.nominal_end[0]) / 2.0 for e in shape.edges if e.name == "bottom"), 0.0)


def _bottom(treated: Treated) -> float:
    """Return the height to which the joins have moved the bottom edge."""
    return next(edge.start[1] for edge in treated.outer.edges if edge.name == "bottom")


def _swallowed(plan: PartPlan, treated: Treated, drawn: Sequence[DrawnOpening]) -> Iterator[Finding]:
    """Find doors of which a shortened bottom edge leaves no jamb."""
    for door in drawn:
        jamb = door.path.edges[1]
        if door.open_below and jamb.end[1] < _bottom(treated) + SAME_POINT:
            yield OPENING_OVER_EDGE.found(
                f"the joins take {mm(_bottom(treated))} off the bottom edge; of the door “{door.opening.name}” no jamb is left",
                subject=f"part {plan.id}",
                hint="make the door higher, or let this panel run through at its bottom edge",
                place=next(o.place for o in plan.openings if o.name == door.opening.name),
                value=jamb.end[1],
                limit=_bottom(treated),
            )


def _from_edge(door: DrawnOpening, treated: Treated) -> DrawnOpening:
    """Return a door on the bottom edge begun where the joins have moved that edge to."""
    bottom = _bottom(treated)
    sill, right, *head, left = door.path.edges
    a, b = (sill.start[0], bottom), (sill.end[0], bottom)
    path = Path((replace(sill, start=a, end=b), replace(right, start=b), *head, replace(left, end=a)))
    return DrawnOpening(replace(door.opening, ring=path.reversed()), path, True)


def _door_bump(door: DrawnOpening) -> Bump:
    """Return a door on the bottom edge as a detour of that edge: up the left jamb, over the head, down the right jamb."""
    return Bump("bottom", Path(door.path.edges[1:], closed=False).reversed().edges, f"the door “{door.opening.name}”")


def _voids(plan: PartPlan, treated: Treated, drawn: Sequence[DrawnOpening]) -> tuple[Void, ...]:
    """Return all that is cut out: openings, closed slots, open notches."""
    joins = {t.edge: t.place for t in plan.treatments}
    places = {o.name: o.place for o in plan.openings}
    openings = [
        Void(
            d.path,
            f"the {d.opening.kind} “{d.opening.name}”",
            places[d.opening.name],
            open_at="bottom" if d.open_below else "",
        )
        for d in drawn
    ]
    slots = [Void(s.path, s.what, joins[s.edge], slot=True) for s in treated.slots]
    notches = [
        Void(Path((*b.way, Line(b.edge, b.way[-1].end, b.way[0].start))), b.what, joins[b.edge], True, b.edge)
        for b in treated.bumps
        if b.inwards
    ]
    return (*openings, *slots, *notches)


def _off_edge(plan: PartPlan, refused: Sequence[tuple[Bump, str]]) -> Iterator[Finding]:
    for bump, why in refused:
        treatment = next((t for t in plan.treatments if t.edge == bump.edge), None)
        opening = next((o for o in plan.openings if f"“{o.name}”" in bump.what), None)
        yield TAB_OFF_EDGE.found(
            f"{bump.what} of part “{plan.id}” {why}",
            subject=f"part {plan.id}",
            hint="use fewer or more tabs, or a smaller take-off at the neighbouring edge"
            if opening is None
            else "move it inwards, or make it narrower",
            place=opening.place if opening else treatment.place if treatment else plan.place,
        )


def _unsound(plan: PartPlan, body: shapely.Polygon) -> Iterator[Finding]:
    """Find an outline that crosses itself or encloses nothing, or a part beyond all sizes."""
    reason = fault(body)
    if reason:
        hint = "check the sizes, tabs and openings near that place"
        yield BROKEN_OUTLINE.found(
            f"part “{plan.id}”: {reason}", subject=f"part {plan.id}", hint=hint, place=plan.place
        )
        return
    left, bottom, right, top = body.bounds
    size = max(right - left, top - bottom)
    if size > LONGEST_MM:
        long, most = told_apart(size, LONGEST_MM, mm)
        yield OUT_OF_RANGE.found(
            beyond(f"part “{plan.id}”", f"{long} long", most, most=True),
            subject=f"part {plan.id}",
            hint="check the sizes and their units",
            place=_longest_at(plan),
            value=size,
            limit=LONGEST_MM,
        )


def _longest_at(plan: PartPlan) -> Place:
    """Return where the designer wrote the largest size of a part, or the drawing that gives its outline."""
    sizes = [(value, p.place) for p in plan.parameters if isinstance(value := p.value, float)]
    return max(sizes, key=lambda s: s[0])[1] if sizes else plan.drawing.place if plan.drawing else plan.place


def _vanished(plan: PartPlan, lost: Sequence[str], traced: shapely.Polygon) -> Iterator[Finding]:
    """Find edges that the trace allowance swallows."""
    names = ", ".join(f"“{name}”" for name in lost)
    reason = f"its {names} vanishes" if lost else fault(traced)
    if reason:
        allowance = plan.trace_allowance
        yield LOST_IN_TRACING.found(
            f"the template of part “{plan.id}” is drawn {mm(allowance)} inside the piece, and {reason}",
            subject=f"part {plan.id}",
            hint=f"make every detail wider than {mm(2.0 * allowance)}, make trace_allowance smaller, or use: paste",
            place=plan.place,
            value=allowance,
        )


def _part(
    plan: PartPlan,
    outline: Region,
    template: Region,
    drawn: Sequence[DrawnOpening],
    marks: tuple[Mark, ...],
    treated: Treated,
) -> Part:
    return Part(
        id=plan.id,
        letter=plan.letter,
        name=plan.name,
        board=plan.board,
        thickness=plan.thickness,
        shape=plan.shape,
        outline=outline,
        template=template,
        openings=tuple(d.opening for d in drawn if d.mark is None),
        marks=marks,
        edges=treated.edges,
        count=plan.count,
        spare=plan.spare,
        mirrored=plan.mirrored,
        # laid askew it would be marked out by two corners of a whole template, which it has not
        turning="quarter" if plan.printed != "whole" and plan.turning == "any" else plan.turning,
        trace_allowance=plan.trace_allowance,
        place=plan.place,
        printed=plan.printed,
    )
