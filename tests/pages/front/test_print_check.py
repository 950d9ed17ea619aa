"""The print-check page: all that the buyer measures is there, on any paper, and nothing collides."""

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations

import pytest

from publisher.basics import Box, Refusal
from publisher.design import Design, PaperWish
from publisher.joints import Meeting
from publisher.joints.budget import board_ranges
from publisher.pages.front.check_pieces import wrong
from publisher.pages.front.check_squares import CheckForm
from publisher.pages.front.print_check import print_check_drafts
from publisher.pages.model import Words
from publisher.pages.sheet import kept_boxes, paper_for, tongue_of
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.sheet.page_checks import ink_box, words_box

Make = Callable[..., Context]
MEETINGS = (
    Meeting("wall.slot", "wall", "slot of part A for the tab of part B", 5.3, 5.2, 5.3),
    Meeting("wall.door", "wall", "door of part A for a 25 mm base", 30.0, 29.95),
)


def bodies(context: Context, numbers: Callable[..., Numbers]) -> list[Body]:
    return [draft.body(numbers(page)) for page, draft in enumerate(print_check_drafts(context), start=2)]


@pytest.mark.parametrize("paper", ["a4", "letter", "common", "a3", "tabloid", "legal"])
def test_one_page_with_everything_on_it(make_context: Make, numbers: Callable[..., Numbers], paper: str) -> None:
    context = make_context(paper, meetings=MEETINGS)
    (body,) = bodies(context, numbers)
    rulers = {p.label: p.length for p in body.lengths if p.purpose == "ruler"}
    assert rulers == {"180": 180.0, "240": 240.0}
    assert [p.length for p in body.lengths if p.purpose == "calibration"] == [100.0] * 4
    assert sum(p.purpose == "card" for p in body.lengths) == 4
    # eleven graduations; the coupon's slot and tab both ways
    assert sum(p.purpose == "gauge" for p in body.lengths) == 15


@pytest.mark.parametrize("paper", ["a4", "letter", "common", "a3", "a5"])
@pytest.mark.parametrize("slots", [True, False])
def test_inside_the_limit_and_no_words_on_words(
    make_context: Make, make_design: Callable[..., Design], numbers: Callable[..., Numbers], paper: str, slots: bool
) -> None:
    context = make_context(paper, make_design(slots=slots), meetings=MEETINGS)
    for draft, body in zip(print_check_drafts(context), bodies(context, numbers), strict=True):
        limit = draft.frame.limit
        for thing in body.drawn:
            box = ink_box(context.type.faces, thing)
            assert box is not None
            assert box.left >= limit.left and box.bottom >= limit.bottom
            assert box.right <= limit.right and box.top <= limit.top
        placed = [(w.text, words_box(context.type.faces, w).grown(-0.15)) for w in body.drawn if isinstance(w, Words)]
        for (one, a), (two, b) in combinations(placed, 2):
            apart = a.right <= b.left or b.right <= a.left or a.top <= b.bottom or b.top <= a.bottom
            assert apart, (one, two)


@pytest.mark.parametrize("use", ["trace", "paste"])
@pytest.mark.parametrize("language", ["en", "de"])
@pytest.mark.parametrize(("width", "height"), [(148.0, 210.0), (140.0, 190.0), (180.0, 180.0), (200.0, 170.0)])
def test_small_papers_keep_the_corner_of_the_code_in_longer_words(
    make_context: Make,
    make_design: Callable[..., Design],
    numbers: Callable[..., Numbers],
    width: float,
    height: float,
    language: str,
    use: str,
) -> None:
    design = make_design(language=language, use=use)
    context = make_context("a5", design, meetings=MEETINGS)
    context = replace(
        context,
        paper=replace(context.paper, width=width, height=height),
        type=replace(context.type, tongue=tongue_of(design)),
    )
    drafts = print_check_drafts(context)
    assert len(drafts) > 1
    for draft, body in zip(drafts[1:], bodies(context, numbers)[1:], strict=True):
        for words in (thing for thing in body.drawn if isinstance(thing, Words)):
            box = words_box(context.type.faces, words)
            assert not any(box.overlap(kept) > 0.0 for kept in kept_boxes(draft.frame)), words.text
            assert box.bottom >= draft.frame.text.bottom, words.text


def test_columns_of_readings_that_lack_room_share_what_there_is(
    make_context: Make, make_design: Callable[..., Design]
) -> None:
    design = make_design(language="de")
    context = make_context("a5", design, meetings=MEETINGS)
    context = replace(context, type=replace(context.type, tongue=tongue_of(design)))
    _, high = wrong(context, Box(0.0, 0.0, 125.0, 200.0), 3, CheckForm(False))
    assert high < 80.0  # no row is taller than four lines


@pytest.mark.parametrize("paper", ["letter", "legal", "tabloid"])
def test_where_inches_come_first_a_square_of_4_in_stands_round_that_of_100_mm(
    make_context: Make, numbers: Callable[..., Numbers], words: Callable[[Body], str], paper: str
) -> None:
    (body,) = bodies(make_context(paper), numbers)
    outer = [line for line in body.lengths if line.purpose == "dimension"]
    assert [line.length for line in outer] == [pytest.approx(101.6)] * 4
    assert [line.label for line in outer if line.label] == ["4 in", "4 in"]
    inner = Box.round(line.start for line in body.lengths if line.purpose == "calibration")
    assert Box.round(line.start for line in outer).sides == pytest.approx(inner.grown(0.8).sides)
    said = words(body).replace("\n", " ")
    assert "4 in outside, 100 mm inside" in said
    assert "4 in, less than 1/64 in more or less" in said  # 0.5 % of 4 in is 0.02 in, and half of 1/32 is 0.0156


@pytest.mark.parametrize("slug", ["bridge", "quay", "lock-stair"])
def test_a_letter_page_of_a_demo_has_room_for_both_squares(
    demo: Callable[..., Context], numbers: Callable[..., Numbers], slug: str
) -> None:
    context = demo(slug)
    (body,) = bodies(replace(context, paper=paper_for(context.design, "letter")), numbers)
    assert [line.label for line in body.lengths if line.purpose == "dimension"] == ["4 in", "", "", "4 in"]


def test_a_design_that_allows_less_than_a_rule_shows_is_measured_by_the_square_of_100_mm(
    make_context: Make, numbers: Callable[..., Numbers], words: Callable[[Body], str]
) -> None:
    (body,) = bodies(make_context("letter", meetings=MEETINGS), numbers)  # 99.9 to 100.0 mm
    said = words(body).replace("\n", " ")
    assert "1/64" not in said
    assert "Both must lie between 3.934 and 3.937 in (99.9 and 100.0 mm)" in said


def test_a_metric_paper_has_the_square_of_100_mm_alone(make_context: Make, numbers: Callable[..., Numbers]) -> None:
    (body,) = bodies(make_context("a4"), numbers)
    assert [line for line in body.lengths if line.purpose == "dimension"] == []


def test_the_words_follow_the_design(
    make_context: Make, numbers: Callable[..., Numbers], words: Callable[[Body], str]
) -> None:
    (body,) = bodies(make_context(meetings=MEETINGS), numbers)
    said = words(body)
    for needed in (
        "99.9 and 100.0 mm",  # 29.95 / 30 = 0.99833, rounded away from failure
        "slot of part A for the tab of part B gets too loose",
        "door of part A for a 25 mm base gets too tight",
        "5.00 mm (0.197 in)",
        "85.60 × 53.98 mm",
        "After gluing to card measure each page’s square again",
        "98 to under 99.9 mm",
        "95 to under 98 mm",
        "Go on between 4.8 and 5.2 mm (0.189 and 0.204 in)",
        "lift the card, cut on the pencil line",
        "You cut along the card",
        "0.1 mm a side: that comes on top",
    ):
        assert needed in said.replace("\n", " "), needed


def test_limits_are_rounded_away_from_failure_and_every_figure_is_promised(
    make_context: Make, numbers: Callable[..., Numbers], words: Callable[[Body], str]
) -> None:
    """29.956 / 30 = 99.853 %: 99.8 mm would be too little, and 100.04 % of an upper end gives 100.0 mm."""
    meetings = (
        Meeting("wall.door", "wall", "door of part A for a base", 30.0, 29.956),
        Meeting(
            "wall.slot", "wall", "slot of part A", 5.3, 5.2, 5.3022, board="foam", thickness=5.0, spread=0.2, boards=1.0
        ),
    )
    context = make_context(meetings=meetings)
    ranges = board_ranges(meetings, context.design.boards)
    context = replace(context, joined=replace(context.joined, boards=ranges))
    (body,) = bodies(context, numbers)
    said = words(body).replace("\n", " ")
    promised = {promise.text for promise in body.texts}
    assert {
        "between 99.9 and 100.0 mm (3.934 and 3.937 in)",
        "from 4.8 to 5.3 mm (0.189 to 0.208 in)",
        "99.9 to 100.0 mm",
    } <= promised
    for text in promised:
        assert text in said, text


def test_a_paper_too_low_for_the_usual_arrangement_puts_the_pieces_under_each_other(
    make_context: Make, make_design: Callable[..., Design], numbers: Callable[..., Numbers]
) -> None:
    place = make_design().parts[0].place
    design = make_design(papers=(PaperWish("low", 216.0, 250.0, None, place),))
    context = make_context("low", design, meetings=MEETINGS)
    assert len(bodies(context, numbers)) == 2


def test_a_small_paper_takes_more_pages_and_shorter_rulers(make_context: Make, numbers: Callable[..., Numbers]) -> None:
    context = make_context("a5")
    pages = bodies(context, numbers)
    assert len(pages) > 1
    assert [p.length for b in pages for p in b.lengths if p.purpose == "ruler"] == [110.0, 170.0]
    assert sum(p.purpose == "calibration" for b in pages for p in b.lengths) == 4
    assert len({d.key for d in print_check_drafts(context)}) == len(pages)


def test_a_paper_that_holds_no_square_is_refused(make_context: Make, make_design: Callable[..., Design]) -> None:
    place = make_design().parts[0].place
    design = make_design(papers=(PaperWish("slip", 110.0, 200.0, None, place),))
    with pytest.raises(Refusal) as refusal:
        print_check_drafts(make_context("slip", design))
    assert "100 mm" in refusal.value.findings[0].message
    assert "mm" in refusal.value.findings[0].hint and "more across" in refusal.value.findings[0].hint
    assert "more upwards" not in refusal.value.findings[0].hint
