"""Stacks: layers of board from the table up, in sections that stand on each other."""

from publisher.basics import Place, Rule
from publisher.brief import Node, Row, Table, Value
from publisher.design.assembly.braces_and_meetings import read_brace
from publisher.design.language import Scope, pick_hint, read_count
from publisher.design.parts import KnownParts
from publisher.design.records import BracePlan, StackPlan, StackRow
from publisher.design.rules import plans as rules

MOST_LAYERS = 400


def read_stacks(name: str, table: Table, known: KnownParts, scope: Scope) -> tuple[StackPlan, ...]:
    """Return a stack assembly as named stacks, the lowest first: its own rows, then its sections (assembly_section)."""
    reader = _SectionReader(name, known, scope)
    reader.read(table.row("stack"), name, table.text("stands_on"), table, table.place)
    return tuple(plan for plan in reader.plans if plan.rows)


def check_standing(stacks: tuple[StackPlan, ...], scope: Scope) -> None:
    """Add findings for stacks that stand on nothing known, on themselves or round in a circle, or share a name."""
    below = {stack.name: stack.on for stack in stacks}
    seen: set[str] = set()
    for stack in stacks:
        if stack.name in seen:
            _refuse(f"two stacks are called “{stack.name}”", "give each its own name", stack, scope, rules.NAME_TAKEN)
        seen.add(stack.name)
        if stack.on and stack.on not in below:
            hint = pick_hint(stack.on, [name for name in below if name != stack.name], "stacks")
            _refuse(f"{stack.name} stands on “{stack.on}”, which is no stack", hint, stack, scope)
            continue
        path = [stack.name]
        while (under := below.get(path[-1], "")) and under not in path:
            path.append(under)
        if under == stack.name:
            circle = " → ".join([*path, under])
            _refuse(f"these stacks stand on each other: {circle}", "one must stand on the table", stack, scope)


def _refuse(message: str, hint: str, stack: StackPlan, scope: Scope, rule: Rule = rules.SECTION) -> None:
    scope.findings.append(rule.found(message, subject=f"stack {stack.name}", hint=hint, place=stack.place))


def check_lowest(stacks: tuple[StackPlan, ...], scope: Scope) -> None:
    """Add findings for a turn or shift that moves nothing: the lowest layer of all lies on the table as it is drawn."""
    for stack in stacks:
        first = stack.rows[0]
        alone = first.count == 1 and (first.turn % 360.0 != 0.0 or first.shift != (0.0, 0.0))
        if stack.on or not (alone or stack.turn % 360.0 != 0.0):
            continue
        scope.findings.append(
            rules.LOWEST.found(
                f"the lowest layer of {stack.name} has nothing below it to be turned or shifted against",
                subject=f"stack {stack.name}",
                hint="turn and shift the rows above it: each lies against the one below",
                place=first.place if alone else stack.place,
            )
        )


def check_layers(stacks: tuple[StackPlan, ...], scope: Scope) -> None:
    """Add a finding when all stacks together are too high."""
    total = sum(row.count for stack in stacks for row in stack.rows)
    if total <= MOST_LAYERS:
        return
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


class _SectionReader:
    def __init__(self, assembly: str, known: KnownParts, scope: Scope) -> None:
        self.assembly = assembly
        self.known = known
        self.scope = scope
        self.plans: list[StackPlan] = []
        self.brace: BracePlan | None = None
        self.sheets = 0
        self.subject = f"assembly {assembly}"

    def read(self, items: tuple[Node, ...], name: str, below: str, table: Table, place: Place) -> None:
        """Read the rows of one section, then the sections inside it; ``below`` is what it stands on if unsaid."""
        own = [item for item in items if isinstance(item, Table) and _section(item) is None]
        rows = [row for item in own for row in self.rows(item)]
        turn = table.value("turn")
        if name == self.assembly:  # its sections are braced alike
            self.brace = read_brace(table.table("brace"), self.scope, self.assembly)
            sheets = table.value("batches")
            if sheets is not None:
                what = "the number of batches"
                self.sheets = read_count(sheets, 1, 2, MOST_LAYERS, what, self.scope, self.subject)
        self.plans.append(
            StackPlan(
                name=name,
                rows=tuple(rows),
                on=below if name == self.assembly else self.stands_on(table, below),
                turn=0.0 if turn is None else self.scope.number(turn, self.subject, "angle") or 0.0,
                loose=table.text("loose") == "true",
                place=place,
                brace=self.brace,
                sheets=self.sheets,
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
        below = next((plan.name for plan in reversed(self.plans) if plan.rows), self.plans[0].on)
        self.read(table.row("stack"), name, below, table, place)

    def stands_on(self, table: Table, below: str) -> str:
        said = table.value("stands_on")
        if said is None:
            return below
        names = {plan.name: plan.name for plan in self.plans if plan.rows}
        names |= {plan.name.removeprefix(f"{self.assembly}_"): plan.name for plan in self.plans if plan.rows}
        if said.text in names:
            return names[said.text]
        hint = pick_hint(said.text, names, "sections below")
        self.refuse(f"there is no section “{said.text}” below this one", hint, said.place)
        return below

    def rows(self, table: Table) -> tuple[StackRow, ...]:
        """Return a row as it is written, or the layers of a family, each once, from its lowest up."""
        part = table.value("part")
        if part is None or not self.known.has(part, self.scope, self.subject, family=True):
            return ()
        turn, count = table.value("turn"), table.value("count")
        family = self.known.families.get(part.text)
        for value in (turn, count, table.value("at")) if family else ():
            if value is not None:
                what = f"{part.text} is {len(family or ())} layers that lie on each other as they are, each once"
                self.refuse(what, "remove turn, count and at from this row", value.place)
                return ()
        what = f"the count of {part.text} layers"
        copies = 1 if count is None else read_count(count, 0, 1, 10**9, what, self.scope, self.subject)
        angle = 0.0 if turn is None else self.scope.number(turn, self.subject, "angle") or 0.0
        shift = self.shift(table.get("shift"))
        centred = table.text("at") == "centre"
        return tuple(StackRow(one, copies, angle, shift, table.place, centred) for one in self.known.ids(part.text))

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
