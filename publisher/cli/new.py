"""``publisher new``: a design to begin with."""

from pathlib import Path

import click

from publisher import api
from publisher.cli.options import json_option
from publisher.cli.report import write_json

KINDS = "; ".join(f"{name}, {meaning}" for name, meaning in api.STARTS.items())


@click.command(short_help="Begin a design: a commented spec that builds as it is.")
@click.argument("folder", type=click.Path(path_type=Path), metavar="SLUG")
@click.option(
    "--like",
    type=click.Choice(tuple(api.STARTS)),
    default="stair",
    show_default=True,
    help=f"What it begins as: {KINDS}.",
)
@click.option(
    "--designer", default="", metavar="NAME", help="Who signs it, as the cover shows it: a release needs a name."
)
@json_option
def new(folder: Path, like: str, designer: str, as_json: bool) -> None:
    """Write a new design into the folder SLUG: small letters, digits and hyphens, alone or behind a path. Its spec builds as it is;
    the schema beside it lets an editor complete and check what you type. Nothing is written over.

    \b
    Example:  publisher new my-tower --like tower --designer "Ebbwater Patterns"
    """
    files = api.new(folder, like, designer)
    if as_json:
        write_json({"format": 1, "files": [str(path) for path in files]})
        return
    for path in files:
        click.echo(f"wrote {path}")
    click.echo(f"\nlook at it:      publisher check {folder}\nmake its packs:  publisher build {folder}")
