"""Blocks of a phone's screens: as high as they say, with what they promise."""

from itertools import pairwise

import pytest

from publisher.basics import Box
from publisher.joints.model import Drawing, DrawingLabel, DrawnLine
from publisher.pages import Link, Stroke, Words
from publisher.pages.instructions.screens import (
    MOST_TICKS,
    ScreenBlock,
    cell_block,
    gap,
    height_of,
    listed_page,
    part_row,
    stacked,
    ticks,
    titled,
    together,
    words,
)
from publisher.pages.sheet.draft import Body, Numbers
from tests.pages.conftest import a_context, some_numbers

CONTEXT = a_context()
BOX = Box(5.0, 10.0, 85.0, 150.0)
NUMBERS = Numbers(4, 9, (("step:1:1", 7),), (), ())
LONG = "Lay the wall on its face, and press each of its tabs into the slot of the same letter. " * 3


def lowest(body: Body) -> float:
    return min(thing.y for thing in body.drawn if isinstance(thing, Words))


@pytest.mark.parametrize(
    "block",
    [
        words(CONTEXT, LONG, BOX.width),
        titled(CONTEXT, 117, LONG, BOX.width, "step:1:title"),
        part_row(CONTEXT, "AB12", 1200, LONG, BOX.width),
        listed_page(CONTEXT, "12", LONG, "step:1:1", BOX.width),
        together(words(CONTEXT, LONG, BOX.width), gap(3.0), words(CONTEXT, LONG, BOX.width)),
    ],
)
def test_a_block_stays_in_its_height_and_its_column(block: ScreenBlock) -> None:
    body = block.draw(BOX, NUMBERS)
    assert lowest(body) > BOX.top - block.height
    for thing in body.drawn:
        if isinstance(thing, Words):
            assert thing.size >= 3.5 and BOX.left <= thing.x <= BOX.right
    texts = [thing for thing in body.drawn if isinstance(thing, Words)]
    starts = sorted((one.y, one.x) for one in texts)
    assert len(set(starts)) == len(starts)  # no word begins where another does


def test_letter_count_and_name_of_a_part_keep_apart() -> None:
    body = part_row(CONTEXT, "AB12", 1200, "Wall", BOX.width).draw(BOX, NUMBERS)
    row = sorted((thing for thing in body.drawn if isinstance(thing, Words)), key=lambda one: one.x)
    assert [one.text for one in row] == ["AB12", "1200 ×", "Wall"]
    setter = CONTEXT.type
    for one, two in pairwise(row):
        face = setter.faces.bold if one is row[0] else setter.faces.regular
        assert one.x + face.width(one.text) * one.size < two.x


@pytest.mark.parametrize(("done", "of", "boxes", "marks"), [(0, 1, 1, 0), (2, 4, 4, 2), (12, 20, 1, 0)])
def test_a_box_for_each_screen_of_a_step_and_those_before_this_one_ticked(
    done: int, of: int, boxes: int, marks: int
) -> None:
    strokes = [thing for thing in ticks(CONTEXT, done, of).draw(BOX, NUMBERS).drawn if isinstance(thing, Stroke)]
    assert [len(one.paths) for one in strokes] == [boxes, *([marks] if marks else [])]
    said = [thing.text for thing in ticks(CONTEXT, done, of).draw(BOX, NUMBERS).drawn if isinstance(thing, Words)]
    assert said == ([] if of == 1 else [f"{done + 1} of {of}"])
    assert of <= MOST_TICKS or boxes == 1


def test_a_row_of_the_list_leads_to_its_page() -> None:
    body = listed_page(CONTEXT, "5", "Glue", "step:1:1", BOX.width).draw(BOX, NUMBERS)
    assert [thing.page for thing in body.drawn if isinstance(thing, Link)] == [7]
    assert "page 7" in [thing.text for thing in body.drawn if isinstance(thing, Words)]


def test_the_words_of_a_picture_are_as_large_as_others_on_a_screen() -> None:
    lines = (DrawnLine("outline", ((0.0, 0.0), (60.0, 0.0), (60.0, 30.0))),)
    drawing = Drawing("act:1:1", "an act", lines, (DrawingLabel("4 × C", (30.0, 10.0)),), 60.0, 30.0)
    block = cell_block(CONTEXT, drawing, BOX.width, 90.0)
    body = block.draw(BOX, some_numbers(2))
    assert [thing.size >= 3.5 for thing in body.drawn if isinstance(thing, Words)] == [True]
    (where,) = body.carried
    assert (where.key, where.page) == ("step:1:act:1", 2)
    assert where.scale == pytest.approx(1.25) and where.box.height <= block.height


def test_blocks_stand_under_each_other() -> None:
    one, two = words(CONTEXT, "one", BOX.width), words(CONTEXT, "two", BOX.width)
    first, second = (thing.y for thing in stacked((one, gap(7.0), two), BOX, NUMBERS).drawn if isinstance(thing, Words))
    assert first - second == pytest.approx(one.height + 7.0)
    assert height_of((one, gap(7.0), two)) == pytest.approx(one.height + two.height + 7.0)
