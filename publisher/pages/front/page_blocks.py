"""Blocks of known height that are set under each other on the pages of what to buy and cut."""

from collections.abc import Callable

from publisher.basics import record
from publisher.pages.model import Drawn
from publisher.pages.sheet import Body, Context, Frame, Numbers
from publisher.pages.type import HEADING, SMALL, SPACE


@record
class PageBlock:
    """Something on the page: its height with the space below it, and how it is drawn under a top."""

    height: float
    draw: Callable[[float, Numbers], Body]
    parts: tuple[str, ...] = ()  # whose sizes it shows


def section_head(context: Context, frame: Frame, title: str, note: str, top: float) -> tuple[tuple[Drawn, ...], float]:
    """Set a heading with a note under it; return them and their height in mm."""
    setter, text = context.type, frame.text
    drawn: list[Drawn] = [*setter.line(title, HEADING, text.left, top - setter.drop(HEADING))]
    height = HEADING.leading
    if note:
        block = setter.paragraph(note, SMALL.quiet(), text.left, top - height, text.width)
        drawn += block.drawn
        height += block.height
    return tuple(drawn), height + SPACE / 2
