from typing import Any

import pytest

from publisher.basics import Box, LengthPromise, OutlinePromise, PagePromise, Pose, Promises
from publisher.proof.measuring.pixels import read_pixels, squares_of

PT = 72 / 25.4
SQUARE = Box(60.0, 80.0, 110.0, 130.0)


def promises(box: Box, limit: Box) -> Promises:
    a, b, c, d = box.corners()
    sides = tuple(LengthPromise(1, p, q, 50.0, "calibration", "50 mm") for p, q in ((a, b), (d, c), (a, d), (b, c)))
    page = PagePromise(1, 210.0, 297.0, "1", "templates", limit, False)
    return Promises("t", "en", (page,), sides, (), (), (), ())


@pytest.mark.parametrize(("wide", "high"), [(50.0, 50.0), (49.5, 50.0), (50.13, 50.04), (50.0, 48.6)])
def test_a_square_is_measured_to_a_fiftieth_of_a_millimetre(kit: Any, wide: float, high: float) -> None:
    drawn = Box(60.0, 80.0, 60.0 + wide, 80.0 + high)
    ticks = " ".join(kit.ring_code(((60.0 + i, 80.0), (60.0 + i, 82.0)), False) for i in range(int(wide)))
    content = f"{0.25 * PT} w {kit.box_code(drawn)} {ticks} S"
    found = read_pixels(kit.raw_pdf(content.encode()), promises(SQUARE, Box(5, 5, 205, 292)))
    (square,) = found.squares
    if high < 49:
        assert square.down is None
        assert square.across == pytest.approx(wide, abs=0.02)
    else:
        assert (square.across, square.down) == (pytest.approx(wide, abs=0.02), pytest.approx(high, abs=0.02))
    assert found.margins[0].pixels == 0


def test_ink_in_the_margin_is_seen_and_placed(kit: Any) -> None:
    content = f"{0.3 * PT} w {2 * PT} {50 * PT} m {3 * PT} {50 * PT} l S".encode()
    margin = read_pixels(kit.raw_pdf(content), promises(SQUARE, Box(5, 5, 205, 292))).margins[0]
    assert margin.pixels > 0
    assert margin.at == (pytest.approx(2.5, abs=1), pytest.approx(50, abs=1))


def test_sides_that_touch_make_one_square() -> None:
    assert squares_of(promises(SQUARE, SQUARE).lengths, 1) == (SQUARE,)
    assert squares_of(promises(SQUARE, SQUARE).lengths, 2) == ()


def test_what_the_second_reader_cannot_open_is_said() -> None:
    assert read_pixels(b"%PDF-1.7 nothing", promises(SQUARE, SQUARE)).trouble


@pytest.mark.parametrize(("covered", "light"), [(False, 0.0), (True, 60.0)])
def test_outlines_of_a_plotter_page_are_seen_in_little_memory(kit: Any, covered: bool, light: float) -> None:
    # ISO 216 A0: 841 × 1189 mm, 25 million dots at 127 dpi
    import tracemalloc

    box = Box(20.0, 20.0, 820.0, 1160.0)
    content = f"{0.5 * PT} w {kit.box_code(box)} S" + f" 1 g {100 * PT} {10 * PT} {60 * PT} {20 * PT} re f" * covered
    page = PagePromise(1, 841.0, 1189.0, "1", "templates", Box(5, 5, 836, 1184), False)
    outline = OutlinePromise(1, "deck", "A", 1, Pose(), (box.corners(),))
    data = kit.raw_pdf(content.encode(), box=b"[0 0 %f %f]" % (841.0 * PT, 1189.0 * PT))
    tracemalloc.start()
    try:
        (ring,) = read_pixels(data, Promises("t", "en", (page,), (), (outline,), (), (), ())).rings
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert ring.light == pytest.approx(light, abs=1.5)
    assert ring.smeared == 0.0
    assert peak < 60_000_000
