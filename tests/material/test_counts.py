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
    assert [c.number for c in counted(shop, 90.0, known)] == [9, 3]


def test_a_layout_that_does_not_hold_here_is_not_believed(shop) -> None:
    wrong = tuple(replace(one, number=9) for one in counted(shop, 75.0))
    assert [c.number for c in counted(shop, 120.0, (*wrong, *wrong), only={("foam", "300 x 300 mm", "a")})] == [4]


def test_what_fits_no_sheet_counts_nothing_and_is_said(shop) -> None:
    found, findings = count_layouts(*squares(shop, 301.0))
    assert [c.number for c in found] == [0, 0]
    assert [f.check for f in findings] == ["material/part-larger-than-sheets"]
    assert "split" not in findings[0].hint


def test_near_a_known_layout_only_its_turns_are_tried(shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """A layer of a stair lies askew; of a rectangle all turns are tried as ever."""
    board = shop.board((508.0, 762.0))
    layer = shop.part("a", shop.layer(30.0, 103.0, 40.0), 1)
    only = {("foam", "508 x 762 mm", "a")}
    known, _ = count_layouts(shop.design(board), (layer,), only=only)
    asked = []
    true_solve = module.solve
    monkeypatch.setattr(module, "solve", lambda problem, desk: asked.append(problem) or true_solve(problem, desk))
    smaller = shop.part("a", shop.layer(30.0, 102.9, 40.0), 1)
    (near,), _ = count_layouts(shop.design(board), (smaller,), known, only, near=True)
    turns = {item.pose.turn for item in known[0].packed.sheets[0]}
    assert {round(t, 3) for t in asked[-1].pieces[0].angles} >= {round(t, 3) for t in turns}
    assert near.number >= known[0].number
    count_layouts(*squares(shop, 70.0), counted(shop, 80.0), {("foam", "300 x 300 mm", "a")}, near=True)
    assert asked[-1].pieces[0].angles == ()
