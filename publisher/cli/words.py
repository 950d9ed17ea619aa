"""``publisher words``: every word that has a meaning in a spec."""

import click

from publisher import api
from publisher.api import WordList
from publisher.basics import Refusal
from publisher.basics.wording import did_you_mean, listed
from publisher.cli.options import begins, json_option
from publisher.cli.refused import UNKNOWN_LIST
from publisher.cli.report import write_json


@click.command(short_help="List the words of a spec: functions, tools, stages, papers …")
@click.argument(
    "name", required=False, metavar="[LIST]", shell_complete=begins(lambda: (one.name for one in api.words()))
)
@json_option
def words(name: str | None, as_json: bool) -> None:
    """List every word that has a meaning in a spec: functions, constants and units of expressions, shapes and where their origins lie,
    openings, surfaces, joints, tools, materials, stages, kinds of pictures, papers, names of sheets. LIST is one of these lists.

    \b
    Example:  publisher words tools
    """
    lists = api.words()
    shown = lists if name is None else tuple(one for one in lists if one.name == name) or _refuse(name, lists)
    if as_json:
        write_json({"format": 1, "lists": [_record(one) for one in shown]})
        return
    width = max(len(word) for one in shown for word, _ in one.words)
    for number, one in enumerate(shown):
        click.echo(f"{'' if number == 0 else chr(10)}{one.name}: {one.used}")
        for word, meaning in one.words:
            click.echo(f"  {word:{width}}  {meaning}")


def _refuse(name: str, lists: tuple[WordList, ...]) -> tuple[WordList, ...]:
    names = [one.name for one in lists]
    hint = did_you_mean(name, names) or f"the lists are {listed(names)}"
    raise Refusal(UNKNOWN_LIST.found(f"there is no list of words called “{name}”", subject=name, hint=hint))


def _record(one: WordList) -> dict[str, object]:
    return {
        "list": one.name,
        "used": one.used,
        "words": [{"name": word, "meaning": meaning} for word, meaning in one.words],
    }
