"""What the pictures of layouts must show, from the layouts themselves: every copy in its place on its sheet."""

from collections.abc import Iterable

from publisher.basics import LayoutPromise, PlacePromise, record
from publisher.geometry import Part
from publisher.material.model import Item, Layout, Yield


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
            tuple(_place(item, known[item.part]) for item in alike.layout.items),
        )
        for needed in yields
        for alike in different_sheets(needed)
    )


def _place(item: Item, part: Part) -> PlacePromise:
    rings = tuple(item.pose.apply_all(path.points) for path in part.outline.paths)
    return PlacePromise(part.id, part.letter, item.copy, rings)
