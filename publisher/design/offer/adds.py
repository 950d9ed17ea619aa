"""What each step adds to what stands so far: read from its words, each thing once, and in the end all of them."""

import re
from collections.abc import Iterator

from publisher.basics.wording import listed
from publisher.brief import Table, Value
from publisher.design.language import Scope, pick_hint
from publisher.design.records import BRACES, AddPlan, Buildable, StepPlan, layer_name
from publisher.design.rules import plans as rules

TRIAL = "dry_fit"
"""The stage whose steps put up for a try, and take apart again, what they add."""

_WITH = re.compile(r"\s+with\s+")
_TOP = "top"
_WORDS = re.compile(
    r"(?P<name>[A-Za-z]\w*)(?:\s*\.\s*(?P<place>[A-Za-z]\w*)|\s+(?P<first>\d{1,9}|top)(?:\s+to\s+(?P<last>\d{1,9}|top))?)?"
)
_FORMS = "write a place of an assembly, such as house.front, layers of a stack, such as stair 2 to 5, or a whole assembly by its name"


class AddsReader:
    """Reads what steps add. ``built``: the assemblies of the design."""

    def __init__(self, built: tuple[Buildable, ...], scope: Scope) -> None:
        self.built = built
        self.scope = scope
        self.misread: set[str] = (
            set()
        )  # assemblies to which something adds that is not there: what is left out follows from that

    def read(self, table: Table, subject: str) -> tuple[AddPlan, ...]:
        """Return what a step adds, as far as it is there; findings for the rest."""
        values = [node for node in table.row("adds") if isinstance(node, Value)]
        return tuple(plan for value in values if (plan := self._item(value, subject)) is not None)

    def check(self, steps: tuple[StepPlan, ...]) -> None:
        """Add findings for what is added twice, and for what is never added where anything is. What is put up for a try counts for
        neither, but twice in one try is twice."""
        if not any(step.adds for step in steps):
            return
        by_name = {one.name: one for one in self.built}
        first: dict[tuple[str, str], int] = {}
        tried: dict[tuple[str, str], int] = {}
        for number, step in enumerate(steps, 1):
            seen = {} if step.stage == TRIAL else first
            for plan in step.adds:
                twice = [name for name in plan.names if (plan.assembly, name) in seen]
                if twice:
                    self._twice(plan, twice, number, seen[plan.assembly, twice[0]], by_name[plan.assembly])
                seen |= {(plan.assembly, name): number for name in plan.names if name not in twice}
            tried |= seen if step.stage == TRIAL else {}
        for one in self.built:
            self._left_out(one, first, tried)

    def _twice(self, plan: AddPlan, names: list[str], number: int, before: int, one: Buildable) -> None:
        said = f"step {before}" if before != number else "this step"
        self.scope.findings.append(
            rules.ADDED_TWICE.found(
                f"adds: “{plan.text}” adds {say_names(one, names)} again, which {said} has added",
                subject=f"step {number}",
                hint=f"each stands once: leave {'it' if len(names) == 1 else 'them'} out here or there"
                + (
                    ""
                    if before == number
                    else f"; a step of the stage {TRIAL} puts up for a try and counts for nothing"
                ),
                place=plan.place,
            )
        )

    def _left_out(self, one: Buildable, first: dict[tuple[str, str], int], tried: dict[tuple[str, str], int]) -> None:
        due = (*one.names, *((BRACES,) if one.braced else ()))
        left = [name for name in due if (one.name, name) not in first]
        if not left or not one.whole or one.name in self.misread:
            return
        dry = next((tried[one.name, name] for name in left if (one.name, name) in tried), 0)
        self.scope.findings.append(
            rules.NEVER_ADDED.found(
                f"no step adds {say_names(one, left) if len(left) < len(due) else f'anything of {one.name}'}",
                subject=f"assembly {one.name}",
                hint=(f"step {dry} tries it dry, and takes it apart again: " if dry else "")
                + f"say adds: [{one.name if len(left) == len(due) else ', '.join(as_written(one, left))}] "
                "in the step that puts it in its place",
                place=one.place,
            )
        )

    def _item(self, value: Value, subject: str) -> AddPlan | None:
        """Return one item of a list: one thing, several of an assembly, or things that are put on as one."""
        said = _WITH.split(value.text.strip())
        each = [found for words in said if (found := self._one(words.strip(), value, subject)) is not None]
        if len(each) < len(said):
            return None
        assemblies = list(dict.fromkeys(one.name for one, _ in each))
        if len(assemblies) > 1:
            hint = f"make it {len(assemblies)} items: what goes on as one is of one assembly"
            self._refuse(f"“{value.text}” joins things of {listed(assemblies)}", hint, value, subject)
            return None
        names = [name for _, names in each for name in names]
        if len(set(names)) < len(names):
            self._refuse(f"“{value.text}” names a thing twice", "each stands once", value, subject)
            return None
        return AddPlan(assemblies[0], tuple(names), len(each) > 1, value.text, value.place) if names else None

    def _one(self, words: str, value: Value, subject: str) -> tuple[Buildable, tuple[str, ...]] | None:
        found = _WORDS.fullmatch(words)
        if found is None:
            self._refuse(f"“{words}” is nothing that can be added", _FORMS, value, subject)
            return None
        one = next((one for one in self.built if one.name == found["name"]), None)
        if one is None:
            hint = pick_hint(found["name"], [one.name for one in self.built], "assemblies")
            message = f"“{found['name']}” is no assembly of this design"
            self._refuse(message, hint, value, subject, f"name {found['name']}")
            return None
        names = self._named(one, found, value, subject)
        return None if names is None else (one, names)

    def _named(self, one: Buildable, found: re.Match[str], value: Value, subject: str) -> tuple[str, ...] | None:
        """Return the names of what is asked of an assembly; None after a finding."""
        if found["first"]:
            return self._layers(one, found["first"], found["last"] or found["first"], value, subject)
        if not found["place"]:
            return (*one.names, *((BRACES,) if one.braced else ()))
        if one.braced and found["place"] == BRACES:
            return (BRACES,)
        if one.kind != "stack" and found["place"] in one.names:
            return (found["place"],)
        if not one.whole:
            return ()
        if one.kind == "stack":
            what, hint = f"{one.name} is a stack: its layers go by their numbers from the table up", _layers_hint(one)
        else:
            what = f"{one.name} has no {'thing' if one.kind == 'things' else 'place'} “{found['place']}”"
            hint = pick_hint(found["place"], one.names, f"places of {one.name}")
        self._refuse(what, hint, value, subject, f"name {found['place']}")
        return None

    def _layers(self, one: Buildable, first: str, last: str, value: Value, subject: str) -> tuple[str, ...] | None:
        if one.kind != "stack":
            hint = f"write {one.name}.{one.names[0]}" if one.names else "write its places"
            self._refuse(f"{one.name} is made of {one.kind}: they go by their names", hint, value, subject)
            return None
        if not one.whole:
            return ()
        top = len(one.names)
        low, high = (top if word == _TOP else int(word) for word in (first, last))
        beyond = next((number for number in (low, high) if not 1 <= number <= top), None)
        if beyond is not None:
            self._refuse(f"there is no layer {beyond} in {one.name}", f"it has layers 1 to {top}", value, subject)
            return None
        if high < low:
            hint = f"layers are laid from the table up: write {one.name} {high} to {low}"
            self._refuse(f"“{first} to {last}” runs down", hint, value, subject)
            return None
        return tuple(layer_name(number) for number in range(low, high + 1))

    def _refuse(self, message: str, hint: str, value: Value, subject: str, cause: str = "") -> None:
        named = {one.name for one in self.built if re.search(rf"\b{one.name}\b", value.text)}
        self.misread |= named or {one.name for one in self.built}
        found = rules.ADDS.found(f"adds: {message}", subject=subject, hint=hint, place=value.place, cause=cause)
        self.scope.findings.append(found)


def _layers_hint(one: Buildable) -> str:
    top = len(one.names)
    return f"write {one.name} 1 to {top}" + (f", or {one.name}.{BRACES} for its knee braces" if one.braced else "")


def as_written(one: Buildable, names: list[str]) -> tuple[str, ...]:
    """Return how a spec says things of an assembly: runs of layers as one."""
    return tuple(
        f"{one.name} {run}" if run[0].isdigit() else f"{one.name}.{run}" for run in (_runs(one, names) if names else ())
    )


def say_names(one: Buildable, names: list[str]) -> str:
    """Return how a message says things of an assembly: left and right of house, layers 2 to 5 of stair."""
    runs = [f"layer{'s' if ' ' in run else ''} {run}" if run[0].isdigit() else run for run in _runs(one, names)]
    return f"{listed(runs)} of {one.name}"


def _runs(one: Buildable, names: list[str]) -> Iterator[str]:
    """Yield runs of layers as numbers, all else by its name."""
    numbers = [one.names.index(name) + 1 for name in names if one.kind == "stack" and name in one.names]
    start = 0
    for at in range(1, len(numbers) + 1):
        if at == len(numbers) or numbers[at] != numbers[at - 1] + 1:
            yield str(numbers[start]) if at == start + 1 else f"{numbers[start]} to {numbers[at - 1]}"
            start = at
    yield from (name for name in names if one.kind != "stack" or name not in one.names)
