"""Parts as plans: letter, board, shape or drawing, counts, and the treatments that joins give to their edges."""

from dataclasses import replace

from publisher.basics.wording import say_mm
from publisher.brief import Entry, Row, Table, Value
from publisher.design.language import MOST_OF_ONE_PART, Scope, count_beyond, read_count
from publisher.design.parts.combine import CombineReader
from publisher.design.parts.letters import letter
from publisher.design.parts.parameters import read_openings, read_parameters, read_surface
from publisher.design.parts.parts_known import KnownParts
from publisher.design.parts.splits import find_taken, read_splits
from publisher.design.records import Board, DrawingPlan, EdgeTreatment, Family, PartPlan, Printed
from publisher.design.rules import plans as rules

MOST_PARTS = 200
LEAST_DRAWING_SCALE, MOST_DRAWING_SCALE = 0.01, 100.0
MOST_TRACE_ALLOWANCE_MM = 3.0


class PartsReader:
    """Reads the parts of a design; ``used``: copies that the assemblies need, by part; ``use``: trace or paste; ``written``: what the spec
    says of it, other than that where it offers both ways."""

    def __init__(
        self,
        known: KnownParts,
        used: dict[str, int],
        treatments: dict[str, tuple[EdgeTreatment, ...]],
        use: str,
        scope: Scope,
        written: str = "",
    ) -> None:
        """Keep what the parts depend on."""
        self.known = known
        self.used = used
        self.treatments = treatments
        self.use = use
        self.written = written
        self.scope = scope

    def read(self, table: Table) -> tuple[PartPlan, ...]:
        """Return the parts in the order of the spec, those on boards that exist; findings for what cannot be."""
        entries = [entry for entry in table.entries if isinstance(entry.node, Table)]
        if len(entries) > MOST_PARTS:
            self.scope.findings.append(
                rules.TOO_MANY_PARTS.found(
                    f"there are {len(entries)} parts; at most {MOST_PARTS} are read",
                    place=entries[MOST_PARTS].place,
                    value=float(len(entries)),
                    limit=float(MOST_PARTS),
                )
            )
            return ()
        letters = self.letters(entries)
        find_taken(table, self.known, self.scope)
        self.combine = CombineReader(table, self.scope)
        plans = []
        for entry in entries:
            ids = self.known.ids(entry.key)
            board = self.known.boards[ids[0]]
            if board is None or not isinstance(entry.node, Table):
                continue
            plan = self.part(entry, entry.node, board, letters[ids[0]], ids[0])
            plans.append(plan)
            plans += [
                replace(
                    plan,
                    id=one,
                    letter=letters[one],
                    name=f"{_name(entry.node, entry.key)} {k}",
                    family=replace(plan.family, layer=k),
                )
                for k, one in enumerate(ids[1:], 2)
                if plan.family is not None
            ]
        return tuple(plans)

    def letters(self, entries: list[Entry]) -> dict[str, str]:
        """Letters as given, the others in order round them."""
        given: dict[str, str] = {}
        for entry in entries:
            value = entry.node.value("letter") if isinstance(entry.node, Table) else None
            if value is None:
                continue
            said = value.text.strip()
            fault = _letter_fault(said, given)
            if fault is None:
                given[entry.key] = said
                continue
            message, hint = fault
            self.scope.findings.append(
                rules.LETTER.found(message, subject=f"part {entry.key}", hint=hint, place=value.place)
            )
        taken = set(given.values())
        ids = [(one, entry.key) for entry in entries for one in self.known.ids(entry.key)]
        free = (name for index in range(len(ids) + len(taken)) if (name := letter(index)) not in taken)
        # a family's letter is its lowest layer's; the others follow in order
        return {one: given.pop(key, "") or next(free) for one, key in ids}

    def part(self, entry: Entry, table: Table, board: Board, its_letter: str, id: str) -> PartPlan:
        """Return one part; of a family, its lowest layer."""
        subject = f"part {entry.key}"
        layers = self.known.families.get(entry.key)
        shape, drawing = table.text("shape"), table.get("drawing")
        if bool(shape) == isinstance(drawing, Table) and not (shape and layers):
            what = "both a shape and a drawing" if shape else "neither a shape nor a drawing"
            self.scope.findings.append(
                rules.PART_OUTLINE.found(
                    f"the part {entry.key} has {what}",
                    subject=subject,
                    hint="keep one of them" if shape else "say shape: … or drawing: {file: …}",
                    place=entry.place,
                )
            )
        count = self.count(entry, table, subject, id)
        printed = self.printed(table)
        surface = table.get("surface")
        turning = "any" if board.grain == "none" else "half"
        return PartPlan(
            id=id,
            letter=its_letter,
            name=_name(table, entry.key) + (" 1" if layers else ""),
            board=board.id,
            thickness=board.thickness,
            shape=shape,
            parameters=read_parameters(table.table("with"), self.scope, subject),
            openings=read_openings(table.table("openings"), self.scope, subject),
            surface=read_surface(surface, self.scope, subject) if isinstance(surface, Table) else None,
            drawing=self.drawing(drawing, subject) if isinstance(drawing, Table) else None,
            treatments=self.treatments.get(id, ()),
            count=count,
            spare=read_count(table.value("spare"), 0, 0, MOST_OF_ONE_PART, "spare", self.scope, subject),
            mirrored=read_count(table.value("mirrored"), 0, 0, count, "mirrored", self.scope, subject),
            turning=table.text("turning", turning),
            # a piece that is measured out has no card that a pencil runs round
            trace_allowance=0.0 if printed == "sizes" else self.trace_allowance(table, subject),
            place=entry.place,
            family=Family(entry.key, 1, len(layers)) if layers else None,
            combine=self.combine.steps(entry.key, table),
            splits=read_splits(table.get("split"), self.scope, subject),
            printed=printed,
        )

    def count(self, entry: Entry, table: Table, subject: str, id: str) -> int:
        """Copies that the assemblies need, or what the part says when none uses it."""
        value = table.value("count")
        used = self.used.get(id)
        if used is not None and value is not None:
            self.refuse_count(f"the assemblies need {used} of {entry.key}, and the part says count too", value, subject)
        elif used is None and value is None and not self.known.strangers:
            # a stranger in an assembly has its finding, and is likely this very part misspelt
            self.scope.findings.append(
                rules.PART_COUNT.found(
                    f"no assembly uses the part {entry.key}, and it does not say how many to cut",
                    subject=subject,
                    hint="say count: 1 on the part, use it in an assembly, or remove it",
                    place=entry.place,
                )
            )
        if used is not None and used > MOST_OF_ONE_PART:
            what = f"the count of {entry.key}"
            self.scope.findings.append(count_beyond(used, MOST_OF_ONE_PART, what, entry.place, subject))
        return (
            used
            if used is not None
            else read_count(value, 1, 1, MOST_OF_ONE_PART, f"the count of {entry.key}", self.scope, subject)
        )

    def refuse_count(self, message: str, value: Value, subject: str) -> None:
        """Add the finding for a count that is stated twice."""
        self.scope.findings.append(
            rules.PART_COUNT.found(
                message,
                subject=subject,
                hint="remove count (of a part that is like one with a count: without: [count]); spare copies are written spare: 1",
                place=value.place,
            )
        )

    def trace_allowance(self, table: Table, subject: str) -> float:
        """The width in mm that a pencil adds; 0 when the template is pasted on the board."""
        value = table.value("trace_allowance")
        allowance = None if value is None else self.scope.number(value, subject, "length")
        if value is None or allowance is None:
            return 0.0
        if not 0 <= allowance <= MOST_TRACE_ALLOWANCE_MM:
            self.scope.findings.append(
                rules.TRACE_ALLOWANCE.found(
                    f"the trace allowance is {say_mm(allowance)}",
                    subject=subject,
                    hint=f"write the width that a pencil adds, 0 to {MOST_TRACE_ALLOWANCE_MM:g} mm: 0.4 mm",
                    place=value.place,
                    value=allowance,
                    limit=MOST_TRACE_ALLOWANCE_MM if allowance > 0 else 0.0,
                )
            )
            return 0.0
        if self.use == "paste":
            if allowance and self.written == "paste":
                self.scope.findings.append(
                    rules.TRACE_UNUSED.found(
                        "use is paste, so the trace allowance of this part has no effect",
                        subject=subject,
                        hint="remove trace_allowance, or say use: trace",
                        place=value.place,
                    )
                )
            return 0.0
        return allowance

    def printed(self, table: Table) -> Printed:
        """How the pack shows the part; a print that is pasted on the board is whole."""
        asked = table.text("printed")
        if asked == "half":
            return "half" if self.use == "trace" else "whole"
        return "sizes" if asked == "sizes" else "whole"

    def drawing(self, table: Table, subject: str) -> DrawingPlan:
        """The designer's own drawing as the part's outline."""
        lines = table.table("lines")
        return DrawingPlan(
            file=table.text("file"),
            id=table.text("id"),
            width=self.asserted(table.value("width"), subject),
            height=self.asserted(table.value("height"), subject),
            lines=tuple((line.key, _words(line.node)) for line in lines.entries),
            place=table.place,
            scale=self.scale(table.value("scale"), subject),
        )

    def scale(self, value: Value | None, subject: str) -> float:
        """How many times as large as it is drawn a drawing is taken; 1 if unsaid, or after a finding."""
        scale = 1.0 if value is None else self.scope.number(value, subject, "number")
        if value is None or scale is None:
            return 1.0
        if LEAST_DRAWING_SCALE <= scale <= MOST_DRAWING_SCALE:
            return scale
        said = f"the drawing's scale is {scale:g}"
        beyond_most = scale > MOST_DRAWING_SCALE
        limit = MOST_DRAWING_SCALE if beyond_most else LEAST_DRAWING_SCALE
        hint = "write how many times as large the part is, such as scale: 1.5 or scale: long / 140 mm"
        message = f"{said}, but {'at most' if beyond_most else 'at least'} {limit:g} makes sense"
        self.scope.findings.append(
            rules.DRAWING_SCALE.found(message, subject=subject, hint=hint, place=value.place, value=scale, limit=limit)
        )
        return 1.0

    def asserted(self, value: Value | None, subject: str) -> float | None:
        """A size that the drawing must have, in mm."""
        return None if value is None else self.scope.number(value, subject, "length")


def _letter_fault(said: str, given: dict[str, str]) -> tuple[str, str] | None:
    """Return what is wrong with a part's letter and what to do, beside the letters that were given before; None for a good one."""
    if said in given.values():
        other = next(part for part, taken in given.items() if taken == said)
        return f"the letter {said} is taken by {other}", "give each part its own letter"
    if not (1 <= len(said) <= 2 and said.isalpha() and said.isascii() and said.isupper()):
        return f"“{said[:20]}” is no letter for a part", "write one or two capital letters: A, B, AA"
    return None


def _name(table: Table, key: str) -> str:
    return table.text("name", key)


def _words(node: Value | Table | Row) -> tuple[str, ...]:
    if isinstance(node, Value):
        return (node.text,)
    return tuple(item.text for item in node.items if isinstance(item, Value)) if isinstance(node, Row) else ()
