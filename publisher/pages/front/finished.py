"""The finished piece on the cover: one large picture, and beside or under it elevation and plan with overall sizes and a figure."""

from collections.abc import Iterable
from dataclasses import replace

from publisher.basics import Box, Carried, Layer, Path, SentencePromise, polyline
from publisher.joints import LEAST_PICTURE, LEAST_VIEWS, Drawing, whole_names
from publisher.pages.front.cover_picture import finished_piece
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import FIGURE, Body, Context, drawing_pose, place_drawing
from publisher.pages.type import DIMENSION, GUTTER, NOTE, PICTURE_DETAIL, SPACE

BESIDE = 0.38  # of the width, for elevation and plan
SIZE_ROOM = 20.5  # mm at the right of a view, for its height in two lines
UNDER = 8.0  # mm under the elevation, for its width
AWAY = 2.5  # of a dimension line from its view
TICK_HALF = 1.2  # of the strokes at its ends
FIGURE_TALL = 1.28  # of a figure's base: 32 mm on a base of 25 mm; common practice, no source
FIGURE_GAP = 0.4  # of its base, between the figure and the piece


def finished(context: Context, box: Box, page: int) -> Body:
    """Draw the piece with its overall sizes: those of several assemblies, and of one that has no room for its views, in words under
    the picture."""
    names = whole_names(context.design, context.joined.drawings)
    views: list[Drawing] = []
    if len(names) == 1 and box.height >= LEAST_VIEWS:
        kinds = ("whole", "front", "above")
        views += filter(None, (context.joined.drawing(f"{kind}:{names[0]}") for kind in kinds))
    if len(views) < 3:
        said, high = _sizes_in_words(context, box, page)
        return finished_piece(context, replace(box, bottom=box.bottom + high), page) + said
    whole, front, above = views
    room, picture = _shared(whole, front, box)
    return finished_piece(context, picture, page) + _sized(context, (front, above), room, page)


def _shared(whole: Drawing, front: Drawing, box: Box) -> tuple[Box, Box]:
    """Return the boxes of the two views and of the picture: beside each other, or for what is long, and on an upright
    sheet, the views in a row under it."""
    edge = box.left + (box.right - box.left) * (1.0 - BESIDE)
    beside = Box(box.left, box.bottom, edge - GUTTER, box.top)
    low = box.bottom + min(0.42 * box.height, 45.0)
    over = Box(box.left, low + 2 * SPACE, box.right, box.top)

    def scale(place: Box) -> float:
        return min(place.width / whole.width, place.height / whole.height)

    lying = front.width > 2.2 * front.height or box.height > box.width  # a row of views fits under it
    if over.height >= LEAST_PICTURE and scale(over) > 1.25 * scale(beside) and lying:
        return Box(box.left, box.bottom, box.right, low), over
    return Box(edge, box.bottom, box.right, box.top), beside


def _picture(context: Context, drawing: Drawing, place: Box, page: int) -> Body:
    carried = Carried(f"cover:{drawing.name}", page, place, *drawing_pose(drawing, place))
    return Body(place_drawing(context.type, drawing, place, labels=False), carried=(carried,))


def _sizes_in_words(context: Context, box: Box, page: int) -> tuple[Body, float]:
    """Set a line with the sizes of each assembly at the foot of the box; return their height (mm) too."""
    setter = context.type
    body, y = Body(), box.bottom
    for sentence in reversed(_sentences(context, "sizes")):
        high = setter.height(sentence.text, NOTE, box.width)
        if y + high > box.top:
            continue
        block = setter.paragraph(sentence.text, NOTE, box.left, y + high, box.width)
        place = Box(box.left, y, box.right, y + high)
        body += Body(block.drawn, carried=(Carried(sentence.key, page, place),))
        y += high
    return body, y - box.bottom + SPACE


def _sentences(context: Context, side: str) -> tuple[SentencePromise, ...]:
    """Return what joints says of one overall size of the assemblies."""
    found: Iterable[SentencePromise] = context.joined.sentences
    return tuple(s for s in found if s.key.startswith("cover:") and s.key.endswith(f":{side}"))


def _sized(context: Context, views: tuple[Drawing, Drawing], box: Box, page: int) -> Body:
    """Draw elevation and plan at one scale, the plan under the elevation or beside it where the box is wide."""
    front, above = views
    base = context.design.figure.base
    figure = base * (1.0 + FIGURE_GAP)
    tall = max(front.height, FIGURE_TALL * base)
    wide = box.width > 1.4 * box.height
    if wide:
        room = (box.width - 2 * SIZE_ROOM - GUTTER, box.height - UNDER)
        scale = min(room[0] / (figure + front.width + above.width), room[1] / max(tall, above.height), 1.0)
    else:
        room = (box.width - SIZE_ROOM, box.height - UNDER - 2 * SPACE)
        scale = min(room[0] / (figure + max(front.width, above.width)), room[1] / (tall + above.height), 1.0)
    left = box.left + figure * scale
    ground = box.bottom + UNDER if wide else box.top - tall * scale
    first = Box(left, ground, left + front.width * scale, ground + front.height * scale)
    if wide:
        start = first.right + SIZE_ROOM + GUTTER
        second = Box(start, ground, start + above.width * scale, ground + above.height * scale)
    else:
        top = ground - UNDER - SPACE
        second = Box(left, top - above.height * scale, left + above.width * scale, top)
    body = _picture(context, front, first, page) + _picture(context, above, second, page)
    body += Body((figure_beside((box.left, ground), base * scale), *_ground(box.left, first)))
    body += _size(context, "width", (first.left, ground - AWAY), (first.right, ground - AWAY), page)
    body += _size(context, "height", (first.right + AWAY, first.bottom), (first.right + AWAY, first.top), page)
    return body + _size(context, "depth", (second.right + AWAY, second.bottom), (second.right + AWAY, second.top), page)


def _ground(left: float, view: Box) -> tuple[Drawn, ...]:
    """Return the line of the table, under figure and piece."""
    return (
        Stroke(DIMENSION, (polyline(((left, view.bottom), (view.right, view.bottom))),), Layer.PAGE, tag="artifact"),
    )


def _size(context: Context, side: str, start: tuple[float, float], end: tuple[float, float], page: int) -> Body:
    """Draw a dimension line with its size in words: under a level one, at the right of an upright one."""
    setter = context.type
    level = start[1] == end[1]
    dx, dy = (0.0, TICK_HALF) if level else (TICK_HALF, 0.0)
    ticks = tuple(polyline(((x - dx, y - dy), (x + dx, y + dy))) for x, y in (start, end))
    body = Body((Stroke(DIMENSION, (polyline((start, end)), *ticks), Layer.PAGE, tag="artifact"),))
    for sentence in _sentences(context, side):
        width = setter.width(sentence.text, NOTE) if level else SIZE_ROOM - AWAY - 1.5
        high = setter.height(sentence.text, NOTE, width + 0.1)
        x = max(start[0], (start[0] + end[0] - width) / 2) if level else start[0] + 1.5
        top = start[1] - 1.2 if level else (start[1] + end[1] + high) / 2
        block = setter.paragraph(sentence.text, NOTE, x, top, width + 0.1)
        place = Box(x, top - high, x + width, top)
        body += Body(block.drawn, carried=(Carried(sentence.key, page, place),))
    return body


def figure_beside(at: tuple[float, float], base: float) -> Drawn:
    """Draw a figure on a base of this width (mm on the page), its lower left corner ``at``."""
    x, y, tall = at[0] + base / 2, at[1], FIGURE_TALL * base
    low, neck, head = y + 0.1 * base, y + 0.78 * tall, 0.11 * tall

    def ring(*points: tuple[float, float]) -> Path:
        return polyline(points, True)

    stand = ring((x - base / 2, y), (x + base / 2, y), (x + base / 2, low), (x - base / 2, low))
    coat = ring(
        (x - 0.26 * base, low), (x + 0.26 * base, low), (x + 0.2 * base, neck - 0.04 * tall), (x + 0.12 * base, neck),
        (x - 0.12 * base, neck), (x - 0.2 * base, neck - 0.04 * tall),
    )  # fmt: skip
    corners = ((1, 0.4), (0.7, 0.9), (0, 1.1), (-0.7, 0.9), (-1, 0.4), (-0.8, -0.4), (-0.3, -1), (0.3, -1), (0.8, -0.4))
    middle = neck + 1.1 * head
    face = ring(*((x + 0.8 * head * a, middle + head * b) for a, b in corners))
    return Stroke(
        PICTURE_DETAIL, (stand, coat, face), Layer.PAGE, tag=f"{FIGURE}:A figure on its base beside the piece"
    )
