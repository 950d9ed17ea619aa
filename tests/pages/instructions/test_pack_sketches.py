"""The sketches of a pack's own acts keep to their fields and say the pack's own numbers."""

from collections.abc import Callable

import pytest

from publisher.basics import Box
from publisher.geometry import Part
from publisher.pages.instructions import pack_sketches as sketches
from publisher.pages.instructions.pack_acts import pack_acts
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from publisher.pages.type import PICTURE_CUE, TRIM, Setter


def drawn(context: Context) -> dict[str, list[Drawn]]:
    found = {}
    for act in pack_acts(context, None):
        assert act.sketch is not None
        pen = SketchPen(context.type, (100.0, 50.0))
        act.sketch.draw(pen)
        found[act.key] = pen.drawn
    return found


def said(things: list[Drawn]) -> list[str]:
    return [thing.text for thing in things if isinstance(thing, Words)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["toll-house", "bridge", "lock-stair", "island", "quay"])
def test_each_act_has_a_sketch_that_keeps_to_its_field(slug: str, paper: str, demo: Callable[..., Context]) -> None:
    context = demo(slug, paper)
    field = Box(100.0, 50.0, 100.0 + FIELD_WIDE, 50.0 + FIELD_TALL).grown(1.5)
    for key, things in drawn(context).items():
        boxes = [box for thing in things if (box := ink_box(context.type.faces, thing))]
        assert len(boxes) > 5 and max(box.beyond(field) for box in boxes) <= 0.0, key


def test_sketches_say_what_is_measured_and_how_many(demo: Callable[..., Context]) -> None:
    house, stair, bridge = drawn(demo("toll-house")), drawn(demo("lock-stair")), drawn(demo("bridge"))
    assert "99.5 to 100.5 mm (3.92 to 3.95 in)" in said(house["act:print"])
    assert "4.7 to 5.3 mm (0.186 to 0.208 in)" in said(house["act:board"])
    assert {"20 scraps", "100.0 mm (3.94 in)"} <= {*said(stair["act:board"])}
    assert "2 × A   2 × B   2 × C" in said(house["act:mark"])
    assert {"1 × A", "1 × B"} <= {*said(bridge["act:tape"])} and "act:tape" not in house
    assert {"1 × A", "1 × B", "1 × C", "0.3 to 0.5 mm"} <= {*said(house["act:card"])}


def test_the_arrow_of_one_taped_template_stands_beside_its_word(demo: Callable[..., Context]) -> None:
    """It leads from tiles to what they become, which both stand in the middle."""
    things = drawn(demo("island", "letter"))["act:tape"]
    (word,) = (thing for thing in things if isinstance(thing, Words) and thing.text.startswith("A: page"))
    cues = [thing for thing in things if isinstance(thing, Stroke) and thing.style == PICTURE_CUE]
    (arrow,) = (
        thing for thing in cues if len(thing.paths[0].points) == 2
    )  # the other leads from tile to tile, round a seam
    box = ink_box(demo("island", "letter").type.faces, word)
    assert box is not None
    assert 0.5 < arrow.paths[0].points[0][0] - box.right < 5.0


def test_a_tile_ends_at_its_trim_line_and_has_paper_round_it_elsewhere(demo: Callable[..., Context]) -> None:
    """Two tiles: one of them is trimmed at its one seam, and no trim line runs round a sheet."""
    strokes = [t for t in drawn(demo("island", "letter"))["act:tape"] if isinstance(t, Stroke)]
    assert [len(t.paths[0].points) for t in strokes if t.style == TRIM] == [2]


@pytest.mark.parametrize(("slug", "upright"), [("bridge", True), ("island", False)])
def test_an_arrow_leads_from_the_tile_that_is_trimmed_to_the_one_under_it(
    slug: str, upright: bool, demo: Callable[..., Context]
) -> None:
    """Nothing else of the picture says which of the two lies over the other."""
    things = [thing for thing in drawn(demo(slug, "letter"))["act:tape"] if isinstance(thing, Stroke)]
    trims = [thing.paths[0].points for thing in things if thing.style == TRIM]
    arcs = [thing.paths[0].points for thing in things if thing.style == PICTURE_CUE and len(thing.paths[0].points) > 2]
    trim = next(line for line in trims if (line[0][0] == line[1][0]) == upright)
    along = 0 if upright else 1
    arc = min(arcs, key=lambda points: abs(points[8][along] - trim[0][along]))  # the eighth of its points is its middle
    after, seam, before = (at[along] * (1.0 if upright else -1.0) for at in (arc[0], trim[0], arc[-1]))
    assert before < seam < after


@pytest.mark.parametrize("rough", [["A", "B"], ["A", "B", "C", "D", "E", "F", "G", "H"]])
def test_after_taping_rough_pieces_are_glued_and_no_whole_pages(
    rough: list[str], setter: Setter, make_part: Callable[..., Part]
) -> None:
    """Tiles were cut out of their pages, so that no page is left to be glued whole."""
    whole, taped = (SketchPen(setter, (0.0, 0.0), 0.8) for _ in range(2))
    sketches.making_cards(whole, [make_part()], "pages 7-8", "0.4 mm")
    sketches.making_cards(taped, [make_part()], "pages 7-8", "0.4 mm", rough=rough, square="30 mm")
    said = [[thing.text for thing in pen.drawn if isinstance(thing, Words)] for pen in (whole, taped)]
    assert "pages 7-8" in said[0] and "pages 7-8" not in said[1] and "30 mm" in said[1]
    assert said[1].count("A") == 2  # the paper, and the card that is cut
    assert ("…" in said[1]) == (len(rough) > sketches.MOST_ROUGH)


@pytest.mark.parametrize(("scale", "square"), [(1.0, True), (0.5, False)])
def test_the_square_is_drawn_on_its_paper_where_that_ends_beside_the_arrow_to_the_books(
    scale: float, square: bool, setter: Setter, make_part: Callable[..., Part]
) -> None:
    """Words keep their size where a sketch is drawn smaller: a paper with both would cover the arrow that presses on the books."""
    pen, plain = (SketchPen(setter, (0.0, 0.0), scale) for _ in range(2))
    sketches.making_cards(pen, [make_part()], "pages 7-8", "0.4 mm", rough=["A"], square="1.18 in")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sketches, "_square_as_it_lies", lambda *_: None)
        sketches.making_cards(plain, [make_part()], "pages 7-8", "0.4 mm", rough=["A"], square="1.18 in")
    drawn_more = [thing for thing in pen.drawn if isinstance(thing, Stroke)]
    assert (len(drawn_more) > sum(isinstance(thing, Stroke) for thing in plain.drawn)) == square
    beside = [
        box
        for thing in pen.drawn
        if isinstance(thing, Words) and thing.text == "1.18 in"
        if (box := ink_box(setter.faces, thing))
    ]
    assert beside[0].right < scale * sketches.OVER_BOOKS or not square
