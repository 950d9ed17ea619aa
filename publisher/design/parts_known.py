"""The parts that a spec names, before they are worked out: assemblies refer to them by id."""

from dataclasses import dataclass, field

from publisher.brief import Table, Value
from publisher.design import rules_plans as rules
from publisher.design.model import Board
from publisher.design.names import pick_hint
from publisher.design.scope import Scope


@dataclass(frozen=True, slots=True)
class KnownParts:
    """Ids of the parts and the board of each; None where the board is unknown (then a finding says so).

    ``strangers``: names that assemblies use and that are no parts, as they are met.
    """

    boards: dict[str, Board | None]
    strangers: list[str] = field(default_factory=list)

    def has(self, value: Value, scope: Scope, subject: str) -> bool:
        """True when the value names a part; otherwise a finding proposes the nearest."""
        if value.text in self.boards:
            return True
        self.strangers.append(value.text)
        scope.findings.append(
            rules.UNKNOWN_PART.found(
                f"there is no part “{value.text}”",
                subject=subject,
                hint=pick_hint(value.text, self.boards, "parts"),
                place=value.place,
            )
        )
        return False

    def thickness(self, part: str) -> float:
        """Return the thickness of a part's board in mm; 0 where the board is unknown, which stops the pack anyway."""
        board = self.boards.get(part)
        return board.thickness if board else 0.0

    def spread(self, part: str) -> float:
        """Return the spread of a part's board in ± mm."""
        board = self.boards.get(part)
        return board.spread if board else 0.0


def know_parts(table: Table, boards: tuple[Board, ...], named: tuple[str, ...], scope: Scope) -> KnownParts:
    """Return the parts with their boards. ``named``: ids of all boards of the spec, also of those without a thickness."""
    by_id = {board.id: board for board in boards}
    known: dict[str, Board | None] = {}
    for entry in table.entries:
        if not isinstance(entry.node, Table):
            continue
        value = entry.node.value("board")
        known[entry.key] = by_id.get(value.text) if value else None
        if value is None or value.text not in named:
            wanted = f"there is no board “{value.text}”" if value else f"the part {entry.key} names no board"
            scope.findings.append(
                rules.UNKNOWN_BOARD.found(
                    wanted,
                    subject=f"part {entry.key}",
                    hint=pick_hint(value.text if value else "", named, "boards"),
                    place=value.place if value else entry.place,
                )
            )
    return KnownParts(known)
