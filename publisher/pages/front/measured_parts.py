"""Parts without a template: each a drawing with its sides and, beside it, all that is measured out on the board."""

from functools import partial

from publisher.basics import Box, Carried, HolePromise, Layer, Path, Point, SizesPromise, TextPromise, polyline, record
from publisher.basics.wording import LengthUnit, said_angle, say_length, say_size, say_thickness
from publisher.geometry import Part, sizes_key
from publisher.joints import SIZES_TALL, SIZES_WIDE, Drawing
from publisher.pages.front.page_blocks import PageBlock, section_head
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import Body, Context, Frame, Numbers, described, drawing_pose, drawn_size, place_drawing
from publisher.pages.type import BODY, DIMENSION, GUTTER, LEADER, NOTE, SMALL, SPACE, Setter

TITLE = "Parts to measure out"
NOTE_OVER = (
    "These parts have no template. Draw them on the board with a sharp pencil, a rule and a square: all sizes are those of the finished "
    "piece, and the pencil line is the cut line. Write its letter on each."
)
RULE_IN_MM = " Measure in millimetres: the inches are hundredths, which hardly a rule shows."
FROM_SIDES = " “From the left” and “from below” are measured from the sides of the piece."
HEIGHT_WORDS = 17.0  # mm at the left of a drawing, for its height in words
DRAWING_SHARE = 0.5  # of the width that drawing and height take
SIDE_AWAY = 4.0  # mm from a side to its dimension line
SIDE_TICK = 0.9  # mm: half of a stroke across the end of a dimension line
PAST_SIDE = 1.2  # mm by which the lines from the corners run past it
CORNER_CLEAR = 0.8  # mm between a corner and them
PLAIN_TALL = 20.0  # mm: the tallest drawing of a plain rectangle
SIDE_WORDS = 16.0  # mm from where words at a side begin to their middle, at most


@record
class MeasuredPart:
    """A part that is measured out, with its promise and its drawing."""

    part: Part
    sizes: SizesPromise
    drawing: Drawing


def measured_blocks(context: Context, frame: Frame) -> list[PageBlock]:
    """Return a block for each part without a template; none where all have one."""
    blocks: list[PageBlock] = []
    for part in context.measured:
        one = _of(context, part)
        head = "" if blocks else _head(context)
        over = section_head(context, frame, TITLE, head, 0.0)[1] if head else 0.0
        height = over + _height(context, frame, one) + 1.5 * SPACE
        blocks.append(PageBlock(height, partial(_draw, context, frame, one, head), (part.id,)))
    return blocks


def _head(context: Context) -> str:
    """Return what is said over all of them: from where is measured, where one has more than its sides."""
    measured = any(one.holes or one.lines for one in context.joined.sizes)
    said = NOTE_OVER + FROM_SIDES if measured else NOTE_OVER
    return said if context.paper.first == "mm" else said + RULE_IN_MM


def _of(context: Context, part: Part) -> MeasuredPart:
    """Return a part with what the rooms above have made of it. Raises StopIteration where nobody has."""
    key = sizes_key(part.id)
    sizes = next(one for one in context.joined.sizes if one.key == key)
    return MeasuredPart(part, sizes, next(one for one in context.joined.drawings if one.name == key))


def measured_words(context: Context, one: MeasuredPart) -> tuple[str, ...]:
    """Return what is said of a part, a line for each thing to do: its size, its holes, lines to draw, what is cut at its edges."""
    first, part, sizes = context.paper.first, one.part, one.sizes
    face = context.side(part, False).face
    seen = f" Shown is {FACES[face]}." if face in FACES and (sizes.holes or sizes.edges) else ""
    said = [
        f"{say_size(sizes.width, sizes.height, first)}, {part.board.replace('_', ' ')} {say_thickness(part.thickness, first)}.{seen}"
    ]
    said += (_hole(number, hole, first) for number, hole in enumerate(sizes.holes, 1))
    for level, at in sizes.lines:
        way, side = ("a level", "below") if level else ("an upright", "the left")
        said.append(f"Draw {way} line, {say_length(at, first=first)} from {side}.")
    for edge in sizes.edges:
        where = WHERE[edge.side]
        if edge.rabbet:
            width = say_length(edge.rabbet, first=first)
            said.append(f"Rabbet at {where}: cut the foam away behind, {width} wide; the front paper stays.")
        if edge.bevel:
            ends = "shorter" if edge.bevel > 0.0 else "longer"
            said.append(f"Bevel {said_angle(edge.bevel):g}° at {where}: the face underneath is {ends}.")
    return tuple(said)


FACES = {"outside": "the outside face", "inside": "the inside face"}
WHERE = {"bottom": "the lower edge", "right": "the right edge", "top": "the upper edge", "left": "the left edge"}


def _hole(number: int, hole: HolePromise, first: LengthUnit) -> str:
    left, up = say_length(hole.left, first=first), say_length(hole.up, first=first)
    if hole.round:
        across = say_length(hole.width, first=first)
        return f"{number}: a round hole, {across} across; its middle {left} from the left, {up} from below."
    size = say_size(hole.width, hole.height, first)
    return f"{number}: an opening, {size}; {left} from the left, {up} from below."


def _title(part: Part) -> str:
    spare = f"\u00a0+\u00a0{part.spare}\u00a0spare" if part.spare else ""
    return f"{part.letter} {part.name}, cut\u00a0{part.count}{spare}"


def _room(frame: Frame) -> float:
    """Return how wide a drawing may be (mm)."""
    return min(SIZES_WIDE, frame.text.width * DRAWING_SHARE - HEIGHT_WORDS - SIDE_AWAY)


def _tall(one: MeasuredPart) -> float:
    """Return how tall a drawing may be (mm): one of nothing but four sides needs little."""
    return SIZES_TALL if one.sizes.holes or one.sizes.lines or one.sizes.edges else PLAIN_TALL


def _depth(context: Context) -> float:
    """Return what stands under a drawing: its dimension line and the words of its width, in mm."""
    return SIDE_AWAY + PAST_SIDE + context.type.cap(NOTE) + 2.0


def _over(context: Context, tall: float) -> float:
    """Return what is kept free over a drawing (mm), so that the two lines of its height stand clear where it is flat."""
    return max(1.0, context.type.cap(NOTE) + 1.5 - tall / 2.0)


def _height(context: Context, frame: Frame, one: MeasuredPart) -> float:
    _, _, tall = drawn_size(one.drawing, _room(frame), _tall(one))
    return max(_over(context, tall) + tall + _depth(context), _words(context, one, _words_at(frame), 0.0, frame, 0)[1])


def _words_at(frame: Frame) -> float:
    return frame.text.left + HEIGHT_WORDS + SIDE_AWAY + _room(frame) + GUTTER


def _words(context: Context, one: MeasuredPart, x: float, top: float, frame: Frame, page: int) -> tuple[Body, float]:
    """Set the words about a part under ``top``; return them and their height."""
    setter, width = context.type, frame.text.right - x
    title = setter.paragraph(_title(one.part), BODY.bold(), x, top, width)
    drawn, y = [*title.drawn], top - title.height
    said = measured_words(context, one)
    for text in said:
        block = setter.paragraph(text, SMALL, x, y, width)
        drawn += block.drawn
        y -= block.height + 0.6
    carried = Carried(one.sizes.key + ":words", page, Box(x, y, frame.text.right, top))
    texts = tuple(TextPromise(page, text) for text in (_title(one.part), *said))
    return Body(tuple(drawn), carried=(carried,), texts=texts), top - y


def _draw(context: Context, frame: Frame, one: MeasuredPart, head: str, top: float, numbers: Numbers) -> Body:
    body = Body()
    if head:
        drawn, height = section_head(context, frame, TITLE, head, top)
        body, top = Body(drawn), top - height
    setter, first = context.type, context.paper.first
    _, wide, tall = drawn_size(one.drawing, _room(frame), _tall(one))
    left, high = frame.text.left + HEIGHT_WORDS + SIDE_AWAY, top - _over(context, tall)
    box = Box(left, high - tall, left + wide, high)
    picture = place_drawing(setter, one.drawing, box)
    sides = (
        *_side(setter, (box.left, box.bottom), (box.right, box.bottom), one.sizes.width, first),
        *_side(setter, (box.left, box.bottom), (box.left, box.top), one.sizes.height, first),
    )
    texts = tuple(
        TextPromise(numbers.page, thing.text, (thing.x, thing.y), SIDE_WORDS)
        for thing in sides
        if isinstance(thing, Words)
    )
    words, _ = _words(context, one, _words_at(frame), top, frame, numbers.page)
    carried = Carried(one.sizes.key, numbers.page, box, *drawing_pose(one.drawing, box))
    drawn = described((*picture, *sides), one.drawing.alt, figures_only=True)
    return body + Body(drawn, carried=(carried,), texts=texts) + words


def _side(setter: Setter, start: Point, end: Point, length: float, first: LengthUnit) -> tuple[Drawn, ...]:
    """Draw a dimension line under a level side, or at the left of an upright one, with its words."""
    (ax, ay), (bx, by) = start, end
    level = abs(ay - by) < abs(ax - bx)
    dx, dy = (0.0, -1.0) if level else (-1.0, 0.0)
    a, b = (ax + SIDE_AWAY * dx, ay + SIDE_AWAY * dy), (bx + SIDE_AWAY * dx, by + SIDE_AWAY * dy)
    far = SIDE_AWAY + PAST_SIDE
    lines: list[Path] = [
        polyline((a, b)),
        *(
            polyline(((x + CORNER_CLEAR * dx, y + CORNER_CLEAR * dy), (x + far * dx, y + far * dy)))
            for x, y in (start, end)
        ),
    ]
    ticks = (polyline(((x - SIDE_TICK, y - SIDE_TICK), (x + SIDE_TICK, y + SIDE_TICK))) for x, y in (a, b))
    drawn: list[Drawn] = [
        Stroke(DIMENSION, tuple(lines), Layer.DIMENSIONS, tag="figure"),
        Stroke(LEADER, tuple(ticks), Layer.DIMENSIONS, tag="figure"),
    ]
    said, cap = say_length(length, first=first), setter.cap(NOTE)
    if level:
        drawn += setter.line(
            said, NOTE, (a[0] + b[0]) / 2, a[1] - PAST_SIDE - cap - 0.6, align="centre", layer=Layer.DIMENSIONS
        )
        return tuple(drawn)
    one, _, other = said.partition(" (")
    middle, right = (a[1] + b[1]) / 2, a[0] - PAST_SIDE - 0.6
    drawn += setter.line(one, NOTE, right, middle + 0.5, align="right", layer=Layer.DIMENSIONS)
    drawn += setter.line(f"({other}", NOTE, right, middle - 0.5 - cap, align="right", layer=Layer.DIMENSIONS)
    return tuple(drawn)
