"""What the buyer needs before starting: board by real layouts, tools, materials with amounts."""

from publisher.design import amount, say, say_length
from publisher.pages.draft import Context
from publisher.pages.words import thing

FACES = {"bare": "without paper", "paper_one": "with paper on one face", "paper_both": "with paper on both faces"}


def board_lines(context: Context) -> tuple[str, ...]:
    """Return one sentence per board: thickness as measured, and for each sheet size how many sheets a real layout needs."""
    lines = []
    for board in context.design.boards:
        ways = [
            f"{need.sheets and len(need.sheets)} {'sheet' if len(need.sheets) == 1 else 'sheets'} of {need.sheet.label}"
            for need in context.needs.yields
            if need.board == board.id and need.sheets
        ]
        faces = FACES.get(board.faces, board.faces)
        name = board.id.replace("_", " ")
        thick = f"{name} board, {say_length(board.thickness)} thick as measured, {faces}"
        lines.append(f"{thick}: at least {' or '.join(ways)}" if ways else thick)
    return tuple(lines)


def tool_lines(context: Context) -> tuple[str, ...]:
    """Return the names of the tools."""
    return tuple(found.name if (found := thing(key)) else key.replace("_", " ") for key in context.design.tools)


def material_lines(context: Context) -> tuple[str, ...]:
    """Return the names of the materials, each with its amount where the design gives one."""
    lines = []
    for material in context.design.materials:
        found = thing(material.name)
        name = context.say(material.text) or (found.name if found else material.name.replace("_", " "))
        if material.amount is not None:
            quantity, _ = amount(material.amount, context.design, context.facts)
            if quantity is not None:
                name = f"{name}: {say(quantity.value, quantity.kind)}"
        lines.append(name)
    return tuple(lines)
