"""The cover shows what the spec asks for: a photograph at the size that its pixels bear, with the drawing beside it."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Box, Place
from publisher.brief import SpecFile
from publisher.design import PicturePlan
from publisher.joints import COVER_PICTURE
from publisher.pages import Picture, Stroke
from publisher.pages.front.cover_picture import LEAST_PICTURE, TALLEST_PHOTO, finished_piece
from publisher.pages.sheet.draft import Context

HERE = Place("spec.yaml", 11, 8)
BOX = Box(15.0, 120.0, 195.0, 230.0)
DOT = 25.4 / 150  # mm


def showing(context: Context, kind: str, target: str, *pixels: int) -> Context:
    files = (SpecFile(target, "picture", b"", *pixels),) if pixels else ()
    plan = PicturePlan(kind, target, 0, None, HERE)  # type: ignore[arg-type]
    return replace(context, design=replace(context.design, cover=plan, files=files))


def across(context: Context, box: Box = BOX) -> tuple[float, float]:
    strokes = [s for s in finished_piece(context, box, 1).drawn if isinstance(s, Stroke)]
    xs = [x for s in strokes for path in s.paths for x, _ in path.points]
    return min(xs), max(xs)


FINE, COARSE = pytest.mark.keeps("pages/photo-too-coarse"), pytest.mark.breaks("pages/photo-too-coarse")


@pytest.mark.parametrize(
    ("width", "height", "coarse"),
    [
        pytest.param(400, 480, False, marks=FINE),
        pytest.param(900, 300, False, marks=FINE),
        pytest.param(200, 150, True, marks=COARSE),
    ],
)
def test_a_photograph_stands_beside_the_drawing_at_the_size_that_it_bears(
    width: int, height: int, coarse: bool, demo: Callable[..., Context]
) -> None:
    context = showing(demo("toll-house"), "photo", "house.jpg", width, height)
    body = finished_piece(context, BOX, 1)
    (photo,) = [d.box for d in body.drawn if isinstance(d, Picture)]
    assert photo.width / photo.height == pytest.approx(width / height)
    assert photo.width / width <= DOT + 1e-9 and photo.height <= TALLEST_PHOTO + 1e-9
    assert photo.left == pytest.approx(BOX.left) and photo.right < BOX.left + BOX.width / 2
    left, right = across(context)
    assert photo.right < left < right <= BOX.right + 1e-6
    (carried,) = (where for where in body.carried if where.key == COVER_PICTURE)
    assert carried.box.left <= photo.left and photo.right <= carried.box.right + 1e-9
    assert [(f.check, f.place) for f in body.findings] == [("pages/photo-too-coarse", HERE)] * coarse
    if coarse:
        assert photo.width == pytest.approx(width * DOT) and "473 pixels" in str(body.findings[0].hint)


def test_a_drawing_that_the_spec_names_is_the_only_one(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    asked = showing(context, "part", context.parts[0].id)
    part = context.joined.drawing(f"part:{context.parts[0].id}")
    (carried,) = finished_piece(asked, BOX, 1).carried
    assert part is not None and carried.key == COVER_PICTURE
    left, right = across(asked)
    assert right - left == pytest.approx(part.width * carried.scale)
    unasked = replace(context, design=replace(context.design, cover=None))
    assert [where.key for where in finished_piece(unasked, BOX, 1).carried] == ["cover:whole:crossing"]


@pytest.mark.parametrize(
    ("height", "said"),
    [
        pytest.param(LEAST_PICTURE, False, marks=pytest.mark.keeps("pages/no-cover-picture")),
        pytest.param(LEAST_PICTURE - 0.1, True, marks=pytest.mark.breaks("pages/no-cover-picture")),
    ],
)
def test_a_cover_without_room_says_so_of_a_picture_that_is_asked_for(
    height: float, said: bool, demo: Callable[..., Context]
) -> None:
    low = Box(BOX.left, BOX.top - height, BOX.right, BOX.top)
    body = finished_piece(showing(demo("toll-house"), "part", "gable"), low, 1)
    assert [(f.check, f.place) for f in body.findings] == [("pages/no-cover-picture", HERE)] * said
    assert (body.drawn == ()) is said
    assert finished_piece(replace(demo("toll-house"), design=demo("toll-house").design), low, 1).findings == ()
