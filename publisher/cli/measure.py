"""``publisher measure``: judge a printed sheet from two ruler readings, and a board by its thickness."""

from math import isinf
from pathlib import Path

import click

from publisher import api
from publisher.api import TOOLS, BoardVerdict, PackFacts, Verdict
from publisher.basics import Refusal
from publisher.basics.units import INCH_MM
from publisher.basics.wording import rounded_down, rounded_up
from publisher.cli.options import json_option, read_file
from publisher.cli.report import finding_record, leave, show_findings, write_json

BOARD_WORDS = {
    "good": "GOOD: this pack takes your board.",
    "bad": "BAD: do not cut this pack from your board.",
}
WORDS = {
    "good": "GOOD: this sheet is true enough to use.",
    "doubtful": "DOUBTFUL: the readings do not settle it.",
    "bad": "BAD: do not cut from this sheet.",
}


@click.command(short_help="Judge a printed sheet from two ruler readings, or a board by its thickness.")
@click.option(
    "--across",
    type=float,
    help="What the ruler shows across the page (the shorter way of an upright page).",
)
@click.option("--down", type=float, help="What the ruler shows down the page.")
@click.option(
    "--unit", type=click.Choice(["mm", "in"]), default="mm", show_default=True, help="Unit of the two readings."
)
@click.option(
    "--of", "true_mm", type=float, default=100.0, show_default=True, help="How long the printed line should be, in mm."
)
@click.option(
    "--tool", type=click.Choice(sorted(TOOLS)), default="ruler", show_default=True, help="What you measured with."
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
    across: float | None,
    down: float | None,
    unit: str,
    true_mm: float,
    tool: str,
    pack: Path | None,
    board: str | None,
    as_json: bool,
) -> None:
    """Judge a printed sheet from two ruler readings of the 100 mm square (or of any printed line, with --of), and a board by what
    the pack takes. Other variants of the pack that lie beside it are tried too.

    \b
    Examples:  publisher measure --across 97.3 --down 97.2
               publisher measure --board 4.6mm --pack toll-house-1.0.0-a4.pdf
    """
    if (across is None) != (down is None) or (across is None and board is None):
        raise click.UsageError("give both readings, --across and --down, or a --board with its --pack, or all of them")
    facts = api.pack_facts(read_file(pack), pack.name) if pack is not None else None
    verdict = None
    if across is not None and down is not None:
        verdict = api.measure(across, down, unit, true_mm, tool, facts)
    on_board = None if board is None else _on_board(board, pack, facts, verdict)
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
    """Return the facts of the other packs in the pack's folder; what cannot be read there is none of them."""
    found: dict[str, PackFacts] = {}
    for path in sorted(pack.parent.glob("*.pdf")):
        if path.name == pack.name:
            continue
        try:
            facts = api.pack_facts(path.read_bytes(), path.name)
        except (OSError, Refusal):
            continue
        found.setdefault(facts.called, facts)
    return tuple(found.values())


def _show_board(verdict: BoardVerdict) -> None:
    """Say what a board is good for: its range is rounded inwards."""
    name = f", sold as {verdict.sold_as}" if verdict.sold_as else ""
    least = f"{rounded_up(verdict.least, 2):g}" if verdict.least else "any thinner"
    most = "any thicker" if isinf(verdict.most) else f"{rounded_down(verdict.most, 2):g}"
    click.echo(f"  board: {verdict.board}{name}, {verdict.thickness:.2f} mm; drawn for {verdict.drawn_for:.2f} mm")
    click.echo(f"  takes: {least} to {most} mm")
    click.echo(f"\n{BOARD_WORDS[verdict.verdict]}")
    _rows((("What will not fit", verdict.misfits), ("What to do", verdict.advice)))


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
    for scale in verdict.scales:
        click.echo(
            f"{scale.axis:>7}: {100 * scale.value:6.1f} %  ± {100 * scale.u:.1f} %   {scale.verdict:9}"
            f" 100 mm came out as {100 * scale.value:.1f} mm ({100 * scale.value / INCH_MM:.2f} in)"
        )
    budget = verdict.budget
    ends = " and ".join(dict.fromkeys((budget.least_by, budget.most_by)))
    by = "" if facts is None else f" (limits set by {ends})"
    click.echo(f"allowed: {100 * budget.least:.1f} to {100 * budget.most:.1f} %{by}")
    if facts is not None and facts.pencil_spread:
        click.echo(f"not counted: what a sharp pencil strays, ± {facts.pencil_spread:g} mm a side")
    click.echo(f"\n{WORDS[verdict.verdict]}")
    _rows(
        (
            ("Likely causes (several give the same figure)", verdict.causes),
            ("What will not fit if used as printed", verdict.misfits),
            ("What to do", verdict.advice),
        )
    )


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
            {"axis": s.axis, "scale": s.value, "uncertainty": s.u, "verdict": s.verdict} for s in verdict.scales
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
        "findings": [finding_record(f) for f in verdict.findings],
    }
