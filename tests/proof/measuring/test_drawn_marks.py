"""Lines to score, fold, draw and glue along: drawn where they are promised, by their own stroke."""

from typing import Any

import pytest

from publisher.basics import Box, MarkPromise
from publisher.proof.measuring.drawn_marks import read_marks
from publisher.proof.measuring.ink import Ink
from publisher.proof.reading.areas import covers
from publisher.proof.reading.reader import read_file

PT = 72 / 25.4
LINE = ((10.0, 20.0), (50.0, 20.0))


def ink(kit: Any, *strokes: tuple[float, float, float, float], width: float = 0.25, dash: str = "[] 0 d") -> Ink:
    drawn = "".join(f"{a * PT:.4f} {b * PT:.4f} m {c * PT:.4f} {d * PT:.4f} l S " for a, b, c, d in strokes)
    content = f"{width * PT:.4f} w {dash} {drawn}".encode()
    page = read_file(kit.raw_pdf(content), "test.pdf").pages[0]
    return Ink(page, covers(page))


def promise(**more: Any) -> MarkPromise:
    return MarkPromise(**{"page": 1, "part": "a", "copy": 1, "kind": "score", "lines": (LINE,), "width": 0.25, **more})


def test_a_line_that_is_there(kit: Any) -> None:
    (reading,) = read_marks((promise(),), ink(kit, (10, 20, 50, 20)))
    assert (reading.tried, reading.missing) == (21, 0)  # every 2 mm of 40, both ends too


def test_a_line_that_ends_early_is_told_with_the_place(kit: Any) -> None:
    (reading,) = read_marks((promise(),), ink(kit, (10, 20, 30.05, 20)))
    assert reading.missing == 10
    assert reading.at == pytest.approx((32.0, 20.0))


@pytest.mark.parametrize("away", [0.05, 0.2])
def test_a_line_beside_its_place_counts_only_within_a_tenth(kit: Any, away: float) -> None:
    (reading,) = read_marks((promise(),), ink(kit, (10, 20 + away, 50, 20 + away)))
    assert reading.missing == (0 if away < 0.1 else 21)


def test_a_line_of_another_width_or_dash_is_another_line(kit: Any) -> None:
    dashes = promise(dash=(3.0, 1.0))
    dashed = f"[{3 * PT:.4f} {1 * PT:.4f}] 0 d"
    assert read_marks((promise(),), ink(kit, (10, 20, 50, 20), width=0.5))[0].missing == 21
    assert read_marks((dashes,), ink(kit, (10, 20, 50, 20)))[0].missing == 21
    assert read_marks((promise(),), ink(kit, (10, 20, 50, 20), dash=dashed))[0].missing == 21
    assert read_marks((dashes,), ink(kit, (10, 20, 50, 20), dash=dashed))[0].missing == 0


def test_only_what_lies_in_the_window_is_asked_for(kit: Any) -> None:
    tiled = promise(window=Box(0.0, 0.0, 30.0, 100.0))
    (reading,) = read_marks((tiled,), ink(kit, (10, 20, 30, 20)))
    assert (reading.tried, reading.missing) == (10, 0)  # 10, 12 … 28: the last 0.2 mm belong to the clip


def test_an_empty_page_has_none_of_it_and_a_single_point_asks_for_nothing(kit: Any) -> None:
    whole, point = read_marks((promise(), promise(lines=(((1.0, 1.0),),))), ink(kit))
    assert (whole.tried, whole.missing) == (21, 21)
    assert (point.tried, point.missing) == (0, 0)
