"""The parts that a spec names, before they are worked out: assemblies refer to them by id."""

from dataclasses import field

from publisher.basics import record
from publisher.brief import Entry, Table, Value
from publisher.design.language import Scope, pick_hint, read_count
from publisher.design.records import Board
from publisher.design.rules import plans as rules

MOST_FAMILY = 60  # layers of one hill: each is a part with a template of its own


@record
class KnownParts:
    """Ids of the parts and the board of each; None where the board is unknown (then a finding says so).

    ``families``: ids of the layers that one part of the spec stands for, from the table up. ``strangers``: names that
    assemblies use and that are no parts, as they are met.
    """

    boards: dict[str, Board | None]
    strangers: list[str] = field(default_factory=list)
    families: dict[str, tuple[str, ...]] = field(default_factory=dict)

    def ids(self, name: str) -> tuple[str, ...]:
        """Return the parts that a name stands for: itself, or all layers of a family."""
        return self.families.get(name, (name,))

    def taken(self, name: str) -> bool:
        """True when a part or a family has this name."""
        return name in self.boards or name in self.families

    def has(self, value: Value, scope: Scope, subject: str, family: bool = False) -> bool:
        """True when the value names a part, or, where ``family`` allows it, a family; otherwise a finding says why not."""
        if value.text in self.boards or (family and value.text in self.families):
            return True
        self.strangers.append(value.text)
        layers = self.families.get(value.text)
        scope.findings.append(
            rules.UNKNOWN_PART.found(
                f"“{value.text}” is {len(layers)} layers, and only a stack can hold them"
                if layers
                else f"there is no part “{value.text}”",
                subject=subject,
                hint=pick_hint(value.text, self.boards, "parts"),
                place=value.place,
                cause="" if layers else f"name {value.text}",
            )
        )
        return False

    def thickness(self, part: str) -> float:
        """Return the thickness of a part's board in mm; 0 where the board is unknown, which stops the pack anyway."""
        board = self.boards.get(part)
        return board.thickness if board else 0.0

    def board(self, part: str) -> Board | None:
        """Return the board of a part, or None where it is unknown."""
        return self.boards.get(part)


def know_parts(table: Table, boards: tuple[Board, ...], named: tuple[str, ...], scope: Scope) -> KnownParts:
    """Return the parts with their boards. ``named``: ids of all boards of the spec, also of those without a thickness."""
    by_id = {board.id: board for board in boards}
    known: dict[str, Board | None] = {}
    families: dict[str, tuple[str, ...]] = {}
    for entry in table.entries:
        if not isinstance(entry.node, Table):
            continue
        value = entry.node.value("board")
        board = by_id.get(value.text) if value else None
        layers = _layers(entry.key, entry.node, scope)
        if layers is None:
            known[entry.key] = board
        else:
            families[entry.key] = tuple(f"{entry.key}_{k}" for k in range(1, layers + 1))
            known.update((layer, board) for layer in families[entry.key])
        if value is None or value.text not in named:
            _refuse_board(entry, value, named, scope)
    _find_layer_names(table, families, scope)
    return KnownParts(known, families=families)


def _refuse_board(entry: Entry, value: Value | None, named: tuple[str, ...], scope: Scope) -> None:
    """Add the finding for a part on a board that the spec does not have, or on none."""
    scope.findings.append(
        rules.UNKNOWN_BOARD.found(
            f"there is no board “{value.text}”" if value else f"the part {entry.key} names no board",
            subject=f"part {entry.key}",
            hint=pick_hint(value.text if value else "", named, "boards"),
            place=value.place if value else entry.place,
            cause=f"board {value.text}" if value else "",
        )
    )


def _find_layer_names(table: Table, families: dict[str, tuple[str, ...]], scope: Scope) -> None:
    """Find parts that are called like a layer of a family."""
    for entry in table.entries:
        layers_of = next((name for name, layers in families.items() if entry.key in layers), "")
        if layers_of:
            scope.findings.append(
                rules.NAME_TAKEN.found(
                    f"“{entry.key}” is the name of a layer of {layers_of}",
                    subject=f"part {entry.key}",
                    hint="give this part another name",
                    place=entry.place,
                )
            )


def _layers(name: str, table: Table, scope: Scope) -> int | None:
    """Return how many layers a part stands for; None for a part that is one."""
    value = table.value("layers")
    if value is None:
        return None
    return read_count(value, 1, 1, MOST_FAMILY, f"the layers of {name}", scope, f"part {name}")
