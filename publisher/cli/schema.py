"""``publisher schema``: print the schema of spec.yaml; ``--write`` makes it anew from the registries."""

import sys
from pathlib import Path

import click

from publisher import api

COMMITTED = Path(__file__).parent.parent / "brief" / "spec.schema.json"


@click.command(short_help="Print the schema of spec.yaml, for editors.")
@click.option(
    "--write", is_flag=True, help="For contributors: write the schema anew from the registered shapes and tables."
)
@click.option("--check", is_flag=True, help="For contributors: fail when the committed schema is stale.")
def schema(write: bool, check: bool) -> None:
    """Print the JSON Schema (2020-12) of spec.yaml, for editors and other programs.

    \b
    Example:  publisher schema > spec.schema.json
    """
    if write:
        COMMITTED.write_text(api.fresh_schema(), encoding="utf-8", newline="\n")
        click.echo(f"wrote {COMMITTED.name}")
    elif check:
        if api.fresh_schema() != api.schema():
            click.echo("the committed schema is stale: run “publisher schema --write”", err=True)
            sys.exit(1)
        click.echo("the committed schema is fresh")
    else:
        click.echo(api.schema(), nl=False)
