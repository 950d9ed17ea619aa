"""How to use a template, and how to cut a bevel: an enlarged sketch at the left, what to do at the right."""

from collections.abc import Callable

from publisher.basics import Box, Layer, Point, polyline
from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, paired
from publisher.geometry import BEVEL_OUT
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.sheet import described
from publisher.pages.type import (
    BODY,
    CUT,
    DIMENSION,
    DRAW,
    GUTTER,
    HEADING,
    LEADER,
    NOTE,
    PALE,
    REFERENCE,
    SMALL,
    SPACE,
    Block,
    Setter,
    TypeStyle,
)

SKETCH = 66.0  # mm: width of a sketch
TEMPLATE_TALL, BEVEL_TALL = 41.0, 30.0  # mm: heights of sketches
SKETCH_AWAY = 2.4  # mm: the pencil's distance in the sketch, much enlarged
HOW_TO_NUMBER = 6.0  # from the number of a sentence to its words

PRICKED = "Prick the ends of its lines through with a pin."

PictureMaker = Callable[[Setter, Box], tuple[Drawn, ...]]


def tracing(
    setter: Setter,
    allowance: float,
    first: LengthUnit,
    inside: bool,
    x: float,
    top: float,
    width: float,
    *,
    lined: bool = False,
    style: TypeStyle = BODY,
) -> Block:
    """Say how a template that is drawn ``allowance`` mm inside its piece becomes the piece; ``inside``: some have openings or slots;
    ``lined``: some have lines that must go over to the foam, most of which end inside the card, where no pencil reaches them; ``style``:
    of the sentences."""
    strays = paired(f"{round(allowance, 2):g} mm", f"{inches(allowance):.3f} in", first)
    said = (
        f"Cut the card on the middle of the cut line{', openings and slots too' if inside else ''}.",
        f"Trace with a sharp pencil held upright: its line runs {strays} outside the card"
        f"{', and as far inside openings and slots' if inside else ''}."
        f"{f' {PRICKED}' if lined else ''}",
        "Take the card away and cut the foam on the middle of the pencil line: that is the finished size.",
    )
    return _section(setter, "How to use a template", said, (x, top, width), TEMPLATE_TALL, corner_of_card, style)


def bevelling(setter: Setter, outwards: bool, x: float, top: float, width: float, *, style: TypeStyle = BODY) -> Block:
    """Say what the outline, the angle and the dotted line beside a bevelled edge are; ``outwards``: some go the other way."""
    said: tuple[str, ...] = (
        "The line that you cut is the edge on the outside face. "
        "Cut all other edges first; leave board beside this one, or lay a scrap against it.",
        "Tilt the blade by the angle that is printed and cut in at that edge. It comes out underneath at the template’s "
        "dotted line. Never cut the outside face at the dotted line.",
    )
    if outwards:
        said += (f"Where “{BEVEL_OUT}” follows the angle, tilt it the other way: the inside face is the longer one.",)
    return _section(setter, "How to cut a bevel", said, (x, top, width), BEVEL_TALL, bevelled_edge, style)


def copying(setter: Setter, x: float, top: float, width: float) -> Block:
    """Say which words of a template must go over to the foam."""
    said = (
        "Before you lift a template, copy the word “top” with its arrow and the small letters to the foam. "
        "Edges with the same letter meet."
    )
    block = setter.paragraph(said, SMALL, x, top, width)
    return Block(block.drawn, block.height)


def _section(
    setter: Setter,
    title: str,
    said: tuple[str, ...],
    place: tuple[float, float, float],
    tall: float,
    sketch: PictureMaker,
    style: TypeStyle,
) -> Block:
    """Set a heading, the sketch under it, and numbered sentences beside that."""
    x, top, width = place
    drawn: list[Drawn] = [*setter.line(title, HEADING, x, top - setter.drop(HEADING))]
    shown = sketch_shown(x, top, tall)
    drawn += sketch(setter, shown)
    left = x + SKETCH + GUTTER
    low = y = shown.top
    for number, sentence in enumerate(said, 1):
        drawn += setter.line(str(number), style.bold().tagged("lbl"), left, low - setter.drop(style))
        block = setter.paragraph(
            sentence, style.tagged("li"), left + HOW_TO_NUMBER, low, width - SKETCH - GUTTER - HOW_TO_NUMBER
        )
        drawn += block.drawn
        low -= block.height + SPACE / 2
    return Block(tuple(drawn), top - min(low, y - tall))


def sketch_shown(x: float, top: float, tall: float) -> Box:
    """Return where the sketch of a section stands that begins at a left side and a top (mm)."""
    y = top - HEADING.leading - SPACE
    return Box(x, y - tall, x + SKETCH, y)


def corner_of_card(setter: Setter, box: Box) -> tuple[Drawn, ...]:
    """Draw a corner of a card with a slot in it, and the pencil's lines round both."""
    card = Box(box.left + SKETCH_AWAY + 1.0, box.bottom, box.right - 28.0, box.top - SKETCH_AWAY - 1.0)
    slot = Box(card.left + 10.0, card.bottom + 9.0, card.right - 9.0, card.bottom + 17.0)
    outside = ((card.left, card.bottom), (card.left, card.top), (card.right, card.top), (card.right, card.bottom))
    pencil = (
        (card.left - SKETCH_AWAY, card.bottom),
        (card.left - SKETCH_AWAY, card.top + SKETCH_AWAY),
        (card.right + SKETCH_AWAY, card.top + SKETCH_AWAY),
        (card.right + SKETCH_AWAY, card.bottom),
    )
    inside = slot.grown(-SKETCH_AWAY)
    ground = polyline(card.corners(), True)
    hole = polyline(slot.corners(), True)
    drawn: list[Drawn] = [
        Fill(PALE, (ground,), Layer.PAGE, tag="artifact"),
        Fill(1.0, (hole,), Layer.PAGE, tag="artifact"),
        Stroke(CUT, (polyline(outside), hole), Layer.PAGE, tag="figure"),
        Stroke(DRAW, (polyline(pencil), polyline(inside.corners(), True)), Layer.PAGE, tag="figure"),
    ]
    right = card.right + SKETCH_AWAY + 6.0
    drawn += setter.line("card", SMALL, (card.left + card.right) / 2, card.top - 8.0, align="centre")
    drawn += setter.line("slot", NOTE, (slot.left + slot.right) / 2, slot.bottom + 3.0, align="centre")
    drawn += _pointed(setter, "1 cut the card", (right, card.top - 7.0), (card.right, card.top - 7.0))
    drawn += _pointed(setter, "2 pencil line:", (right, card.top - 15.0), (card.right + SKETCH_AWAY, card.top - 15.0))
    drawn += setter.line("3 cut the foam", NOTE, right, card.top - 19.0)
    drawn += _pointed(setter, "2, 3 inside slots", (right, slot.bottom + 3.0), (inside.right, slot.bottom + 4.0))
    return described(
        drawn, "A corner of a card template with a slot, and the pencil’s lines outside it and inside the slot"
    )


def bevelled_edge(setter: Setter, box: Box) -> tuple[Drawn, ...]:
    """Draw a board in section, its outside face up, with an edge bevelled by 45 degrees."""
    thick = 11.0
    low, high = box.bottom + 5.5, box.bottom + 5.5 + thick
    edge = box.right - 17.0
    ring = ((box.left + 4.0, low), (edge - thick, low), (edge, high), (box.left + 4.0, high))
    drawn: list[Drawn] = [
        Fill(PALE, (polyline(ring, True),), Layer.PAGE, tag="artifact"),
        Stroke(DRAW, (polyline((ring[3], ring[2])), polyline((ring[0], ring[1]))), Layer.PAGE, tag="figure"),
        Stroke(CUT, (polyline(((edge - thick - 3.0, low - 3.0), (edge + 3.0, high + 3.0))),), Layer.PAGE, tag="figure"),
        Stroke(REFERENCE, (polyline(((edge - thick, low), (edge - thick, high + 3.0))),), Layer.PAGE, tag="figure"),
        Stroke(DIMENSION, (polyline(((edge, high), (edge, high + 3.0))),), Layer.PAGE, tag="figure"),
    ]
    middle = (box.left + 4.0 + edge - thick) / 2
    drawn += setter.line("outside face", NOTE, middle, high - 3.4, align="centre")
    drawn += setter.line("inside face", NOTE, middle, low + 1.4, align="centre")
    drawn += setter.line("dotted line", NOTE, edge - thick, high + 4.2, align="right")
    drawn += setter.line("cut line", NOTE, edge - 2.0, high + 4.2)
    drawn += setter.line("blade", NOTE, edge + 4.0, high + 1.0)
    return described(
        drawn, "A board in section, outside face up: the blade leans along the cut line to the dotted line"
    )


def _pointed(setter: Setter, text: str, at: Point, to: Point) -> tuple[Drawn, ...]:
    """Set words that begin at a point, with a line from them to what they mean."""
    line = Stroke(
        LEADER, (polyline(((at[0] - 1.0, at[1] + 1.0), (to[0] + 0.4, to[1] + 1.0))),), Layer.PAGE, tag="artifact"
    )
    return (line, *setter.line(text, NOTE, *at))
