"""The ink of a page: what changes it and what does not."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, FurniturePromise, Layer, polyline
from publisher.pages.model import Drawn, Fill, LineStyle, Link, PackImage, Picture, Stroke, Words
from publisher.pages.record.ink import beside_furniture, digests_of, ink_id, words_of
from publisher.pages.sheet.draft import Context
from publisher.pages.sheet.page_checks import ink_box

STYLE = LineStyle("cut", 0.5)
LINE = Stroke(STYLE, (polyline(((50.0, 50.0), (90.0, 50.0))),), Layer.OUTLINES)
AREA = Fill(0.0, (polyline(((20.0, 60.0), (25.0, 60.0), (25.0, 65.0)), True),), Layer.NOTES)
SAID = Words("cut 14", "regular", 3.0, 60.0, 100.0, Layer.NOTES)
PHOTO = Picture("cover.jpg", Box(100.0, 100.0, 120.0, 120.0), "A house", Layer.PAGE)
NUMBER = Words("page 3 of 9", "regular", 3.0, 150.0, 14.0, Layer.PAGE)
DRAWN: tuple[Drawn, ...] = (LINE, AREA, SAID, PHOTO, NUMBER)
FOOTER = (FurniturePromise(3, "footer", Box(10.0, 12.0, 200.0, 20.0)),)

Ink = Callable[..., str]


@pytest.fixture
def ink(make_context: Callable[..., Context]) -> Ink:
    faces = make_context().type.faces
    files = faces.files()

    def found(*drawn: Drawn, photo: bytes = b"photo") -> str:
        boxes = tuple(ink_box(faces, thing) for thing in drawn)
        return ink_id(digests_of((*files, PackImage("cover.jpg", photo))), beside_furniture(drawn, boxes, FOOTER))

    return found


def test_furniture_links_layers_and_tags_are_no_ink(ink: Ink) -> None:
    other = replace(NUMBER, text="page 4 of 10")
    assert ink(*DRAWN) == ink(*DRAWN[:-1]) == ink(*DRAWN[:-1], other)
    assert ink(*DRAWN) == ink(*DRAWN, Link(Box(50.0, 50.0, 60.0, 60.0), 4))
    assert ink(*DRAWN) == ink(replace(LINE, layer=Layer.NOTES, tag="figure"), *DRAWN[1:])


@pytest.mark.parametrize(
    ("number", "other"),
    [
        (0, replace(LINE, paths=(polyline(((50.0, 50.0), (90.01, 50.0))),))),
        (0, replace(LINE, style=replace(STYLE, width=0.35))),
        (0, replace(LINE, style=replace(STYLE, dash=(3.0, 1.0)))),
        (0, replace(LINE, clip=Box(50.0, 40.0, 80.0, 60.0))),
        (1, replace(AREA, grey=0.5)),
        (2, replace(SAID, text="cut 15")),
        (2, replace(SAID, font="bold")),
        (2, replace(SAID, turn=90.0)),
        (3, replace(PHOTO, box=Box(100.0, 100.0, 121.0, 121.0))),
        (4, replace(NUMBER, y=19.0)),  # it reaches out of the footer
    ],
)
def test_whatever_prints_otherwise_is_other_ink(ink: Ink, number: int, other: Drawn) -> None:
    assert ink(*DRAWN[:number], other, *DRAWN[number + 1 :]) != ink(*DRAWN)


def test_another_photograph_under_the_same_name_is_other_ink(ink: Ink) -> None:
    assert ink(*DRAWN, photo=b"another") != ink(*DRAWN)


def test_the_words_outside_the_furniture(make_context: Callable[..., Context]) -> None:
    boxes = tuple(ink_box(make_context().type.faces, thing) for thing in DRAWN)
    assert words_of(beside_furniture(DRAWN, boxes, FOOTER)) == ("cut 14",)
