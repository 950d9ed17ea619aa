"""The sketches of what is done to what stands already: it waits and is held, and is finished."""

from collections.abc import Sequence

import shapely

from publisher.basics import Box, Point
from publisher.joints import FROM_BOTTLES, LIES_ON, STANDS, Drawing, PinsFrom
from publisher.pages.front import FIGURE_GAP, figure_beside
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import frame_text
from publisher.pages.sheet import drawing_pose, drawn_size, place_drawing
from publisher.pages.type import PICTURE_CONTOUR

PIN_ROOM = 11.0  # mm at the left, for the heads of pins
PIN_OUT = 10.0  # mm of a pin that are not yet in the board
PINS = ((0.46, 68.0), (0.22, 112.0))  # how high they go in, of what is shown, and how they lean: to one another
PINS_UPRIGHT = (
    (0.4, 12.0),
    (0.6, -12.0),
)  # where they go in from above or below, of the width of what is shown, and how they lean
ON_TOP = 1.0  # mm between what is weighed down and the board on it, so that both lines are seen
AT_CORNER = 2.2  # mm from the outline of what is pinned to where pins go in
SIDE_ROOM = 15.0  # mm at the right, for a clock or a pot
TAPE_AT_CORNER = ((-4.0, -1.4), (4.0, 1.4), (3.2, 4.2), (-4.8, 1.4))  # mm from the corner that it holds


def waiting(
    pen: SketchPen,
    stands: Drawing | None,
    wait: str,
    uses: tuple[str, ...],
    said: Sequence[str],
    pins: PinsFrom = "corner",
    times: int = 1,
) -> None:
    """What stands so far with what holds it while it dries, and a clock. ``pins``: where they go in, if the step uses any. ``times``: so
    many of what is shown are made, and wait."""
    weighed = any(one in uses for one in LIES_ON)
    top = FIELD_TALL - (19.0 if weighed else 1.0)
    if "pins" not in uses or (weighed and pins == "above"):  # under a weight no pin is left standing
        pins = "none"
    pinned = pins == "corner"
    if pins == "above":
        top -= PIN_OUT + 2.0
    low = 5.4 + (PIN_OUT + 1.0 if pins == "below" else 0.0)
    box = draw_standing(pen, stands, Box(PIN_ROOM if pinned else 1.0, low, FIELD_WIDE - SIDE_ROOM - 2.0, top))
    middle = (box.left + box.right) / 2
    if weighed:
        wide = min(max(box.width, 22.0), 40.0)
        board = box.top + ON_TOP
        ring = (
            (middle - wide / 2, board), (middle + wide / 2, board), (middle + wide / 2, board + 1.4), (middle - wide / 2, board + 1.4)
        )  # fmt: skip
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_CONTOUR, closed=True)
        pen.books(middle - wide * 0.36, board + 1.4, wide * 0.72)
        pen.scene("pressed_down", (middle, board + 1.4))
    if pinned:
        for (
            share,
            lean,
        ) in PINS:  # from outside into the joint at its left corner: they come together in the board, unseen
            _pin(pen, (_corner(stands, box, share) + AT_CORNER, box.bottom + share * box.height), lean)
    elif pins != "none" and stands is not None:
        for share, lean in PINS_UPRIGHT:
            x = box.left + share * box.width
            y = _upright(stands, box, share, highest=pins == "above")
            _pin(pen, (x, y), lean if pins == "above" else 180.0 - lean)
    if "masking_tape" in uses:
        x, y = box.right - 3.0, box.bottom + 0.45 * box.height  # round the corner at its right
        pen.tape(*((x + across, y + up) for across, up in TAPE_AT_CORNER))
        pen.scene("taped_corner", (x, y))
    if times > 1:
        frame_text(pen, f"{times} ×", (3.5, FIELD_TALL - 6.0))
    pen.clock(FIELD_WIDE - 7.5, 17.0, wait)
    if any(one in uses for one in FROM_BOTTLES):
        pen.bottle(FIELD_WIDE - 7.5, FIELD_TALL - 18.0)
        pen.count("+", FIELD_WIDE - 7.5, 26.6)
    for each in pen.broken(said, 2 * min(middle, FIELD_WIDE - middle) - 2.0):
        pen.count(each, middle, 0.8)


def _pin(pen: SketchPen, tip: Point, lean: float) -> None:
    """Draw a pin that holds what dries."""
    pen.pin(tip, lean, PIN_OUT)
    pen.scene("pin_out", tip, lean)


def _corner(stands: Drawing | None, box: Box, share: float) -> float:
    """Return where the outline of what is shown in a box begins at the left, at this share of its height."""
    if stands is None:
        return box.left
    level = shapely.LineString([(-1.0, share * stands.height), (stands.width + 1.0, share * stands.height)])
    shown = shapely.MultiLineString([line.points for line in stands.lines if len(line.points) > 1])
    met = shapely.intersection(shown, level)
    return box.left + (0.0 if met.is_empty else float(met.bounds[0])) * box.width / stands.width


def _upright(stands: Drawing, box: Box, share: float, *, highest: bool) -> float:
    """Return how high in a box what is shown has its highest line, or its lowest, at this share of its width."""
    at = share * stands.width
    level = shapely.LineString([(at, -1.0), (at, stands.height + 1.0)])
    shown = shapely.MultiLineString([line.points for line in stands.lines if len(line.points) > 1])
    met = shapely.intersection(shown, level)
    own = 0.0 if met.is_empty else float(met.bounds[3] if highest else met.bounds[1])
    return box.bottom + own * box.height / stands.height


def finished(pen: SketchPen, stands: Drawing, figure: float) -> None:
    """What stands once a step is done, ticked, with a figure beside it."""
    with_figure(pen, stands, Box(1.0, 1.0, FIELD_WIDE - 8.0, FIELD_TALL - 1.0), figure)
    pen.right(FIELD_WIDE - 6.0, FIELD_TALL - 7.0)


def with_figure(pen: SketchPen, stands: Drawing, room: Box, base: float, *, draw: bool = True) -> Box:
    """Draw what stands, as large as fits beside a figure on its base (mm of the piece; 0: none); return where it is. ``draw`` False: the
    figure alone."""
    wide = base * (1.0 + FIGURE_GAP)
    scale = min(room.width / (stands.width + wide), room.height / stands.height, 1.0)
    box = Box(
        room.left + wide * scale,
        room.bottom,
        room.left + (stands.width + wide) * scale,
        room.bottom + stands.height * scale,
    )
    if base:
        pen.drawn.append(figure_beside(pen.on_page((room.left, room.bottom)), base * scale * pen.scale))
    return draw_standing(pen, stands, box) if draw else box


def draw_standing(pen: SketchPen, stands: Drawing | None, room: Box) -> Box:
    """Draw what stands at the foot of a room; return where it is."""
    if stands is None:
        return room
    _, wide, high = drawn_size(stands, room.width, room.height)
    left = (room.left + room.right - wide) / 2
    box = Box(left, room.bottom, left + wide, room.bottom + high)
    (left, bottom), (right, top) = pen.on_page((box.left, box.bottom)), pen.on_page((box.right, box.top))
    place = Box(left, bottom, right, top)
    pen.parts.append((STANDS, *drawing_pose(stands, place)))
    pen.drawn += place_drawing(pen.setter, stands, place, labels=False, details=False)
    return box
