"""``publisher yield``: lay parts out on board sheets; ``--keep`` stores the layouts beside the spec."""

from collections.abc import Iterator
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass, field
from pathlib import Path

import click

from publisher import api
from publisher.api import LAYOUTS, Brief, Stored, Worked
from publisher.basics import Refusal
from publisher.cli.options import json_option, set_option, variant_option
from publisher.cli.refused import KEEP_WHAT
from publisher.cli.report import Report, write_json
from publisher.cli.yield_words import record, shared_record, show, show_shared


@click.command(short_help="Lay the parts out on board sheets and keep the best layouts.")
@click.argument("folders", type=click.Path(path_type=Path), nargs=-1, required=True)
@variant_option
@set_option
@click.option(
    "--effort",
    type=click.Choice(["quick", "careful", "patient"]),
    default="quick",
    show_default=True,
    help="How long to look: seconds, up to half a minute a part, minutes a part.",
)
@click.option("--sheet", "sheets", multiple=True, metavar="SIZE", help='A sheet or offcut that you have, "500x700 mm".')
@click.option(
    "--keep", is_flag=True, help=f"Write the layouts to {LAYOUTS} beside the spec: builds then only verify them."
)
@click.option("--csv", "as_csv", is_flag=True, help="Print the table as CSV on standard output.")
@json_option
def yields(
    folders: tuple[Path, ...],
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    effort: str,
    sheets: tuple[str, ...],
    keep: bool,
    as_csv: bool,
    as_json: bool,
) -> None:
    """Lay the parts of the designs in FOLDERS out on their board sheets; several designs also together, as one shopping list.

    \b
    Examples:  publisher yield designs/lock-stair --effort careful --keep
               publisher yield designs/lock-stair --sheet "500x700 mm"
               publisher yield designs/quay designs/bridge designs/lock-stair --variant standard
    """
    if keep and (sheets or sets):
        raise Refusal(
            KEEP_WHAT.found(
                "--keep was given together with --sheet or --set",
                subject=LAYOUTS,
                hint="leave --keep away, or write the sheet or the size into the spec",
            )
        )
    report = Report()
    records = []
    listed: list[Worked] = []
    for brief in report.briefs(folders, sets):
        with (
            report.passing_over(brief.slug),
            _kept(brief, whole=not variants) if keep else nullcontext(_Found()) as found,
        ):
            for variant in api.variants(brief, variants):
                worked = api.work(brief, variant, effort, sheets, found.verified.__setitem__)
                if not found.works:  # of each design one variant: the first that is asked for
                    listed.append(worked)
                found.works.append(worked)
                records.append(record(worked, variant))
                _print(worked, variant, as_csv, as_json)
                report.add((f for f in worked.findings if f.check != "material/layouts-stale"), brief.slug)
    shared = api.shop(tuple(listed), effort) if len({worked.brief.slug for worked in listed}) > 1 else ()
    if as_json:
        write_json({"format": 1, "designs": records, "together": [shared_record(one) for one in shared]})
    elif not as_csv:
        show_shared(shared)
    report.leave()


@dataclass(slots=True)
class _Found:
    """What was found of one design: the variants that are laid out, and each layout as soon as it was verified."""

    works: list[Worked] = field(default_factory=list)
    verified: dict[str, Stored] = field(default_factory=dict)


@contextmanager
def _kept(brief: Brief, whole: bool) -> Iterator[_Found]:
    """Keep what is found of a design beside its spec; after a stop what was verified before it, beside what was there."""
    found = _Found()
    try:
        yield found
    except KeyboardInterrupt:
        if found.verified:
            api.keep_verified(brief, found.verified)
        raise
    api.keep_layouts(brief, tuple(found.works), whole)


def _print(worked: Worked, variant: str, as_csv: bool, as_json: bool) -> None:
    """Print one variant as a table, or in words; JSON holds all designs and is printed at the end."""
    if as_csv and worked.needs is not None:
        click.echo(api.yield_table(worked), nl=False)
    elif not as_json:
        show(worked, variant)
