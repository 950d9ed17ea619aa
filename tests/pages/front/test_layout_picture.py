"""A laid-out sheet is drawn to scale, every piece in its place."""

from collections.abc import Callable
from itertools import combinations

import pytest
import shapely

from publisher.basics import Box
from publisher.material import different_sheets
from publisher.pages import Stroke, Words
from publisher.pages.front.layout_picture import MEASURE, layout_picture, sheet_picture
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import words_box


def test_pieces_lie_inside_the_sheet_and_keep_the_scale(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    need = context.needs.yields[0]
    width = 90.0
    shown = sheet_picture(context, need, different_sheets(need)[0], width, 118.0)
    drawn, where = layout_picture(context, shown, Box(10.0, 20.0, 10.0 + width, 20.0 + shown.height), 7)
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
    assert (where.key, where.page) == (f"layout:foam:{need.sheet.label}:1", 7)
    assert (where.box.left, where.box.bottom, where.box.right, where.box.top) == pytest.approx(
        (left, bottom, right, top)
    )


def test_the_promised_layout_carried_to_the_page_is_what_is_drawn(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    for need in context.needs.yields:
        shown = sheet_picture(context, need, different_sheets(need)[0], 90.0, 118.0)
        drawn, where = layout_picture(context, shown, Box(10.0, 20.0, 100.0, 20.0 + shown.height), 1)
        promise = next(p for p in context.needs.layouts if p.key == where.key)
        pieces = next(s for s in drawn if isinstance(s, Stroke) and s.style.name == "piece").paths
        rings = [ring for place in promise.places for ring in place.rings]
        assert len(rings) == len(pieces)
        for ring, path in zip(rings, pieces, strict=True):
            carried = where.pose.apply_all(tuple((x * where.scale, y * where.scale) for x, y in ring))
            away = shapely.hausdorff_distance(shapely.LinearRing(carried), shapely.LinearRing(path.points))
            assert away < 0.01


def test_letters_of_pieces_too_small_for_them_do_not_lie_on_each_other(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    need = context.needs.yields[0]
    for width in (90.0, 30.0):
        shown = sheet_picture(context, need, different_sheets(need)[0], width, 118.0)
        drawn, _ = layout_picture(context, shown, Box(10.0, 20.0, 10.0 + width, 20.0 + shown.height), 1)
        boxes = [words_box(context.type.faces, w) for w in drawn if isinstance(w, Words) and len(w.text) == 1]
        assert boxes
        assert not any(one.overlap(two) > 0.0 for one, two in combinations(boxes, 2))
