"""Strokes and dark areas in and around promised parts that nobody promised."""

from typing import Any

import pytest

from publisher.basics import Box, OutlinePromise, Pose
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.unpromised_ink import promised_parts
from publisher.proof.reading.model import PageRead
from publisher.proof.reading.reader import read_file

PT = 72 / 25.4
SQUARE = ((20.0, 20.0), (60.0, 20.0), (60.0, 60.0), (20.0, 60.0))


def promise(window: Box | None = None, page: int = 1) -> OutlinePromise:
    return OutlinePromise(page, "a", "A", 1, Pose(), (SQUARE,), window, width=0.5)


def page(kit: Any, *more: str, width: float = 0.5) -> PageRead:
    """A page with the square drawn, and more operators in mm."""
    square = f"{width} w 20 20 40 40 re S "
    content = f"{PT:.6f} 0 0 {PT:.6f} 0 0 cm {square}{' '.join(more)}"
    return read_file(kit.raw_pdf(content.encode()), "test.pdf").pages[0]


def stray(kit: Any, *more: str, width: float = 0.5, window: Box | None = None) -> list[tuple[float, float]]:
    parts = promised_parts((promise(window),))[1]
    return [(s.width, s.away) for s in parts.stray_lines(Ink(page(kit, *more, width=width), ()), 1)]


def dark(kit: Any, *more: str, window: Box | None = None) -> float:
    parts = promised_parts((promise(window),))[1]
    return sum(found.area for found in parts.dark_areas(page(kit, *more)))


def test_the_promised_outline_is_no_stray_line(kit: Any) -> None:
    assert stray(kit) == []


@pytest.mark.parametrize(("width", "found"), [(0.5, 1), (0.3, 0)])
def test_a_line_as_heavy_as_a_cut_across_a_part_is_stray_and_a_thin_one_is_not(
    kit: Any, width: float, found: int
) -> None:
    assert len(stray(kit, f"{width} w 20 40 m 60 40 l S")) == found


def test_the_outline_in_another_width_is_not_the_promised_one(kit: Any) -> None:
    ((width, away),) = stray(kit, width=0.7)
    assert width == pytest.approx(0.7, abs=1e-3)
    assert away == pytest.approx(0.0, abs=1e-3)


def test_a_heavy_line_far_from_every_part_is_nobodys(kit: Any) -> None:
    assert stray(kit, "0.5 w 120 100 m 180 100 l S") == []


def test_dark_areas_are_measured_inside_the_part_only(kit: Any) -> None:
    assert dark(kit) == 0.0
    assert dark(kit, "0 g 10 30 20 20 re f") == pytest.approx(200.0, rel=1e-3)  # half of it lies on the part
    assert dark(kit, "0.9 g 10 30 20 20 re f") == 0.0
    assert dark(kit, "0 g 100 100 20 20 re f") == 0.0


def test_a_window_takes_the_rest_of_the_part_out_of_account(kit: Any) -> None:
    window = Box(0.0, 0.0, 40.0, 100.0)
    assert dark(kit, "0 g 30 30 20 20 re f", window=window) == pytest.approx(200.0, rel=1e-3)
    assert dark(kit, "0 g 45 30 10 20 re f", window=window) == 0.0


def test_where_a_dark_area_lies(kit: Any) -> None:
    (found,) = promised_parts((promise(),))[1].dark_areas(page(kit, "0 g 30 30 10 20 re f"))
    assert found.at == pytest.approx((35.0, 40.0), abs=0.01)


def test_parts_are_kept_by_their_page() -> None:
    parts = promised_parts((promise(), promise(page=3), promise(page=3)))
    assert {number: len(some.promises) for number, some in parts.items()} == {1: 1, 3: 2}
    assert parts[1].areas[0].area == pytest.approx(1600.0)
