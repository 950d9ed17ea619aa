"""What the pictures of layouts must show, from the layouts themselves: every copy in its place on its sheet, the measures that mark it
out, and the cuts that take the sheet apart."""

from collections.abc import Iterable

from publisher.basics import Box, LayoutPromise, PlacePromise, Point, record
from publisher.geometry import Part
from publisher.material.cuts import order_of_cuts, straight_sides
from publisher.material.ease import upright
from publisher.material.marking_out import measures_of, readable
from publisher.material.model import Item, Layout, Piece, Yield
from publisher.material.packing import usual_turns

QUARTERS = (
    0.0,
    90.0,
    180.0,
    270.0,
)  # turns at which a piece without a straight side along the sheet's edges still stands as drawn


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
    return tuple(_promised(needed, alike, known, pieces) for needed in yields for alike in different_sheets(needed))


def _promised(needed: Yield, alike: Alike, known: dict[str, Part], pieces: dict[str, Piece]) -> LayoutPromise:
    """Return a layout with what marks it out: where its copies lie, their measures, and the cuts that take the sheet apart."""
    items, sheet = alike.layout.items, needed.sheet
    rings = [_rings(item, known[item.part]) for item in items]
    all_pieces = tuple(pieces.values())
    room = Box(0.0, 0.0, sheet.width, sheet.height)
    offcut = needed.offcuts[alike.number - 1] if needed.offcuts else None
    boxes = [Box.round(ring[0]) for ring in rings]
    sides = straight_sides(all_pieces, items)
    cuts, order = order_of_cuts(room, boxes, sides, offcut)
    free = {number: place for place, number in enumerate(order, 1)}
    usual = {part: usual_turns(piece.rings[0]) for part, piece in pieces.items()}
    straight = set(sides[:, 4].astype(int).tolist())
    measures = tuple(
        measures_of(pieces[i.part], i, upright(i.pose.turn, usual[i.part] if number in straight else QUARTERS))
        for number, i in enumerate(items)
    )
    read = readable(all_pieces, items, measures, sheet, cuts)
    return LayoutPromise(
        key=layout_key(needed, alike.number),
        board=needed.board,
        sheet=sheet.label,
        width=sheet.width,
        height=sheet.height,
        number=alike.number,
        alike=alike.count,
        total=len(needed.sheets),
        places=tuple(
            PlacePromise(
                item.part,
                known[item.part].letter,
                item.copy,
                rings[number],
                item.pose.turn,
                item.pose.mirrored,
                measures[number],
                free[number],
            )
            for number, item in enumerate(items)
        ),
        cuts=read.cuts,
        offcut=offcut,
        step_mm=read.step_mm,
        parts_of_inch=read.parts_of_inch,
    )


def _rings(item: Item, part: Part) -> tuple[tuple[Point, ...], ...]:
    return tuple(item.pose.apply_all(path.points) for path in part.outline.paths)
