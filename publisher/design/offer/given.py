"""Names and words as the designer wrote them, which pages repeat as they are: numbers in them mean what the designer says."""

from collections.abc import Iterator

from publisher.design.records import Design


def given_words(design: Design) -> tuple[str, ...]:
    """Return the names of a design, its parts, boards, sheets, assemblies and things to buy: each once, as written."""
    return tuple(dict.fromkeys(words for words in _all(design) if words))


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
    yield from design.tools
    yield from (wish.name for wish in design.papers)
