"""Which value is best, and which needs no value meets."""

from collections.abc import Iterable

from publisher.design import SizeSpan
from publisher.sweep.model import Missed, SweepRow


def best_of(rows: Iterable[SweepRow], spans: tuple[SizeSpan, ...]) -> SweepRow | None:
    """Return the best row: see ``Sweep``."""

    def rank(row: SweepRow) -> tuple[float, ...]:
        away = sum(abs(v - s.size.value) / (s.most - s.least) for v, s in zip(row.values, spans, strict=True))
        return (sheets_of(row), pages_of(row), round(away, 9), *row.values)

    return min((row for row in rows if row.roomy), key=rank, default=None)


def sheets_of(row: SweepRow) -> float:
    """Return how many sheets are bought: of each board those of the first size that every part fits; inf where none does."""
    boards = dict.fromkeys(one.board for one in row.sheets)
    return sum(
        next((float(one.sheets) for one in row.sheets if one.board == board and one.sheets), float("inf"))
        for board in boards
    )


def pages_of(row: SweepRow) -> float:
    """Return the template and tile pages of the first paper; inf where no pack holds them."""
    pages = row.papers[0].pages if row.papers else None
    return float("inf") if pages is None else float(pages)


def missed_of(rows: tuple[SweepRow, ...]) -> tuple[Missed, ...]:
    """Return the needs that no row meets, each with the row that comes nearest."""
    built = [row for row in rows if row.needs]
    found: list[Missed] = []
    for at in range(min((len(row.needs) for row in built), default=0)):
        near = max(built, key=lambda row: row.needs[at].margin)
        need = near.needs[at]
        if not need.met:
            found.append(Missed(need.fact, need.kind, near.values, -need.margin))
    return tuple(found)
