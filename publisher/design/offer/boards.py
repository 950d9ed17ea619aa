"""Boards: what parts are cut from. Thickness as measured, never nominal."""

from publisher.basics.wording import mm_apart, say_mm
from publisher.brief import Table, Value
from publisher.design.language import Scope
from publisher.design.offer.sheets import read_sheets
from publisher.design.offer.sold_as import also_sold_as, sold_as
from publisher.design.records import Board
from publisher.design.rules import plans as rules

THICKEST_MM = 100.0
MOST_STRENGTH = 500.0  # MPa: more than any wood
MOST_STIFFNESS = 250_000.0  # MPa: more than steel
MOST_AREAL_MASS = 100_000.0  # g/m²: 100 mm of water


def read_boards(table: Table, scope: Scope) -> tuple[Board, ...]:
    """Return the boards whose measures can be; findings for the others."""
    boards = [read_board(entry.key, entry.node, scope) for entry in table.entries if isinstance(entry.node, Table)]
    return tuple(board for board in boards if board is not None)


def read_board(board_id: str, table: Table, scope: Scope) -> Board | None:
    """Return one board; None when it has no thickness (then a finding says why)."""
    subject = f"board {board_id}"
    value = table.value("thickness")
    if value is None:
        scope.findings.append(
            rules.BOARD_THICKNESS.found(
                f"the board {board_id} has no thickness",
                subject=subject,
                hint="measure ten pieces in a stack, divide by ten, and write thickness: 5 mm",
                place=table.place,
            )
        )
        return None
    thickness = scope.number(value, subject, "length")
    if thickness is None:
        return None
    if not 0 < thickness <= THICKEST_MM:
        thick, most = mm_apart(thickness, THICKEST_MM)
        scope.findings.append(
            rules.BOARD_THICKNESS.found(
                f"the board {board_id} is {thick} thick; a board is more than 0 and at most {most}",
                subject=subject,
                hint="measure ten pieces in a stack and divide by ten",
                place=value.place,
                value=thickness,
                limit=THICKEST_MM if thickness > THICKEST_MM else 0.0,
            )
        )
        return None
    peeled = _peeled(table, thickness, scope, subject)
    names = tuple(node.text.strip() for node in table.row("sold_as") if isinstance(node, Value))
    sold, shop = sold_as(names, thickness)
    grain = table.text("grain", "none")
    return Board(
        id=board_id,
        thickness=peeled or thickness,
        spread=_measure(table, "thickness_spread", thickness / 2, scope, subject),
        material=table.text("material", "foam"),
        faces="bare" if peeled else table.text("faces", "bare"),
        sheets=read_sheets(table.row("sheets"), grain, scope, subject),
        knife_gap=_measure(table, "knife_gap", THICKEST_MM, scope, subject),
        edge_margin=_measure(table, "edge_margin", THICKEST_MM, scope, subject),
        grain=grain,
        place=table.place,
        bending_strength=_plain(table, "bending_strength", MOST_STRENGTH, "MPa", scope, subject),
        stiffness=_plain(table, "stiffness", MOST_STIFFNESS, "MPa", scope, subject),
        areal_mass=_plain(table, "areal_mass", MOST_AREAL_MASS, "g/m²", scope, subject),
        paper=0.0 if peeled else _paper(table, thickness, scope, subject),
        prefer=table.text("prefer") or "ease",
        peeled=bool(peeled),
        squeeze=_measure(table, "squeeze", thickness / 4, scope, subject),
        sold_as=sold,
        shop=shop,
        also=also_sold_as(names, shop),
    )


def _peeled(table: Table, thickness: float, scope: Scope, subject: str) -> float:
    """The thickness of board whose paper is peeled off; 0 when it stays, or after a finding."""
    value = table.value("peeled")
    peeled = None if value is None else scope.number(value, subject, "length")
    if value is None or peeled is None:
        return 0.0
    if table.text("faces", "bare") == "bare":
        what, hint, limit = (
            f"peeled is {say_mm(peeled)}, and the board is bare",
            "say faces: paper_both, or leave it out",
            0.0,
        )
    elif not 0 < peeled < thickness:
        bare, papered = mm_apart(peeled, thickness)
        what = f"peeled is {bare}, and the board with its paper is {papered} thick"
        hint, limit = "measure ten peeled pieces in a stack and divide by ten: they are thinner", thickness
    else:
        return peeled
    scope.findings.append(
        rules.BOARD_MEASURE.found(what, subject=subject, hint=hint, place=value.place, value=peeled, limit=limit)
    )
    return 0.0


def _paper(table: Table, thickness: float, scope: Scope, subject: str) -> float:
    """The paper on a face: at most a quarter of the board, and none on a bare one."""
    paper = _measure(table, "paper", thickness / 4, scope, subject)
    value = table.value("paper")
    if value is not None and paper > 0 and table.text("faces", "bare") == "bare":
        scope.findings.append(
            rules.BOARD_MEASURE.found(
                f"paper is {say_mm(paper)}, and the board is bare",
                subject=subject,
                hint="say faces: paper_one or paper_both, or leave paper out",
                place=value.place,
                value=paper,
                limit=0.0,
            )
        )
    return paper


def _plain(table: Table, key: str, most: float, unit: str, scope: Scope, subject: str) -> float | None:
    """A plain number in the unit that the field says; None when unsaid or after a finding."""
    value = table.value(key)
    number = None if value is None else scope.number(value, subject, "number")
    if value is None or number is None or 0 < number <= most:
        return number
    scope.findings.append(
        rules.BOARD_MEASURE.found(
            f"{key} is {number:g} {unit}; it is more than 0 and at most {most:g} {unit}",
            subject=subject,
            hint="write what the board's maker says or what you have measured, or leave it out",
            place=value.place,
            value=number,
            limit=most if number > most else 0.0,
        )
    )
    return None


def _measure(table: Table, key: str, most: float, scope: Scope, subject: str) -> float:
    """A measure of the board that may be 0 and is so when unsaid."""
    value = table.value(key)
    measure = None if value is None else scope.number(value, subject, "length")
    if value is None or measure is None:
        return 0.0
    if not 0 <= measure <= most:
        said, limit = mm_apart(measure, most)
        scope.findings.append(
            rules.BOARD_MEASURE.found(
                f"{key} is {said}; it lies between 0 and {limit}",
                subject=subject,
                hint="write a measure taken from the board",
                place=value.place,
                value=measure,
                limit=most if measure > most else 0.0,
            )
        )
        return 0.0
    return measure
