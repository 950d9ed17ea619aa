"""What other values save, as a difference to the size as it stands: tiled parts, sheets, pages."""

from collections.abc import Iterable, Iterator

from publisher.sweep.best import sheets_of
from publisher.sweep.model import Saving, SweepRow


def savings_of(now: SweepRow | None, rows: Iterable[SweepRow]) -> tuple[Saving, ...]:
    """Return, for each quantity and either way, the values nearest to the first size as it stands from which on less is taken.

    ``rows``: those at which another size that is varied is as it stands count, those at jumps among them. () where it is not known
    what the sizes as they stand take.
    """
    if now is None:
        return ()
    beside = [row for row in rows if row.values[1:] == now.values[1:] and row.values != now.values]
    less = sorted((row for row in beside if row.values < now.values), reverse=True, key=lambda row: row.values)
    more = sorted((row for row in beside if row.values > now.values), key=lambda row: row.values)
    return tuple(saving for way in (less, more) for saving in _on_the_way(now, way))


def _on_the_way(now: SweepRow, rows: list[SweepRow]) -> Iterator[Saving]:
    """Yield what is saved on one way from the size as it stands, the nearest first."""
    least = dict(_taken(now))
    for row in rows:
        for key, (number, letters) in _taken(row):
            if key in least and number < least[key][0]:
                least[key] = (number, letters)
                start, parts = dict(_taken(now))[key]
                gone = tuple(letter for letter in parts if letter not in letters)
                change = round(row.values[0] - now.values[0], 9)
                yield Saving(*key, row.values[0], change, round(start - number), gone, row.met)


def _taken(row: SweepRow) -> Iterator[tuple[tuple[str, str], tuple[float, tuple[str, ...]]]]:
    """Yield how much a row takes of each quantity that is known there, and of which parts."""
    if sheets_of(row) < float("inf"):
        for one in row.sheets:
            if one.sheets:
                yield ("sheets", one.sheet), (one.sheets, ())
    for paper in row.papers:
        yield ("tiled", paper.paper), (len(paper.tiled), paper.tiled)
        if paper.pages is not None:
            yield ("pages", paper.paper), (paper.pages, ())
