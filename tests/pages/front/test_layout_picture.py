"""A laid-out sheet is drawn to scale, every piece in its place."""

from collections.abc import Callable
from itertools import combinations

import pytest

from publisher.basics import Box
from publisher.pages import Stroke, Words
from publisher.pages.front.layout_picture import MEASURE, layout_picture, picture_height
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import words_box
from publisher.pages.type.rectangles import overlap


def test_pieces_lie_inside_the_sheet_and_keep_the_scale(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    need = context.needs.yields[0]
    width = 90.0
    height = picture_height(need, width, 118.0)
    drawn = layout_picture(context, need, need.sheets[0], (1, 1), Box(10.0, 20.0, 10.0 + width, 20.0 + height))
    sheet = next(s for s in drawn if isinstance(s, Stroke) and s.style.name == "sheet").paths[0].points
    pieces = next(s for s in drawn if isinstance(s, Stroke) and s.style.name == "piece").paths
    left, right = min(x for x, _ in sheet), max(x for x, _ in sheet)
    bottom, top = min(y for _, y in sheet), max(y for _, y in sheet)
    assert (right - left) / (top - bottom) == pytest.approx(
        max(need.sheet.width, need.sheet.height) / min(need.sheet.width, need.sheet.height)
    ) or (right - left) / (top - bottom) == pytest.approx(need.sheet.width / need.sheet.height)
    assert left >= 10.0 + MEASURE - 1e-6
    assert len(pieces) == sum(1 + len(context.part(i.part).outline.holes) for i in need.sheets[0].items)  # type: ignore[union-attr]
    for path in pieces:
        assert all(left <= x <= right and bottom <= y <= top for x, y in path.points)
    assert [w.text for w in drawn if isinstance(w, Words) and w.text in "ABC"].count("C") == 4


def test_letters_of_pieces_too_small_for_them_do_not_lie_on_each_other(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    need = context.needs.yields[0]
    for width in (90.0, 30.0):
        box = Box(10.0, 20.0, 10.0 + width, 20.0 + picture_height(need, width, 118.0))
        drawn = layout_picture(context, need, need.sheets[0], (1, 1), box)
        boxes = [words_box(context.type.faces, w) for w in drawn if isinstance(w, Words) and len(w.text) == 1]
        assert boxes
        assert not any(overlap(one, two) for one, two in combinations(boxes, 2))
