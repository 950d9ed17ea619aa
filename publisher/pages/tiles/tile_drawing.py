"""What a page shows of one tile itself: the part inside its window, its marks, its seams, its label."""

from collections.abc import Iterable
from dataclasses import replace

import shapely

from publisher.basics import Box, Purpose, record, remembered_few
from publisher.pages.model import Drawn, Tile
from publisher.pages.sheet import Body, Context
from publisher.pages.templates import (
    TOP,
    DimensionLine,
    Spot,
    dimension_lines,
    mark_promises,
    mark_strokes,
    outline_promise,
    outline_strokes,
    quiet_boxes,
    sides_carried,
    spot_drawn,
    spot_promises,
    waste_strokes,
)
from publisher.pages.tiles.seam_drawing import Seamed
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_furniture import size_lines
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import as_polygon

NOT_CLOSER = 0.4  # mm round the words of seams, where lines of a surface are broken
OFF_LABEL = 0.8  # mm round a label


def tile_body(
    context: Context,
    plan: Tiling,
    cell: Cell,
    page: int,
    seamed: Seamed,
    label: Spot | None,
    *,
    whole: bool,
    kept: Iterable[Box] = (),
) -> Body:
    """Return one tile with the promises about it. ``label``: the words inside it; those of the ``whole`` one say all that the piece
    must not lose. ``kept``: boxes of other words that stand on it."""
    part, copy, mirrored = plan.sample.part, max(plan.sample.copy, 1), plan.sample.mirrored
    pose, window = plan.pose(cell), plan.window(cell)
    found = _drawn(context, plan, cell, seamed.boxes, label, kept=tuple(kept))
    shown = Body(
        tiles=(Tile(part.id, copy, cell.row, cell.column, window, pose),),
        outlines=(outline_promise(page, part, copy, pose, window, cell.row, cell.column),),
    )
    own = Body(
        found.drawn,
        lengths=tuple(line.promise(page) for line in found.lengths),
        marks=mark_promises(page, part, copy, found.marks, window),
    )
    said = Body(texts=spot_promises(page, label, part.id, copy)) if label else Body()
    if label and whole:
        said += Body(carried=(sides_carried(page, label.box, part.id, copy, mirrored),))
    return shown + seamed.under + own + seamed.over + said


@record
class _OnTile:
    """What a tile draws of its part, the lengths and the marks among it."""

    drawn: tuple[Drawn, ...]
    lengths: tuple[DimensionLine, ...]
    marks: tuple[Drawn, ...]


@remembered_few
def _drawn(
    context: Context, plan: Tiling, cell: Cell, seams: tuple[Box, ...], label: Spot | None, *, kept: tuple[Box, ...]
) -> _OnTile:
    """Return what a tile draws, the same wherever its page stands; ``seams``: boxes in which marks and words of its seams stand."""
    part, pose, window = plan.sample.part, plan.pose(cell), plan.window(cell)
    notes = plan.notes_on(cell)
    if all(note.text != TOP for note in notes):  # the arrow without its word, on paper that the next tile covers
        part = replace(part, marks=tuple(mark for mark in part.marks if mark.purpose is not Purpose.TOP))
    boxes = [box.grown(NOT_CLOSER) for box in seams]
    boxes += [box.grown(OFF_LABEL) for box in (*kept, *((label.box,) if label else ()))]
    quiet = [*quiet_boxes(part, pose, notes), *boxes]
    lines = _dimensions(context, plan, cell, [*seams, *kept, *(note.box for note in notes)], label)
    quiet += [box for line in lines for box in line.quiet]
    marks = mark_strokes(part, pose, window, quiet)
    taken = shapely.union_all([line.area for line in lines])
    drawn: tuple[Drawn, ...] = (
        *waste_strokes(part, pose, context.type, window, boxes, taken=taken),
        *marks,
        *outline_strokes(part, pose, window),
        *(word for note in notes for word in note.drawn(context.type)),
        *(thing for line in lines for thing in line.drawn(context.type)),
        *(spot_drawn(context.type, label, plan.turn) if label else ()),
        *size_lines(context.type, plan, cell, context.paper.first),
    )
    return _OnTile(drawn, lines, marks)


def _dimensions(
    context: Context, plan: Tiling, cell: Cell, boxes: list[Box], label: Spot | None
) -> tuple[DimensionLine, ...]:
    """Return the lengths that a tile shows whole, on its own side of its seams, beside all other words on it."""
    taken = [as_polygon(box.grown(NOT_CLOSER)) for box in boxes]
    if label:
        taken.append(label.polygon.buffer(OFF_LABEL))
    within = as_polygon(cell.area.moved(*plan.shift(cell)))
    return dimension_lines(plan.sample.part, plan.pose(cell), context.type, context.paper.first, taken, within)
