"""What a tile page says beside its seams."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Layer
from publisher.geometry import Part
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.templates.template_labels import samples
from publisher.pages.tiles.tile_furniture import info_drawn, size_lines
from publisher.pages.tiles.tile_plan import tiling
from publisher.pages.type.styles import DIMENSION


def test_the_size_line_runs_from_end_to_end_over_all_tiles(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    part = make_part(width=480, height=100)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    spans: list[float] = []
    for cell in plan.cutting.cells:
        drawn = size_lines(context.type, plan, cell, "mm")
        x, _ = plan.shift(cell)
        points = [
            p[0] - x for d in drawn if isinstance(d, Stroke) and d.style == DIMENSION for q in d.paths for p in q.points
        ]
        spans += [min(points), max(points)]
        assert "480.0 mm (18.90 in), whole template" in {w.text for w in drawn if isinstance(w, Words)}
        assert all(d.layer is Layer.DIMENSIONS for d in drawn if isinstance(d, Stroke | Words))
    assert (min(spans), max(spans)) == (0.0, 480.0)
    assert spans[1] > spans[2]


def test_words_say_where_to_trim_and_where_to_lay(
    make_context: Callable[..., Context], draw: Callable[..., Part], words: Callable[[Body], str]
) -> None:
    part = draw("disc", radius=142)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    keys = tuple((plan.key(c), 11 + i) for i, c in enumerate(plan.cutting.cells))
    said = [
        words(info_drawn(context.type, plan, cell, "row", Numbers(n, 20, keys, (), ()), "mm")[0])
        for n, cell in enumerate(plan.cutting.cells, 11)
    ]
    assert "Leave the glue area on" in said[0]
    assert "at the left" in said[1] and "glue area of page 11" in said[1]
    assert "at the top" in said[2] and "glue area of page 11" in said[2]
    assert "glue area of page 12 and 13" in said[3] and "283.2 × 283.2 mm" in said[3]


def test_words_stay_in_their_place_where_even_a_small_map_leaves_too_little(
    make_context: Callable[..., Context],
    draw: Callable[..., Part],
    words: Callable[[Body], str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    part = draw("disc", radius=142)
    context = make_context(parts=(part,))
    plan = tiling(context, samples(context, part)[0])
    cell = plan.cutting.cells[-1]
    place = plan.place(cell)
    assert place.info is not None
    numbers = Numbers(11, 20, tuple((plan.key(c), 11 + i) for i, c in enumerate(plan.cutting.cells)), (), ())
    lowest = []
    for height in (60.0, 33.0):
        info = replace(place.info, bottom=place.info.top - height)
        monkeypatch.setattr(type(plan), "place", lambda *_, info=info: replace(place, info=info))
        body, last = info_drawn(context.type, plan, cell, "row", numbers, "mm", "UP: the outside face.")
        assert "UP: the outside face." in words(body)
        lowest.append(last.bottom - info.bottom)
    assert min(lowest) >= 0.0, lowest
