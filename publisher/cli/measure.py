"""``publisher measure``: judge a printed sheet from two ruler readings."""

from pathlib import Path

import click

from publisher import api
from publisher.api import TOOLS, PackFacts, Verdict
from publisher.basics.units import INCH_MM
from publisher.cli.options import json_option, read_file
from publisher.cli.report import finding_record, leave, show_findings, write_json

WORDS = {
    "good": "GOOD: this sheet is true enough to use.",
    "doubtful": "DOUBTFUL: the readings do not settle it.",
    "bad": "BAD: do not cut from this sheet.",
}


@click.command(short_help="Judge a printed sheet from two ruler readings.")
@click.option(
    "--across",
    type=float,
    required=True,
    help="What the ruler shows across the page (the shorter way of an upright page).",
)
@click.option("--down", type=float, required=True, help="What the ruler shows down the page.")
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
@json_option
def measure(across: float, down: float, unit: str, true_mm: float, tool: str, pack: Path | None, as_json: bool) -> None:
    """Judge a printed sheet from two ruler readings of the 100 mm square (or of any printed line, with --of).

    \b
    Example:  publisher measure --across 97.3 --down 97.2
    """
    facts = api.pack_facts(read_file(pack), pack.name) if pack is not None else None
    verdict = api.measure(across, down, unit, true_mm, tool, facts)
    if as_json:
        write_json(_record(verdict))
    else:
        _show(verdict, facts)
    show_findings(verdict.findings)
    leave(verdict.findings)


def _show(verdict: Verdict, facts: PackFacts | None) -> None:
    if facts is not None:
        click.echo(f"{facts.title}, version {facts.version}")
    for scale in verdict.scales:
        click.echo(
            f"{scale.axis:>7}: {100 * scale.value:6.1f} %  ± {100 * scale.u:.1f} %   {scale.verdict:9}"
            f" 100 mm came out as {100 * scale.value:.1f} mm ({100 * scale.value / INCH_MM:.2f} in)"
        )
    budget = verdict.budget
    ends = " and ".join(dict.fromkeys((budget.least_by, budget.most_by)))
    by = "" if facts is None else f" (limits set by {ends})"
    click.echo(f"allowed: {100 * budget.least:.1f} to {100 * budget.most:.1f} %{by}")
    click.echo(f"\n{WORDS[verdict.verdict]}")
    for title, rows in (
        ("Likely causes (several give the same figure)", verdict.causes),
        ("What will not fit if used as printed", verdict.misfits),
        ("What to do", verdict.advice),
    ):
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
