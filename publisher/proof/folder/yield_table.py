"""The check of the table of yields: read as CSV (RFC 4180), every cell held against what the layouts gave."""

import csv
import io
from collections.abc import Iterator
from itertools import pairwise
from math import dist

from publisher.basics import AlonePromise, Check, CutFilePromise, Findings, PiecePromise, YieldPromise
from publisher.proof.folder.case import FolderCase, few, judged_files
from publisher.proof.reading import MM_PER_INCH

SHEET = ("board", "sheet", "sheet_width_mm", "sheet_height_mm", "sheet_width_in", "sheet_height_in", "row")
ALONE = (
    "letter", "part", "careful_at_least", "at_most", "known_as", "askew", "measures", "shared_cuts", "grid", "gain",
    "free_spares_at_least",
)  # fmt: skip
WHOLE = (
    "sheets_at_least", "grid_sheets", "sheets_by_area", "pieces", "askew", "measures", "shared_cuts", "left_over_percent", "cut_m",
    "cut_m_a_sheet", "score_m",
)  # fmt: skip
COLUMNS = {*SHEET, *ALONE, *WHOLE}
HALF = 1e-9  # of the last digit: what a rounded number may be off beside half of it
SUMMED = 0.001  # share by which sums over sheets may differ: the pieces here have chords for arcs


@judged_files(
    "proof/yield-table",
    "The table of yields says what the layouts gave",
    "a seller buys board by the table: every number in it is that of a verified layout, rounded to the digits that it shows",
)
def yield_table(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Hold every cell against the promise, in its order."""
    looked = 0
    for path, promises in folder.expected.tables:
        if path in folder.files:
            said = [*_faults(folder.files[path], promises), *_other_than_sheets(promises, _beside(path, folder))]
            yield from few(check, path, said, "build the design again, and take its table")
            looked += 1
    return looked


def _beside(path: str, folder: FolderCase) -> list[CutFilePromise]:
    """Return the sheets that lie in the folder of a table: those of its variant."""
    here = path.rpartition("/")[0]
    return [one for one in folder.expected.cut_files if one.path.rpartition("/")[0] == here and one.width]


def _other_than_sheets(promises: tuple[YieldPromise, ...], files: list[CutFilePromise]) -> Iterator[str]:
    """Yield where the numbers of a whole list are not those of the pieces that lie on its sheets: counted, measured and summed anew."""
    for one in promises:
        sheets = [file for file in files if (file.board, file.label) == (one.board, one.label)]
        if not one.cuts or not sheets:
            continue
        cuts = [sum(_around(piece) for piece, _ in sheet.copies) for sheet in sheets]
        pieces = sum(len(sheet.copies) for sheet in sheets)
        area = sum(_area(piece) for sheet in sheets for piece, _ in sheet.copies)
        left = 1.0 - area / (len(sheets) * one.width * one.height)
        said = f"{one.board}, {one.label}"
        if len(sheets) != len(one.cuts) or pieces != one.pieces:
            yield f"{said}: {pieces} pieces lie on {len(sheets)} sheets, and not {one.pieces} on {len(one.cuts)}"
        elif any(abs(a - b) > SUMMED * max(b, 1.0) for a, b in zip(cuts, one.cuts, strict=True)):
            yield f"{said}: {sum(cuts) / 1000:.2f} m are cut on the sheets, and not {sum(one.cuts) / 1000:.2f} m"
        elif abs(left - one.left_over) > SUMMED:
            yield f"{said}: {100 * left:.1f} % of the sheets are left over, and not {100 * one.left_over:.1f} %"


def _around(piece: PiecePromise) -> float:
    return sum(dist(a, b) for ring in piece.rings for a, b in pairwise((*ring, ring[0])))


def _area(piece: PiecePromise) -> float:
    """Return the area of a piece (mm²), its openings taken out, by the shoelace formula."""
    areas = [
        abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in pairwise((*ring, ring[0])))) / 2.0 for ring in piece.rings
    ]
    return areas[0] - sum(areas[1:])


def _faults(data: bytes, promises: tuple[YieldPromise, ...]) -> Iterator[str]:
    try:
        found = list(csv.reader(io.StringIO(data.decode("utf-8"), newline=""), strict=True))
    except (UnicodeDecodeError, csv.Error):
        yield "is no table that a spreadsheet could read"
        return
    head, rows = (found[0], found[1:]) if found else ([], [])
    if len(set(head)) < len(head) or set(head) != COLUMNS:
        yield f"has other columns: {', '.join(sorted(set(head) ^ COLUMNS))[:120] or 'one of them twice'}"
        return
    wanted = [row for one in promises for row in _rows(one)]
    if len(rows) != len(wanted):
        yield f"has {len(rows)} rows; the layouts give {len(wanted)}"
        return
    for number, (cells, want) in enumerate(zip(rows, wanted, strict=True), 2):
        if len(cells) != len(head):
            yield f"line {number} has {len(cells)} cells of {len(head)}"
            continue
        for name, cell in zip(head, cells, strict=True):
            if not _says(cell, want.get(name, "")):
                yield f"line {number}, {name}: “{cell[:40]}”; it should be {_shown(want.get(name, ''))}"


WantedCell = str | int | tuple[float, int]  # words, a whole number, a number with its decimals
Cells = dict[str, WantedCell | tuple[tuple[float, int], ...]]


def _rows(one: YieldPromise) -> Iterator[Cells]:
    """Yield the cells that the promise gives: those of each part alone, then those of the whole list."""
    sheet: Cells = {
        "board": one.board,
        "sheet": one.label,
        "sheet_width_mm": (one.width, 1),
        "sheet_height_mm": (one.height, 1),
        "sheet_width_in": (one.width / MM_PER_INCH, 2),
        "sheet_height_in": (one.height / MM_PER_INCH, 2),
    }
    for alone in one.alone:
        yield {**sheet, "row": "part alone", **_alone(alone)}
    yield {**sheet, "row": "whole list", **_whole(one)}


def _alone(alone: AlonePromise) -> Cells:
    gain = f"{round(100 * (alone.careful - alone.grid) / alone.grid)} %" if alone.grid else ""
    return {
        "letter": alone.letter,
        "part": alone.name,
        "careful_at_least": alone.careful,
        "at_most": alone.most,
        "known_as": alone.known_as,
        "askew": alone.askew,
        "measures": alone.measures,
        "shared_cuts": alone.shared,
        "grid": alone.grid,
        "gain": gain,
        "free_spares_at_least": "" if alone.spares is None else alone.spares,
    }


def _whole(one: YieldPromise) -> Cells:
    if not one.cuts:
        return {}
    return {
        "sheets_at_least": len(one.cuts),
        "grid_sheets": one.grid_sheets or "",
        "sheets_by_area": one.bound,
        "pieces": one.pieces,
        "askew": one.askew,
        "measures": one.measures,
        "shared_cuts": one.shared,
        "left_over_percent": (100 * one.left_over, 1),
        "cut_m": (one.cut / 1000, 2),
        "cut_m_a_sheet": tuple((length / 1000, 2) for length in one.cuts),
        "score_m": (one.score / 1000, 2),
    }


def _says(cell: str, wanted: WantedCell | tuple[tuple[float, int], ...]) -> bool:
    if isinstance(wanted, str | int):
        return cell == str(wanted)
    if wanted and isinstance(wanted[0], tuple):
        parts = cell.split(" + ")
        numbers = [one for one in wanted if isinstance(one, tuple)]
        return len(parts) == len(numbers) and all(map(_near, parts, numbers))
    value, decimals = wanted
    return isinstance(value, float) and isinstance(decimals, int) and _near(cell, (value, decimals))


def _near(cell: str, wanted: tuple[float, int]) -> bool:
    """Say whether a cell is a number, rounded to its decimals."""
    value, decimals = wanted
    whole, dot, behind = cell.partition(".")
    if not (whole.isdecimal() and dot and behind.isdecimal() and len(behind) == decimals):
        return False
    return abs(float(cell) - value) <= (0.5 + HALF) * 10.0**-decimals + 1e-9


def _shown(wanted: WantedCell | tuple[tuple[float, int], ...]) -> str:
    if isinstance(wanted, str | int):
        return f"“{wanted}”" if wanted != "" else "empty"
    pairs = wanted if wanted and isinstance(wanted[0], tuple) else (wanted,)
    return " + ".join(f"{one[0]:.{one[1]}f}" for one in pairs if isinstance(one, tuple))
