from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import Arc, Box, DrawnPromise, Layer, Line, Path, Point, circle, polar, polyline, weight_of
from publisher.pages.model import LineStyle, Stroke
from publisher.pages.record.drawn import drawn_promises
from publisher.press.pdf import _path_code
from publisher.proof.measuring.drawn_things import first_other, things_of
from publisher.proof.reading.model import PageRead
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72
CONTENT = (
    b"q 5 5 90 90 re W n 2 w [4 2] 0 d 0.5 G 10 10 m 20 10 l 30 30 20 20 re S Q 0.25 g 50 50 m 60 50 l 60 60 l h f*"
)


def weighed(*knots: Point) -> Point:
    return sum(x * MM * weight_of(k) for k, (x, _) in enumerate(knots)), sum(
        y * MM * weight_of(k) for k, (_, y) in enumerate(knots)
    )


LINES = DrawnPromise(
    1, "lines", (20 * MM, 20 * MM), Box(10 * MM, 10 * MM, 50 * MM, 50 * MM), (25 * MM, 20 * MM), 2, 1, 2 * MM,
    (4 * MM, 2 * MM), 0.5, clip=Box(5 * MM, 5 * MM, 95 * MM, 95 * MM), points=6,
    weighed=weighed((10, 10), (20, 10), (30, 30), (50, 30), (50, 50), (30, 50)),
)  # fmt: skip
AREA = DrawnPromise(
    1, "area", (50 * MM, 50 * MM), Box(50 * MM, 50 * MM, 60 * MM, 60 * MM), (50 * MM, 50 * MM), 1, 1, grey=0.25,
    points=3, weighed=weighed((50, 50), (60, 50), (60, 60)),
)  # fmt: skip


@pytest.fixture
def page(kit: Any) -> PageRead:
    (read,) = read_file(kit.raw_pdf(CONTENT), "test.pdf").pages
    return read


def test_what_was_placed_is_drawn(page: PageRead) -> None:
    assert [thing.kind for thing in things_of(page)] == ["lines", "area"]
    assert first_other(page, (LINES, AREA)) is None
    assert first_other(page, (replace(LINES, clip=None), AREA)) is None  # a page's own edge is no promise


@pytest.mark.parametrize(
    "change",
    [
        {"first": (20 * MM + 0.03, 20 * MM)},
        {"last": (25 * MM, 20 * MM - 0.03)},
        {"box": Box(10 * MM, 10 * MM, 50 * MM + 0.03, 50 * MM)},
        {"count": 3},
        {"closed": 0},
        {"width": 2 * MM + 0.03},
        {"dash": ()},
        {"grey": 0.0},
        {"clip": Box(6 * MM, 5 * MM, 95 * MM, 95 * MM)},
        {"kind": "area"},
        {"points": 5},
        {"weighed": (LINES.weighed[0] + 0.03, LINES.weighed[1])},
    ],
)
def test_the_first_thing_that_is_another_is_named(page: PageRead, change: dict[str, Any]) -> None:
    other = first_other(page, (replace(LINES, **change), AREA))
    assert other is not None and other.promised is not None and other.found is not None
    assert other.found.kind == "lines"


def test_a_thing_too_few_or_too_many(page: PageRead) -> None:
    more, less = first_other(page, (LINES, AREA, AREA)), first_other(page, (LINES,))
    assert more is not None and (more.promised, more.found) == (AREA, None)
    assert less is not None and less.promised is None and less.found is not None and less.found.kind == "area"


CURVED = polar(20.0, 0.4, (40.0, 40.0)), polar(20.0, 2.4, (40.0, 40.0))
SHAPES = (
    polyline(tuple((0.7 * k, 20.0 + (k * k) % 7) for k in range(60))),
    polyline(((10.0, 10.0), (30.0, 10.0), (30.0, 24.0), (10.0, 24.0)), True),
    circle((40.0, 40.0), 12.5),
    Path((Line("", CURVED[1], CURVED[0]), Arc.between("", *CURVED, (40.0, 40.0), 20.0))),
    Path((Arc.between("", *CURVED, (40.0, 40.0), 20.0, ccw=False),), closed=False),
    Path((Line("", (5.0, 5.0), (60.0, 5.0)), Line("", (60.0, 5.0), (60.0, 9.0)), Line("", (60.0, 9.0), (5.0, 5.0)))),
)


def written(kit: Any, code: str) -> PageRead:
    """Read a page on which a path is stroked, written by hand."""
    return read_file(kit.raw_pdf(f"q 0.7 w {code} S Q".encode()), "test.pdf").pages[0]


def placed(*paths: Path) -> DrawnPromise:
    (promise,) = drawn_promises(1, (Stroke(LineStyle("", 0.7 * MM), paths, Layer.NOTES),))
    return replace(promise, clip=None)


@pytest.mark.parametrize("shape", SHAPES)
def test_any_inner_point_that_moves_is_found(kit: Any, shape: Path) -> None:
    """By a thirtieth of a millimetre, wherever in a path of many points it stands, and in a curve its control points by a fifth."""
    code = " ".join(_path_code(shape))
    if " re" in code:
        code = kit.ring_code(shape.points)
    promise = placed(SHAPES[0], shape)
    before = " ".join(_path_code(SHAPES[0]))
    assert first_other(written(kit, f"{before} {code}"), (promise,)) is None
    numbers = code.split(" ")
    for place, word in enumerate(numbers):
        if word[-1].isdigit():
            curved = "c" in numbers[place : place + 7]
            other = str(float(word) + (0.2 if curved else 1 / 30) / MM)
            spoilt = " ".join((*numbers[:place], other, *numbers[place + 1 :]))
            assert first_other(written(kit, f"{before} {spoilt}"), (promise,)), place


@pytest.mark.parametrize(
    "away", [0.0005, 0.0008, 0.0009, 0.00098, 0.00099, 0.001, 0.00101, 0.00102, 0.0011, 0.0014, 0.002]
)
def test_a_line_that_all_but_ends_where_it_began_is_known_however_the_file_rounds_it(kit: Any, away: float) -> None:
    """Whether its last point is its first again is a matter of a hair, and the file writes places to a few millionths."""
    for k in range(24):
        x, y = polar(away, 0.26 * k, (30.0 + k / 7.0, 20.0))
        shape = polyline(((30.0 + k / 7.0, 20.0), (60.0, 20.0), (60.0, 41.0), (x, y)))
        assert first_other(written(kit, " ".join(_path_code(shape))), (placed(shape),)) is None, k


def test_words_are_said_where_they_begin(kit: Any) -> None:
    page = read_file(kit.good().write(), "good.pdf").pages[0]
    said = {thing.text: thing for thing in things_of(page) if thing.kind == "words"}
    assert said["100 mm"].first == (pytest.approx(120.0, abs=0.001), pytest.approx(245.0, abs=0.001))
