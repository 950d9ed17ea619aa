"""What the buyer needs before starting: board by real layouts, tools, materials with amounts."""

from publisher.basics.wording import LengthUnit, say_length
from publisher.design import Board, Design, Fact, amount, fill, say
from publisher.joints import sold_words, takes_words
from publisher.pages.sheet import Context, thing_name

FACES = {
    "bare": "bare {name} board, no paper on its faces",
    "paper_one": "{name} board with paper on one face",
    "paper_both": "{name} board with paper on both faces",
}


def board_lines(context: Context) -> tuple[str, ...]:
    """Return one sentence per board: its faces, its measured thickness, and how many sheets of each size to buy.

    A layout that was drawn and checked holds every part, so that number is enough.
    """
    lines = []
    for board in context.design.boards:
        ways = [
            f"{len(need.sheets)} {'sheet' if len(need.sheets) == 1 else 'sheets'} of {need.sheet.label}"
            for need in context.needs.yields
            if need.board == board.id and need.sheets and not need.left_out
        ]
        faces = FACES.get(board.faces, f"{{name}} board, {board.faces}").format(name=board.id.replace("_", " "))
        thick = f"{faces}, {_named(board)}measured {say_length(board.thickness, first=context.paper.first)} thick"
        lines.append(f"{thick}: buy {', or '.join(ways)}" if ways else thick)
        lines += range_lines(context, board)
    return tuple(lines)


def sheet_words(context: Context, board: Board) -> tuple[str, ...]:
    """Return how many sheets of each size a board takes, one of which is enough; () where no layout was made."""
    ways = [
        f"{len(need.sheets)} {'sheet' if len(need.sheets) == 1 else 'sheets'} of {need.sheet.label}"
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
    """Return what thicknesses of a board the design takes, and what boards of its name are like."""
    taken = next((one for one in context.joined.boards if one.board == board.id), None)
    first = context.paper.first
    if taken is None or not takes_words(taken):
        return ()
    sold = sold_words(taken, first)
    return (f"takes board {takes_words(taken, first)}{f'. {sold}' if sold else ''}",)


def _named(board: Board) -> str:
    return f"sold as {board.sold_as}, " if board.sold_as else ""


def tool_lines(context: Context) -> tuple[str, ...]:
    """Return the names of the tools."""
    return tools_to_buy(context.design, context.paper.first)


def material_lines(context: Context) -> tuple[str, ...]:
    """Return the names of the materials, each with its amount where the design gives one."""
    return materials_to_buy(context.design, context.facts, context.paper.first)


def materials_to_buy(design: Design, facts: tuple[Fact, ...], first: LengthUnit = "mm") -> tuple[str, ...]:
    """Return the same for any reader of a design: a material by the spec's own words, else by its name, with its amount."""
    lines = []
    for material in design.materials:
        said = fill(material.text, design, facts, first)[0] if material.text else ""
        name = said or thing_name(material.name, first)
        if material.amount is not None:
            quantity, _ = amount(material.amount, design, facts)
            if quantity is not None:
                name = f"{name}: {say(quantity.value, quantity.kind, first=first)}"
        lines.append(name)
    return tuple(lines)


def tools_to_buy(design: Design, first: LengthUnit = "mm") -> tuple[str, ...]:
    """Return the names of a design's tools."""
    return tuple(thing_name(key, first) for key in design.tools)
