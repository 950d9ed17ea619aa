"""What the buyer may do with the pack, where the licence is one whose text is ours."""

from publisher.basics import Layer, polyline
from publisher.design import OwnLicence, own_licence
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet import Context
from publisher.pages.type import HEADING, SMALL, SPACE, STRONG_RULE, Block, Setter


def licence_of(context: Context) -> OwnLicence | None:
    """Return the licence's text with the designer's name; None where the design comes under another's, which has a text elsewhere."""
    return own_licence(context.design.licence, context.design.designer)


def licensing(setter: Setter, licence: OwnLicence, x: float, top: float, width: float) -> Block:
    """Set the text under a rule and its title."""
    rule = Stroke(STRONG_RULE, (polyline(((x, top), (x + width, top))),), Layer.PAGE, tag="artifact")
    title = setter.line(licence.title, HEADING.tagged("h2"), x, top - setter.drop(HEADING) - 1.0)
    drawn: list[Drawn] = [rule, *title]
    y = top - HEADING.leading - 1.0
    for paragraph in licence.text:
        block = setter.paragraph(paragraph, SMALL, x, y, width)
        drawn += block.drawn
        y -= block.height + SPACE / 2
    return Block(tuple(drawn), top - y)
