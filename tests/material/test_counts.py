"""Counts of layouts at other sizes: what is known is used where it holds, and never lowers what a search finds."""

from dataclasses import replace

import pytest

from publisher.design import Design
from publisher.geometry import Part
from publisher.material import SheetCount, count_layouts, lay_out
from publisher.material import counts as module


def squares(shop, side: float) -> tuple[Design, tuple[Part, ...]]:
    """Twenty squares, and a sheet of 300 × 300 mm on which k stand beside each other up to a side of (301 - k) / k mm."""
    design = shop.design(shop.board((300.0, 300.0), margin=0.0))
    return design, (shop.part("a", (shop.box(side, side),), 20),)


def counted(shop, side: float, known: tuple[SheetCount, ...] = (), **how: object) -> tuple[SheetCount, ...]:
    found, findings = count_layouts(*squares(shop, side), known, **how)
    assert findings == ()
    return found


def test_counts_are_those_of_the_yield(shop) -> None:
    design, parts = squares(shop, 74.25)
    ((one,), found) = (lay_out(design, parts).yields, counted(shop, 74.25))
    assert [(c.part, c.letter, c.number) for c in found] == [("a", "A", 16), ("", "", 2)]
    assert [c.number for c in found] == [one.rows[0].careful, len(one.sheets)]
    assert [c.number for c in counted(shop, 74.26)] == [9, 3]


def test_what_holds_on_both_sides_is_not_searched_again(shop, monkeypatch: pytest.MonkeyPatch) -> None:
    known = (*counted(shop, 75.0), *counted(shop, 99.0))
    monkeypatch.setattr(module, "solve", None)
    monkeypatch.setattr(module, "solve_like", None)
    assert [c.number for c in counted(shop, 90.0, known)] == [9, 3]


def test_a_layout_that_does_not_hold_here_is_not_believed(shop) -> None:
    wrong = tuple(replace(one, number=9) for one in counted(shop, 75.0))
    assert [c.number for c in counted(shop, 120.0, (*wrong, *wrong), only={("foam", "300 x 300 mm", "a")})] == [4]


def test_what_fits_no_sheet_counts_nothing_and_is_said(shop) -> None:
    found, findings = count_layouts(*squares(shop, 301.0))
    assert [c.number for c in found] == [0, 0]
    assert [f.check for f in findings] == ["material/part-larger-than-sheets"]


def test_a_layout_made_as_the_better_neighbours_is_enough(shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """A list of squares and a part alone, which the layout of smaller ones does not show."""
    known = (*counted(shop, 60.0), *counted(shop, 90.0))
    monkeypatch.setattr(module, "solve", None)
    assert [c.number for c in counted(shop, 60.1, known)] == [c.number for c in known[:2]]


def test_near_known_layouts_only_their_turns_are_tried(shop) -> None:
    """A layer of a stair lies askew."""
    board = shop.board((508.0, 762.0))
    layer = shop.part("a", shop.layer(30.0, 103.0, 40.0), 1)
    only = {("foam", "508 x 762 mm", "a")}
    known, _ = count_layouts(shop.design(board), (layer,), only=only)
    longer = shop.part("a", shop.layer(30.0, 103.01, 40.0), 1)
    (near,), _ = count_layouts(shop.design(board), (longer,), (*known, *known), only, near=True)

    def turns(count: SheetCount) -> set[float]:
        return {round(item.pose.turn % 90.0, 3) for item in count.packed.sheets[0]}

    assert turns(near) <= turns(known[0])
    assert near.number == known[0].number
