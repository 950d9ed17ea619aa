"""``publisher outline``: what the tool sees in a drawing."""

import sys
from pathlib import Path

import click

from publisher import api
from publisher.api import DRAWING_BYTES, Look, say
from publisher.basics import Refusal, errors
from publisher.basics.wording import fixed
from publisher.cli.options import json_option, write_picture
from publisher.cli.refused import FILE_UNREADABLE, NO_OUTLINE
from publisher.cli.report import leave, show_findings, write_json

PLACES = 6  # decimals of a mm: far below any cut, and the same text on every machine


@click.command(short_help="Show what the tool sees in a drawing.")
@click.argument("file", type=click.Path(path_type=Path), metavar="DRAWING.svg")
@click.option(
    "--id", "wanted", default="", metavar="ID", help="Only this outline: an id, .class, layer:NAME or stroke:STYLE."
)
@click.option("--picture", type=click.Path(path_type=Path), metavar="OUT.png", help="Draw what is seen to a PNG file.")
@json_option
def outline(file: Path, wanted: str, picture: Path | None, as_json: bool) -> None:
    """Show what the tool sees in DRAWING.svg: its size, its closed outlines in mm, what is filled, what was left out.

    Places are in mm from the lower left corner of the drawing's page, y upward. Nothing outside the file is read.

    \b
    Example:  publisher outline sign.svg --id outline --picture sign.png
    """
    look = api.outline(_read(file), str(file), wanted)
    found = look.findings
    if not look.outlines:
        message = f"{file.name} has no closed outline that is drawn"
        found = (
            *found,
            NO_OUTLINE.found(message, subject=str(file), hint="close the path, and give it a fill or a stroke"),
        )
    if as_json:
        write_json(_record(look))
    else:
        _show(look, file.name)
    if picture is not None and not errors(found):
        write_picture(picture, api.picture(look))
        if not as_json:
            click.echo(f"picture: {picture}")
    show_findings(found)
    leave(found)


def _read(file: Path) -> bytes:
    """Return the file's bytes, at most one more than a drawing may have: an endless file ends there."""
    try:
        with file.open("rb") as opened:
            return opened.read(DRAWING_BYTES + 1)
    except OSError as error:
        reason = (error.strerror or "unreadable").lower()
        hint = "give the path of an SVG drawing"
        raise Refusal(FILE_UNREADABLE.found(f"cannot read {file}: {reason}", subject=str(file), hint=hint)) from error


def _record(look: Look) -> dict[str, object]:
    return {
        "width_mm": round(look.width, PLACES),
        "height_mm": round(look.height, PLACES),
        "outlines": [
            {"id": seen.id, **({"label": seen.label} if seen.label else {})}
            | {"area_mm2": round(seen.area, PLACES), "bbox_mm": _rounded(seen.bounds)}
            for seen in look.outlines
        ],
        "filled_area_mm2": round(look.filled_area, PLACES),
        "bbox_mm": None if look.bounds is None else _rounded(look.bounds),
        "left_out": list(look.left_out),
    }


def _rounded(bounds: tuple[float, float, float, float]) -> list[float]:
    return [round(value, PLACES) + 0.0 for value in bounds]


def _show(look: Look, file: str) -> None:
    click.echo(f"{file}: {say(look.width, 'length')} wide, {say(look.height, 'length')} high")
    if look.outlines:
        names = [f"{seen.id} “{seen.label}”" if seen.label else seen.id for seen in look.outlines]
        width = max(map(len, names))
        click.echo("outlines:")
        for name, seen in zip(names, look.outlines, strict=True):
            left, bottom, right, top = seen.bounds
            size = f"{say(right - left, 'length')} by {say(top - bottom, 'length')}"
            click.echo(
                f"  {name:{width}}  {size}, {say(seen.area, 'area')}, lower left at x {fixed(left, 2)}, y {fixed(bottom, 2)} mm"
            )
    click.echo(f"filled: {say(look.filled_area, 'area')}")
    if look.left_out:
        click.echo("left out:")
        for what in look.left_out:
            click.echo(f"  {what}")
    sys.stdout.flush()
