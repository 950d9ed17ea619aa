from math import cos, radians
from typing import Any

import pytest

from publisher.basics import Box, OutlinePromise, Pose, polar
from publisher.proof.measuring.ink import Ink
from publisher.proof.measuring.outlines import OutlineReading, read_outline
from publisher.proof.reading.areas import covers
from publisher.proof.reading.reader import read_file

PT = 72 / 25.4
SQUARE = ((0.0, 0.0), (60.0, 0.0), (60.0, 40.0), (0.0, 40.0))
DOOR = ((10.0, 10.0), (10.0, 30.0), (25.0, 30.0), (25.0, 10.0))


def reading(kit: Any, content: str, window: Box | None = None) -> OutlineReading:
    page = read_file(kit.raw_pdf(content.encode()), "test.pdf").pages[0]
    ink = Ink(page, covers(page))
    return read_outline(OutlinePromise(1, "wall", "A", 1, Pose(50.0, 60.0, 30.0), (SQUARE, DOOR), window), ink)


def code(kit: Any, *rings: Any) -> str:
    return f"{0.5 * PT} w " + " ".join(kit.ring_code(Pose(50.0, 60.0, 30.0).apply_all(r)) for r in rings) + " S "


def test_the_outline_as_promised(kit: Any) -> None:
    found = reading(kit, code(kit, SQUARE, DOOR))
    assert found.good
    assert found.farthest < 0.001
    assert found.times == pytest.approx(1.0, abs=0.02)
    assert found.width == pytest.approx(0.5)


def test_an_outline_may_be_drawn_in_separate_strokes(kit: Any) -> None:
    lines = [(a, b) for a, b in zip(SQUARE, (*SQUARE[1:], SQUARE[0]), strict=True)]
    pose = Pose(50.0, 60.0, 30.0)
    content = code(kit, DOOR) + " ".join(kit.ring_code(pose.apply_all(line), False) + " S" for line in lines)
    assert reading(kit, content).good


@pytest.mark.parametrize("off", [0.015, 0.025, 0.1, 0.5])
def test_the_distance_is_that_of_hausdorff(kit: Any, off: float) -> None:
    found = reading(kit, code(kit, tuple((x, y + off) for x, y in SQUARE), DOOR))
    assert found.farthest == pytest.approx(off, abs=0.002)
    assert not found.good


def test_a_missing_opening_is_named_by_its_ring(kit: Any) -> None:
    found = reading(kit, code(kit, SQUARE))
    assert not found.good
    assert found.ring == 1
    assert found.missing == pytest.approx(70.0, abs=1.0)


def test_dashes_are_no_outline(kit: Any) -> None:
    assert not reading(kit, "[9 3] 0 d " + code(kit, SQUARE, DOOR)).good


def test_a_copy_beside_the_outline_is_seen_and_other_lines_are_not(kit: Any) -> None:
    beside = code(kit, SQUARE, DOOR) + code(kit, tuple((x + 0.3, y) for x, y in SQUARE))
    assert reading(kit, beside).beside == pytest.approx(0.3, abs=0.02)
    thin = (
        code(kit, SQUARE, DOOR)
        + "0.5 w "
        + kit.ring_code(Pose(50.0, 60.0, 30.0).apply_all(tuple((x + 1, y) for x, y in SQUARE)))
        + " S"
    )
    assert reading(kit, thin).good
    tick = code(kit, SQUARE, DOOR, ((30.0, -2.0), (30.0, 3.0)))
    assert reading(kit, tick).good


def test_twice_over_itself(kit: Any) -> None:
    assert reading(kit, code(kit, SQUARE, DOOR) + code(kit, SQUARE)).times == pytest.approx(2.0, abs=0.03)


def test_only_what_the_window_shows_is_asked_for(kit: Any) -> None:
    window = Box(0.0, 0.0, 75.0, 297.0)
    clip = f"0 0 {75 * PT} {297 * PT} re W n "
    found = reading(kit, clip + code(kit, SQUARE, DOOR), window)
    assert found.good
    assert found.length < 200


@pytest.mark.parametrize(("off", "good"), [(0.004, True), (-0.004, True), (0.03, False)])
def test_a_curve_that_leaves_its_window_nearly_along_its_side_may_end_sooner(kit: Any, off: float, good: bool) -> None:
    """At an angle of a degree, 0.004 mm across are 0.2 mm along: the curve is as true as elsewhere."""
    disc = tuple(polar(60.0, radians(tenths / 10.0)) for tenths in range(3600))
    drawn = tuple(polar(60.0 + off, radians(tenths / 10.0)) for tenths in range(3600))
    pose = Pose(80.0, 100.0)
    side = 80.0 + 60.0 * cos(radians(1.05))
    clip = f"0 0 {side * PT} {297 * PT} re W n {0.5 * PT} w "
    page = read_file(kit.raw_pdf((clip + kit.ring_code(pose.apply_all(drawn)) + " S").encode()), "test.pdf").pages[0]
    promise = OutlinePromise(1, "disc", "A", 1, pose, (disc,), Box(0.0, 0.0, side, 297.0))
    assert read_outline(promise, Ink(page, covers(page))).good == good


def test_a_blank_page(kit: Any) -> None:
    found = reading(kit, "")
    assert not found.good
    assert found.missing == pytest.approx(found.length)


def test_a_tile_inside_its_part_shows_no_line_and_lacks_none(kit: Any) -> None:
    inside = Box.round([Pose(50.0, 60.0, 30.0).apply((5.0, 35.0))]).grown(1.0)
    found = reading(kit, code(kit, SQUARE, DOOR), inside)
    assert found.good and found.length == 0.0
