"""What the pictures of layouts must show, from the layouts themselves: every copy in its place on its sheet, the measures that mark it
out, and the cuts that take the sheet apart."""

from collections.abc import Iterable

import numpy as np

from publisher.basics import Box, CutPromise, LayoutPromise, PlacePromise, Point, record
from publisher.geometry import Part
from publisher.material.cuts import order_of_cuts, straight_sides
from publisher.material.ease import upright
from publisher.material.marking_out import measures_of
from publisher.material.model import Item, Layout, Piece, Yield
from publisher.material.packing import usual_turns


@record
class Alike:
    """Sheets of a yield that are laid out the same: the layout, how many they are, the number of the first (from 1)."""

    layout: Layout
    count: int
    number: int


def different_sheets(needed: Yield) -> tuple[Alike, ...]:
    """Return the different layouts of a yield's sheets, in the order of the first sheet of each."""
    numbers: dict[tuple[object, ...], list[int]] = {}
    for number, layout in enumerate(needed.sheets, 1):
        numbers.setdefault(tuple((item.part, item.pose) for item in layout.items), []).append(number)
    return tuple(Alike(needed.sheets[same[0] - 1], len(same), same[0]) for same in numbers.values())


def layout_key(needed: Yield, number: int) -> str:
    """Return the name under which a sheet's layout is promised."""
    return f"layout:{needed.board}:{needed.sheet.label}:{number}"


def promised_layouts(yields: Iterable[Yield], parts: Iterable[Part]) -> tuple[LayoutPromise, ...]:
    """Return a promise for each different layout of every yield."""
    known = {part.id: part for part in parts}
    pieces = {part: Piece(part, tuple(p.points for p in one.outline.paths), ()) for part, one in known.items()}
    return tuple(
        LayoutPromise(
            layout_key(needed, alike.number),
            needed.board,
            needed.sheet.label,
            needed.sheet.width,
            needed.sheet.height,
            alike.number,
            alike.count,
            len(needed.sheets),
            *_laid(alike.layout, known, pieces),
        )
        for needed in yields
        for alike in different_sheets(needed)
    )


def _laid(
    layout: Layout, known: dict[str, Part], pieces: dict[str, Piece]
) -> tuple[tuple[PlacePromise, ...], tuple[CutPromise, ...]]:
    """Return where the copies of a layout lie and how they are marked out, and the cuts that take the sheet apart."""
    rings = [_rings(item, known[item.part]) for item in layout.items]
    boxes = [Box(*np.min(ring[0], axis=0).tolist(), *np.max(ring[0], axis=0).tolist()) for ring in rings]
    sheet = Box(0.0, 0.0, layout.sheet.width, layout.sheet.height)
    cuts, order = order_of_cuts(sheet, boxes, straight_sides(tuple(pieces.values()), layout.items))
    free = {number: place for place, number in enumerate(order, 1)}
    usual = {part: usual_turns(piece.rings[0]) for part, piece in pieces.items()}
    places = tuple(
        PlacePromise(
            item.part,
            known[item.part].letter,
            item.copy,
            rings[number],
            item.pose.turn,
            item.pose.mirrored,
            measures_of(pieces[item.part], item, upright(item.pose.turn, usual[item.part])),
            free[number],
        )
        for number, item in enumerate(layout.items)
    )
    return places, cuts


def _rings(item: Item, part: Part) -> tuple[tuple[Point, ...], ...]:
    return tuple(item.pose.apply_all(path.points) for path in part.outline.paths)
