"""``publisher yield``: lay parts out on board sheets; ``--keep`` stores the layouts beside the spec."""

from pathlib import Path

import click

from publisher.basics import Refusal
from publisher.brief import Brief
from publisher.cli.options import json_option, set_option, variant_option
from publisher.cli.report import Report, write_json
from publisher.cli.rules import KEEP_WHAT
from publisher.cli.yield_words import record, show
from publisher.design import asked_variants, sheet_size
from publisher.material import Stored, layouts_document, store_document, yield_csv
from publisher.pipeline import Worked, work
from publisher.release import put_in_place

STORE = "layouts.json"


@click.command(short_help="Lay the parts out on board sheets and keep the best layouts.")
@click.argument("folder", type=click.Path(path_type=Path))
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
    "--keep", is_flag=True, help=f"Write the layouts to {STORE} beside the spec: builds then only verify them."
)
@click.option("--csv", "as_csv", is_flag=True, help="Print the table as CSV on standard output.")
@json_option
def yields(
    folder: Path,
    variants: tuple[str, ...],
    sets: tuple[tuple[str, str], ...],
    effort: str,
    sheets: tuple[str, ...],
    keep: bool,
    as_csv: bool,
    as_json: bool,
) -> None:
    """Lay the parts of the design in FOLDER out on its board sheets.

    \b
    Examples:  publisher yield designs/lock-stair --effort careful --keep
               publisher yield designs/lock-stair --sheet "500x700 mm"
    """
    asked = tuple(sheet_size(text) for text in sheets) or None
    if keep and (asked or sets):
        raise Refusal(
            KEEP_WHAT.found(
                "--keep was given together with --sheet or --set",
                subject=STORE,
                hint="leave --keep away, or write the sheet or the size into the spec",
            )
        )
    report = Report()
    records = []
    for brief in report.briefs((folder,), sets):
        with report.passing_over():
            found: dict[str, Stored] = {}
            works: list[Worked] = []
            try:
                for variant in asked_variants(brief, variants):
                    worked = work(brief, variant, effort, asked, found.__setitem__)
                    works.append(worked)
                    records.append(record(worked, variant))
                    if as_csv and worked.needs is not None:
                        click.echo(yield_csv(worked.needs, worked.pieces), nl=False)
                    elif not as_json:
                        show(worked, variant)
                    report.add(f for f in worked.findings if f.check != "material/layouts-not-stored")
            except KeyboardInterrupt:
                # what was verified before the stop is kept, beside what was there
                if keep and found:
                    _put(brief, store_document(tuple(found.items()), _before(brief)))
                raise
            needs = tuple(w.needs for w in works if w.needs is not None)
            if keep and needs:
                whole = not variants and len(needs) == len(works)
                _put(brief, layouts_document(needs, None if whole else _before(brief)))
    if as_json:
        write_json({"format": 1, "designs": records})
    report.leave()


def _before(brief: Brief) -> bytes | None:
    store = brief.file(STORE)
    return store.data if store else None


def _put(brief: Brief, document: bytes) -> None:
    """Write the store into the design's own folder."""
    put_in_place(Path(brief.inputs.folder), [(STORE, document)])
