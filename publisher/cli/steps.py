"""``publisher steps``: steps that a design could have, to be pasted into its spec."""

from pathlib import Path

import click

from publisher import api
from publisher.cli.options import set_option
from publisher.cli.report import Report


@click.command(short_help="Propose the steps of a design, in an order that can be built.")
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--variant", default=api.STANDARD, show_default=True, help="For which variant; standard: the sizes as written."
)
@set_option
def steps(folder: Path, variant: str, sets: tuple[tuple[str, str], ...]) -> None:
    """Print steps for the design in FOLDER as text of its spec: tracing and cutting, holes first, a dry fit, gluing in an order that is
    found from the solids, sealing and paint. They are in the languages of the spec, and name the tools and materials that it lists. Put
    them in the place of its own steps and write what only you know; check says from then on what no longer goes in.

    \b
    Example:  publisher steps designs/toll-house
    """
    report = Report()
    for brief in report.briefs((folder,), sets):
        with report.passing_over(brief.slug):
            for name in api.variants(brief, (variant,)):
                text, found = api.steps(brief, name)
                click.echo(text, nl=False)
                report.add(found, brief.slug)
    report.leave()
