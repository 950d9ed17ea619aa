"""What to try before layers are cut, set under its heading: a pile of scraps as high as the stack, and what to do when it is not."""

from collections.abc import Iterator

from publisher.basics import Box
from publisher.joints import pile_sentences
from publisher.pages.model import Drawn
from publisher.pages.sheet import Context
from publisher.pages.type import HEADING, SMALL, SPACE, Block, Setter

PILING = "Before you cut layers"
"""What this is called."""


def piles(context: Context) -> dict[str, str]:
    """Return what to do for each of the stacks that are tried, by the key under which it is promised."""
    return {one.key: one.text for one in pile_sentences(context.design, context.joined, context.paper.first)}


def piling(setter: Setter, said: tuple[str, ...], x: float, top: float, width: float) -> Block:
    """Set the trials under their heading."""
    drawn: list[Drawn] = [*setter.line(PILING, HEADING.tagged("h2"), x, top - setter.drop(HEADING))]
    boxes = list(pile_boxes(setter, said, x, top, width))
    for sentence, box in zip(said, boxes, strict=True):
        drawn += setter.paragraph(sentence, SMALL, x, box.top, width).drawn
    return Block(tuple(drawn), top - boxes[-1].bottom + SPACE / 2 if boxes else HEADING.leading + SPACE / 2)


def pile_boxes(setter: Setter, said: tuple[str, ...], x: float, top: float, width: float) -> Iterator[Box]:
    """Yield where each trial stands that is set so."""
    y = top - HEADING.leading - SPACE / 2
    for sentence in said:
        height = setter.paragraph(sentence, SMALL, x, y, width).height
        yield Box(x, y - height, x + width, y)
        y -= height + SPACE / 2
