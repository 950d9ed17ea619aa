"""Stacks: layers of board from the table up, in sections that stand on each other."""

from publisher.basics import Place
from publisher.brief import Node, Row, Table, Value
from publisher.design import rules_plans as rules
from publisher.design.counts import read_count
from publisher.design.model import StackPlan, StackRow
from publisher.design.names import pick_hint
from publisher.design.parts_known import KnownParts
from publisher.design.scope import Scope

MOST_LAYERS = 400


def read_stacks(name: str, table: Table, known: KnownParts, scope: Scope) -> tuple[StackPlan, ...]:
    """Return a stack assembly as named stacks, the lowest first: its own rows, then its sections (assembly_section)."""
    reader = _Reader(name, known, scope)
    reader.read(table.row("stack"), name, "", table, table.place)
    return tuple(plan for plan in reader.plans if plan.rows)


def check_layers(stacks: tuple[StackPlan, ...], scope: Scope) -> bool:
    """Add a finding when all stacks together are too high; return True when they are not."""
    total = sum(row.count for stack in stacks for row in stack.rows)
    if total <= MOST_LAYERS:
        return True
    highest = max((row for stack in stacks for row in stack.rows), key=lambda row: row.count)
    scope.findings.append(
        rules.STACK_HEIGHT.found(
            f"the stacks have {total} layers in all; at most {MOST_LAYERS} can be built",
            subject=f"part {highest.part}",
            hint="check the count of layers, or the sizes that it is worked out from",
            place=highest.place,
            value=float(total),
            limit=float(MOST_LAYERS),
        )
    )
    return False


class _Reader:
    def __init__(self, assembly: str, known: KnownParts, scope: Scope) -> None:
        self.assembly = assembly
        self.known = known
        self.scope = scope
        self.plans: list[StackPlan] = []
        self.subject = f"assembly {assembly}"

    def read(self, items: tuple[Node, ...], name: str, below: str, table: Table, place: Place) -> None:
        """Read the rows of one section, then the sections inside it; ``below`` is what it stands on if unsaid."""
        rows = [row for item in items if isinstance(item, Table) and _section(item) is None and (row := self.row(item))]
        turn = table.value("turn")
        self.plans.append(
            StackPlan(
                name=name,
                rows=tuple(rows),
                on=self.stands_on(table, below) if name != self.assembly else "",
                turn=0.0 if turn is None else self.scope.number(turn, self.subject, "angle") or 0.0,
                loose=table.text("loose") == "true",
                place=place,
            )
        )
        for item in items:
            section = _section(item) if isinstance(item, Table) else None
            if section is None or not isinstance(item, Table):
                continue
            short, inner = section
            self.section(short, inner, item.place)

    def section(self, short: str, table: Table, place: Place) -> None:
        name = f"{self.assembly}_{short or f'section_{len(self.plans)}'}"
        if any(plan.name == name for plan in self.plans):
            self.refuse(f"two sections of {self.assembly} are called “{short}”", "give each its own name", place)
            return
        below = next((plan.name for plan in reversed(self.plans) if plan.rows), "")
        self.read(table.row("stack"), name, below, table, place)

    def stands_on(self, table: Table, below: str) -> str:
        said = table.value("on")
        if said is None:
            return below
        names = {plan.name: plan.name for plan in self.plans if plan.rows}
        names |= {plan.name.removeprefix(f"{self.assembly}_"): plan.name for plan in self.plans if plan.rows}
        if said.text in names:
            return names[said.text]
        hint = pick_hint(said.text, names, "sections below")
        self.refuse(f"there is no section “{said.text}” below this one", hint, said.place)
        return below

    def row(self, table: Table) -> StackRow | None:
        part = table.value("part")
        if part is None or not self.known.has(part, self.scope, self.subject):
            return None
        turn = table.value("turn")
        return StackRow(
            part=part.text,
            count=read_count(
                table.value("count"), 1, 1, 10**9, f"the count of {part.text} layers", self.scope, self.subject
            ),
            turn=0.0 if turn is None else self.scope.number(turn, self.subject, "angle") or 0.0,
            shift=self.shift(table.get("shift")),
            place=table.place,
        )

    def shift(self, node: Node | None) -> tuple[float, float]:
        if not isinstance(node, Row) or len(node.items) != 2:
            return (0.0, 0.0)
        numbers = [
            self.scope.number(item, self.subject, "length") if isinstance(item, Value) else None for item in node.items
        ]
        return (numbers[0] or 0.0, numbers[1] or 0.0)

    def refuse(self, message: str, hint: str, place: Place) -> None:
        self.scope.findings.append(rules.SECTION.found(message, subject=self.subject, hint=hint, place=place))


def _section(item: Table) -> tuple[str, Table] | None:
    """The short name and table of a row that is a section, else None."""
    if item.get("stack") is not None:
        return item.text("section") or item.text("name"), item
    if len(item.entries) == 1 and isinstance(inner := item.entries[0].node, Table) and inner.get("stack") is not None:
        return item.entries[0].key, inner
    return None
