"""The page of one part: which part it takes, where it lies, what it says."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.geometry import Part
from publisher.pages.front import one_part_drafts
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.templates import with_top_marks
from tests.pages.conftest import a_context, a_design, a_part, words_of

NUMBERS = Numbers(2, 2, (), (("print_check", 1, 1),), ())


def of_parts(*parts: Part, paper: str = "a4", **changes: str) -> Context:
    return replace(a_context(paper, a_design(slots=False, **changes), parts), purpose="test_page")


def body_of(context: Context) -> Body:
    (draft,) = one_part_drafts(context)
    return draft.body(NUMBERS)


def test_the_smallest_part_that_is_handy_is_taken_and_cut_once() -> None:
    large, small = a_part("large", "A", 150.0, 90.0), a_part("small", "B", 60.0, 50.0)
    strip = a_part("strip", "C", 80.0, 10.0)  # the smallest, and too narrow to show how a board cuts
    body = body_of(of_parts(large, small, strip))
    assert [(one.part, one.copy) for one in body.outlines] == [("small", 1)]
    said = words_of(body).replace("\u00a0", " ")
    assert "Make part B, which lies below." in said
    assert "60.0 × 50.0 mm (2.36 × 1.97 in)" in said
    assert "cut 1" in said and "cut 2" not in said  # of two that the pack cuts


def test_the_part_lies_under_all_words_of_the_page() -> None:
    body = body_of(of_parts(a_part(width=150.0, height=90.0)))
    (outline,) = body.outlines
    top = max(outline.pose.apply(point)[1] for point in outline.rings[0])
    words = [thing.y for thing in body.drawn if getattr(thing, "text", "").startswith("terms of its own")]
    assert top < min([thing.y for thing in body.drawn if getattr(thing, "tag", "") == "li"] + words)


def test_a_paper_without_room_under_the_words_has_the_part_on_the_next_page() -> None:
    words, part = one_part_drafts(of_parts(a_part(width=110.0, height=100.0), paper="a5"))
    assert (words.parts, part.parts) == ((), ("wall",))
    assert "Make part A, which lies on the next page." in words_of(words.body(NUMBERS))
    assert [one.part for one in part.body(NUMBERS).outlines] == ["wall"]


def test_a_part_that_no_page_holds_is_not_shown() -> None:
    (words,) = one_part_drafts(of_parts(a_part(width=900.0, height=700.0)))
    assert words.body(NUMBERS).outlines == ()
    assert "Make part" not in words_of(words.body(NUMBERS))


@pytest.mark.parametrize(
    ("licence", "said"),
    [
        (
            "personal use",
            "hand it on unchanged, and put it where others can take it. The pack has terms of its own: personal use.",
        ),
        ("CC-BY-4.0", "Licence: CC-BY-4.0."),
    ],
)
def test_only_where_the_licence_is_ours_it_may_be_handed_on(licence: str, said: str) -> None:
    words = " ".join(words_of(body_of(of_parts(a_part(), licence=licence))).split())
    assert said in words
    assert ("hand it on" in words) == (licence == "personal use")


def test_nothing_is_said_of_a_licence_that_nobody_gave() -> None:
    assert "icence" not in words_of(body_of(of_parts(a_part(), licence="")))


@pytest.mark.parametrize(("use", "said"), [("trace", "Glue it to card"), ("paste", "Glue the print on a scrap")])
def test_it_is_made_as_the_pack_is_used(use: str, said: str) -> None:
    assert said in words_of(body_of(of_parts(a_part(), use=use)))


def test_the_demos_have_a_part_under_the_words_on_both_papers(demo: Callable[..., Context]) -> None:
    for slug in ("toll-house", "quay", "lock-stair"):
        for paper in ("a4", "letter"):
            made = demo(slug, paper)
            drafts = one_part_drafts(replace(made, parts=with_top_marks(made.parts, made.joined), purpose="test_page"))
            assert [len(draft.parts) for draft in drafts] == [1], (slug, paper)
