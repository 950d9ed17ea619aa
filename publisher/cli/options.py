"""Options that several commands share."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, TypeVar

import click

from publisher import api
from publisher.basics import Refusal
from publisher.cli.refused import FILE_UNREADABLE, PICTURE_NOT_WRITTEN

Command = TypeVar("Command", bound=Callable[..., Any])


def parse_sets(_ctx: click.Context, _param: click.Parameter, texts: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """Turn NAME=VALUE texts into pairs; click reports the ones that are not."""
    pairs: list[tuple[str, str]] = []
    for text in texts:
        name, equals, value = text.partition("=")
        if not equals or not name.strip() or not value.strip():
            raise click.BadParameter(f'“{text}” is not NAME=VALUE, such as board="3/16 in"')
        if name.strip() in (given for given, _ in pairs):
            raise click.BadParameter(f"“{name.strip()}” is set twice: give it one value")
        pairs.append((name.strip(), value.strip()))
    return tuple(pairs)


def json_option(command: Command) -> Command:
    """Add --json."""
    return click.option("--json", "as_json", is_flag=True, help="Print one JSON document on standard output.")(command)


def set_option(command: Command) -> Command:
    """Add --set NAME=VALUE."""
    return click.option(
        "--set", "sets", multiple=True, metavar="NAME=VALUE", callback=parse_sets,
        help="Use another value for a size of the spec, e.g. --set board=\"3/16 in\". Repeatable.",
    )(command)  # fmt: skip


def variant_option(command: Command) -> Command:
    """Add --variant NAME."""
    return click.option(
        "--variant", "variants", multiple=True, metavar="NAME",
        help="Only this variant (“standard” is the sizes as written). Repeatable; all when not given.",
    )(command)  # fmt: skip


def paper_option(command: Command) -> Command:
    """Add --paper NAME."""
    return click.option(
        "--paper", "papers", multiple=True, metavar="NAME",
        help="Only this paper: a4, letter, a3, tabloid, legal, or one of the spec. Repeatable.",
    )(command)  # fmt: skip


def folders_argument(command: Command) -> Command:
    """Add [FOLDER]..., by default ``designs``."""
    return click.argument("folders", nargs=-1, type=click.Path(path_type=Path), metavar="[FOLDER]...")(command)


def begins(
    names: Callable[[], Iterable[str]],
) -> Callable[[click.Context, click.Parameter, str], list[str]]:
    """Return what shells ask for an argument that is one of ``names``: those that begin like what is typed."""
    return lambda _ctx, _param, typed: [name for name in names() if name.startswith(typed)]


def read_file(path: Path) -> bytes:
    """Return the bytes of a file that was named on the command line. Raises Refusal when it cannot be read.

    What a killed run left unfinished beside it is finished first: the file may be one of it.
    """
    api.settle(path.parent)
    try:
        return path.read_bytes()
    except OSError as error:
        reason = (error.strerror or "unreadable").lower()
        raise Refusal(
            FILE_UNREADABLE.found(
                f"cannot read {path}: {reason}", subject=str(path), hint="give the path of a finished PDF"
            )
        ) from error


def write_picture(path: Path, data: bytes) -> None:
    """Write a picture where it is asked for. Raises Refusal when it cannot be written."""
    try:
        path.write_bytes(data)
    except OSError as error:
        reason = (error.strerror or "not writable").lower()
        hint = "give the path of a file in a folder that exists"
        raise Refusal(
            PICTURE_NOT_WRITTEN.found(f"cannot write {path}: {reason}", subject=str(path), hint=hint)
        ) from error
