from typing import Any

import pytest

from publisher.basics import LengthPromise
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.lengths import LengthReading, read_lengths
from publisher.proof.reading.areas import covers
from publisher.proof.reading.reader import read_file

PT = 72 / 25.4


def reading(
    kit: Any, lines: tuple[tuple[float, float, float, float], ...], purpose: Any, length: float = 50.0
) -> LengthReading:
    content = " ".join(f"{a * PT:.5f} {b * PT:.5f} m {c * PT:.5f} {d * PT:.5f} l S" for a, b, c, d in lines)
    page = read_file(kit.raw_pdf(content.encode()), "test.pdf").pages[0]
    ink = Ink(page, covers(page))
    return read_lengths((LengthPromise(1, (20.0, 30.0), (20.0 + length, 30.0), length, purpose),), ink)[0]


def test_a_line_in_one_piece_either_way_round(kit: Any) -> None:
    for line in ((20.0, 30.0, 70.0, 30.0), (70.0, 30.0, 20.0, 30.0)):
        found = reading(kit, (line,), "calibration")
        assert found.good
        assert found.found == pytest.approx(50.0, abs=1e-4)


def test_a_line_in_several_pieces(kit: Any) -> None:
    assert reading(kit, ((20, 30, 40, 30), (40, 30, 55, 30), (55, 30, 70, 30)), "ruler").good


def test_a_gap_is_no_line(kit: Any) -> None:
    found = reading(kit, ((20, 30, 40, 30), (41, 30, 70, 30)), "ruler")
    assert not found.good
    assert found.found is None


@pytest.mark.parametrize("off", [0.015, 0.05, -0.05, 0.3])
def test_the_length_found_is_the_length_drawn(kit: Any, off: float) -> None:
    found = reading(kit, ((20, 30, 70 + off, 30),), "calibration")
    assert not found.good
    assert found.found == pytest.approx(50 + off, abs=1e-3)


def test_a_line_beside_its_place_is_not_good(kit: Any) -> None:
    found = reading(kit, ((20, 30.05, 70, 30.05),), "calibration")
    assert not found.good
    assert found.away == pytest.approx(0.05, abs=1e-3)


def test_a_width_is_measured_between_two_lines_where_that_is_meant(kit: Any) -> None:
    sides = ((20, 10, 20, 60), (70, 10, 70, 60))
    assert reading(kit, sides, "card").good
    assert reading(kit, sides, "calibration").found is None
    assert not reading(kit, ((20, 10, 20, 60), (70.2, 10, 70.2, 60)), "card").good


def test_a_neighbouring_tick_does_not_stand_in_for_a_missing_one(kit: Any) -> None:
    assert reading(kit, ((20, 31, 22, 31),), "tick", 2.0).found is None


def test_a_page_without_lines_has_no_lengths(kit: Any) -> None:
    assert reading(kit, (), "dimension").found is None
