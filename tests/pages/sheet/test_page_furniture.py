"""Furniture: corner marks at the limit and inside it, words that a buyer needs, the calibration square."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from math import dist

import pytest

from publisher.basics import Box
from publisher.design import Design
from publisher.pages.model import Fill, Stroke, Words
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.sheet.frame import make_frame
from publisher.pages.sheet.page_checks import ink_box, words_box
from publisher.pages.sheet.page_furniture import CLIPPED, PRINT_SO, furniture, heading_of

Make = Callable[..., Context]


@pytest.mark.parametrize("paper", ["a4", "letter", "a5", "common", "a1"])
@pytest.mark.parametrize("landscape", [False, True])
@pytest.mark.parametrize(
    ("side", "trial"), [(50.0, ""), (30.0, "trial: reach 96 mm"), (0.0, "trial: " + 40 * "width 96 mm, ")]
)
def test_all_ink_lies_inside_the_limit_and_the_corner_marks_touch_it(
    make_context: Make, numbers: Callable[..., Numbers], paper: str, landscape: bool, side: float, trial: str
) -> None:
    context = make_context(paper)
    frame = make_frame(context.paper, landscape, side)
    body = furniture(
        context.type, frame, heading_of(context.design, context.paper, "3f2a90c1", trial), "Templates", numbers(3)
    )
    boxes = [box for box in (ink_box(context.type.faces, thing) for thing in body.drawn) if box is not None]
    limit = frame.limit
    assert min(b.left for b in boxes) == pytest.approx(limit.left)
    assert min(b.bottom for b in boxes) == pytest.approx(limit.bottom)
    assert max(b.right for b in boxes) == pytest.approx(limit.right)
    assert max(b.top for b in boxes) == pytest.approx(limit.top)
    assert body.findings == ()
    assert [said.text[:16] for said in body.texts if said.text.startswith("trial")] == ([trial[:16]] if trial else [])
    words = [ink_box(context.type.faces, thing) for thing in body.drawn if isinstance(thing, Words)]
    low = [box for box in words if box is not None and box.top < frame.live.bottom]
    assert all(one.overlap(other) <= 0.01 for one, other in combinations(low, 2))


def test_there_are_four_corner_marks_of_two_arms(make_context: Make, numbers: Callable[..., Numbers]) -> None:
    context = make_context()
    frame = make_frame(context.paper, False, 0.0)
    body = furniture(context.type, frame, heading_of(context.design, context.paper, "3f2a90c1", ""), "Steps", numbers())
    marks = next(t for t in body.drawn if isinstance(t, Stroke) and t.style.name == "frame")
    assert len(marks.paths) == 4
    for path in marks.paths:
        near = min(frame.limit.corners(), key=lambda c: dist(c, path.points[1]))
        assert dist(near, path.points[1]) == pytest.approx(marks.style.width / 2 * 2**0.5)


def test_the_words_that_a_buyer_needs(
    make_context: Make,
    make_design: Callable[..., Design],
    numbers: Callable[..., Numbers],
    words: Callable[[Body], str],
) -> None:
    context = make_context("letter", make_design(variant="wide", variant_title="for 40 mm bases"))
    frame = make_frame(context.paper, False, 50.0)
    said = words(
        furniture(
            context.type,
            frame,
            heading_of(context.design, context.paper, "3f2a90c1", ""),
            "Templates",
            numbers(3, 14),
        )
    )
    for needed in (
        PRINT_SO,
        CLIPPED,
        "page 3 of 14",
        "version 1.0.0 · 3f2a · Letter paper",
        "Templates",
        "50 mm (1.97 in)",
    ):
        assert needed in said
    assert "Toll house, for 40 mm bases" in said


@pytest.mark.parametrize("side", [50.0, 30.0])
def test_the_calibration_square_is_square_and_ticked_on_both_axes(
    make_context: Make, numbers: Callable[..., Numbers], side: float
) -> None:
    context = make_context()
    frame = make_frame(context.paper, False, side, "upper_left")
    body = furniture(
        context.type, frame, heading_of(context.design, context.paper, "3f2a90c1", ""), "T", numbers(3, 14)
    )
    sides = [p for p in body.lengths if p.purpose == "calibration"]
    assert len(sides) == 4
    assert all(p.length == side and dist(p.start, p.end) == pytest.approx(side, abs=1e-9) for p in sides)
    assert sum(p.label == f"{side:g} mm" for p in sides) == 2
    ticks = [p for p in body.lengths if p.purpose == "tick"]
    across = {round(p.start[0] - frame.calibration.left, 6) for p in ticks if p.start[1] == frame.calibration.bottom}  # type: ignore[union-attr]
    up = {round(p.start[1] - frame.calibration.bottom, 6) for p in ticks if p.start[0] == frame.calibration.left}  # type: ignore[union-attr]
    assert across == up == {float(n) for n in range(1, int(side))}
    assert body.codes[0].text == "TOLL-HOUSE/3/14/3F2A90C1/S"


@pytest.mark.keeps("pages/title-too-long")
def test_furniture_is_light(make_context: Make, numbers: Callable[..., Numbers]) -> None:
    context = make_context()
    body = furniture(
        context.type,
        make_frame(context.paper, False, 50.0),
        heading_of(context.design, context.paper, "3f2a90c1", ""),
        "T",
        numbers(),
    )
    strokes = sum(len(p.points) for t in body.drawn if isinstance(t, Stroke) for p in t.paths)
    rectangles = sum(len(t.paths) for t in body.drawn if isinstance(t, Fill))
    assert strokes + rectangles < 700


@pytest.mark.breaks("pages/title-too-long")
def test_a_title_that_runs_on_is_cut_and_found(
    make_context: Make, make_design: Callable[..., Design], numbers: Callable[..., Numbers]
) -> None:
    context = make_context(design=make_design(title="m" * 10_000))
    frame = make_frame(context.paper, False, 0.0)
    body = furniture(context.type, frame, heading_of(context.design, context.paper, "3f2a90c1", ""), "Steps", numbers())
    assert [f.check for f in body.findings] == ["pages/title-too-long"]
    assert max(b.right for t in body.drawn if (b := ink_box(context.type.faces, t))) <= frame.limit.right + 1e-9


@pytest.mark.parametrize("paper", ["a5", "a4", "letter"])
def test_the_words_of_the_footer_stand_apart(
    make_context: Make, make_design: Callable[..., Design], numbers: Callable[..., Numbers], paper: str
) -> None:
    context = make_context(paper, make_design(version="12.10.33"))
    frame = make_frame(context.paper, False, 0.0, strip=15.0)
    body = furniture(
        context.type, frame, heading_of(context.design, context.paper, "3f2a90c1", ""), "Steps", numbers(38, 40)
    )
    low = [t for t in body.drawn if isinstance(t, Words) and t.y < frame.live.bottom]
    assert len(low) == 5
    for one, two in combinations(low, 2):
        a, b = (words_box(context.type.faces, w) for w in (one, two))
        assert one.y != two.y or a.right + 2.0 < b.left or b.right + 2.0 < a.left


@pytest.mark.parametrize(
    ("use", "said"),
    [
        ("trace", "The card is smaller than the piece: trace, lift it, cut on the pencil line."),
        ("paste", "To paste: glue to the board, cut through paper and board."),
    ],
)
@pytest.mark.parametrize("paper", ["letter", "a5"])
def test_every_page_names_the_way_of_use(
    make_context: Callable[..., Context],
    make_design: Callable[..., Design],
    numbers: Callable[..., Numbers],
    use: str,
    said: str,
    paper: str,
) -> None:
    context = make_context(paper, make_design(use=use))
    heading = heading_of(context.design, context.paper, "3f2a90c1", "")
    body = furniture(context.type, make_frame(context.paper, False, 0.0), heading, "Templates", numbers(3, 14))
    ways = [said] if paper == "letter" else [said.split(":", maxsplit=1)[0] + ".", f"To {use}."]
    assert any(way in [promise.text for promise in body.texts] for way in ways)
    boxes = [b for t in body.drawn if isinstance(t, Words) and (b := words_box(context.type.faces, t))]
    assert all(not _over(a, b) for i, a in enumerate(boxes) for b in boxes[:i])


def _over(a: Box, b: Box) -> bool:
    return a.left < b.right and b.left < a.right and a.bottom + 0.15 < b.top and b.bottom + 0.15 < a.top


def test_the_footer_names_the_boards_where_there_is_room(make_context: Make, numbers: Callable[..., Numbers]) -> None:
    """A pack for another thickness must not be taken for this one; a trial says its own sizes, and a narrow paper has no room."""
    boards = "foam 4.76 mm (0.19 in), sold as 3/16 in"

    def said(width: float, trial: str = "") -> list[str]:
        context = make_context()
        paper = replace(context.paper, width=width)
        heading = heading_of(context.design, paper, "3f2a90c1", trial, boards)
        body = furniture(context.type, make_frame(paper, False, 0.0), heading, "Steps", numbers())
        promised = [t.text for t in body.texts if t.text == boards]
        assert all(any(boards in w.text for w in body.drawn if isinstance(w, Words)) for _ in promised)
        return promised

    assert said(210.0) == [boards]
    assert said(210.0, "Trial: board 4.76 mm in place of 5 mm") == []
    assert said(120.0) == []


@pytest.mark.parametrize(("side", "said"), [(50.0, True), (30.0, False)])
def test_a_square_with_room_says_what_its_readings_may_be(
    make_context: Make, numbers: Callable[..., Numbers], side: float, said: bool
) -> None:
    context = make_context()
    frame = make_frame(context.paper, False, side, "upper_left")
    for scales, wanted in (((0.995, 1.005), said), (None, False)):
        heading = heading_of(context.design, context.paper, "3f2a90c1", "", scales=scales)
        words = [
            thing.text
            for thing in furniture(context.type, frame, heading, "T", numbers(3, 14)).drawn
            if isinstance(thing, Words)
        ]
        assert ("49.75 to 50.25 mm" in words) is wanted
