"""Parts that are the same when they are turned over: on which nobody can mistake one face for the other. Mm."""

from collections.abc import Iterable

import numpy as np
import shapely

from publisher.basics import Purpose, remembered
from publisher.design import Design
from publisher.geometry import Mark, Part, polygon

SAME = 0.02
"""mm within which a drawing and its mirror image are one."""

SAME_MARK = 0.15
"""mm within which a mark stands where another does: marks are set to a tenth."""

OF_NO_FACE = frozenset({Purpose.MATCH, Purpose.NAME, Purpose.TOP})
"""Marks that say something of a part as a whole: one on the other face says the same."""

WORKED = frozenset({"press", "draw"})
"""Acts that give a part an outside that is seen."""


def alike_parts(design: Design, parts: Iterable[Part]) -> frozenset[str]:
    """Return the parts of which either face may be the outside: neither their own form, nor their board, nor a step that works on one
    face tells which."""
    textured = {
        name for step in design.steps if step.stage == "texture" or WORKED & {*(step.acts or ())} for name in step.parts
    }
    papered = {board.id for board in design.boards if board.faces == "paper_one"}
    return frozenset(
        part.id
        for part in parts
        if not {part.id, part.whole, *part.folded} & textured and part.board not in papered and faces_alike(part)
    )


def faces_alike(part: Part) -> bool:
    """Say whether either face of a flat part may be its outside, its upper edge still the upper one: nothing is worked into or drawn on
    one of them, and turned over it is the same, the letters of its joins too."""
    marked = any(mark.purpose not in OF_NO_FACE for mark in part.marks)
    return not marked and part.bending is None and is_own_mirror(part)


@remembered
def is_own_mirror(part: Part) -> bool:
    """Say whether all that a template shows, turned over about its upright middle line, is the same drawing again: so it is as
    well that of the other face. Its upper edge stays the upper one. A bevel or rabbet tells the faces apart."""
    if not _turns_into_itself(part):
        return False
    left, _, right, _ = polygon(part.half.whole if part.half else part.template).bounds
    return all(any(_stands_at(one, mark, left + right) for one in part.marks) for mark in part.marks)


def _turns_into_itself(part: Part) -> bool:
    """Say whether a part turned over about its upright middle line has the same outline and openings."""
    if any(edge.bevel or edge.rabbet for edge in part.edges):
        return False
    shape = polygon(part.half.whole if part.half else part.template)
    left, _, right, _ = shape.bounds
    turned = shapely.transform(shape, lambda p: (left + right, 0.0) + p * (-1.0, 1.0))
    return float(shapely.hausdorff_distance(shape.boundary, turned.boundary)) < SAME


def _stands_at(one: Mark, other: Mark, across: float) -> bool:
    """Say whether a mark is the mirror image of another about the upright line at half of ``across``: a line from either end."""
    if (one.kind, one.purpose, one.text) != (other.kind, other.purpose, other.text):
        return False
    own = np.array(one.path.points)
    turned = np.array([(across - x, y) for x, y in other.path.points])
    ways = (turned,) if one.text else (turned, turned[::-1])
    return any(own.shape == way.shape and bool((np.abs(own - way) < SAME_MARK).all()) for way in ways)
