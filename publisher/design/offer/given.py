"""Names and words as the designer wrote them, which pages repeat as they are: numbers in them mean what the designer says."""

from collections.abc import Iterator

from publisher.basics.wording import LengthUnit
from publisher.design.offer.texts import amount, fill, say
from publisher.design.records import Design, Fact


def things_used(design: Design) -> tuple[str, ...]:
    """Return the keys (or words) of all tools and materials that a design and its steps name, each once: cautions hang on them."""
    steps = (key for step in design.steps for key in step.uses)
    return tuple(dict.fromkeys((*design.tools, *(material.name for material in design.materials), *steps)))


def given_words(design: Design, facts: tuple[Fact, ...], first: LengthUnit) -> tuple[str, ...]:
    """Return the names of a design, its parts, boards, sheets, assemblies and things to buy, with their amounts as they are worked out,
    the ``first`` unit first: each once."""
    return tuple(dict.fromkeys(words for words in (*_all(design), *_to_buy(design, facts, first)) if words))


def _to_buy(design: Design, facts: tuple[Fact, ...], first: LengthUnit) -> Iterator[str]:
    for material in design.materials:
        if material.text:
            yield fill(material.text, design, facts, first)[0]
        quantity = amount(material.amount, design, facts)[0] if material.amount is not None else None
        if quantity is not None:
            yield say(quantity.value, quantity.kind, first=first)


def _all(design: Design) -> Iterator[str]:
    yield from (design.title, design.variant_title, design.version, design.designer, design.licence, design.slug)
    for board in design.boards:
        yield from (board.id, board.sold_as, board.shop.name if board.shop else "")
        yield from (sheet.label for sheet in board.sheets)
    for part in design.parts:
        yield from (part.name, part.id, part.letter)
    yield from (stack.name for stack in design.stacks)
    yield from (panels.name for panels in design.panels)
    yield from (whole.name for whole in design.wholes)
    yield from (plan.id for plan in design.folds)
    yield from (fit.name for fit in design.fits)
    yield from (material.name for material in design.materials)
    yield from (use for step in design.steps for use in step.uses)
    yield from (step.wait for step in design.steps)
    yield from design.tools
    yield from (wish.name for wish in design.papers)
