"""The table of the yield: the sheets for the whole list; notes on tracing and blades."""

from publisher.basics.wording import fixed, ordered
from publisher.material import Yield
from publisher.pages.front.layout_words import sheet_name
from publisher.pages.sheet import Context, Numbers
from publisher.pages.type import Column, LaidTable, make_table

BASE_WIDTH = 187.0  # mm; narrower papers get narrower columns, and rows of more lines


def cut_note(context: Context) -> str:
    """Say what the cut list's sizes are, how much cutting there is, and which templates are traced so often that they wear."""
    rows = context.needs.cut_list
    length = fixed(sum(row.cut_length for row in rows) / 1000, 1)
    said = [
        "Sizes are those of the finished piece over all.",
        f"{length} m to cut in all: allow blades for that, and a fresh one as soon as the foam tears.",
    ]
    worn = [f"{row.letter} ({row.tracings} times)" for row in rows if row.sturdy]
    if worn:
        them = "this template" if len(worn) == 1 else "these templates"
        said.append(
            f"Traced often: {', '.join(worn)}. Mount {them} on card 1 mm (0.04 in) thick, and make one more as a spare."
        )
    return ordered(" ".join(said), context.paper.first)


def sheet_table(context: Context, width: float, _numbers: Numbers | None) -> LaidTable:
    """Return the sheets for the whole list, beside what a grid would take and what no layout can beat."""
    share = min(1.0, width / BASE_WIDTH)
    scored = any(need.score_length for need in context.needs.yields)
    cols = (
        Column("sheets that do", 24.0 * share, "right"),
        Column("on a grid", 17.0 * share, "right"),
        Column("by area", 15.0 * share, "right"),
        Column("pieces", 15.0 * share, "right"),
        Column("shared cuts", 15.0 * share, "right"),
        Column("left over", 17.0 * share, "right"),
        Column("to cut", 18.0 * share, "right"),
        *((Column("to score", 18.0 * share, "right"),) if scored else ()),
        Column("a sheet", 19.0 * share, "right"),
    )
    rows = tuple(
        (
            sheet_name(need.sheet.label, need.sheet.width, need.sheet.height),
            str(len(need.sheets)) if need.sheets else "does not fit",
            str(need.grid_sheets) if need.grid_sheets else "–",
            str(need.bound),
            str(need.pieces),
            str(need.ease.shared),
            f"{100 * need.offcut_share:.0f} %" if need.sheets else "–",
            metres(need.cut_length),
            *((metres(need.score_length),) if scored else ()),
            _each(need),
        )
        for need in context.needs.yields
    )
    return make_table(context.type, (Column("Sheet", width - sum(c.width for c in cols)), *cols), rows)


def metres(mm: float) -> str:
    """Say a long length in metres."""
    return f"{fixed(mm / 1000, 1)} m"


def _each(need: Yield) -> str:
    """Say how much there is to cut on one sheet: the least and the most of all sheets."""
    said = [
        fixed(length / 1000, 1) for length in (min(need.cut_lengths, default=0.0), max(need.cut_lengths, default=0.0))
    ]
    return f"{said[0]} m" if said[0] == said[1] else f"{said[0]}-{said[1]} m"
