"""Parts that a step adds before what they rest on."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby

from publisher.basics import Check, Findings, checked
from publisher.joints.assembled import Assembled
from publisher.joints.building import (
    Unheld,
    built_by_steps,
    called,
    called_from_below,
    is_brace,
    items_from_below,
    sites_of,
)


@checked(
    "joints/rests-on-nothing",
    "What a step adds rests on what is there",
    "a roof that is glued on before its gables stand, or a bridge set on piers that come two steps later, has to be held in the air",
    may_be_empty=True,
)
def rests_on_nothing(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Hold all that the steps add against what it is joined to, lies on or is put on, and the table."""
    building, sites = built_by_steps(subject), sites_of(subject)
    for lost in _with_braces_as_one(building.unheld):
        site, what, name = sites[lost.assembly], called(lost.lacks), called((lost.name,))
        if lost.unbuilt:
            message = f"{name} of {lost.assembly} is set down before anything of {what} is put together"
            hint = f"add what {what} is made of in a step before"
        elif not lost.all_of:
            message = f"{name} of {lost.assembly} meets nothing that stands yet: it is joined to {what}"
            hint = "add one of them before it"
        else:
            them = "it" if len(lost.lacks) == 1 else "them"
            braces = is_brace(lost.name)
            who, rest = ("the knee braces", "stand against") if braces else (name, "rests on")
            said = called_from_below(site, lost.lacks) if site.stack else what
            message = f"{who} of {lost.assembly} {rest} {said}, and no step before has added {them}"
            hint = f"add {', '.join(items_from_below(site, lost.lacks)) if site.stack else what} before {'them' if braces else 'it'}"
        yield check.found(message, subject=f"step {lost.step}", hint=hint, place=lost.place)
    return building.looked_at


def _with_braces_as_one(every: tuple[Unheld, ...]) -> Iterator[Unheld]:
    """Yield what is not held; of the knee braces that one word of a step adds one, which lacks what any of them lacks."""

    def key(item: tuple[int, Unheld]) -> object:
        at, lost = item
        return (lost.step, lost.assembly, lost.place) if is_brace(lost.name) else at

    for _, run in groupby(enumerate(every), key):
        own = [lost for _, lost in run]
        lacks = {name for lost in own for name in lost.lacks}
        yield replace(own[0], lacks=tuple(sorted(lacks, key=_number))) if is_brace(own[0].name) else own[0]


def _number(layer: str) -> int:
    return int(layer.rpartition("_")[2])
