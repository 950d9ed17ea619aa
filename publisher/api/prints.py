"""What came out of a printer, and the board that somebody has, judged by the facts of a pack."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.ruler import BoardVerdict, PackFacts, Verdict


def pack_facts(pdf: bytes, name: str, beside: Iterable[tuple[str, bytes]] = ()) -> PackFacts:
    """Return the facts that a pack carries. Raises Refusal when there are none that can be read, and for a phone copy, which is never
    printed: it names the pack that goes with it, where that is among the PDFs ``beside`` it (name, bytes; read only then)."""
    from publisher.ruler import read_pack_facts

    return read_pack_facts(pdf, name, beside)


def measure(
    across: float | str,
    down: float | str,
    unit: str = "mm",
    true_mm: float | tuple[float, float] | None = None,
    tool: str = "ruler",
    facts: PackFacts | None = None,
) -> Verdict:
    """Judge a printed sheet from two readings of lines that should be ``true_mm`` long (across and down where they differ, as those
    of the long rulers: ``PackFacts.rulers``, or ``LONG_RULERS``); None for the square of 100 mm.

    Readings are numbers in ``unit`` (mm, cm, in), or what somebody wrote: "3 15/16 in", "97,3". ``tool`` is one of ``TOOLS``;
    ``facts`` of the pack that was printed say what it allows. Raises Refusal for a reading that no such line can give,
    for one in inches of a pack with a square of 4 in as well, unless ``true_mm`` says which was measured, and for one of 4 in where
    the pack has no such line.
    """
    from publisher.ruler import LONG_RULERS, check_square, judge, square_readings, take_readings

    if true_mm is None:
        readings = square_readings(across, down, unit, tool, facts)
    else:
        lines = true_mm if isinstance(true_mm, tuple) else (true_mm, true_mm)
        check_square(lines, facts)
        readings = take_readings(across, down, unit, lines, tool)
    if facts is None:
        return judge(*readings, rulers=LONG_RULERS)
    return judge(*readings, facts.meetings, facts.budget, facts.rulers)


def measure_board(
    thickness: float,
    facts: PackFacts,
    others: tuple[PackFacts, ...] = (),
    print_scales: tuple[float, ...] = (1.0,),
    board: str = "",
) -> BoardVerdict:
    """Judge a board of this measured ``thickness`` (mm) by what a pack takes: which joint fails, by how much, and which of the
    ``others``, packs of the same design with other sizes, takes it.

    ``print_scales`` of the sheet, 1 = true size. ``board`` names it where the pack is cut from several. Raises Refusal when it is
    not clear which board is meant.
    """
    from publisher.ruler import judge_board

    return judge_board(thickness, facts, others, print_scales, board)
