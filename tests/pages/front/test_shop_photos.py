"""The designer's photographs of the finished piece in the pictures for a shop."""

import pytest

from publisher.basics import Box, Place
from publisher.brief import SpecFile
from publisher.design import PicturePlan
from publisher.joints import shop_photo
from publisher.pages.front.shop_pages import SHOP_PICTURES, shop_drafts, shop_picture_names
from publisher.pages.front.shop_photos import (
    PHOTO_OF,
    beside_photo,
    coarse_for_a_shop,
    photo_name,
    photo_shapes,
    shown_photo,
)
from publisher.pages.model import Picture
from publisher.pages.sheet.draft import Context
from tests.pages.conftest import a_context, a_design, some_numbers

HERE = Place("spec.yaml", 9, 12)
WIDE, SQUARE, TALL = Box(0.0, 0.0, 180.0, 100.0), Box(0.0, 0.0, 150.0, 150.0), Box(0.0, 0.0, 100.0, 180.0)


def photographed(*pixels: tuple[int, int]) -> Context:
    files = tuple(SpecFile(f"{n}.jpg", "picture", b"", *size) for n, size in enumerate(pixels))
    photos = tuple(PicturePlan("photo", file.name, 0, None, HERE) for file in files)
    return a_context(design=a_design(files=files, photos=photos))


def test_upright_photographs_have_upright_pictures_and_all_have_names_in_their_order() -> None:
    context = photographed((1600, 1200), (1200, 1600))
    assert photo_shapes(context) == (("photo-1", 200.0, 150.0), ("photo-2", 150.0, 200.0))
    drafts = shop_drafts(context)
    usual = [name for name, _, _ in SHOP_PICTURES]
    assert [draft.key.partition(":")[2] for draft in drafts] == [*usual, "photo-1", "photo-2"]
    assert shop_picture_names(len(drafts)) == (*usual, photo_name(1), photo_name(2))
    assert shop_picture_names(len(usual)) == tuple(usual)


@pytest.mark.parametrize("name", ["cover", "wide", "square"])
def test_the_first_one_stands_with_the_piece_and_each_on_its_own(name: str) -> None:
    context = photographed((1600, 1200), (1200, 1600))
    shown = {}
    for draft in shop_drafts(context):
        body = draft.body(some_numbers())
        key = draft.key.partition(":")[2]
        shown[key] = [thing.image for thing in body.drawn if isinstance(thing, Picture)]
        assert {where.key for where in body.carried if where.key.startswith("shop:")} == {
            shop_photo(int(image[0]) + 1) for image in shown[key]
        }
        assert all(thing.box.beyond(draft.frame.text) <= 1e-9 for thing in body.drawn if isinstance(thing, Picture))
    assert shown[name] == ["0.jpg"] and (shown["photo-1"], shown["photo-2"]) == (["0.jpg"], ["1.jpg"])


@pytest.mark.parametrize(
    ("room", "pixels", "beside"),
    [
        (WIDE, (1600, 1200), True),
        (TALL, (1600, 1200), False),
        (SQUARE, (2000, 1000), False),
        (SQUARE, (1000, 2000), True),
    ],
)
def test_photograph_and_drawing_share_the_room_so_that_the_photograph_is_large(
    room: Box, pixels: tuple[int, int], beside: bool
) -> None:
    context = photographed(pixels)
    photo, rest = beside_photo(context, room)
    assert photo.overlap(rest) <= 0.0 and max(photo.beyond(room), rest.beyond(room)) <= 1e-9
    assert (photo.height == room.height) is beside and (rest.height == room.height) is beside
    share = photo.width / room.width if beside else photo.height / room.height
    assert 0.2 < share <= PHOTO_OF + 1e-9
    (drawn,) = shown_photo(context, 1, photo, 1).drawn
    assert isinstance(drawn, Picture) and drawn.box.width / drawn.box.height == pytest.approx(pixels[0] / pixels[1])


@pytest.mark.parametrize(("pixels", "coarse"), [((1600, 1200), 0), ((600, 700), 0), ((400, 300), 1)])
def test_a_coarse_one_is_told_where_the_spec_names_it(pixels: tuple[int, int], coarse: int) -> None:
    found = coarse_for_a_shop(photographed(pixels))
    assert [(one.check, one.place) for one in found] == [("pages/photo-too-coarse", HERE)] * coarse
    assert all("697 pixels" in str(one.hint) for one in found)
