"""The cover shows the piece, what is needed, and which pages to print, with links that lead there."""

from collections.abc import Callable
from dataclasses import replace

from publisher.pages import Link, Stroke, Words
from publisher.pages.front.cover import cover_drafts
from publisher.pages.sheet.draft import Context, Numbers

NUMBERS = Numbers(1, 9, (), (), (), (("Read first", 1, 1), ("Print the templates", 4, 5)))


def test_the_print_plan_names_pages_and_links_to_them(demo: Callable[..., Context]) -> None:
    body = cover_drafts(demo("toll-house"))[0].body(NUMBERS)
    said = [w.text for w in body.drawn if isinstance(w, Words)]
    assert {"4-5", "Print the templates", "1"} <= set(said)
    assert [link.page for link in body.drawn if isinstance(link, Link)] == [1, 4]


def test_what_to_buy_follows_from_real_layouts(demo: Callable[..., Context]) -> None:
    context = demo("lock-stair")
    said = " ".join(w.text for w in cover_drafts(context)[0].body(NUMBERS).drawn if isinstance(w, Words))
    sheets = {need.sheet.label: len(need.sheets) for need in context.needs.yields}
    assert f"{sheets['297 x 420 mm']} sheets of 297 x 420 mm" in said
    assert "craft knife with spare blades" in said


def test_the_assembled_piece_is_drawn_above_the_lists(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    body = cover_drafts(context)[0].body(NUMBERS)
    lines = [p for s in body.drawn if isinstance(s, Stroke) and s.style.name == "picture_outline" for p in s.paths]
    heading = next(w for w in body.drawn if isinstance(w, Words) and w.text == "What you need")
    assert lines
    assert min(y for path in lines for _, y in path.points) > heading.y


def pictures(context: Context) -> list[float]:
    """Return how wide each picture of the cover is, in the order in which they stand."""
    body = cover_drafts(context)[0].body(NUMBERS)
    strokes = [s for s in body.drawn if isinstance(s, Stroke) and s.style.name == "picture_outline"]
    across = [[x for path in s.paths for x, _ in path.points] for s in strokes]
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
