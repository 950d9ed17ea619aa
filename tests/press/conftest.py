"""A small pack made by hand, so that the press is tested without the rooms above it."""

from collections.abc import Callable
from pathlib import Path as FilePath

import pytest

from publisher.basics import Box, Layer, Promises, circle, polyline
from publisher.pages import (
    Attachment,
    Bookmark,
    Drawn,
    Fill,
    FontFile,
    LineStyle,
    Link,
    Pack,
    Page,
    Paper,
    Stroke,
    Words,
)

CUT = LineStyle("cut", 0.5)
FONT = FilePath(__file__).parents[2] / "publisher" / "pages" / "type" / "fonts" / "NotoSans-Regular.ttf"


@pytest.fixture(scope="session")
def font() -> FontFile:
    """The regular face that packs embed."""
    return FontFile("regular", FONT.read_bytes())


@pytest.fixture
def make_pack(font: FontFile) -> Callable[..., Pack]:
    """Return a function that makes a one-page A4 pack of the given drawn things."""

    def make(*drawn: Drawn, pages: int = 1, images: tuple = ()) -> Pack:  # type: ignore[type-arg]
        paper = Paper("a4", "A4", 210.0, 297.0, (6.35, 12.7, 6.35, 12.7), "ISO 216")
        made = tuple(Page(k + 1, str(k + 1), "templates", "Templates", 210.0, 297.0, drawn) for k in range(pages))
        return Pack(
            "3f2a90c1", False,
            "lock-stair", "1.0.0", "", "Lock-keeper's stair", "Ebbwater Patterns", "CC-BY-NC-4.0", "A stair", "en", paper, made,
            (Bookmark("Templates", 1),), (), (font,), images, (Attachment("facts.json", "Facts", "application/json", b"{}"),),
            Promises("Lock-keeper's stair", "en", (), (), (), (), (), ()), (),
        )  # fmt: skip

    return make


@pytest.fixture
def sample() -> tuple[Drawn, ...]:
    """A square, a circle, a fill, words and a link."""
    square = polyline(((50.0, 50.0), (150.0, 50.0), (150.0, 150.0), (50.0, 150.0)), True)
    return (
        Stroke(CUT, (square, circle((100, 220), 30)), Layer.OUTLINES),
        Fill(0.0, (polyline(((10.0, 10.0), (12.0, 10.0), (11.0, 12.0)), True),), Layer.NOTES),
        Words("Schleuse Ω Шлюз 50 mm", "regular", 4.0, 20.0, 30.0, Layer.NOTES, turn=90.0),
        Link(Box(20, 20, 40, 30), 1),
    )
