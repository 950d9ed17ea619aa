"""A laid-out sheet is drawn to scale, every piece in its place, with words that keep off its lines."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations

import pytest
import shapely

from publisher.basics import LayoutPromise
from publisher.material import Layout, different_sheets
from publisher.pages import Stroke, Words
from publisher.pages.front.layout_picture import MEASURE, PictureForm, SheetPicture, layout_picture, sheet_picture
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import words_box

WIDE = PictureForm(130.0, 38.0, False)
SIDE = PictureForm(90.0, 54.0, True)


def sheets(context: Context) -> list[tuple[LayoutPromise, Layout]]:
    """Return the promises of all different sheets with their layouts."""
    alike = [alike for need in context.needs.yields for alike in different_sheets(need)]
    return [(promise, one.layout) for promise, one in zip(context.needs.layouts, alike, strict=True)]


def picture(context: Context, number: int = 0, width: float = 187.0, form: PictureForm = WIDE) -> SheetPicture:
    return sheet_picture(context, *sheets(context)[number], width, form)


def test_the_promised_layout_carried_to_the_page_is_what_is_drawn(demo: Callable[..., Context]) -> None:
    """Turned so that its long side runs across; every piece where it is promised, inside the sheet."""
    context = demo("quay")
    shown = picture(context)
    drawn, (_, where, *_) = layout_picture(context, shown, 10.0, 200.0, 7)
    promise = shown.promise
    assert (where.key, where.page, where.pose.turn) == (promise.key, 7, 270.0)
    assert where.box.width / where.box.height == pytest.approx(promise.height / promise.width)
    assert where.box.left == pytest.approx(10.0 + MEASURE)
    pieces = next(s for s in drawn if isinstance(s, Stroke) and s.style.name == "piece").paths
    rings = [ring for place in promise.places for ring in place.rings]
    assert len(rings) == len(pieces)
    for ring, path in zip(rings, pieces, strict=True):
        carried = where.pose.apply_all(tuple((x * where.scale, y * where.scale) for x, y in ring))
        assert shapely.hausdorff_distance(shapely.LinearRing(carried), shapely.LinearRing(path.points)) < 0.01
        assert where.box.grown(1e-6).common(where.box.round(carried)) == where.box.round(carried)


@pytest.mark.parametrize("form", [WIDE, SIDE, PictureForm(40.0, 38.0, True)])
def test_every_piece_has_its_measures_in_it_or_in_the_list(demo: Callable[..., Context], form: PictureForm) -> None:
    """However small the picture is: each once, and each cut in its order."""
    context = demo("bridge")
    shown = picture(context, form=form)
    drawn, carried = layout_picture(context, shown, 10.0, 200.0, 1)
    keys = [where.key for where in carried]
    assert len(set(keys)) == len(keys)
    assert {shown.promise.key_of("piece", n) for n in range(1, 20)} <= set(keys)
    assert {shown.promise.key_of("cut", n) for n in range(1, len(shown.promise.cuts) + 1)} <= set(keys)
    said = [thing.text for thing in drawn if isinstance(thing, Words)]
    assert sum(text.count("→") for text in said) == 19
    low = min(words_box(context.type.faces, t).bottom for t in drawn if isinstance(t, Words))
    assert low >= 200.0 - shown.height - 0.5


def test_words_lie_neither_on_each_other_nor_on_lines(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    for number, form in ((0, WIDE), (1, SIDE), (2, PictureForm(40.0, 38.0, True))):
        shown = picture(context, number, form=form)
        drawn, (_, where, *_) = layout_picture(context, shown, 10.0, 250.0, 1)
        inside = [t for t in drawn if isinstance(t, Words) and where.box.left < t.x < where.box.right]
        boxes = [words_box(context.type.faces, t) for t in inside if where.box.bottom < t.y < where.box.top]
        assert boxes
        letters = [box.grown(-0.6) for box in boxes]  # less accents and descenders, which these words lack
        assert not any(one.overlap(two) > 0.0 for one, two in combinations(letters, 2))
        lines = [
            shapely.LineString(path.points)
            for t in drawn
            if isinstance(t, Stroke) and t.style.name in ("piece", "straight_cut", "offcut")
            for path in t.paths
        ]
        assert not any(line.intersects(shapely.box(*box.sides)) for line in lines for box in letters)


def test_nothing_of_a_picture_is_grey(demo: Callable[..., Context]) -> None:
    """It survives a printer in black and white."""
    context = demo("bridge")
    drawn, _ = layout_picture(context, picture(context), 10.0, 200.0, 1)
    assert {t.style.grey for t in drawn if isinstance(t, Stroke)} == {0.0}
    assert {t.grey for t in drawn if isinstance(t, Words)} == {0.0}


def test_a_sheet_that_lies_is_measured_from_its_lower_edge(demo: Callable[..., Context]) -> None:
    context = demo("quay")
    promise, layout = sheets(context)[0]
    lying = replace(promise, width=800.0, height=520.0)
    shown = sheet_picture(context, lying, layout, 187.0, WIDE)
    drawn, (_, where, *_) = layout_picture(context, shown, 10.0, 200.0, 1)
    assert where.pose.turn == 0.0
    said = [t.text for t in drawn if isinstance(t, Words)]
    assert "→3 ↑99" in said and any(text.endswith("the left and the bottom edge.") for text in said)
