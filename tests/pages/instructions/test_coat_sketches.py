"""What is brushed on what stands, else on the parts: thinned glue all round, dark paint over all, light paint over what is raised."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Box
from publisher.joints import STANDS, Drawing, coat_scenes
from publisher.pages.instructions import coat_sketches as sketches
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Drawn, Fill, Words
from publisher.pages.sheet import ink_box
from publisher.pages.sheet.draft import Context


def whole(context: Context) -> Drawing:
    return next(d for d in context.joined.drawings if d.name.startswith("whole:"))


def keeps(context: Context, things: list[Drawn]) -> None:
    field = Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL).grown(1.5)
    assert max(box.beyond(field) for thing in things if (box := ink_box(context.type.faces, thing))) <= 0.0


def black(pen: SketchPen) -> float:
    """Return how much of a sketch is filled black (mm²)."""
    fills = [thing for thing in pen.drawn if isinstance(thing, Fill) and thing.grey == 0.0]
    return sum(shapely.Polygon(path.points).area for thing in fills for path in thing.paths)


@pytest.mark.parametrize("stands", [True, False])
def test_what_is_sealed_or_painted_is_what_stands_else_the_parts(stands: bool, demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    parts = [(part, 2) for part in context.parts]
    for draw in (
        lambda pen, drawing: sketches.sealing(pen, drawing, parts),
        lambda pen, drawing: sketches.painting(pen, drawing, parts, 25.0, raised=True),
        lambda pen, drawing: sketches.painting(pen, drawing, parts, 25.0, raised=False),
    ):
        pen = SketchPen(context.type, (0.0, 0.0))
        draw(pen, whole(context) if stands else None)
        keeps(context, pen.drawn)
        said = [thing.text for thing in pen.drawn if isinstance(thing, Words)]
        assert ("2 × A" in said) is not stands


def test_a_coat_goes_round_a_board_and_a_wrong_one_lies_on_one_face(demo: Callable[..., Context]) -> None:
    pen = SketchPen(demo("toll-house").type, (0.0, 0.0))
    sketches.sealed(pen)
    coats = [thing.paths[0] for thing in pen.drawn if isinstance(thing, Fill) and len(thing.paths[0].points) == 4]
    dark = shapely.union_all([shapely.Polygon(path.points) for path in coats if path.length > 8.0])
    rings = [piece for piece in shapely.get_parts(dark) if piece.interiors]
    assert len(rings) == 1  # one board alone has a coat all round


def test_boards_in_section_and_their_brushes_keep_to_the_field(demo: Callable[..., Context]) -> None:
    """What is promised of them is looked for there alone, where a screen shows no more than the field."""
    context = demo("toll-house")
    for draw in (sketches.sealed, sketches.painted_dark, sketches.painted_raised):
        pen = SketchPen(context.type, (0.0, 0.0))
        draw(pen)
        boxes = [box for thing in pen.drawn if (box := ink_box(context.type.faces, thing))]
        assert max(box.beyond(Box(0.0, 0.0, FIELD_WIDE, FIELD_TALL)) for box in boxes) <= 0.0


def test_the_dark_coat_covers_what_stands_and_the_light_one_leaves_it_in_dents(demo: Callable[..., Context]) -> None:
    context = demo("toll-house")
    shown = {}
    for raised in (True, False):
        pen = SketchPen(context.type, (0.0, 0.0))
        sketches.painting(pen, whole(context), [], 0.0, raised=raised)
        shown[raised] = {name for name, _, _ in pen.parts}
        assert black(pen) > 100.0
    assert {"scene:painted_dark", "scene:painted_raised"} <= shown[True]
    assert not {"scene:painted_dark", "scene:painted_raised"} & shown[False]
    dark, light = (SketchPen(context.type, (0.0, 0.0)) for _ in range(2))
    sketches.painted_dark(dark)
    sketches.painted_raised(light)
    assert 0.0 < black(light) < 0.4 * black(dark)


@pytest.mark.parametrize(
    "uses", [("white_glue",), ("acrylic_paint",), ("filler",), ("filler", "brushes"), ("spray_can",), ()]
)
def test_what_seals_is_drawn_as_it_is_promised(demo: Callable[..., Context], uses: tuple[str, ...]) -> None:
    """Filler was shown as thinned glue, with a coat all round."""
    context = demo("toll-house")
    pen = SketchPen(context.type, (0.0, 0.0))
    sketches.sealing(pen, whole(context), [], uses)
    keeps(context, pen.drawn)
    assert {name.removeprefix("scene:") for name, _, _ in pen.parts} - {STANDS} == set(coat_scenes("seal", uses))


@pytest.mark.parametrize("uses", [("acrylic_paint",), ("spray_paint",), ("varnish",)])
def test_what_paints_is_drawn_as_it_is_promised(demo: Callable[..., Context], uses: tuple[str, ...]) -> None:
    context = demo("toll-house")
    pen = SketchPen(context.type, (0.0, 0.0))
    sketches.painting(pen, whole(context), [], 25.0, raised=False, uses=uses)
    keeps(context, pen.drawn)
    assert {name.removeprefix("scene:") for name, _, _ in pen.parts} - {STANDS} == set(coat_scenes("paint", uses))
    assert (black(pen) > 50.0) is (uses == ("acrylic_paint",))


@pytest.mark.parametrize("name", ["quay", "island", "toll-house"])
def test_the_brush_that_seals_ends_beside_the_bottle(name: str, demo: Callable[..., Context]) -> None:
    context = demo(name)
    alone = {}
    for tool in ("brush", "bottle"):
        pen = SketchPen(context.type, (0.0, 0.0))
        drawn: list[Box] = []
        real = getattr(SketchPen, tool)

        def noted(self: SketchPen, *given: object, real: Callable[..., None] = real, drawn: list[Box] = drawn) -> None:
            before = len(self.drawn)
            real(self, *given)
            drawn.extend(box for one in self.drawn[before:] if (box := ink_box(context.type.faces, one)))

        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(SketchPen, tool, noted)
            sketches.sealing(pen, whole(context), ())
        alone[tool] = Box.round([corner for box in drawn for corner in box.corners()])
    assert alone["brush"].right < alone["bottle"].left or alone["brush"].bottom > alone["bottle"].top
