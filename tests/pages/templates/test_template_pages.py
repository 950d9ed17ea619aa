"""Template pages as drafts: titles, order, promises."""

from collections.abc import Callable
from math import dist

import pytest
import shapely

from publisher.basics import Layer, Pose
from publisher.design import Design
from publisher.geometry import Part, polygon
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Body, Context, Numbers, PageDraft
from publisher.pages.sheet.page_checks import words_box
from publisher.pages.templates.label_words import says
from publisher.pages.templates.labels import details
from publisher.pages.templates.spots import Spot, spot_drawn
from publisher.pages.templates.template_pages import leader
from publisher.pages.tiles.true_pages import true_page_drafts
from publisher.pages.type import as_polygon
from publisher.pages.type.styles import CUT, LEADER, LEAST_SIZE


def template_drafts(context: Context) -> tuple[PageDraft, ...]:
    return tuple(draft for draft in true_page_drafts(context) if draft.kind == "templates")


def test_the_most_used_part_comes_first_and_the_title_names_the_parts(
    make_context: Callable[..., Context], make_part: Callable[..., Part], stair_layer: Part
) -> None:
    base = make_part("base", "B", name="Base", width=184, height=184, count=1)
    drafts = template_drafts(make_context(parts=(base, stair_layer)))
    assert [d.title for d in drafts] == ["Templates: A Stair layer", "Templates: B Base"]
    assert [d.key for d in drafts] == ["templates:1", "templates:2"]
    assert {(d.kind, d.task) for d in drafts} == {("templates", "templates")}
    assert drafts[0].bookmarks == (("A Stair layer", 1, ""),)
    assert drafts[0].parts == (stair_layer.id,)


def test_a_long_title_names_letters_only(make_context: Callable[..., Context], make_part: Callable[..., Part]) -> None:
    parts = tuple(make_part(f"p{i}", chr(65 + i), 20, 12, name="A part with a name") for i in range(5))
    (draft,) = template_drafts(make_context(parts=parts))
    assert draft.title == "Templates: A · B · C · D · E"


def test_the_body_keeps_its_promises(
    make_context: Callable[..., Context], stair_layer: Part, numbers: Callable[..., Numbers]
) -> None:
    (draft,) = template_drafts(make_context(parts=(stair_layer,)))
    body = draft.body(numbers(page=4))
    assert isinstance(body, Body)
    (outline,) = body.outlines
    assert (outline.page, outline.part, outline.letter, outline.copy, outline.window) == (
        4,
        stair_layer.id,
        "A",
        1,
        None,
    )
    cut = [p for d in body.drawn if isinstance(d, Stroke) and d.style == CUT for p in d.paths]
    for drawn, promised in zip(cut[0].points, outline.pose.apply_all(outline.rings[0]), strict=True):
        assert drawn == pytest.approx(promised, abs=1e-9)
    words = [d for d in body.drawn if isinstance(d, Words)]
    for promise in body.texts:
        assert promise.page == 4 and promise.near
        found = [w for w in words if promise.text in w.text]
        assert found
        assert min(abs(w.x - promise.near[0]) + abs(w.y - promise.near[1]) for w in found) < 2 * promise.within
    inside = {"A", "cut 14 + 1 spare", "THIS SIDE UP", "Do not flip."}
    assert inside == {t.text for t in body.texts if (t.part, t.copy) == (stair_layer.id, 1)}
    assert {"Stair layer", "122.0 × 89.1 mm"} <= {t.text for t in body.texts if not t.part}
    assert all(w.size >= LEAST_SIZE for w in words)
    assert body.tiles[0].part == stair_layer.id


def test_words_and_lines_have_their_layers(
    make_context: Callable[..., Context], stair_layer: Part, numbers: Callable[..., Numbers]
) -> None:
    (draft,) = template_drafts(make_context(parts=(stair_layer,)))
    for thing in draft.body(numbers()).drawn:
        if isinstance(thing, Words):
            assert thing.layer is Layer.NOTES
        if isinstance(thing, Stroke) and thing.style == CUT:
            assert thing.layer is Layer.OUTLINES


def test_every_pasted_copy_is_promised(
    make_context: Callable[..., Context],
    make_design: Callable[..., Design],
    make_part: Callable[..., Part],
    numbers: Callable[..., Numbers],
) -> None:
    part = make_part(count=7, spare=1, width=60, height=45)
    drafts = template_drafts(make_context(design=make_design(use="paste"), parts=(part,)))
    copies = [o.copy for d in drafts for o in d.body(numbers()).outlines]
    assert sorted(copies) == list(range(1, 9))


@pytest.mark.keeps("pages/too-many-copies")
def test_parts_that_fit_no_page_are_left_to_the_tiles(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    assert template_drafts(make_context(parts=(make_part(width=480, height=100),))) == ()
    assert template_drafts(make_context(parts=())) == ()


@pytest.mark.breaks("pages/too-many-copies")
def test_more_copies_than_a_pack_takes_are_a_finding(
    make_context: Callable[..., Context],
    make_design: Callable[..., Design],
    make_part: Callable[..., Part],
    numbers: Callable[..., Numbers],
) -> None:
    part = make_part(count=1_000_000)
    (draft,) = template_drafts(make_context(design=make_design(use="paste"), parts=(part,)))
    (finding,) = draft.findings
    assert finding.check == "pages/too-many-copies" and finding.value == 1_000_000
    assert draft.body(numbers()) == Body()
    (fine,) = template_drafts(make_context(parts=(part,)))
    assert not fine.findings


def test_a_leader_ties_a_label_to_its_part(
    make_context: Callable[..., Context],
    stair_layer: Part,
    make_part: Callable[..., Part],
    numbers: Callable[..., Numbers],
) -> None:
    def leaders(part: Part) -> list[Stroke]:
        (draft,) = template_drafts(make_context(parts=(part,)))
        return [d for d in draft.body(numbers()).drawn if isinstance(d, Stroke) and d.style == LEADER]

    (line,) = leaders(stair_layer)
    a, b = line.paths[0].points
    assert 1.0 < dist(a, b) < 14.0
    assert leaders(make_part(width=120, height=100)) == []


def test_a_title_of_very_many_parts_names_the_first_and_counts_the_rest(
    make_context: Callable[..., Context], make_part: Callable[..., Part]
) -> None:
    parts = tuple(make_part(f"p{i}", f"A{chr(65 + i)}", 34.0 + i, 20.0) for i in range(24))
    for draft in template_drafts(make_context(parts=parts)):
        letters = [p.letter for p in parts if p.id in draft.parts]
        assert len(draft.title) <= 64
        if len(letters) > 12:
            shown, rest = draft.title.removeprefix("Templates: ").split(" · and ")
            named = shown.split(" · ")
            assert set(named) <= set(letters)
            assert rest == f"{len(letters) - len(named)} more"
    assert any("more" in d.title for d in template_drafts(make_context(parts=parts)))


@pytest.mark.parametrize(
    ("away", "in_the_way", "drawn"), [(30.0, False, True), (50.0, False, True), (50.0, True, False)]
)
def test_a_long_leader_crosses_nothing(
    make_context: Callable[..., Context], stair_layer: Part, away: float, in_the_way: bool, drawn: bool
) -> None:
    """A label far from its part is tied to it too, but never through another part."""
    context = make_context(parts=(stair_layer,))
    label = next(iter(details(context.type, says(context, stair_layer))))[0]
    left, bottom, right, top = polygon(stair_layer.template).bounds
    spot = Spot(label, (right + away, (bottom + top) / 2))
    other = shapely.box(right + 8.0, bottom, right + 9.0, top) if in_the_way else shapely.Point(left - 30.0, bottom)
    assert bool(leader(context.type, stair_layer, Pose(), spot, other)) is drawn


@pytest.mark.parametrize("way", [(0.0, -1.0), (1.0, 0.0), (0.0, 1.0), (-1.0, 0.0)])
@pytest.mark.parametrize("away", [6.0, 40.0])
def test_a_leader_keeps_off_the_words_of_its_own_label(
    make_context: Callable[..., Context], stair_layer: Part, way: tuple[float, float], away: float
) -> None:
    """A part may lie on any side of its label, and the words stand under the tag."""
    context = make_context(parts=(stair_layer,))
    label = next(iter(details(context.type, says(context, stair_layer))))[0]
    left, bottom, right, top = polygon(stair_layer.template).bounds
    x = {1.0: right + away, -1.0: left - away - label.width}.get(way[0], (left + right) / 2)
    y = {1.0: top + away, -1.0: bottom - away - label.height}.get(way[1], (bottom + top) / 2)
    spot = Spot(label, (x, y))
    (line,) = leader(context.type, stair_layer, Pose(), spot, shapely.Point(-900.0, -900.0))
    assert isinstance(line, Stroke)
    track = shapely.LineString(line.paths[0].points)
    for word in spot_drawn(context.type, spot, 0.0):
        if isinstance(word, Words) and word.text != stair_layer.letter:
            assert not track.intersects(as_polygon(words_box(context.type.faces, word))), word.text
