from dataclasses import replace
from typing import Any

import pytest

from publisher.basics import Box, DrawnPromise
from publisher.proof.measuring.drawn_things import first_other, things_of
from publisher.proof.reading.model import PageRead
from publisher.proof.reading.reader import read_file

MM = 25.4 / 72
CONTENT = (
    b"q 5 5 90 90 re W n 2 w [4 2] 0 d 0.5 G 10 10 m 20 10 l 30 30 20 20 re S Q 0.25 g 50 50 m 60 50 l 60 60 l h f*"
)
LINES = DrawnPromise(
    1, "lines", (20 * MM, 20 * MM), Box(10 * MM, 10 * MM, 50 * MM, 50 * MM), (25 * MM, 20 * MM), 2, 1, 2 * MM,
    (4 * MM, 2 * MM), 0.5, clip=Box(5 * MM, 5 * MM, 95 * MM, 95 * MM),
)  # fmt: skip
AREA = DrawnPromise(
    1, "area", (50 * MM, 50 * MM), Box(50 * MM, 50 * MM, 60 * MM, 60 * MM), (50 * MM, 50 * MM), 1, 1, grey=0.25
)


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


def test_words_are_said_where_they_begin(kit: Any) -> None:
    page = read_file(kit.good().write(), "good.pdf").pages[0]
    said = {thing.text: thing for thing in things_of(page) if thing.kind == "words"}
    assert said["100 mm"].first == (pytest.approx(120.0, abs=0.001), pytest.approx(245.0, abs=0.001))
