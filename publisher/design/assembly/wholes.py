"""Things on things, as the spec says them: a bridge on its piers, a roof that lifts off, an upper storey."""

from collections.abc import Mapping

from publisher.basics import Place, Point
from publisher.brief import Entry, Table, Value
from publisher.design.language import Scope, pick_hint
from publisher.design.records import ThingPlan, WholePlan
from publisher.design.rules import plans as rules


def read_whole(entry: Entry, table: Table, assemblies: Mapping[str, str], scope: Scope) -> WholePlan:
    """Return an assembly of things; findings for what cannot stand. ``assemblies``: of the design, by kind of each."""
    reader = _ThingsReader(entry.key, assemblies, scope)
    things = [made for own in table.table("things").entries if (made := reader.thing(own))]
    return WholePlan(entry.key, reader.from_below(things), entry.place)


class _ThingsReader:
    def __init__(self, name: str, assemblies: Mapping[str, str], scope: Scope) -> None:
        self.subject = f"assembly {name}"
        self.assemblies = assemblies
        self.scope = scope
        self.lost: dict[str, str] = {}  # things of assemblies that are unknown: what stands on them follows from that

    def thing(self, entry: Entry) -> ThingPlan | None:
        """Return one thing; None after a finding."""
        if not isinstance(entry.node, Table):
            return None
        table = entry.node
        value, turn = table.value("assembly"), table.value("turn")
        if value is None:
            return None
        if not self.known(value):
            self.lost[entry.key] = value.text
            return None
        on = tuple(node.text for node in table.row("on_top_of") if isinstance(node, Value))
        angle = 0.0 if turn is None else self.scope.number(turn, self.subject, "angle") or 0.0
        return ThingPlan(
            entry.key, value.text, on, self.at(table), angle, table.text("lifts_off") == "true", entry.place
        )

    def known(self, value: Value) -> bool:
        """True when a value names a stack or panels of this design; otherwise a finding says why not."""
        kind = self.assemblies.get(value.text, "")
        if kind in ("stack", "panels"):
            return True
        what = "is made of things itself" if kind else "is no assembly of this design"
        hint = pick_hint(value.text, [name for name, kind in self.assemblies.items() if kind != "things"], "assemblies")
        self.refuse(f"“{value.text}” {what}", hint, value.place, "" if kind else f"name {value.text}")
        return False

    def at(self, table: Table) -> Point:
        values = [node for node in table.row("at") if isinstance(node, Value)]
        if len(values) != 2:
            return (0.0, 0.0)
        across, deep = (self.scope.number(value, self.subject, "length") or 0.0 for value in values)
        return (across, deep)

    def from_below(self, things: list[ThingPlan]) -> tuple[ThingPlan, ...]:
        """Return the things, each after all that carry it; findings for those that nothing known carries."""
        placed: dict[str, ThingPlan] = {}
        waiting = self.on_known(things)
        while ready := [thing for thing in waiting if set(thing.on) <= placed.keys()]:
            placed |= {thing.name: thing for thing in ready}
            waiting = [thing for thing in waiting if thing.name not in placed]
        left = {thing.name for thing in waiting}
        round_about = next((thing for thing in waiting if left & set(thing.on)), None)
        if round_about is not None:
            what = f"{round_about.name} stands on {' and '.join(round_about.on)}, and in the end on itself"
            self.refuse(what, "one thing must stand on the table", round_about.place)
        return tuple(placed.values())

    def on_known(self, things: list[ThingPlan]) -> list[ThingPlan]:
        """Return the things that stand on things of this whole only; findings for the others."""
        names = [thing.name for thing in things]
        known = []
        for thing in things:
            strangers = [other for other in thing.on if other not in names]
            for other in strangers:
                self.refuse_stranger(thing, other, names)
            known += [] if strangers else [thing]
        return known

    def refuse_stranger(self, thing: ThingPlan, other: str, names: list[str]) -> None:
        hint = pick_hint(other, [name for name in names if name != thing.name], "things")
        cause = f"name {self.lost[other]}" if other in self.lost else ""
        self.refuse(f"{thing.name} stands on “{other}”, which is no thing of this whole", hint, thing.place, cause)

    def refuse(self, message: str, hint: str, place: Place, cause: str = "") -> None:
        found = rules.THINGS.found(message, subject=self.subject, hint=hint, place=place, cause=cause)
        self.scope.findings.append(found)
