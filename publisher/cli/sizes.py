"""``publisher sizes``: every size and fact of a design, with the expression it came from."""

import math
from pathlib import Path

import click

from publisher import api
from publisher.api import STANDARD, Fact, Size, Worked, say
from publisher.basics.units import inches
from publisher.cli.options import json_option, set_option, variant_option
from publisher.cli.report import Report, finding_record, write_json
from publisher.cli.vary import Varied, vary_sizes


@click.command(short_help="Print every size and fact of a design.")
@click.argument("folder", type=click.Path(path_type=Path))
@variant_option
@set_option
@click.option(
    "--vary",
    "ranges",
    multiple=True,
    metavar="RANGE",
    help='Try a size over a range, "reach = 80 mm to 120 mm": needs, sheets, pages at each value, and where they jump. Once or twice.',
)
@click.option(
    "--values",
    type=click.IntRange(2, 1000),
    help="With --vary: how many values of a range are tried; 41, of two ranges 9 each.",
)
@click.option(
    "--jobs",
    type=click.IntRange(1, 256),
    help="With --vary: processes that share the work; one for each core when not given.",
)
@click.option(
    "--plot",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="With --vary of one size and one variant: write a plot, .svg or .png.",
)
@click.option("--csv", "as_csv", is_flag=True, help="With --vary: print the table as CSV on standard output.")
@json_option
def sizes(
    folder: Path,
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    ranges: tuple[str, ...],
    values: int | None,
    jobs: int | None,
    plot: Path | None,
    as_csv: bool,
    as_json: bool,
) -> None:
    """Print every size and fact of the design in FOLDER: name, value in mm and inches, the expression it came from.

    \b
    Examples:  publisher sizes designs/lock-stair --set board="3/16 in"
               publisher sizes designs/lock-stair --variant standard --vary "reach = 80 mm to 120 mm"
    """
    report = Report()
    if ranges:
        vary_sizes(report, folder, variants, sets, Varied(ranges, values, jobs, plot, as_csv, as_json))
    if values or jobs or plot or as_csv:
        raise click.UsageError("--values, --jobs, --plot and --csv go with --vary")
    records = []
    for brief in report.briefs((folder,), sets):
        with report.passing_over(brief.slug):
            for variant in api.variants(brief, variants):
                worked = api.work(brief, variant)
                records.append(_record(worked, variant))
                if not as_json:
                    _show(worked, variant)
                report.add(worked.findings, brief.slug)
    if as_json:
        write_json({"format": 1, "designs": records})
    report.leave()


def _show(worked: Worked, variant: str) -> None:
    if worked.design is None:
        return
    facts = worked.joined.facts if worked.joined else ()
    names = [s.name for s in worked.design.sizes] + [f.name for f in facts]
    width = max((len(n) for n in names), default=0)
    click.echo(f"{worked.brief.slug}, {variant or STANDARD}")
    for title, rows in (("sizes", worked.design.sizes), ("facts", facts)):
        if rows:
            click.echo(f"  {title}")
        for row in rows:
            value = (
                "open"
                if math.isinf(row.value)
                else say(row.value, row.kind, row.rounds if isinstance(row, Fact) else "nearest")
            )
            source = row.expression if isinstance(row, Size) else ""
            click.echo(f"    {row.name:{width}}  {value:>24}  {source}".rstrip())


def _record(worked: Worked, variant: str) -> dict[str, object]:
    design = worked.design
    return {
        "slug": worked.brief.slug,
        "variant": variant or STANDARD,
        "sizes": [{**_value(s), "expression": s.expression} for s in design.sizes] if design else [],
        "facts": [_value(f) for f in worked.joined.facts] if worked.joined else [],
        "findings": [finding_record(f) for f in worked.findings],
    }


def _value(one: Size | Fact) -> dict[str, object]:
    record: dict[str, object] = {
        "name": one.name,
        "kind": one.kind,
        "value": one.value if math.isfinite(one.value) else None,
    }
    if one.kind == "length" and math.isfinite(one.value):
        record["inches"] = inches(one.value)
    if math.isinf(one.value):
        record["open"] = True
    return record
