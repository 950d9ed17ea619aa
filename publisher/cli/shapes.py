"""``publisher shapes``: list the shapes, openings and surfaces, or one with its parameters and edges."""

import click

from publisher import api
from publisher.api import ParameterInfo, ShapeInfo
from publisher.basics import Refusal
from publisher.basics.wording import did_you_mean
from publisher.cli.options import json_option
from publisher.cli.refused import UNKNOWN_SHAPE
from publisher.cli.report import write_json

UNITS = {"length": "mm", "angle": "°", "count": "", "number": "", "choice": ""}


@click.command(short_help="List the shapes and their parameters.")
@click.argument("name", required=False)
@json_option
def shapes(name: str | None, as_json: bool) -> None:
    """List the shapes, openings and surface patterns that a part may have; with NAME, one of them with its parameters
    and named edges.

    \b
    Example:  publisher shapes gable_wall
    """
    infos = (*api.shapes(), *api.openings(), *api.surfaces())
    if name is not None:
        infos = tuple(i for i in infos if i.name == name) or _refuse(name, infos)
    if as_json:
        write_json({"format": 1, "shapes": [_record(i) for i in infos]})
    elif name is None:
        width = max(len(i.name) for i in infos)
        groups = (("Shapes", api.shapes()), ("Openings", api.openings()), ("Surfaces", api.surfaces()))
        for title, rows in groups:
            click.echo(f"{title}:")
            for info in rows:
                click.echo(f"  {info.name:{width}}  {info.meaning}")
    else:
        _show(infos[0])


def _refuse(name: str, infos: tuple[ShapeInfo, ...]) -> tuple[ShapeInfo, ...]:
    hint = did_you_mean(name, [i.name for i in infos]) or "“publisher shapes” lists them all"
    raise Refusal(UNKNOWN_SHAPE.found(f"there is no shape called “{name}”", subject=name, hint=hint))


def _show(info: ShapeInfo) -> None:
    click.echo(f"{info.name}: {info.meaning}\n")
    width = max((len(p.name) for p in info.parameters), default=0)
    for parameter in info.parameters:
        click.echo(f"  {parameter.name:{width}}  {_kind(parameter):28}  {parameter.meaning}")
    if info.edges:
        click.echo(f"\nedges, anticlockwise: {', '.join(info.edges)}")
    if info.origin:
        click.echo(f"origin: {info.origin}")
    if info.openings:
        click.echo("takes openings")
    if info.least_feature:
        click.echo(f"\nrefused when its sizes bring lines nearer to each other than {info.least_feature:g} mm")


def _kind(parameter: ParameterInfo) -> str:
    unit = UNITS[parameter.kind]
    if parameter.default is None:
        given = "required"
    elif isinstance(parameter.default, str):
        given = f"else {parameter.default}"
    else:
        given = f"else {parameter.default:g}{' ' if unit == 'mm' else ''}{unit}"
    return f"{parameter.kind}, {given}" + (f" ({'|'.join(parameter.choices)})" if parameter.choices else "")


def _record(info: ShapeInfo) -> dict[str, object]:
    return {
        "name": info.name,
        "meaning": info.meaning,
        "edges": list(info.edges),
        "origin": info.origin,
        "openings": info.openings,
        "least_feature": info.least_feature,
        "parameters": [
            {
                "name": p.name,
                "kind": p.kind,
                "unit": {"length": "mm", "angle": "deg"}.get(p.kind, ""),
                "default": p.default,
                "least": p.least,
                "most": p.most,
                "choices": list(p.choices),
                "meaning": p.meaning,
            }
            for p in info.parameters
        ],
    }
