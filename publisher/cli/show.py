"""``publisher show``: what stands between two rooms, as text in mm."""

from pathlib import Path

import click

from publisher import api
from publisher.cli.options import json_option, paper_option, set_option, variant_option
from publisher.cli.report import Report, write_json


@click.command(short_help="Print what a stage of the work gave, as text in mm.")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--stage", type=click.Choice(api.STAGES), required=True, help="After which stage to look.")
@variant_option
@paper_option
@set_option
@json_option
def show(
    folder: Path,
    stage: str,
    variants: tuple[str, ...],
    papers: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    as_json: bool,
) -> None:
    """Print what one stage of the work gave for the design in FOLDER, one thing a line, lengths in mm.

    \b
    Examples:  publisher show designs/lock-stair --stage parts
               publisher show designs/quay --stage pages --paper a4
    """
    report = Report()
    records: list[object] = []
    for brief in report.briefs((folder,), sets, tuple(dict.fromkeys(p.lower() for p in papers))):
        with report.passing_over(brief.slug):
            for variant in api.variants(brief, variants):
                worked = api.work(brief, variant)
                report.add(worked.findings, brief.slug)
                name = variant or api.STANDARD
                if as_json:
                    records.append({"slug": brief.slug, "variant": name, stage: api.show_json(worked, stage)})
                else:
                    click.echo("\n".join((f"{brief.slug}, {name}", *api.show(worked, stage))))
    if as_json:
        write_json({"format": 1, "designs": records})
    report.leave()
