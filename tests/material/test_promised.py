"""Layouts are promised from the layouts: each different sheet once, every copy in its place."""

from math import isclose

from publisher.basics import Line, Path, Place, Pose
from publisher.design import SheetSize
from publisher.geometry import Part, Region
from publisher.material.model import Item, Layout, Yield
from publisher.material.promised import different_sheets, layout_key, promised_layouts

CORNERS = ((0.0, 0.0), (30.0, 0.0), (30.0, 10.0), (0.0, 10.0))
RING = Path(tuple(Line("edge", a, b) for a, b in zip(CORNERS, (*CORNERS[1:], CORNERS[0]), strict=True)))
SHEET = SheetSize("A4", 210.0, 297.0)


def part() -> Part:
    region = Region(RING)
    return Part(
        "slip", "S", "Slip", "foam", 5.0, "rectangle", region, region, (), (), (), 3, 0, 0, "any", 0.0, Place("spec.yaml", 1, 1)
    )  # fmt: skip


def a_yield(*sheets: tuple[Item, ...]) -> Yield:
    layouts = tuple(Layout("key", "foam", SHEET, items, "rows", 0) for items in sheets)
    return Yield("foam", SHEET, (), layouts, 1, 1, 0.5, 100.0, 0.0)


def test_sheets_that_are_laid_out_alike_are_promised_once() -> None:
    one, other = (Item("slip", 1, Pose(5.0, 5.0)),), (Item("slip", 3, Pose(5.0, 50.0, 90.0)),)
    needed = a_yield(one, (Item("slip", 2, Pose(5.0, 5.0)),), other)
    assert [(alike.number, alike.count) for alike in different_sheets(needed)] == [(1, 2), (3, 1)]
    first, second = promised_layouts((needed,), (part(),))
    assert (first.key, first.number, first.alike, first.total) == (layout_key(needed, 1), 1, 2, 3)
    assert (second.key, second.alike, second.width, second.height) == ("layout:foam:A4:3", 1, 210.0, 297.0)


def test_a_place_is_the_outline_carried_by_its_pose() -> None:
    needed = a_yield((Item("slip", 1, Pose(100.0, 20.0, 90.0)),))
    (layout,) = promised_layouts((needed,), (part(),))
    (place,) = layout.places
    assert (place.part, place.letter, place.copy) == ("slip", "S", 1)
    wanted = ((100.0, 20.0), (100.0, 50.0), (90.0, 50.0), (90.0, 20.0))
    points = place.rings[0][:4]
    assert all(
        isclose(a, b, abs_tol=1e-9) for p, q in zip(points, wanted, strict=True) for a, b in zip(p, q, strict=True)
    )
