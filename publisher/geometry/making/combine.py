"""Shapes made of shapes: joined, cut, mirrored, repeated along an edge, turned. Names, arcs and marks that survive are kept."""

from collections.abc import Sequence
from dataclasses import replace
from math import dist

import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import (
    SAME_POINT,
    Finding,
    Pose,
)
from publisher.design import CombineStep, PartPlan
from publisher.geometry.making.edges_left import surviving_edges
from publisher.geometry.making.moves import mirroring, placed, renamed, turned_round
from publisher.geometry.making.named_shapes import named_shape
from publisher.geometry.model import Edge, Mark
from publisher.geometry.paths import (
    line_string,
    polygon,
    recover,
)
from publisher.geometry.registry import Shape, known_words_hint
from publisher.geometry.rules import COMBINATION, CURVED_EDGE, UNKNOWN_EDGE

COMBINE_GRID = (
    1e-6  # mm: points closer than this are one, so that shapes laid edge to edge join without a hair between them
)
COMBINE_HAIR = 0.02  # mm: a sliver narrower than this is none; twice the sagitta, and room for it
Combined = tuple[Shape | None, tuple[Finding, ...]]


def combine(shape: Shape, steps: Sequence[CombineStep], plan: PartPlan) -> Combined:
    """Return the shape after all steps, or None and the finding about the step that cannot be done."""
    for step in steps:
        result, found = _STEPS[step.kind](shape, step, plan)
        if result is None:
            return None, found
        shape = result
    return shape, ()


def _with_other(shape: Shape, step: CombineStep, plan: PartPlan) -> Combined:
    """Add or cut another shape, or several copies of it."""
    other, found = named_shape(step.shape, step.parameters, f"part {plan.id}", step.place, plan.thickness)
    if other is not None and step.steps:
        other, found = combine(other, step.steps, plan)
    if other is None:
        return None, found
    laid = placed(other, Pose(*step.at, step.turn))
    shifts, refused = _shifts(shape, step, plan)
    if refused:
        return None, refused
    others = [
        renamed(
            placed(laid, Pose(*shift)),
            lambda name, k=k: f"{step.called}{f'_{k}' if step.count > 1 else ''}_{name}",  # type: ignore[misc]
        )
        for k, shift in enumerate(shifts, 1)
    ]
    return _joined(shape, others, step, plan, cut=step.kind == "cut")


def _repeat(shape: Shape, step: CombineStep, plan: PartPlan) -> Combined:
    """Add copies of the shape itself along one of its edges."""
    shifts, refused = _shifts(shape, step, plan)
    if refused:
        return None, refused
    copies = [_told_apart(shape, placed(shape, Pose(*shift)), str(k)) for k, shift in enumerate(shifts[1:], 2)]
    return _joined(shape, copies, step, plan)


def _mirror(shape: Shape, step: CombineStep, plan: PartPlan) -> Combined:
    """Turn the shape over, or add its mirror image beyond one of its edges."""
    if step.flip in ("left_right", "up_down"):
        left, bottom, right, top = polygon(shape.region).bounds
        x, y = (left + right) / 2.0, (bottom + top) / 2.0
        to = (x, y + 1.0) if step.flip == "left_right" else (x + 1.0, y)
        return placed(shape, mirroring((x, y), to)), ()
    edge, refused = _straight_edge(shape, step.flip, step, plan)
    if edge is None:
        return None, refused
    image = placed(shape, mirroring(edge.nominal_start, edge.nominal_end))
    return _joined(shape, [_told_apart(shape, image, "mirrored")], step, plan)


def _turn(shape: Shape, step: CombineStep, plan: PartPlan) -> Combined:
    del plan
    return placed(shape, Pose(turn=step.turn)), ()


def _joined(shape: Shape, others: Sequence[Shape], step: CombineStep, plan: PartPlan, cut: bool = False) -> Combined:
    """Return the union or difference with the paths, edges and marks that survive it."""
    regions = [shape.region, *(other.region for other in others)]
    body, *rest = [polygon(region) for region in regions]
    if cut:
        result = shapely.difference(body, shapely.union_all(rest, grid_size=COMBINE_GRID), grid_size=COMBINE_GRID)
    else:
        result = shapely.union_all([body, *rest], grid_size=COMBINE_GRID)
    region, why = recover(_without_hairs(result), regions)
    if region is None:
        return None, (_impossible(step, plan, why),)
    whole = polygon(region)
    if cut and abs(whole.area - body.area) < SAME_POINT:
        return None, (_impossible(step, plan, "nothing of it is cut: the two shapes lie apart"),)
    added = list(map(_cutting, others)) if cut else others
    outer, edges = surviving_edges(region.outer, [shape, *added])
    marks = tuple(mark for s in (shape, *added) for mark in s.marks if _lies_on(mark, whole))
    plain = tuple(points for s in (shape, *added) for points in s.plain)
    meets = tuple(dict.fromkeys(one for s in (shape, *added) for one in s.drawn_for))
    return Shape(outer, edges, region.holes, marks, plain, drawn_for=meets, bending=shape.bending), ()


def _cutting(other: Shape) -> Shape:
    """Return what a shape brings into the one that it is cut out of: its edges, run the other way, and nothing that is drawn on it."""
    return replace(other, edges=tuple(map(turned_round, other.edges)), marks=(), plain=(), drawn_for=())


def _without_hairs(result: BaseGeometry) -> BaseGeometry:
    """Return a boolean's result without slivers: two flattenings of one arc leave hairs between them, as pieces or holes."""
    kept = [
        shapely.Polygon(piece.exterior, [h for h in piece.interiors if not _is_hair(shapely.Polygon(h))])
        for piece in shapely.get_parts(result)
        if piece.geom_type == "Polygon" and not _is_hair(piece)
    ]
    return kept[0] if len(kept) == 1 else shapely.MultiPolygon(kept)


def _is_hair(shape: shapely.Polygon) -> bool:
    return bool(shape.area < COMBINE_HAIR / 2.0 * shape.exterior.length)


def _lies_on(mark: Mark, whole: shapely.Polygon) -> bool:
    return bool(shapely.intersects(whole, line_string(mark.path)))


def _told_apart(shape: Shape, copy: Shape, suffix: str) -> Shape:
    """Return the copy with new names, but for edges that go on in line with the shape's own."""
    own = {edge.name: edge for edge in shape.edges}
    same = {e.name for e in copy.edges if e.name in own and in_line(own[e.name], e)}
    return renamed(copy, lambda name: name if name in same else f"{name}_{suffix}")


def in_line(a: Edge, b: Edge) -> bool:
    """Say whether two straight edges lie on one line."""
    if a.centre is not None or b.centre is not None or a.nominal_length < SAME_POINT:
        return False
    (x, y), (ex, ey) = a.nominal_start, a.nominal_end
    dx, dy = (ex - x) / a.nominal_length, (ey - y) / a.nominal_length
    return all(abs((p[0] - x) * dy - (p[1] - y) * dx) < COMBINE_GRID * 10.0 for p in (b.nominal_start, b.nominal_end))


def _shifts(shape: Shape, step: CombineStep, plan: PartPlan) -> tuple[list[tuple[float, float]], tuple[Finding, ...]]:
    """Return where each copy goes, the first one where it is."""
    if step.count == 1:
        return [(0.0, 0.0)], ()
    edge, refused = _straight_edge(shape, step.along, step, plan)
    if edge is None:
        return [], refused
    size = dist(edge.nominal_start, edge.nominal_end)
    x, y = ((b - a) / size for a, b in zip(edge.nominal_start, edge.nominal_end, strict=True))
    return [(k * step.pitch * x, k * step.pitch * y) for k in range(step.count)], ()


def _straight_edge(
    shape: Shape, name: str, step: CombineStep, plan: PartPlan
) -> tuple[Edge | None, tuple[Finding, ...]]:
    edge = next((edge for edge in shape.edges if edge.name == name), None)
    if edge is None:
        hint = known_words_hint(name, [edge.name for edge in shape.edges])
        message = f"part “{plan.id}” has no edge “{name}” here"
        return None, (UNKNOWN_EDGE.found(message, subject=f"part {plan.id}", hint=hint, place=step.place),)
    if edge.centre is not None or edge.nominal_length < SAME_POINT:
        message = f"the edge “{name}” of part “{plan.id}” is not straight"
        hint = "name a straight edge"
        return None, (CURVED_EDGE.found(message, subject=f"part {plan.id}", hint=hint, place=step.place),)
    return edge, ()


def _impossible(step: CombineStep, plan: PartPlan, why: str) -> Finding:
    return COMBINATION.found(
        f"part “{plan.id}” cannot be made by this {step.kind}: {why}",
        subject=f"part {plan.id}",
        hint="move the shapes so that they overlap and one piece is left",
        place=step.place,
    )


_STEPS = {"add": _with_other, "cut": _with_other, "repeat": _repeat, "mirror": _mirror, "turn": _turn}
