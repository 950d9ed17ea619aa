"""The designer's photographs of the finished piece on the pages of which a shop shows pictures."""

from dataclasses import replace

from publisher.basics import Box, Carried, Finding, Pose
from publisher.joints import shop_photo
from publisher.pages.sheet import SHOP_LONG, SHOP_SHORT, Body, Context, coarse_photo, photo_size, place_photo
from publisher.pages.type import GUTTER

PHOTO_TALL = 118.0  # mm that a photograph has on a picture of its own: 697 pixels at the fewest dots
PHOTO_OF = 0.58  # of the room for the piece: what a photograph takes, and leaves the rest to the drawing with its sizes
SAID_OF_PHOTO = "A photograph of the finished piece"


def photo_shapes(context: Context) -> tuple[tuple[str, float, float], ...]:
    """Return name, width and height (mm) of the picture that each photograph has of its own: upright ones stand, wide ones lie."""
    found: list[tuple[str, float, float]] = []
    for number, plan in enumerate(context.design.photos, 1):
        file = context.design.file(plan.target)
        upright = file is not None and (file.height_px or 0) > (file.width_px or 0)
        shape = (SHOP_SHORT, SHOP_LONG) if upright else (SHOP_LONG, SHOP_SHORT)
        found.append((photo_name(number), *shape))
    return tuple(found)


def photo_name(number: int) -> str:
    """Return how the picture of a photograph, from 1, is called."""
    return f"photo-{number}"


def shown_photo(context: Context, number: int, box: Box, page: int) -> Body:
    """Place a photograph, from 1, in the middle of a box as large as it bears."""
    plan = context.design.photos[number - 1]
    drawn = place_photo(context.design, plan.target, box, context.type.say(SAID_OF_PHOTO))
    return Body(drawn, carried=(Carried(shop_photo(number), page, box, Pose(), 1.0),))


def beside_photo(context: Context, room: Box) -> tuple[Box, Box]:
    """Return what the first photograph takes of the room for the piece, and what it leaves: beside each other or one over the other,
    whichever shows it larger."""
    name = context.design.photos[0].target
    beside = photo_size(context.design, name, room.width * PHOTO_OF, room.height) or (0.0, 0.0)
    over = photo_size(context.design, name, room.width, room.height * PHOTO_OF) or (0.0, 0.0)
    if beside[0] >= over[0]:  # it keeps its shape: the wider one is the larger one
        edge = room.left + beside[0]
        return replace(room, right=edge), replace(room, left=edge + GUTTER)
    edge = room.top - over[1]
    return replace(room, bottom=edge), replace(room, top=edge - GUTTER)


def coarse_for_a_shop(context: Context) -> tuple[Finding, ...]:
    """Return the findings for photographs with too few pixels to fill their own picture."""
    return tuple(
        found
        for plan in context.design.photos
        for found in coarse_photo(context.design, plan, SHOP_LONG, PHOTO_TALL, "the pictures for a shop")
    )
