"""All plans of a design turned into parts at true size."""

import shapely

from publisher.basics import Finding
from publisher.design import Design, PartPlan
from publisher.geometry.drawn import drawn_shape
from publisher.geometry.finish import finish
from publisher.geometry.model import Part, ShapeInfo
from publisher.geometry.rules import NO_OPENINGS, OWN_FAULT, UNKNOWN_SHAPE
from publisher.geometry.shapes import SHAPES, Shape
from publisher.geometry.values import checked, nearest

Result = tuple[Part | None, tuple[Finding, ...]]


def shape_infos() -> tuple[ShapeInfo, ...]:
    """Return all registered shapes, in the order of lists and docs."""
    return tuple(kind.info for kind in SHAPES)


def make_parts(design: Design) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    """Return the parts that could be drawn, and the findings for those that could not. Never raises for a designer's sizes."""
    parts: list[Part] = []
    found: list[Finding] = []
    for plan in design.parts:
        file = design.file(plan.drawing.file) if plan.drawing else None
        part, problems = make_part(plan, file.data if file else None)
        found.extend(problems)
        if part is not None:
            parts.append(part)
    return tuple(parts), tuple(found)


def make_part(plan: PartPlan, drawing: bytes | None = None) -> Result:
    """Return one plan's part (mm), or None and the findings that say why not. ``drawing``: the bytes of its SVG, if it has one."""
    try:
        shape, found = drawn_shape(plan, drawing) if plan.drawing else _shape(plan)
        if shape is None:
            return None, found
        part, problems = finish(plan, shape)
        return part, (*found, *problems)
    except (shapely.errors.GEOSException, ArithmeticError, ValueError) as trouble:
        return None, (
            OWN_FAULT.found(
                f"part “{plan.id}” could not be drawn with these sizes ({type(trouble).__name__})",
                subject=f"part {plan.id}",
                hint="change its sizes a little; if that does not help, please report the spec as a fault of the tool",
                place=plan.place,
            ),
        )


def _shape(plan: PartPlan) -> tuple[Shape | None, tuple[Finding, ...]]:
    kind = next((kind for kind in SHAPES if kind.info.name == plan.shape), None)
    if kind is None:
        hint = nearest(plan.shape, [kind.info.name for kind in SHAPES])
        message = f"there is no shape called “{plan.shape}”"
        return None, (UNKNOWN_SHAPE.found(message, subject=f"part {plan.id}", hint=hint, place=plan.place),)
    values, found = checked(
        f"shape {plan.shape}", kind.info.parameters, plan.parameters, f"part {plan.id}", plan.place, plan.thickness
    )
    found = found or tuple(kind.check(values))
    if plan.openings and not kind.info.openings:
        takes = ", ".join(kind.info.name for kind in SHAPES if kind.info.openings)
        message = f"the shape {plan.shape} takes no openings, but part “{plan.id}” has “{plan.openings[0].name}”"
        hint = f"shapes with openings: {takes}"
        found = (*found, NO_OPENINGS.found(message, subject=f"part {plan.id}", hint=hint, place=plan.openings[0].place))
    return (None if found else kind.build(values)), found
