"""``publisher upgrade``: a spec of a former format rewritten in the one that is read today."""

from pathlib import Path

import click

from publisher import api
from publisher.api import Upgraded
from publisher.cli.options import json_option
from publisher.cli.report import Report, name_of, write_json


@click.command(short_help="Rewrite a spec of a former format, and show what changes.")
@click.argument("folders", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="FOLDER...")
@click.option("--write", is_flag=True, help="Write the spec in its place. Without it nothing is written.")
@json_option
def upgrade(folders: tuple[Path, ...], write: bool, as_json: bool) -> None:
    """Show how the spec of the design in FOLDER reads in the format of today: the difference, and what you must do by hand.

    Comments stay, and the parts come out the same. A spec is written whole or not at all.

    \b
    Example:  publisher upgrade designs/lock-stair --write
    """
    report = Report()
    records = []
    for folder in report.folders(folders):
        with report.passing_over(name_of(folder)):
            upgraded = api.upgrade(folder)
            report.add(upgraded.findings, name_of(folder))
            written = write and upgraded.complete and upgraded.difference != ""
            if written:
                api.keep_spec(upgraded)
            if not as_json:
                _show(upgraded, written)
            records.append(_record(upgraded, written))
    if as_json:
        write_json({"format": 1, "specs": records, "findings": report.records()})
    report.leave()


def _show(upgraded: Upgraded, written: bool) -> None:
    if not upgraded.difference:
        if upgraded.complete:
            click.echo(f"{upgraded.folder}: nothing to do, the spec is of the format of today")
        return
    click.echo(upgraded.difference, nl=False)
    if not upgraded.complete:
        click.echo(f"{upgraded.folder}: not written: first do by hand what is said above, then run this again")
    elif written:
        click.echo(f"{upgraded.folder}: written; the parts are the same")
    else:
        click.echo(f"{upgraded.folder}: the parts stay the same. Nothing is written yet: add --write")


def _record(upgraded: Upgraded, written: bool) -> dict[str, object]:
    return {
        "folder": str(upgraded.folder),
        "complete": upgraded.complete,
        "written": written,
        "difference": upgraded.difference,
    }
