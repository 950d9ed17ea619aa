"""All assemblies of a design: stacks and panels, and how many copies of each part they need."""

from collections import Counter
from collections.abc import Iterable

from publisher.basics import Place, record
from publisher.brief import Entry, Table
from publisher.design.assembly.match_letters import lettered
from publisher.design.assembly.panels import read_panels
from publisher.design.assembly.stacks import MOST_LAYERS, check_layers, check_lowest, check_standing, read_stacks
from publisher.design.assembly.wholes import read_whole
from publisher.design.language import Scope
from publisher.design.parts import KnownParts
from publisher.design.records import Buildable, PanelPlace, PanelPlan, StackPlan, WholePlan, layer_name
from publisher.design.rules import plans as rules


@record
class Assemblies:
    """The assemblies in the order of the spec: ``stacks_of`` holds each stack assembly with its sections."""

    names: tuple[str, ...]
    stacks_of: tuple[tuple[str, tuple[StackPlan, ...]], ...]
    panels: tuple[PanelPlan, ...]
    places_of: tuple[tuple[str, tuple[PanelPlace, ...]], ...]
    complete: tuple[str, ...]  # assemblies of panels and of layers of which every place, join and row could be read
    wholes: tuple[WholePlan, ...] = ()

    @property
    def stacks(self) -> tuple[StackPlan, ...]:
        """All stacks and sections."""
        return tuple(stack for _, stacks in self.stacks_of for stack in stacks)

    def used(self) -> dict[str, int]:
        """Return how many copies of each part the assemblies need."""
        used: Counter[str] = Counter()
        for name, stacks in self.stacks_of:
            for row in (row for stack in stacks for row in stack.rows):
                # a stack that is too high has its finding already: one is enough
                used[row.part] += min(row.count, MOST_LAYERS) * self.copies(name)
        for name, places in self.places_of:
            for place in places:
                used[place.part] += self.copies(name)
        return dict(used)

    def copies(self, assembly: str) -> int:
        """Return how often an assembly is built: as often as it stands somewhere, and once when no whole has it."""
        places = sum(thing.assembly == assembly for whole in self.wholes for thing in whole.things)
        return max(1, places)

    def layers(self) -> dict[str, int]:
        """Return the number of layers of each stack assembly and of each of its sections; 0 where a count has no value."""
        counted = {stack.name: _layers([stack]) for stack in self.stacks}
        return {**counted, **{name: _layers(stacks) for name, stacks in self.stacks_of}}

    def buildable(self) -> tuple[Buildable, ...]:
        """Return the assemblies as steps may add to them, in the order of the spec."""
        layers = self.layers()
        made: dict[str, Buildable] = {}
        for name, stacks in self.stacks_of:
            names = tuple(layer_name(number) for number in range(1, layers[name] + 1))
            braced = any(stack.brace for stack in stacks)
            if stacks:
                made[name] = Buildable(
                    name, "stack", names, bool(names) and name in self.complete, braced, stacks[0].place
                )
        for panels in self.panels:
            names = tuple(place.name for place in panels.places)
            made[panels.name] = Buildable(
                panels.name, "panels", names, panels.name in self.complete, False, panels.place
            )
        for whole in self.wholes:
            names = tuple(thing.name for thing in whole.things)
            made[whole.name] = Buildable(whole.name, "things", names, bool(names), False, whole.place)
        return tuple(made[name] for name in self.names if name in made)


def _layers(stacks: Iterable[StackPlan]) -> int:
    counts = [row.count for stack in stacks for row in stack.rows]
    return sum(counts) if all(counts) else 0


def read_assemblies(table: Table, known: KnownParts, scope: Scope) -> Assemblies:
    """Return all stacks and panels; findings for what cannot be built."""
    stacks_of: list[tuple[str, tuple[StackPlan, ...]]] = []
    panels: list[PanelPlan] = []
    places: list[tuple[str, tuple[PanelPlace, ...]]] = []
    things: list[tuple[Entry, Table]] = []
    kinds: dict[str, str] = {}
    complete: list[str] = []
    for entry in table.entries:
        if not isinstance(entry.node, Table) or not _is_one_thing(entry, entry.node, known, scope):
            continue
        if entry.node.get("stack") is not None:
            kinds[entry.key] = "stack"
            found = len(scope.findings)
            stacks_of.append((entry.key, read_stacks(entry.key, entry.node, known, scope)))
            complete.extend((entry.key,) if len(scope.findings) == found else ())
        elif entry.node.get("things") is not None:
            kinds[entry.key] = "things"
            things.append((entry, entry.node))
        else:
            read = read_panels(entry.key, entry.node, known, scope)
            kinds[entry.key] = "panels"
            places.append((entry.key, read.places))
            panels.extend(() if read.plan is None else (read.plan,))
            complete.extend((entry.key,) if read.complete else ())
    names = tuple(entry.key for entry in table.entries)
    wholes = tuple(read_whole(entry, node, kinds, scope) for entry, node in things)
    assemblies = Assemblies(names, tuple(stacks_of), lettered(panels), tuple(places), tuple(complete), wholes)
    for stack in assemblies.stacks:
        if stack.name not in assemblies.names:
            _check_name(stack.name, known, stack.place, scope)
    check_layers(assemblies.stacks, scope)
    check_standing(assemblies.stacks, scope)
    check_lowest(assemblies.stacks, scope)
    return assemblies


def _is_one_thing(entry: Entry, table: Table, known: KnownParts, scope: Scope) -> bool:
    """True when the assembly is a stack or panels, under a name that no part has."""
    _check_name(entry.key, known, entry.place, scope)
    said = [kind for kind in ("stack", "panels", "things") if table.get(kind) is not None]
    if len(said) == 1:
        return True
    what = (
        f"both {' and '.join('a stack' if kind == 'stack' else kind for kind in said)}"
        if said
        else "neither a stack, panels nor things"
    )
    scope.findings.append(
        rules.ASSEMBLY.found(
            f"the assembly {entry.key} has {what}",
            subject=f"assembly {entry.key}",
            hint="make two assemblies of it" if said else "say stack: …, panels: … or things: …",
            place=entry.place,
        )
    )
    return False


def _check_name(name: str, known: KnownParts, place: Place, scope: Scope) -> None:
    if known.taken(name):
        scope.findings.append(
            rules.NAME_TAKEN.found(
                f"“{name}” is the name of a part and of an assembly",
                subject=f"assembly {name}",
                hint=f"facts such as {name}.height would have two meanings: give one of them another name",
                place=place,
            )
        )
