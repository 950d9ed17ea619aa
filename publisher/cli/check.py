"""``publisher check``: all that ``build`` would find, nothing written: facts, needs and their margins, findings, and whether packs meet."""

from pathlib import Path

import click

from publisher import api
from publisher.cli.check_report import record_of, report_lines
from publisher.cli.options import folders_argument, json_option, set_option, variant_option
from publisher.cli.report import Report, finding_record, write_json


@click.command(short_help="Check designs without making packs: facts, needs, findings.")
@folders_argument
@variant_option
@set_option
@click.option("--advise", is_flag=True, help="Try every value that a hint names with the whole design, not only five.")
@json_option
def check(
    folders: tuple[Path, ...],
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    advise: bool,
    as_json: bool,
) -> None:
    """Check the designs in FOLDER (“designs” when none is given): all that a build would find, pages for each paper among it.
    Nothing is written.

    \b
    Example:  publisher check designs/toll-house
    """
    report = Report()
    done: list[api.Worked] = []
    for brief in report.briefs(folders or (Path("designs"),), sets):
        with report.passing_over(brief.slug):
            for variant in api.variants(brief, variants):
                worked = api.with_pages(api.work(brief, variant, advise=advise))
                done.append(worked)
                if not as_json:
                    click.echo("\n".join(report_lines(worked)))
                report.add(worked.findings, brief.slug)
    family = api.compare(tuple(done))
    report.add(family)
    if as_json:
        records: list[object] = [record_of(worked) for worked in done]
        write_json({"format": 1, "designs": records, "family": [finding_record(f) for f in family]})
    report.leave()
