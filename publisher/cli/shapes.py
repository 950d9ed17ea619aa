"""``publisher shapes``: list the shapes, openings, surfaces and joints, or one with its parameters and edges."""

import click

from publisher import api
from publisher.api import JointInfo, ParameterInfo, ShapeInfo
from publisher.basics import Refusal
from publisher.basics.wording import did_you_mean
from publisher.cli.options import begins, json_option
from publisher.cli.refused import UNKNOWN_SHAPE
from publisher.cli.report import write_json

Info = ShapeInfo | JointInfo
UNITS = {"length": "mm", "angle": "°", "count": "", "number": "", "choice": ""}


@click.command(short_help="List the shapes and their parameters.")
@click.argument("name", required=False, shell_complete=begins(lambda: (i.name for _, rows in _groups() for i in rows)))
@json_option
def shapes(name: str | None, as_json: bool) -> None:
    """List the shapes, openings and surface patterns that a part may have, and the joints of panels; with NAME, one of them with its
    parameters and named edges.

    \b
    Example:  publisher shapes gable_wall
    """
    groups = _groups()
    infos: tuple[Info, ...] = tuple(info for _, rows in groups for info in rows)
    if name is not None:
        infos = tuple(i for i in infos if i.name == name) or _refuse(name, infos)
    if as_json:
        write_json({"format": 1, "shapes": [_record(kind, i) for kind, rows in groups for i in rows if i in infos]})
    elif name is None:
        _list(groups)
    else:
        _show(infos[0])


def _list(groups: tuple[tuple[str, tuple[Info, ...]], ...]) -> None:
    width = max(len(info.name) for _, rows in groups for info in rows)
    for kind, rows in groups:
        click.echo(f"{kind.capitalize()}s:")
        for info in rows:
            click.echo(f"  {info.name:{width}}  {info.meaning}")


def _groups() -> tuple[tuple[str, tuple[Info, ...]], ...]:
    return ("shape", api.shapes()), ("opening", api.openings()), ("surface", api.surfaces()), ("joint", api.joints())


def _refuse(name: str, infos: tuple[Info, ...]) -> tuple[Info, ...]:
    hint = did_you_mean(name, [i.name for i in infos]) or "“publisher shapes” lists them all"
    raise Refusal(UNKNOWN_SHAPE.found(f"there is no shape called “{name}”", subject=name, hint=hint))


def _show(info: Info) -> None:
    click.echo(f"{info.name}: {info.meaning}\n")
    if isinstance(info, JointInfo):
        click.echo(f"  must say: {', '.join(('edges', *info.needed))}\n  may say:  {', '.join(info.may)}")
        return
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


def _record(kind: str, info: Info) -> dict[str, object]:
    known: dict[str, object] = {"kind": kind, "name": info.name, "meaning": info.meaning}
    if isinstance(info, JointInfo):
        return {**known, "needed": list(info.needed), "may": list(info.may)}
    return {
        **known,
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
