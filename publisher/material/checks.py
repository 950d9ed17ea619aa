"""The checks of the room: each looks at one board and all the parts that are cut from it."""

from collections.abc import Iterable, Iterator

from publisher.basics import Check, Cure, Finding, Findings, Rule, Severity, checked, record
from publisher.basics.wording import say_length
from publisher.design import Board, Design, SheetSize
from publisher.geometry import Part
from publisher.material.fitting import best_turn
from publisher.material.problem import MOST_ON_SHEETS, Problem, alone, frames, piece_of
from publisher.material.splitting import LAP, propose_split


@record
class BoardList:
    """A board, the sheet sizes asked for, and the parts cut from it, in the order of their letters."""

    board: Board
    sheets: tuple[SheetSize, ...]
    parts: tuple[Part, ...]

    @property
    def copies(self) -> int:
        """How many copies are cut, spares included."""
        return sum(p.count + p.spare for p in self.parts)

    def room(self, sheet: SheetSize) -> tuple[float, float]:
        """Return the width and height (mm) inside the crushed edges."""
        return sheet.width - 2 * self.board.edge_margin, sheet.height - 2 * self.board.edge_margin

    def usable(self) -> tuple[SheetSize, ...]:
        """Return the sheets that have any room."""
        return tuple(s for s in self.sheets if min(self.room(s)) > 0)

    def laid_on(self) -> tuple[SheetSize, ...]:
        """Return the sheets that the list is laid out on: those that have room, and none for more copies than anyone cuts."""
        return self.usable() if self.copies <= MOST_ON_SHEETS else ()

    def excess(self, part: Part, sheet: SheetSize) -> float:
        """Return by how much (mm) a part is too large for a sheet; 0 when it fits at an allowed turn."""
        width, height = self.room(sheet)
        over = best_turn(piece_of(part, self.board), width, height, frames(self.board.grain))[1]
        return over if over > 1e-4 else 0.0

    def fitting(self, sheet: SheetSize) -> tuple[Part, ...]:
        """Return the parts that fit a sheet."""
        return tuple(part for part in self.parts if not self.excess(part, sheet))

    def alone(self, part: Part, sheet: SheetSize) -> Problem:
        """Return the problem of one part alone on a sheet."""
        return alone(piece_of(part, self.board), self.board, sheet)

    def listed(self, parts: tuple[Part, ...], sheet: SheetSize) -> Problem:
        """Return the problem of all copies of some of the parts."""
        pieces = tuple(piece_of(part, self.board) for part in parts)
        return Problem(pieces, self.board, sheet, frames(self.board.grain), False)


def board_lists(
    design: Design, parts: Iterable[Part], sheets: tuple[SheetSize, ...] | None = None
) -> Iterator[BoardList]:
    """Yield the list of each board that any part is cut from. ``sheets``: sizes in place of those on sale."""
    cut = tuple(part for part in parts if part.count + part.spare > 0)
    for board in design.boards:
        used = tuple(part for part in cut if part.board == board.id)
        if used:
            yield BoardList(board, board.sheets if sheets is None else sheets, used)


CheckOfBoard = Check[BoardList]  # for annotations only: a slotted frozen class cannot be called through its alias


@checked(
    "material/board-without-sheets",
    "A board that parts are cut from has a sheet size",
    "Without a sheet on sale nobody can say how much board to buy.",
    Severity.WARNING,
)
def sheets_known(subject: BoardList, check: CheckOfBoard) -> Findings:
    """Look for a board without any sheet size."""
    if not subject.sheets:
        yield check.found(
            f"no sheet size is given for the board “{subject.board.id}”, so the pack cannot say how much to buy",
            subject=subject.board.id,
            hint="write the sizes on sale, such as “sheets: [20 x 30 in]”",
            place=subject.board.place,
        )
    return len(subject.sheets) or 1


@checked(
    "material/sheet-without-room",
    "A sheet has room inside its crushed edges",
    "An edge margin that eats the sheet leaves nothing to cut from.",
    Severity.ERROR,
    may_be_empty=True,
)
def sheets_have_room(subject: BoardList, check: CheckOfBoard) -> Findings:
    """Look for sheets that the edge margin eats up."""
    margin = subject.board.edge_margin
    for sheet in subject.sheets:
        if min(subject.room(sheet)) <= 0:
            yield check.found(
                f"the sheet {sheet.label} is {say_length(min(sheet.width, sheet.height))} wide and its edge margins take "
                f"{say_length(2 * margin)}: no room is left",
                subject=subject.board.id,
                hint="make “edge_margin” smaller, or name a larger sheet",
                place=subject.board.place,
                value=min(subject.room(sheet)),
                limit=0.0,
            )
    return len(subject.sheets)


def _too_large(
    subject: BoardList, part: Part, sheet: SheetSize, rule: Rule, hint: str, cure: Cure | None = None
) -> Finding:
    """Say by how much a part is too large for a sheet."""
    over = subject.excess(part, sheet)
    width, height = subject.room(sheet)
    return rule.found(
        f"part {part.letter} “{part.name}” is too large for the sheet {sheet.label} by {say_length(over)}, at the best turn "
        f"allowed; inside its edge margins the sheet has {say_length(width)} × {say_length(height)}",
        subject=part.id,
        hint=hint,
        cure=cure,
        place=part.place,
        value=over,
        limit=0.0,
    )


def _split(subject: BoardList, part: Part, sheet: SheetSize) -> tuple[str, Cure | None]:
    """Say which words split the part by a straight seam in two that fit, or that no one seam does; return the words by themselves too."""
    if part.whole:
        return f"give “split” of the part {part.whole} one more seam: “split: [{{at: …}}, {{at: …}}]”", None
    piece = piece_of(part, subject.board)
    split = propose_split(part, piece, subject.room(sheet), frames(subject.board.grain))
    if split is None:
        return (
            "make the part smaller, allow it more turns, or split it at several seams, such as "
            "“split: [{at: 400 mm, plate: 60 mm}, {at: 800 mm, plate: 60 mm}]”: no one straight seam would do"
        ), None
    end, start = ("left", "left") if split.upright else ("lower", "bottom")
    words = (("at", f"{split.at:g} mm"), ("from", start), ("plate", f"{2 * LAP:g} mm"))
    said = ", ".join(f"{key}: {text}" for key, text in words)
    hint = (
        f"split the part by a seam {say_length(split.at)} from its {end} end (anywhere from "
        f"{say_length(split.least)} to {say_length(split.most)} stays off its openings and fits), with a plate of "
        f"{say_length(2 * LAP)} glued behind it: write “split: {{{said}}}” on the part"
    )
    return hint, Cure((part.place,), "split", words) if part.place is not None else None


@checked(
    "material/part-larger-than-sheets",
    "Every part fits a sheet on sale",
    "A part larger than every sheet cannot be cut in one piece.",
    Severity.ERROR,
)
def parts_fit_a_sheet(subject: BoardList, check: CheckOfBoard) -> Findings:
    """Look for parts that fit no sheet."""
    for part in subject.parts if subject.usable() else ():
        over = {sheet: subject.excess(part, sheet) for sheet in subject.usable()}
        if all(over.values()):
            nearest = min(subject.usable(), key=lambda s: over[s])
            width, height = (side + over[nearest] for side in (nearest.width, nearest.height))
            words, cure = _split(subject, part, nearest)
            hint = f"a sheet of {say_length(width)} × {say_length(height)} would do; or {words}"
            yield _too_large(subject, part, nearest, check, hint, cure)
    return len(subject.parts)


@checked(
    "material/part-larger-than-sheet",
    "Parts fit each sheet size on sale",
    "A buyer who has this sheet must know that one part needs another.",
    Severity.WARNING,
)
def parts_fit_each_sheet(subject: BoardList, check: CheckOfBoard) -> Findings:
    """Look for parts that fit one sheet and not another."""
    for part in subject.parts:
        over = {sheet: subject.excess(part, sheet) for sheet in subject.usable()}
        fitting = [sheet.label for sheet, by in over.items() if not by]
        if fitting:
            hint = f"it fits {' and '.join(fitting)}; the yield table says 0 for this sheet"
            yield from (_too_large(subject, part, sheet, check, hint) for sheet, by in over.items() if by)
    return len(subject.parts)


@checked(
    "material/too-many-copies",
    "A list has a number of copies that someone could cut",
    "A list of tens of thousands of pieces is a slip of the pen, and laying it out would take hours: "
    f"{MOST_ON_SHEETS:,} is the most.",
    Severity.ERROR,
)
def copies_can_be_cut(subject: BoardList, check: CheckOfBoard) -> Findings:
    """Look for lists that nobody could cut."""
    copies = subject.copies
    if copies > MOST_ON_SHEETS:
        most = max(subject.parts, key=lambda p: p.count + p.spare)
        yield check.found(
            f"{copies:,} pieces are to be cut from the board “{subject.board.id}”; {MOST_ON_SHEETS:,} is the most that is laid out",
            subject=subject.board.id,
            hint=f"part {most.letter} “{most.name}” alone has {most.count + most.spare:,}: look for a slip in its count",
            place=most.place,
            value=copies,
            limit=MOST_ON_SHEETS,
        )
    return len(subject.parts)


CHECKS: tuple[CheckOfBoard, ...] = (
    sheets_known,
    sheets_have_room,
    copies_can_be_cut,
    parts_fit_a_sheet,
    parts_fit_each_sheet,
)
