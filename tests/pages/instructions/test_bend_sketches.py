"""What is bent: which face is covered and which is slit, and that both are told apart."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box
from publisher.geometry import Part
from publisher.pages.instructions import bend_sketches as sketches
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE, UP
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context
from publisher.pages.type import PICTURE_PAPER

FIELD = Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.0)


@pytest.fixture
def soffit(demo: Callable[..., Context]) -> Part:
    return next(part for part in demo("bridge").parts if part.bending is not None)


def bent(part: Part, **changes: object) -> Part:
    assert part.bending is not None
    return replace(part, bending=replace(part.bending, **changes))  # type: ignore[arg-type]


def said(drawn: list[Drawn]) -> list[str]:
    return [thing.text for thing in drawn if isinstance(thing, Words)]


def dots(drawn: list[Drawn]) -> int:
    return sum(isinstance(thing, Stroke) and thing.style == PICTURE_PAPER for thing in drawn)


@pytest.mark.parametrize(
    ("keeps", "covers", "slits"),
    [("outside", "outside", "inside"), ("inside", "inside", "outside"), ("middle", "outside", "outside")],
)
def test_the_face_that_stays_is_covered_and_the_other_one_slit(
    soffit: Part, keeps: str, covers: str, slits: str
) -> None:
    part = bent(soffit, keeps=keeps)
    assert (sketches.covered_face(part), sketches.slit_face(part)) == (covers, slits)
    assert sketches.covered_face(bent(soffit, covered="none")) is None
    assert sketches.slit_face(bent(soffit, slits=0)) is None


@pytest.mark.parametrize("draw", [sketches.covering, sketches.slitting_part, sketches.rolling])
@pytest.mark.parametrize("cover", ["paper", "tape"])
def test_what_covers_is_dotted_and_named_in_every_act(
    soffit: Part, demo: Callable[..., Context], draw: Callable[..., None], cover: str
) -> None:
    pen = SketchPen(demo("bridge").type, (0.0, 0.0))
    part = bent(soffit, covered=cover)
    draw(pen, [(part, 1), (replace(part, letter="Z"), 3)])
    assert dots(pen.drawn) and cover in said(pen.drawn)
    assert {"1 × D", "3 × Z"} <= set(said(pen.drawn))  # every part, not the first alone
    assert max(box.beyond(FIELD) for thing in pen.drawn if (box := ink_box(demo("bridge").type.faces, thing))) <= 0.0


def test_bare_parts_have_no_paper_and_whole_ones_no_slits(soffit: Part, demo: Callable[..., Context]) -> None:
    setter = demo("bridge").type
    for draw in (sketches.slitting_part, sketches.rolling):
        pen = SketchPen(setter, (0.0, 0.0))
        draw(pen, [(bent(soffit, covered="none"), 1)])
        assert not dots(pen.drawn) and "paper" not in said(pen.drawn)
    lines = []
    for slits in (38, 0):
        pen = SketchPen(setter, (0.0, 0.0))
        sketches.rolling(pen, [(bent(soffit, slits=slits), 1)])
        lines.append(sum(isinstance(thing, Stroke) for thing in pen.drawn))
    assert lines[0] > lines[1] + 5


def test_both_pictures_say_where_the_words_of_the_template_are(soffit: Part, demo: Callable[..., Context]) -> None:
    setter = demo("bridge").type
    for draw, sure in ((lambda pen: sketches.covering(pen, [(soffit, 1)], under=True), 1),
                       (lambda pen: sketches.slitting_part(pen, [(soffit, 1)], deep="3.3 mm"), 1),
                       (lambda pen: sketches.slitting_part(pen, [(soffit, 1)], up=False), 0)):  # fmt: skip
        pen = SketchPen(setter, (0.0, 0.0))
        draw(pen)
        assert said(pen.drawn).count(UP) == sure


def test_slits_of_several_parts_are_counted_by_their_letters(soffit: Part, demo: Callable[..., Context]) -> None:
    pen = SketchPen(demo("bridge").type, (0.0, 0.0))
    sketches.slitting_part(pen, [(soffit, 1), (bent(replace(soffit, letter="Z"), slits=9), 1)])
    assert any("D: 38 ×" in text for text in said(pen.drawn)) and any("Z: 9 ×" in text for text in said(pen.drawn))
