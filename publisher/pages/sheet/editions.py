"""Editions of a pack: what countries change with their papers: words, units, board sheets on sale; never a size (``editions.json``)."""

import json
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any

from publisher.basics import record
from publisher.basics.wording import LengthUnit
from publisher.material import BoardNeeds, Yield

SOLD_ALIKE = 0.5  # mm: sides that differ by less are those of one sheet
OTHER = "international"
"""The edition of a paper that says none: one that a spec describes itself."""


@record
class SoldSheet:
    """A size in which board is sold: its sides in mm, the shorter first."""

    width: float
    height: float


@record
class Edition:
    """What one part of the world changes. ``where``: the paper there, by which pages name it; ``read_on``: its name in the table of papers;
    ``first``: the unit that stands first; ``sold``: the ``sheets`` that board is sold in, in words; ``boards``: what shops call bare
    board and board with paper; ``names``: (key, name, short name) of tools and materials that are called otherwise."""

    name: str
    where: str
    read_on: str
    first: LengthUnit
    sold: str
    sheets: tuple[SoldSheet, ...]
    boards: tuple[tuple[str, str], ...]
    names: tuple[tuple[str, str, str], ...]

    def sells(self, width: float, height: float) -> bool:
        """Tell whether shops there have sheets of this size (mm), either way round."""
        sides = sorted((width, height))
        return any(
            abs(sides[0] - one.width) < SOLD_ALIKE and abs(sides[1] - one.height) < SOLD_ALIKE for one in self.sheets
        )

    def called(self, faces: str) -> str:
        """Return what shops there call board with such faces."""
        return dict(self.boards)["bare" if faces == "bare" else "paper"]


@cache
def editions() -> tuple[Edition, ...]:
    """Return every edition."""
    table: dict[str, Any] = json.loads((files("publisher.pages.sheet") / "editions.json").read_text(encoding="utf-8"))
    return tuple(
        Edition(
            row["name"],
            row["where"],
            row["read_on"],
            row["first"],
            row["sold"],
            tuple(SoldSheet(float(one["width"]), float(one["height"])) for one in row["sheets"]),
            tuple(row["boards"].items()),
            tuple((key, one["name"], one.get("short", one["name"])) for key, one in row["names"].items()),
        )
        for row in table["editions"]
    )


def edition_called(name: str) -> Edition:
    """Return the edition of this name. Raises StopIteration for another one."""
    return next(one for one in editions() if one.name == name)


def needs_in(edition: Edition, needs: BoardNeeds) -> BoardNeeds:
    """Return the needs with the board sheets that are on sale in an edition: those of its table and those of no edition's.

    A board of which no such sheet takes every part keeps all of its sheets.
    """
    wanted = {key for board in {one.board: one for one in needs.yields} for key in _kept(edition, board, needs.yields)}
    return replace(
        needs,
        yields=tuple(one for one in needs.yields if (one.board, one.sheet.label) in wanted),
        ways=tuple(way for way in needs.ways if (way.board, way.label) in wanted),
        layouts=tuple(one for one in needs.layouts if (one.board, one.sheet) in wanted),
    )


def _kept(edition: Edition, board: str, yields: Iterable[Yield]) -> list[tuple[str, str]]:
    """Return board and label of the sheets of one board that stay."""
    own = [one for one in yields if one.board == board]
    here = [one for one in own if not _elsewhere(edition, one.sheet.width, one.sheet.height)]
    if not any(one.sheets and not one.left_out for one in here):
        here = own
    return [(one.board, one.sheet.label) for one in here]


def _elsewhere(edition: Edition, width: float, height: float) -> bool:
    """Tell whether a sheet is on sale in other editions and not in this one."""
    return not edition.sells(width, height) and any(other.sells(width, height) for other in editions())
