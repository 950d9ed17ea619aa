"""What the buyer needs before starting: board by real layouts, tools, materials with amounts."""

from dataclasses import replace

from publisher.basics.wording import counted, ordered, say_length, say_thickness
from publisher.design import Board, Design, Fact, amount, fill, say
from publisher.joints import acts_of_step, sold_words, takes_words
from publisher.pages.front.coupon import fit_of
from publisher.pages.front.coverings import covering_words, coverings_of
from publisher.pages.sheet import (
    OTHER,
    Context,
    Edition,
    Numbers,
    edition_called,
    thing_name,
    tool_words,
    tools_of_acts,
)
from publisher.pages.tiles import plan_true_pages

TAPE = "masking_tape"
CARD_NAME = "thin_card"
BLUNT = "blunt_pencil"  # the pencil that is listed is both, sharp and blunt
RULE, RULE_LONG, LISTED_LONG = "steel_rule", "300 mm (12 in)", 300.0  # as the list of tools has it, in words and in mm
CUTTING = ("craft_knife", RULE, "cutting_mat")  # without which no part is cut
FACES = {
    "bare": "bare {name} board, no paper on its faces",
    "paper_one": "{name} board with paper on one face",
    "paper_both": "{name} board with paper on both faces",
}


CARD_THICK = "0.3 to 0.5 mm (0.012 to 0.02 in) thick"
CARD = f"Thin card for the templates, {CARD_THICK}"
MORE_CARD = 3  # layers: a second one under a template that is traced often, and two under its spare
PAGES_GUESSED = 10  # of templates, of which the height of a list is worked out before pages are numbered


def board_words(context: Context) -> tuple[str, ...]:
    """Return what to ask for in the shop: for each board its faces, its measured thickness, and what thicknesses the design takes."""
    lines = []
    for board in context.design.boards:
        faces = FACES.get(board.faces, f"{{name}} board, {board.faces}").format(name=board.id.replace("_", " "))
        thick = say_thickness(board.thickness, context.paper.first)
        called = f" ({context.edition.called(board.faces)})" if board.material == "foam" else ""
        said = f"{faces}{called}, {_named(board)}measured {thick} thick."
        lines += [
            said[:1].upper() + said[1:],
            *(f"{line[:1].upper()}{line[1:].rstrip('.')}." for line in range_lines(context, board)),
        ]
    return tuple(lines)


def card_words(context: Context, numbers: Numbers | None) -> tuple[str, ...]:
    """Return how much card the templates of a traced design are mounted on; () for one that is pasted on board."""
    if context.design.use != "trace" or not context.templates:
        return ()
    measured = {part.id for part in context.measured}
    pages = PAGES_GUESSED if numbers is None else len({page for part, page in numbers.parts if part not in measured})
    often = tuple(row for row in context.needs.cut_list if row.sturdy)
    printed = [(row.part,) if numbers is None else numbers.pages_of_part(row.part) for row in often]
    more = MORE_CARD * len(
        {page for pages_of in printed for page in pages_of}
    )  # parts that share a page share its prints
    size = context.paper.title.removesuffix(" paper")
    said = f"{ordered(CARD, context.paper.first)}: {counted(pages, 'sheet')} of {size} size"
    scrap = " A scrap of it for the fit coupon." if fit_of(context) else ""
    if not often:
        return (f"{said}.{scrap}",)
    names = ", ".join(f"{row.letter} ({row.tracings} times)" for row in often)
    return (f"{said}, and {more} more for two layers and a spare of what is traced often: {names}.{scrap}",)


def cover_words(context: Context) -> tuple[str, ...]:
    """Return what bent pieces are covered with, and how much of it; () where none is."""
    paper = context.paper
    sheet = (paper.title.removesuffix(" paper"), paper.width, paper.height)
    covers = coverings_of(context.parts, context.needs.cut_list)
    return tuple(f"{said[:1].upper()}{said[1:]}." for said in covering_words(covers, paper.first, sheet))


def materials_words(context: Context) -> tuple[str, ...]:
    """Return what is used up, each with its amount: what the design names, and tape where parts come as tiles."""
    names = {material.name for material in context.design.materials}
    tiled = bool(plan_true_pages(context).cut)
    used = any(CARD_NAME in step.uses for step in context.design.steps)
    counted = context.design.use == "trace" or not used  # by sheets; templates that are pasted on board take none
    named = replace(
        context.design, materials=tuple(m for m in context.design.materials if not (counted and m.name == CARD_NAME))
    )
    lines = materials_to_buy(named, context.facts, context.edition)
    return (*lines, *((thing_name(TAPE, context.edition),) if tiled and TAPE not in names else ()))


def at_hand(context: Context) -> tuple[str, ...]:
    """Return the tools: those that the design names, those that its steps use or their pictures show, and what tracing and measuring out
    ask for."""
    known = {tool.key for tool in tool_words()}
    used = (key for step in context.design.steps for key in step.uses if key in known)
    always = (
        *CUTTING,
        *(("pencil",) if context.design.use == "trace" else ()),
        *(("square",) if context.needs.layouts else ()),
    )
    listed = (*context.design.tools, *used, *always)
    shown = (tool for step in context.design.steps for tool in tools_of_acts(acts_of_step(context, step), step.uses))
    keys = dict.fromkeys((*listed, *shown))
    if "pencil" in keys:
        keys.pop(BLUNT, None)
    named = {key: thing_name(key, context.edition) for key in keys}
    if longest := _longest_cut(context):
        first = context.edition.first
        named[RULE] = named[RULE].replace(ordered(RULE_LONG, first), say_length(longest, first=first, plain=True))
    return tuple(named.values())


def _longest_cut(context: Context) -> float:
    """Return the longest side of a sheet (mm) along which a straight cut runs that is longer than the rule which is listed; else 0."""
    cuts = ((sheet, cut) for sheet in context.needs.layouts for cut in sheet.cuts)
    sides = (sheet.width if cut.level else sheet.height for sheet, cut in cuts if cut.end - cut.start > LISTED_LONG)
    return max(sides, default=0.0)


def sheet_words(context: Context, board: Board) -> tuple[str, ...]:
    """Return how many sheets of each size a board takes, one of which is enough; () where no layout was made."""
    ways = [
        f"{counted(len(need.sheets), 'sheet')} of {need.sheet.label}"
        for need in context.needs.yields
        if need.board == board.id and need.sheets and not need.left_out
    ]
    return (", or ".join(ways),) if ways else ()


def taken_words(context: Context, board: Board) -> tuple[str, ...]:
    """Return what thicknesses of a board the design takes; () where it takes any."""
    taken = next((one for one in context.joined.boards if one.board == board.id), None)
    words = takes_words(taken, context.paper.first) if taken is not None else ""
    return (f"takes board {words}",) if words else ()


def range_lines(context: Context, board: Board) -> tuple[str, ...]:
    """Return what thicknesses of a board the design takes, and what boards of its name are like: where inches come first, of the name in
    inches that a shop there knows it by."""
    said = taken_words(context, board)
    taken = next((one for one in context.joined.boards if one.board == board.id), None)
    if not said or taken is None:
        return said
    first = context.paper.first
    there = next((shop for shop in board.also if first == "in" and shop.name.endswith(" in")), taken.shop)
    sold = sold_words(replace(taken, shop=there), first)
    return tuple(f"{line}. {sold}" if sold else line for line in said)


def _named(board: Board) -> str:
    return f"sold as {board.sold_as}, " if board.sold_as else ""


def materials_to_buy(design: Design, facts: tuple[Fact, ...], edition: Edition | None = None) -> tuple[str, ...]:
    """Return the same for any reader of a design: a material by the spec's own words, else by its name, with its amount."""
    lines = []
    there = edition or edition_called(OTHER)
    for material in design.materials:
        said = fill(material.text, design, facts, there.first)[0] if material.text else ""
        name = said or thing_name(material.name, there)
        if material.amount is not None:
            quantity, _ = amount(material.amount, design, facts)
            if quantity is not None:
                name = f"{name}: {say(quantity.value, quantity.kind, first=there.first)}"
        lines.append(name)
    return tuple(lines)


def tools_to_buy(design: Design) -> tuple[str, ...]:
    """Return the names of a design's tools."""
    return tuple(thing_name(key, edition_called(OTHER)) for key in design.tools)
