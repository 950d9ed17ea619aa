"""Parts to measure out: a program that reads nothing but the printed words and lines draws the finished piece again."""

import re
from collections.abc import Callable
from dataclasses import replace

import pytest
import shapely

from publisher.basics import Box, Place
from publisher.design import OpeningPlan, Parameter
from publisher.geometry import Part, polygon
from publisher.joints import with_promises
from publisher.pages import Words
from publisher.pages.front.measured_parts import measured_blocks
from publisher.pages.sheet.draft import Body, Context, Numbers
from publisher.pages.sheet.frame import make_frame

HERE = Place("spec.yaml", 3, 5)
NUMBERS = Numbers(3, 9, (), (), ())
MM = r"(\d+(?:\.\d+)?) mm"


def a_hole(name: str, kind: str, **sizes: float | str) -> OpeningPlan:
    return OpeningPlan(name, kind, tuple(Parameter(key, value, "", HERE) for key, value in sizes.items()), HERE)


HOLES = (
    a_hole("w", "window", head="square", width=20.0, height=25.0, centre=30.0, sill=30.0),
    a_hole("s", "slit", width=4.0, height=31.0, centre=64.0, sill=20.0),
    a_hole("v", "round_hole", diameter=6.0, centre=90.0, up=68.0),
)


@pytest.fixture(params=["a4", "letter", "a5"])
def shown(request: pytest.FixtureRequest, make_context: Callable[..., Context], draw: Callable[..., Part]) -> Context:
    parts = (
        draw("wall_panel", "A", printed="sizes", openings=HOLES, width=120, height=80),
        draw("rectangle", "B", printed="sizes", spare=1, width=280, height=8),
        draw("rectangle", "C", width=90, height=60),
    )
    context = make_context(request.param, parts=parts)
    return replace(context, joined=with_promises(context.design, parts, context.joined))


def bodies(context: Context) -> list[Body]:
    frame = make_frame(context.paper, False, 0.0)
    return [block.draw(frame.text.top, NUMBERS) for block in measured_blocks(context, frame)]


def said(body: Body) -> str:
    return " ".join(thing.text for thing in body.drawn if isinstance(thing, Words))


def test_only_parts_without_a_template_are_listed(shown: Context) -> None:
    frame = make_frame(shown.paper, False, 0.0)
    assert [block.parts for block in measured_blocks(shown, frame)] == [("part_a",), ("part_b",)]
    assert [part.letter for part in shown.templates] == ["C"]


def test_the_printed_words_draw_the_piece_again(shown: Context) -> None:
    words = said(bodies(shown)[0])
    if shown.paper.first == "in":
        words = re.sub(r"[\d.]+(?: × [\d.]+)? in \(([^)]*mm)\)", r"\1", words)
    words = re.sub(r" \([^)]* in\)", "", words)
    whole = re.search(rf"(\d+\.\d) × {MM}, foam", words)
    assert whole is not None, words
    piece = shapely.box(0.0, 0.0, float(whole[1]), float(whole[2]))
    for _, wide, high, left, up in re.findall(
        rf"(\d): an opening, (\d+\.\d) × {MM}; {MM} from the left, {MM} from below", words
    ):
        x, y = float(left), float(up)
        piece = piece.difference(shapely.box(x, y, x + float(wide), y + float(high)))
    for _, across, left, up in re.findall(
        rf"(\d): a round hole, {MM} across; its middle {MM} from the left, {MM} from below", words
    ):
        piece = piece.difference(shapely.Point(float(left), float(up)).buffer(float(across) / 2.0, quad_segs=64))
    own = polygon(shown.parts[0].outline)
    assert len(piece.interiors) == 3
    assert shapely.hausdorff_distance(piece.boundary, own.boundary, densify=0.1) < 0.06


def test_dimension_lines_span_the_sides_and_say_them(shown: Context) -> None:
    for body, (wide, high) in zip(bodies(shown), ((120.0, 80.0), (280.0, 8.0)), strict=True):
        where = next(one for one in body.carried if not one.key.endswith(":words"))
        assert where.box.width == pytest.approx(wide * where.scale)
        assert where.box.height == pytest.approx(high * where.scale)
        near = [text.text for text in body.texts if text.near]
        inches = shown.paper.first == "in"
        wanted = [f"{wide / 25.4:.2f} in", f"{high / 25.4:.2f} in"] if inches else [f"{wide:.1f} mm"]
        assert all(any(text.startswith(one) for text in near) for one in wanted), near


def test_words_and_drawing_keep_apart_and_inside_the_page(shown: Context) -> None:
    frame = make_frame(shown.paper, False, 0.0)
    for body in bodies(shown):
        drawing, words = (next(c.box for c in body.carried if c.key.endswith(":words") is w) for w in (False, True))
        assert drawing.overlap(words) <= 0.0
        for box in (drawing, words):
            assert Box(box.left, frame.text.bottom, box.right, frame.text.top).beyond(frame.text) <= 1e-6


def test_counts_and_spares_are_said(shown: Context) -> None:
    first, second = (said(body).replace("\u00a0", " ") for body in bodies(shown))
    assert "A Wall Panel, cut 2" in first and "B Rectangle, cut 2 + 1 spare" in second
