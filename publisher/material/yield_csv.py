"""The yield as a table for a spreadsheet: one line for each part alone on each sheet size, and one for each whole list."""

import csv
import io

from publisher.basics.units import inches
from publisher.basics.wording import fixed
from publisher.geometry import Part
from publisher.material.model import BoardNeeds, Yield

COLUMNS = (
    "board", "sheet", "sheet_width_mm", "sheet_height_mm", "sheet_width_in", "sheet_height_in", "row", "letter", "part",
    "careful_at_least", "at_most", "known_as", "askew", "measures", "shared_cuts", "grid", "gain", "sheets_at_least", "grid_sheets",
    "sheets_by_area", "pieces", "free_spares_at_least", "left_over_percent", "cut_m", "cut_m_a_sheet", "score_m",
)  # fmt: skip


def gain(careful: int, grid: int) -> int | None:
    """Return how many percent more a careful layout gives than the grid; None when the grid gives nothing."""
    return round(100 * (careful - grid) / grid) if grid else None


def yield_csv(needs: BoardNeeds, parts: tuple[Part, ...]) -> str:
    """Return the yields as CSV (comma, dot, CRLF as RFC 4180 has it), the columns named in the first line."""
    names = {p.id: (p.letter, p.name) for p in parts}
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS, restval="")
    writer.writeheader()
    for one in needs.yields:
        free = {s.part: f"{s.copies}" for s in one.spares}
        for row in one.rows:
            letter, name = names.get(row.part, ("", row.part))
            more = gain(row.careful, row.grid)
            writer.writerow(
                {
                    **_sheet(one),
                    "row": "part alone",
                    "letter": letter,
                    "part": name,
                    "careful_at_least": row.careful,
                    "at_most": row.most,
                    "known_as": row.known_as,
                    "askew": row.ease.askew,
                    "measures": row.ease.measures,
                    "shared_cuts": row.ease.shared,
                    "grid": row.grid,
                    "gain": "" if more is None else f"{more} %",
                    "free_spares_at_least": free.get(row.part, ""),
                }
            )
        writer.writerow({**_sheet(one), **_list(one)})
    return out.getvalue()


def _sheet(one: Yield) -> dict[str, object]:
    """Return a sheet's columns."""
    width, height = one.sheet.width, one.sheet.height
    return {
        "board": one.board,
        "sheet": one.sheet.label,
        "sheet_width_mm": fixed(width, 1),
        "sheet_height_mm": fixed(height, 1),
        "sheet_width_in": fixed(inches(width), 2),
        "sheet_height_in": fixed(inches(height), 2),
    }


def _list(one: Yield) -> dict[str, object]:
    """Return the columns of a whole list."""
    if not one.sheets:
        return {"row": "whole list"}
    return {
        "row": "whole list",
        "sheets_at_least": len(one.sheets),
        "grid_sheets": one.grid_sheets or "",
        "sheets_by_area": one.bound,
        "pieces": one.pieces,
        "askew": one.ease.askew,
        "measures": one.ease.measures,
        "shared_cuts": one.ease.shared,
        "left_over_percent": fixed(100 * one.offcut_share, 1),
        "cut_m": fixed(one.cut_length / 1000, 2),
        "cut_m_a_sheet": " + ".join(fixed(length / 1000, 2) for length in one.cut_lengths),
        "score_m": fixed(one.score_length / 1000, 2),
    }
