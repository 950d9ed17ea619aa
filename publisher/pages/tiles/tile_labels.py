"""What a tile says of its part: letter and name on each, and on one of them all that the piece must not lose."""

from collections.abc import Sequence

import shapely

from publisher.basics import Box, remembered_few
from publisher.geometry import polygon
from publisher.pages.sheet import Context
from publisher.pages.templates import (
    LabelRoom,
    Says,
    Spot,
    blocks,
    first_spot,
    identities,
    letters,
    patterned,
    quiet_lines,
    says,
    small_blocks,
)
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import as_polygon

TURNED = ("upper side", "left", "lower side", "right")  # where the upper end of a part lies that is turned by quarters


def tile_label(context: Context, plan: Tiling, cell: Cell, boxes: Sequence[Box], whole: bool) -> Spot | None:
    """Return the words inside a tile: on the ``whole`` one all that fits there, what the piece must not lose above all; on the
    others letter and name. None where not even the letter fits."""
    return _label(context, plan, cell, boxes=tuple(boxes), whole=whole)


@remembered_few  # a page is drawn with its numbers, and without those of other pages
def _label(context: Context, plan: Tiling, cell: Cell, *, boxes: tuple[Box, ...], whole: bool) -> Spot | None:
    said = said_of(context, plan)
    room = tile_room(plan, cell, boxes)
    if whole and not patterned(plan.sample.part):
        found = next((f for group in blocks(context.type, said) if (f := room.best(group))), None)
        if found:
            return Spot(*found)
    best = identities(context.type, said) if whole else small_blocks(context.type, said)
    groups = (*best, *letters(context.type, said))
    rooms = (room, tile_room(plan, cell, boxes, surface=False))  # lines of a surface make room where there is no other
    return next((spot for one in rooms if (spot := first_spot(one, groups))), None)


def sides_said(said: Says, turn: float) -> str:
    """Return in words what a label says of a part that lies turned by whole quarters, where the label itself finds no room."""
    side, *more = said.sides or ("",)
    face = f": {said.face}" if said.face else ""
    sides = f" {side}{face}. {' '.join(more)}" if side else ""
    top = f" Its top is at the {TURNED[round(turn / 90.0) % 4]} of this page." if said.top else ""
    return f"Part {said.letter}, {said.cut}.{sides}{top}".strip()


def said_of(context: Context, plan: Tiling) -> Says:
    """Return the words of the label of a tiled copy."""
    return says(context, plan.sample.part, plan.sample.copy, plan.sample.mirrored)


def labelled(context: Context, plan: Tiling) -> Cell:
    """Return the tile that carries the whole label: the first with enough room, else the one that shows most of the part."""
    said = said_of(context, plan)
    sizes = () if patterned(plan.sample.part) else tuple(blocks(context.type, said))
    for cell in plan.cutting.cells if sizes else ():
        room = tile_room(plan, cell, [])
        if any(room.best(size) for size in sizes):
            return cell
    return max(plan.cutting.cells, key=lambda c: plan.laid.intersection(as_polygon(c.area)).area)


def tile_room(plan: Tiling, cell: Cell, boxes: Sequence[Box], *, surface: bool = True) -> LabelRoom:
    """Return the free places of a tile, on the page: on the part, inside the tile, clear of marks and of what seams say. Lines of
    the surface are among the marks unless ``surface`` is False."""
    area = cell.area.moved(*plan.shift(cell))
    ground = polygon(plan.sample.part.template, plan.pose(cell)).intersection(as_polygon(area))
    lines = plan.lines_on(cell)
    if not surface:
        notes = [note.area() for note in plan.notes_on(cell)]
        lines = shapely.union_all([quiet_lines(plan.sample.part, plan.pose(cell), surface=False), *notes])
    return LabelRoom(ground, shapely.union_all([lines, *map(as_polygon, boxes)]))
