"""The yield in words for the terminal, and as JSON records."""

from collections.abc import Iterator, Sequence

import click

from publisher.api import STANDARD, Shared, Worked, Yield, gain
from publisher.basics.wording import agreed, counted, fixed, say_length
from publisher.cli.report import finding_record


def show(worked: Worked, variant: str) -> None:
    """Print the yield of one variant."""
    click.echo(f"{worked.brief.slug}, {variant or STANDARD}")
    names = {p.id: f"{p.letter} {p.name}" for p in worked.pieces}
    for one in worked.needs.yields if worked.needs else ():
        for line in _lines(one, names):
            click.echo(line)


def _lines(one: Yield, names: dict[str, str]) -> Iterator[str]:
    """Yield the lines of one board and sheet size."""
    size = f"{fixed(one.sheet.width, 1)} × {fixed(one.sheet.height, 1)} mm"
    yield f"  {one.board}, sheet {one.sheet.label}" + ("" if size.startswith(one.sheet.label[:3]) else f" ({size})")
    if one.sheets:
        grid = f"{one.grid_sheets} on a grid" if one.grid_sheets else "does not fit a grid"
        yield f"    whole list: {counted(len(one.sheets), 'sheet')} {agreed(len(one.sheets), 'does', 'do')}; {grid}; {one.bound} by area"
        scored = f", {fixed(one.score_length / 1000, 2)} m to score" if one.score_length else ""
        yield (
            f"      {counted(one.pieces, 'piece')}, {fixed(100 * one.offcut_share, 0)} % left over, "
            f"{fixed(one.cut_length / 1000, 2)} m to cut{scored}"
        )
        yield f"      {_ease(one)}"
        if len(one.sheets) > 1:
            yield "      to cut on each sheet: " + ", ".join(f"{fixed(m / 1000, 2)} m" for m in one.cut_lengths)
    free = {s.part: f", {s.copies}{' or more' if s.capped else ''} spare go on free" for s in one.spares if s.copies}
    for row in one.rows:
        more = gain(row.careful, row.grid)
        better = "" if more is None else f" ({more:+d} %)"
        name = names.get(row.part, row.part)
        known = "" if row.known_as == "area bound only" else f", {row.known_as}"
        least = "         " if row.known_as.startswith("best") else "at least "
        yield f"    {name:24} {least}{row.careful:4} a sheet{known}; {row.grid} on a grid{better}{free.get(row.part, '')}"


def _ease(one: Yield) -> str:
    """Say how easily the whole list is marked out."""
    askew = f"{one.ease.askew} laid askew" if one.ease.askew else "nothing askew"
    largest = max(filter(None, one.offcuts), key=lambda box: box.width * box.height, default=None)
    offcut = (
        f"an offcut of {fixed(largest.width, 0)} × {fixed(largest.height, 0)} mm"
        if largest
        else "no offcut worth keeping"
    )
    shared = f"{counted(one.ease.shared, 'straight cut')} shared by several pieces"
    return f"{counted(one.ease.measures, 'different measure')} to set, {shared}, {askew}, {offcut}"


def show_shared(shared: Sequence[Shared]) -> None:
    """Print what several designs take together, board by board."""
    if shared:
        click.echo("all of them on one shopping list")
    for one in shared:
        click.echo(f"  board of {say_length(one.thickness)}, sheet {one.sheet.label}")
        each = ", ".join(f"{name} {count}" for name, count in one.members)
        click.echo(f"    one after another: {counted(sum(count for _, count in one.members), 'sheet')} ({each})")
        saves = f"{one.saved} saved" if one.saved else "none saved"
        click.echo(f"    together: {counted(len(one.sheets), 'sheet')}, {saves}")


def shared_record(one: Shared) -> dict[str, object]:
    """Return the JSON record of a board on one shopping list: sheets alone and together, and what lies on each."""
    return {
        "thickness_mm": one.thickness,
        "sheet": one.sheet.label,
        "sheets_of_each": dict(one.members),
        "sheets": len(one.sheets),
        "saved": one.saved,
        "laid_out": [
            [
                {
                    "part": i.part,
                    "copy": i.copy,
                    "x_mm": i.pose.x,
                    "y_mm": i.pose.y,
                    "turn_deg": i.pose.turn,
                    "mirrored": i.pose.mirrored,
                }
                for i in sheet
            ]
            for sheet in one.sheets
        ],
    }


def record(worked: Worked, variant: str) -> dict[str, object]:
    """Return the JSON record of one variant."""
    return {
        "slug": worked.brief.slug,
        "variant": variant or STANDARD,
        "yields": [_record(one) for one in (worked.needs.yields if worked.needs else ())],
        "findings": [finding_record(f) for f in worked.findings],
    }


def _record(one: Yield) -> dict[str, object]:
    """Return the JSON record of one board and sheet size."""
    free = {s.part: s for s in one.spares}
    return {
        "board": one.board,
        "sheet": one.sheet.label,
        "width_mm": one.sheet.width,
        "height_mm": one.sheet.height,
        "sheets": len(one.sheets),
        "grid_sheets": one.grid_sheets,
        "bound": one.bound,
        "pieces": one.pieces,
        "offcut_share": one.offcut_share,
        "cut_length_mm": one.cut_length,
        "cut_length_mm_of_each_sheet": list(one.cut_lengths),
        "score_length_mm": one.score_length,
        "shared_cuts": one.ease.shared,
        "offcuts_mm": [[b.width, b.height] if b else None for b in one.offcuts],
        "parts": [
            {
                "part": row.part,
                "careful": row.careful,
                "at_most": row.most,
                "known_as": row.known_as,
                "askew": row.ease.askew,
                "measures": row.ease.measures,
                "shared_cuts": row.ease.shared,
                "grid": row.grid,
                "gain_percent": gain(row.careful, row.grid),
                "engine": row.layout.engine,
                "free_spares": free[row.part].copies if row.part in free else None,
            }
            for row in one.rows
        ],
    }
