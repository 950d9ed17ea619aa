"""``publisher measure``: judge a printed sheet from two ruler readings, and a board by its thickness."""

from collections.abc import Iterator
from math import isinf
from pathlib import Path
from typing import NoReturn

import click

from publisher import api
from publisher.api import LONG_RULERS, TOOLS, UNITS, BoardVerdict, PackFacts, Verdict
from publisher.basics import Refusal
from publisher.basics.units import INCH_MM
from publisher.basics.wording import rounded_down, rounded_up
from publisher.cli.options import json_option, read_file
from publisher.cli.report import finding_record, leave, show_findings, write_json

SAME_INCH = 1e-9  # a line this near to whole inches was given in inches: no printed length in mm is
BOARD_WORDS = {
    "good": "GOOD: this pack takes your board.",
    "bad": "BAD: do not cut this pack from your board.",
}
WORDS = {
    "good": "GOOD: this sheet is true enough to use.",
    "doubtful": "DOUBTFUL: the readings do not settle it.",
    "bad": "BAD: do not cut from this sheet.",
}


def _line_length(_ctx: click.Context, _param: click.Parameter, text: str | None) -> float | None:
    """Turn the length of a printed line into mm; click reports what is none."""
    if text is None:
        return None
    written = api.read_length(text, "mm")
    if written is None:
        raise click.BadParameter(f"“{text[:40]}” is no length: write the number that is printed beside the line, in mm")
    return written.mm


@click.command(short_help="Judge a printed sheet from two ruler readings, or a board by its thickness.")
@click.option(
    "--across",
    metavar="READING",
    help="What the ruler shows across the page (the shorter way of an upright page): 97.3, “97 mm”, “3 15/16 in”.",
)
@click.option("--down", metavar="READING", help="What the ruler shows down the page.")
@click.option(
    "--rulers",
    nargs=2,
    metavar="ACROSS DOWN",
    help="Both readings of the long rulers of the print-check page, in place of the square: they judge finer.",
)
@click.option(
    "--unit",
    type=click.Choice(list(UNITS)),
    default="mm",
    show_default=True,
    help="Unit of readings that are written without one.",
)
@click.option(
    "--of",
    "true_mm",
    metavar="LENGTH",
    callback=_line_length,
    help="How long the printed line should be: 4in for the outer square on papers of North America.  [default: 100 mm, the (inner) square]",
)
@click.option(
    "--tool",
    type=click.Choice(list(TOOLS)),
    default="ruler",
    show_default=True,
    help="What you measured with: a ruler (its marks are taken from how the readings are written), one with marks this far apart, "
    "or a calliper.",
)
@click.option(
    "--pack", type=click.Path(path_type=Path), help="The pack that was printed: judge by what this design allows."
)
@click.option(
    "--board",
    metavar="THICKNESS",
    help="How thick your board is, measured: 4.6mm, 0.18in. Judged by --pack; NAME=THICKNESS where it is cut from several boards.",
)
@json_option
def measure(
    across: str | None,
    down: str | None,
    rulers: tuple[str, str] | None,
    unit: str,
    true_mm: float | None,
    tool: str,
    pack: Path | None,
    board: str | None,
    as_json: bool,
) -> None:
    """Judge a printed sheet from two ruler readings of the 100 mm square (or of any printed line, with --of), and a board by what
    the pack takes. Other variants of the pack that lie beside it are tried too.

    \b
    Examples:  publisher measure --across 97.3 --down 97.2
               publisher measure --rulers 179.5 239.5
               publisher measure --across "4 in" --down "3 31/32 in" --of 4in
               publisher measure --board 4.6mm --pack toll-house-1.0.0-foam-5mm-a4.pdf
    """
    if rulers is not None and (across, down, true_mm) != (None, None, None):
        raise click.UsageError("--rulers takes both readings of the long rulers: leave --across, --down and --of out")
    if (across is None) != (down is None) or (across is None and rulers is None and board is None):
        raise click.UsageError(
            "give both readings, --across and --down or --rulers ACROSS DOWN, or a --board with its --pack, or all of them"
        )
    facts = api.pack_facts(read_file(pack), pack.name, _files_beside(pack)) if pack is not None else None
    verdict, on_board = None, None
    if rulers is not None:
        verdict = api.measure(*rulers, unit, facts.rulers if facts else LONG_RULERS, tool, facts)
    elif across is not None and down is not None:
        verdict = api.measure(across, down, unit, true_mm, tool, facts)
    if board is not None:
        on_board = _on_board(board, pack, facts, verdict)
    _tell(verdict, on_board, facts, as_json)


def _tell(verdict: Verdict | None, on_board: BoardVerdict | None, facts: PackFacts | None, as_json: bool) -> NoReturn:
    """Print what was judged, and end the command."""
    if as_json:
        write_json((_record(verdict) if verdict else {"format": 1}) | (_board_record(on_board) if on_board else {}))
    else:
        if facts is not None:
            click.echo(f"{facts.title}, version {facts.version}")
        if verdict is not None:
            _show(verdict, facts)
        if on_board is not None:
            _show_board(on_board)
    findings = (*(verdict.findings if verdict else ()), *(on_board.findings if on_board else ()))
    show_findings(findings)
    leave(findings)


def _on_board(board: str, pack: Path | None, facts: PackFacts | None, verdict: Verdict | None) -> BoardVerdict:
    """Judge a board by its pack at the scales that were measured, and by the other packs in its folder."""
    if pack is None or facts is None:
        raise click.UsageError("--board is judged by what a pack takes: name the PDF with --pack")
    name, _, thickness = board.rpartition("=")
    scales = tuple(scale.value for scale in verdict.scales) if verdict else (1.0,)
    return api.measure_board(api.read_thickness(thickness), facts, _beside(pack), scales, name.strip())


def _beside(pack: Path) -> tuple[PackFacts, ...]:
    """Return the facts of the other packs in the pack's folder; what cannot be read there is none of them, nor is a free test page."""
    found: dict[str, PackFacts] = {}
    for name, data in _files_beside(pack):
        try:
            facts = api.pack_facts(data, name)
        except Refusal:
            continue
        if facts.whole:
            found.setdefault(facts.called, facts)
    return tuple(found.values())


def _files_beside(pack: Path) -> Iterator[tuple[str, bytes]]:
    """Yield name and bytes of the other PDFs in the pack's folder that can be read."""
    for path in sorted(pack.parent.glob("*.pdf")):
        if path.name != pack.name:
            try:
                data = path.read_bytes()
            except OSError:
                continue
            yield path.name, data


def _show_board(verdict: BoardVerdict) -> None:
    """Say what a board is good for: its range is rounded inwards."""
    name = f", sold as {verdict.sold_as}" if verdict.sold_as else ""
    click.echo(f"  board: {verdict.board}{name}, {verdict.thickness:.2f} mm; drawn for {verdict.drawn_for:.2f} mm")
    click.echo(f"  takes: {_range_words(verdict)}")
    click.echo(f"\n{BOARD_WORDS[verdict.verdict]}")
    _rows((("What will not fit", verdict.misfits), ("What to do", verdict.advice)))


def _range_words(verdict: BoardVerdict) -> str:
    """Return what thicknesses a pack takes, rounded inwards."""
    least, most = (
        f"{rounded_up(verdict.least, 2):g}",
        f"{rounded_down(verdict.most, 2):g}" if not isinf(verdict.most) else "",
    )
    if verdict.least and most:
        return f"{least} to {most} mm"
    if not verdict.least and not most:
        return "any thickness, for no joint depends on it; heights of layers do: see “Measure your board” in the pack"
    return f"{least} mm and thicker" if verdict.least else f"up to {most} mm"


def _board_record(verdict: BoardVerdict) -> dict[str, object]:
    return {
        "board": {
            "verdict": verdict.verdict,
            "board": verdict.board,
            "sold_as": verdict.sold_as,
            "thickness": verdict.thickness,
            "drawn_for": verdict.drawn_for,
            "least": verdict.least or None,
            "most": None if isinf(verdict.most) else verdict.most,
            "misfits": list(verdict.misfits),
            "fits_with": list(verdict.fits_with),
            "advice": list(verdict.advice),
            "findings": [finding_record(f) for f in verdict.findings],
        }
    }


def _show(verdict: Verdict, facts: PackFacts | None) -> None:
    for scale, reading in zip(verdict.scales, verdict.readings, strict=True):
        click.echo(
            f"{scale.axis:>7}: {reading.read_mm:.1f} mm ({reading.read_mm / INCH_MM:.2f} in) for {_line(reading.true_mm)}, "
            f"true scale {api.say_range(*scale.true, inwards=False)} ({reading.read_to}), {scale.verdict}"
        )
    budget = verdict.budget
    ends = " and ".join(dict.fromkeys((budget.least_by, budget.most_by)))
    by = "" if facts is None else f" (limits set by {ends})"
    click.echo(f"allowed: true scale {api.say_range(budget.least, budget.most, inwards=True)}{by}")
    click.echo(f"  shown: {_shown(verdict)}")
    if facts is not None and facts.pencil_spread:
        click.echo(f"not counted: what a sharp pencil strays, ± {facts.pencil_spread:g} mm a side")
    click.echo(f"\n{WORDS[verdict.verdict]}")
    _rows(
        (
            ("Likely causes (several give the same figure)", verdict.causes),
            ("What will not fit if used as printed", verdict.misfits),
            ("What to do", verdict.advice),
            ("To paste into the answer to a buyer", (verdict.reply,)),
        )
    )


def _shown(verdict: Verdict) -> str:
    """Say which readings would show that the sheet is good: a reading within the limits is not yet one that shows it."""
    said = []
    for scale, reading in zip(verdict.scales, verdict.readings, strict=True):
        if scale.good is None:
            said.append(f"{scale.axis} by no reading of this line with this ruler")
        else:
            unit, per, decimals = ("in", INCH_MM, 3) if reading.inches else ("mm", 1.0, 2)
            least, most = (end * reading.true_mm / per for end in scale.good)
            ends = f"{rounded_up(least, decimals):g} to {rounded_down(most, decimals):g} {unit}"
            said.append(f"{scale.axis} by a reading of {ends}")
    return ", ".join(said)


def _line(true_mm: float) -> str:
    """Say how long a line should be, as the page says it: ``100 mm``, ``4 in``."""
    parts = true_mm / INCH_MM
    return f"{parts:g} in" if abs(parts - round(parts)) < SAME_INCH else f"{true_mm:g} mm"


def _rows(lists: tuple[tuple[str, tuple[str, ...]], ...]) -> None:
    for title, rows in lists:
        if rows:
            click.echo(f"\n{title}:")
            for row in rows:
                click.echo(f"  - {row}")


def _record(verdict: Verdict) -> dict[str, object]:
    return {
        "format": 1,
        "verdict": verdict.verdict,
        "scales": [
            {
                "axis": s.axis,
                "scale": s.value,
                "uncertainty": s.u,
                "true_least": s.true[0],
                "true_most": s.true[1],
                "line_mm": r.true_mm,
                "verdict": s.verdict,
            }
            for s, r in zip(verdict.scales, verdict.readings, strict=True)
        ],
        "allowed": {
            "least": verdict.budget.least,
            "most": verdict.budget.most,
            "least_by": verdict.budget.least_by,
            "most_by": verdict.budget.most_by,
        },
        "uneven": verdict.uneven,
        "causes": list(verdict.causes),
        "misfits": list(verdict.misfits),
        "advice": list(verdict.advice),
        "reply": verdict.reply,
        "findings": [finding_record(f) for f in verdict.findings],
    }
