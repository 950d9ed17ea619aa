"""All plans of a design turned into parts at true size."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from itertools import islice
from string import ascii_uppercase

import shapely

from publisher.basics import Finding, Path
from publisher.design import Design, PartPlan
from publisher.geometry.drawings import drawn_shape
from publisher.geometry.making.combine import combine
from publisher.geometry.making.corners import with_corners
from publisher.geometry.making.finish import finish
from publisher.geometry.making.flush_lines import SharedEnds, shared_ends
from publisher.geometry.making.named_shapes import kind_of, named_shape
from publisher.geometry.making.slants import slanted
from publisher.geometry.making.tab_rows import Reach, Reaches, RowKey, rooms_of, shared_reaches
from publisher.geometry.making.treatments import moved
from publisher.geometry.model import Part, ShapeInfo
from publisher.geometry.registry import Shape
from publisher.geometry.rules import LAYER_IN_PIECES, NO_OPENINGS, OWN_FAULT
from publisher.geometry.shapes import SHAPES

Outlines = dict[str, Path]
MadePart = tuple[Part | None, tuple[Finding, ...]]
MadeShape = tuple[Shape | None, tuple[Finding, ...]]
UNFORESEEN = (shapely.errors.GEOSException, ArithmeticError, ValueError)


def shape_infos() -> tuple[ShapeInfo, ...]:
    """Return all registered shapes, in the order of lists and docs."""
    return tuple(kind.info for kind in SHAPES)


def make_parts(design: Design) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    """Return the parts that could be drawn, and the findings for those that could not. Never raises for a designer's sizes.

    A layer of a hill that falls apart gives a part for each piece: ``hill_5``, ``hill_5_b``, …, each with its own letter.
    """
    parts: list[Part] = []
    found: list[Finding] = []
    letters = {plan.letter for plan in design.parts}
    outlines: Outlines = {}
    drawn = []
    for plan in design.parts:
        file = design.file(plan.drawing.file) if plan.drawing else None
        drawn.append((plan, *_shape_of(plan, file.data if file else None, outlines)))
    shapes = {plan.id: shape for plan, shape, _ in drawn if shape is not None}
    plans, told = with_corners(design.parts, design.panels, shapes)
    found.extend(told)
    drawn = [(plan, shape, problems) for plan, (_, shape, problems) in zip(plans, drawn, strict=True)]
    reaches, ends = _reaches(design, drawn), shared_ends(design.panels, shapes)
    for plan, shape, problems in drawn:
        made, more = _pieces(plan, shape, problems, letters, reaches.get(plan.id), ends.get(plan.id))
        letters |= {part.letter for part in made}
        found.extend(more)
        parts.extend(made)
    return tuple(parts), tuple(found)


def make_part(plan: PartPlan, drawing: bytes | None = None) -> MadePart:
    """Return one plan's part (mm), or None and the findings that say why not. ``drawing``: the bytes of its SVG, if it has one.

    Of a layer that falls apart, its largest piece.
    """
    made, found = make_pieces(plan, drawing)
    return (made[0] if made else None), found


def make_pieces(
    plan: PartPlan, drawing: bytes | None = None, letters: Collection[str] = (), outlines: Outlines | None = None
) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    """Return all pieces of one plan (mm), the largest first, with letters that are not among those taken; or findings.

    ``outlines`` keeps what was read from a drawing for further layers of the same family.
    """
    shape, found = _shape_of(plan, drawing, {} if outlines is None else outlines)
    return _pieces(plan, shape, found, letters)


def _shape_of(plan: PartPlan, drawing: bytes | None, outlines: Outlines) -> MadeShape:
    """Return a plan's shape, or findings: also when it fails in a way that nobody foresaw."""
    try:
        return _shape(plan, drawing, outlines)
    except UNFORESEEN as trouble:
        return None, (_own_fault(plan, trouble),)


def _pieces(
    plan: PartPlan,
    shape: Shape | None,
    found: tuple[Finding, ...],
    letters: Collection[str],
    reaches: Reaches | None = None,
    ends: SharedEnds | None = None,
) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    """Return a shape and its further pieces as finished parts, or findings: also when that fails unforeseen."""
    if shape is None:
        return (), found
    pieces = (shape, *shape.pieces)
    plans = _plans(plan, len(pieces) - 1, letters)
    try:
        made = [finish(one, own, reaches, ends) for one, own in zip(plans, pieces, strict=True)]
    except UNFORESEEN as trouble:
        return (), (_own_fault(plan, trouble),)
    parts = tuple(part for part, _ in made if part is not None)
    found = (*found, *(finding for _, problems in made for finding in problems))
    return (parts, (*found, *_in_pieces(plan, parts))) if len(parts) == len(made) else ((), found)


def _own_fault(plan: PartPlan, trouble: Exception) -> Finding:
    return OWN_FAULT.found(
        f"part “{plan.id}” could not be drawn with these sizes ({type(trouble).__name__})",
        subject=f"part {plan.id}",
        hint="change its sizes a little; if that does not help, please report the spec as a fault of the tool",
        place=plan.place,
    )


def _reaches(design: Design, drawn: Sequence[tuple[PartPlan, Shape | None, object]]) -> dict[str, dict[RowKey, Reach]]:
    """Return where the rows of tabs and slots of each part may stand, by part, as far as its shape is there."""
    own = {}
    for plan, shape, _ in drawn:
        if shape is None or not any(treatment.tabs or treatment.slots for treatment in plan.treatments):
            continue
        try:
            outer, lost = moved(shape, plan)
            own[plan.id] = {} if lost else rooms_of(shape, outer, plan)
        except UNFORESEEN:
            continue  # the same trouble comes to light where the part is finished, with its finding
    return shared_reaches(design.panels, own)


def _plans(plan: PartPlan, more: int, letters: Collection[str]) -> Iterator[PartPlan]:
    """Yield the plan and those of its further pieces: the layer's letter with B, C, … behind it, or the next free letters."""
    yield plan
    taken = {plan.letter, *letters}
    alphabet = ascii_uppercase
    names = [plan.letter + second for second in alphabet[1:] if len(plan.letter) == 1]
    names += [first + second for first in alphabet for second in alphabet]
    free = (name for name in names if name not in taken)
    for number, letter in enumerate(islice(free, more), 2):
        piece = alphabet[number - 1] if number <= len(alphabet) else str(number)
        yield replace(plan, id=f"{plan.id}_{piece.lower()}", letter=letter, name=f"{plan.name}, piece {piece}")


def _in_pieces(plan: PartPlan, parts: Sequence[Part]) -> Iterator[Finding]:
    if len(parts) > 1:
        others = ", ".join(part.letter for part in parts[1:])
        yield LAYER_IN_PIECES.found(
            f"{plan.name} falls apart into {len(parts)} pieces: {plan.letter} and {others}",
            subject=f"part {plan.id}",
            hint=f"lay {others} where the layer below shows them; the drawn stack and its facts know only {plan.letter}."
            " A wider outline or a smaller inset keeps the layer in one piece",
            place=plan.place,
            value=float(len(parts)),
            limit=1.0,
        )


def _shape(plan: PartPlan, drawing: bytes | None, outlines: Outlines) -> MadeShape:
    """Return the plan's shape: drawn, registered, or registered with a drawn outline; combined as the plan says."""
    subject = f"part {plan.id}"
    warned: tuple[Finding, ...] = ()
    outline: Path | None = None
    shape: Shape | None = None
    found: tuple[Finding, ...] = ()
    family = plan.family.name if plan.family else ""
    if family in outlines:
        outline = outlines[family]
    elif plan.drawing:
        shape, found = drawn_shape(plan, drawing)
        if shape is None:
            return None, found
        warned, outline = found, shape.outer
        if family:
            outlines[family] = outline
    if plan.shape or not plan.drawing:
        shape, found = named_shape(
            plan.shape, plan.parameters, subject, plan.place, plan.thickness, plan.family, outline
        )
        found = (*warned, *found)
    if shape is not None and plan.combine:
        shape, refused = combine(shape, plan.combine, plan)
        found = (*found, *refused)
    if shape is not None:
        cut, refused = slanted(shape, plan)
        shape, found = (None if refused else cut), (*found, *refused)
    refused = tuple(_openings_not_here(plan))
    return (None if refused else shape), (*found, *refused)


def _openings_not_here(plan: PartPlan) -> Iterator[Finding]:
    kind = kind_of(plan.shape)
    if plan.openings and kind is not None and not kind.info.openings:
        takes = ", ".join(kind.info.name for kind in SHAPES if kind.info.openings)
        message = f"the shape {plan.shape} takes no openings, but part “{plan.id}” has “{plan.openings[0].name}”"
        hint = f"shapes with openings: {takes}"
        yield NO_OPENINGS.found(message, subject=f"part {plan.id}", hint=hint, place=plan.openings[0].place)
