"""The cover shows the piece with its sizes, what it takes, and which pages to print, with links that lead there."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import OutlinePromise, Pose
from publisher.pages import Link, Stroke, Words
from publisher.pages.front.cover import about_drafts, cover_drafts
from publisher.pages.sheet.draft import Context, Numbers, TruePage

OUTLINE = OutlinePromise(4, "gable", "A", 1, Pose(40.0, 60.0), (((0.0, 0.0), (90.0, 0.0), (90.0, 60.0)),))
SHOWN = (
    TruePage(2, 210.0, 297.0, (), (), ()),
    TruePage(4, 210.0, 297.0, ("A",), (OUTLINE,), ()),
    TruePage(5, 210.0, 297.0, (), (), ()),
)
PLAN = (("Read first", 1, 1), ("Print the templates", 4, 5))
NUMBERS = Numbers(1, 9, (), (), (), PLAN, (2, 4, 5), SHOWN)


def words(context: Context) -> str:
    return " ".join(w.text for w in cover_drafts(context)[0].body(NUMBERS).drawn if isinstance(w, Words))


def test_the_print_plan_names_pages_and_links_to_them(demo: Callable[..., Context]) -> None:
    body = cover_drafts(demo("toll-house"))[0].body(NUMBERS)
    said = [w.text for w in body.drawn if isinstance(w, Words)]
    assert {"4-5", "Print the templates", "1"} <= set(said)
    assert {1, 4} <= {link.page for link in body.drawn if isinstance(link, Link)}


def test_the_print_list_can_be_copied_and_its_sheets_are_counted(demo: Callable[..., Context]) -> None:
    said = words(demo("toll-house"))
    assert "Print list: 2, 4-5 on paper: 3 sheets of A4 paper; read the rest on a screen." in said
    assert "3 sheets of A4 paper; 1 of them, and the fit coupon, are glued to thin card" in said


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["bridge", "toll-house", "quay"])
def test_all_stands_on_one_cover(demo: Callable[..., Context], slug: str, paper: str) -> None:
    context = demo(slug, paper)
    assert about_drafts(context) == ()
    body = cover_drafts(context)[0].body(NUMBERS)
    keys = {where.key for where in body.carried}
    promised = (*context.joined.sentences, *context.joined.pictures)
    wanted = {one.key for one in promised if one.key.startswith("cover:")}
    assert {key for key in wanted if not key.endswith(":sizes")} < keys, "sizes in words stand for views alone"
    said = words(context)
    for part in ("Do this first", "For a copy shop", "What it takes", "Pages that must print true", "4: A"):
        assert part in said


def test_what_a_small_cover_has_no_room_for_stands_after_the_print_check(demo: Callable[..., Context]) -> None:
    context = demo("toll-house", "a5")
    (about,) = about_drafts(context)
    said = " ".join(w.text for w in about.body(NUMBERS).drawn if isinstance(w, Words))
    assert "What it takes" in said and "Print list: 2, 4-5" in said
    assert "What it takes" not in words(context) and "Do this first" in words(context)


@pytest.mark.parametrize(("last", "pages"), [(2, "page 2"), (4, "pages 2-4")])
def test_a_buyer_first_prints_all_of_the_print_check(last: int, pages: str, demo: Callable[..., Context]) -> None:
    numbers = replace(NUMBERS, kinds=(("print_check", 2, last),))
    drawn = cover_drafts(demo("toll-house", "a5"))[0].body(numbers).drawn
    assert f"Print {pages} alone" in " ".join(w.text for w in drawn if isinstance(w, Words))


@pytest.mark.parametrize(("true", "rest"), [((2, 3), False), ((2, 3, 5), True)])
def test_the_rest_is_printed_only_where_there_is_one(
    true: tuple[int, ...], rest: bool, demo: Callable[..., Context]
) -> None:
    numbers = replace(NUMBERS, kinds=(("print_check", 2, 3),), true=true)
    drawn = cover_drafts(demo("toll-house"))[0].body(numbers).drawn
    said = " ".join(w.text for w in drawn if isinstance(w, Words))
    assert ("the rest of the print list" in said, "read page" in said) == (rest, True)


@pytest.mark.parametrize(("licence", "granted"), [("sell what you build", True), ("CC-BY-NC-4.0", False), ("", False)])
def test_a_shop_is_told_to_print_only_by_a_licence_that_says_so(
    licence: str, granted: bool, demo: Callable[..., Context]
) -> None:
    context = demo("toll-house")
    context = replace(context, design=replace(context.design, licence=licence))
    assert ("For a copy shop" in words(context)) == granted
    assert any("copy shop" in one.text for one in cover_drafts(context)[0].body(NUMBERS).texts) == granted


def test_what_the_boards_are_follows_from_real_layouts(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    sheets = {need.sheet.label: len(need.sheets) for need in context.needs.yields}
    assert f"{sheets['297 x 420 mm']} sheets of 297 x 420 mm" in words(context)


def test_the_assembled_piece_is_drawn_above_the_lists(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    body = cover_drafts(context)[0].body(NUMBERS)
    lines = [p for s in body.drawn if isinstance(s, Stroke) and s.style.name == "picture_outline" for p in s.paths]
    heading = next(w for w in body.drawn if isinstance(w, Words) and w.text == "What it takes")
    assert lines
    assert min(y for path in lines for _, y in path.points) > heading.y


def pictures(context: Context) -> list[float]:
    """Return how wide each picture of the cover is, in the order in which they stand."""
    body = cover_drafts(context)[0].body(NUMBERS)
    wholes = [where for where in body.carried if where.key.startswith(("cover:whole:", "cover:picture"))]
    strokes = [s for s in body.drawn if isinstance(s, Stroke) and s.style.name == "picture_outline"]
    across = [[x for path in s.paths for x, _ in path.points] for s in strokes[: len(wholes)]]
    return [max(xs) - min(xs) for xs in across]


def test_assemblies_stand_side_by_side_at_one_scale(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    apart = replace(context, design=replace(context.design, wholes=(), cover=None))  # no thing of the other assemblies
    whole = [d for d in context.joined.drawings if d.name.startswith("whole:")]
    assert len(whole) > 1
    scales = [w / d.width for w, d in zip(pictures(apart), whole, strict=True)]
    assert max(scales) / min(scales) < 1.02


def test_an_assembly_that_is_shown_in_a_larger_one_stands_in_no_picture_of_its_own(
    demo: Callable[..., Context],
) -> None:
    context = demo("bridge")
    (crossing,) = context.design.wholes
    shown = {f"whole:{thing.assembly}" for thing in crossing.things}
    drawn = {d.name for d in context.joined.drawings if d.name.startswith("whole:")}
    assert shown and shown < drawn
    assert len(pictures(context)) == len(drawn - shown) == 1
