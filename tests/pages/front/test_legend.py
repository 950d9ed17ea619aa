"""The legend shows every kind of line, drawn as the pages draw it."""

from collections.abc import Callable
from dataclasses import replace

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark, Part
from publisher.pages.front.legend import HATCHED, LINES, STROKES, kinds_on, legend
from publisher.pages.model import Stroke, Words
from publisher.pages.type.styles import HATCH, TRIM, line_style
from publisher.pages.type.text import Setter


def test_every_kind_is_named_and_drawn_in_its_own_style(setter: Setter) -> None:
    block = legend(setter, 10.0, 100.0, 180.0, across=3)
    assert {t.style for t in block.drawn if isinstance(t, Stroke)} == {line_style(kind) for kind in LineKind}
    said = {t.text for t in block.drawn if isinstance(t, Words)}
    assert {name for _, name, _ in LINES} <= said
    assert {kind for kind, _, _ in LINES} == set(LineKind)


def test_a_pack_explains_the_lines_that_it_has_and_no_other(draw: Callable[..., Part]) -> None:
    wall = draw("wall_panel", width=60, height=40)
    assert kinds_on([wall]) == {LineKind.CUT}
    pencil = replace(wall, marks=(Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((5, 5), (20, 5)))),))
    assert kinds_on([wall, pencil]) == {LineKind.CUT, LineKind.DRAW}


def test_the_trim_line_of_tiles_is_told_from_a_score(setter: Setter) -> None:
    block = legend(setter, 10.0, 100.0, 180.0, across=3, trim=True)
    assert TRIM in {t.style for t in block.drawn if isinstance(t, Stroke)}
    assert TRIM.dash[0] < line_style(LineKind.SCORE).dash[0] / 3


def test_a_sample_is_long_enough_for_its_pattern(setter: Setter) -> None:
    for thing in legend(setter, 0.0, 0.0, 180.0).drawn:
        if isinstance(thing, Stroke):
            (start, end) = thing.paths[0].points
            assert end[0] - start[0] >= sum(thing.style.dash)


def test_the_height_is_what_is_drawn(setter: Setter) -> None:
    block = legend(setter, 0.0, 50.0, 180.0, across=2, title=False, signs=(STROKES, HATCHED))
    assert any("short strokes" in t.text for t in block.drawn if isinstance(t, Words))
    lowest = min(t.y for t in block.drawn if isinstance(t, Words))
    assert 50.0 - block.height <= lowest <= 50.0 - block.height + 5.4


def test_what_is_cut_out_is_shown_hatched_where_a_pack_has_openings(setter: Setter) -> None:
    for waste in (True, False):
        block = legend(setter, 10.0, 100.0, 180.0, waste=waste)
        assert (HATCH in {t.style for t in block.drawn if isinstance(t, Stroke)}) is waste
        assert ("cut it out and throw it away" in {t.text for t in block.drawn if isinstance(t, Words)}) is waste
