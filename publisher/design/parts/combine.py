"""Combinations of shapes: what is added to a part's shape, cut from it, mirrored, repeated and turned."""

from dataclasses import replace
from typing import Literal

from publisher.basics import Place
from publisher.basics.wording import listed
from publisher.brief import Node, Row, Table, Value
from publisher.design.language import Scope, pick_hint, read_count
from publisher.design.parts.parameters import read_parameters
from publisher.design.records import CombineStep
from publisher.design.rules import plans as rules

MOST_COMBINE_STEPS = 60
MOST_REPEATS = 200
_KINDS: tuple[Literal["add", "cut", "mirror", "repeat", "turn"], ...] = ("add", "cut", "mirror", "repeat", "turn")


class CombineReader:
    """Reads the ``combine`` lists of a spec's parts. ``parts`` is the whole table: a step may use another part's shape."""

    def __init__(self, parts: Table, scope: Scope) -> None:
        """Keep what steps refer to."""
        self.parts = parts
        self.scope = scope

    def steps(self, name: str, table: Table, path: tuple[str, ...] = ()) -> tuple[CombineStep, ...]:
        """Return the steps of one part; findings for those that cannot be read. ``path``: the parts that led here."""
        rows = [node for node in table.row("combine") if isinstance(node, Table)]
        if len(rows) > MOST_COMBINE_STEPS:
            self.refuse(
                name,
                f"{len(rows)} steps are combined",
                f"at most {MOST_COMBINE_STEPS} steps make one part",
                rows[MOST_COMBINE_STEPS].place,
            )
            return ()
        made = [self.step(name, number, row, (*path, name)) for number, row in enumerate(rows, 1)]
        return tuple(step for step in made if step is not None)

    def step(self, name: str, number: int, row: Table, path: tuple[str, ...]) -> CombineStep | None:
        """Return one step; None after a finding."""
        subject = f"part {name}"
        kind = next((kind for kind in _KINDS if row.get(kind) is not None), None)
        if kind is None:
            self.refuse(name, "a step of a combination does nothing", f"say one of {listed(_KINDS)}", row.place)
            return None
        turn, pitch = row.value("turn"), row.value("pitch")
        step = CombineStep(
            kind,
            row.place,
            called=row.text("called") or f"{kind}{number}",
            at=self.at(row.get("at"), subject),
            turn=0.0 if turn is None else self.scope.number(turn, subject, "angle") or 0.0,
            count=read_count(
                row.value("repeat" if kind == "repeat" else "count"),
                1,
                1,
                MOST_REPEATS,
                "the copies",
                self.scope,
                subject,
            ),
            pitch=0.0 if pitch is None else self.scope.number(pitch, subject, "length") or 0.0,
            along=row.text("along"),
            flip=row.text("mirror"),
        )
        if step.count > 1 and not (step.pitch > 0.0 and step.along):
            hint = "say pitch: 30 mm and along: bottom (the name of a straight edge)"
            self.refuse(name, f"{step.count} copies need a pitch and an edge to go along", hint, row.place)
            return None
        return step if kind not in ("add", "cut") else self.other(name, step, row.get(kind), path)

    def other(self, name: str, step: CombineStep, node: Node | None, path: tuple[str, ...]) -> CombineStep | None:
        """Return an add or cut step with its other shape: written here, or another part's by name."""
        if isinstance(node, Table):
            parameters = read_parameters(node.table("with"), self.scope, f"part {name}")
            return replace(step, shape=node.text("shape"), parameters=parameters)
        if not isinstance(node, Value):
            return None
        other = self.parts.get(node.text)
        if not isinstance(other, Table):
            known = [entry.key for entry in self.parts.entries]
            self.refuse(
                name, f"there is no part “{node.text}” to {step.kind}", pick_hint(node.text, known, "parts"), node.place
            )
            return None
        if node.text in path:
            circle = " → ".join((*path[path.index(node.text) :], node.text))
            self.refuse(
                name, f"these parts are made of each other: {circle}", "one must be made of itself alone", node.place
            )
            return None
        if other.get("drawing") is not None or other.get("layers") is not None:
            what = "is drawn" if other.get("drawing") is not None else "is several layers"
            self.refuse(name, f"the part {node.text} {what}", f"{step.kind} a registered shape", node.place)
            return None
        # its own faults are found where the part itself is read
        quiet = CombineReader(self.parts, Scope(self.scope.sizes, []))
        inner = quiet.steps(node.text, other, path)
        self.scope.findings.extend(
            f for f in quiet.scope.findings if f.check == rules.COMBINE.id and "each other" in f.message
        )
        parameters = read_parameters(other.table("with"), quiet.scope, f"part {node.text}")
        return replace(step, shape=other.text("shape"), parameters=parameters, steps=inner)

    def at(self, node: Node | None, subject: str) -> tuple[float, float]:
        """Return the place of another shape's origin, mm."""
        if not isinstance(node, Row) or len(node.items) != 2:
            return (0.0, 0.0)
        x, y = (self.scope.number(i, subject, "length") if isinstance(i, Value) else None for i in node.items)
        return (x or 0.0, y or 0.0)

    def refuse(self, name: str, message: str, hint: str, place: Place) -> None:
        """Add a finding about a combination."""
        self.scope.findings.append(rules.COMBINE.found(message, subject=f"part {name}", hint=hint, place=place))
