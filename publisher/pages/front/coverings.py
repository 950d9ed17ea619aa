"""Paper or tape that is glued over bent pieces before they are bent: how much to buy, and what must be covered.

A margin all round and a usual width of tape: common practice, no source.
"""

from collections.abc import Iterable
from math import ceil, floor

from publisher.basics import record
from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, counted, paired, rounded_up, say_size, series
from publisher.geometry import Part
from publisher.joints import COVER_MARGIN, tape_over
from publisher.material import CutRow

TAPE_WORDS = ("50 mm", "2 in")


@record
class Covering:
    """A bent part whose pieces are covered: ``what`` with (``paper``, ``tape``), on which ``face``; how many ``pieces``, and how
    wide and high one is (mm)."""

    part: str
    letter: str
    what: str
    face: str
    pieces: int
    width: float
    height: float

    @property
    def tape(self) -> float:
        """Length of tape (mm) that covers all pieces: strips along the longer side."""
        return self.pieces * tape_over(self.width, self.height)

    def sheets(self, width: float, height: float) -> int:
        """Return how many sheets of paper (mm) cover all pieces; on a larger piece sheets are laid edge to edge."""
        wide, high = self.width + 2.0 * COVER_MARGIN, self.height + 2.0 * COVER_MARGIN
        ways = ((wide, high), (high, wide))
        most = max(floor(width / a) * floor(height / b) for a, b in ways)
        if most:
            return ceil(self.pieces / most)
        return self.pieces * min(ceil(a / width) * ceil(b / height) for a, b in ways)


def coverings_of(parts: Iterable[Part], rows: Iterable[CutRow]) -> tuple[Covering, ...]:
    """Return what is covered, in the order of the parts. A piece that keeps the middle of its board stretches outside."""
    bent = {part.id: part.bending for part in parts if part.bending is not None and part.bending.covered != "none"}
    return tuple(
        Covering(
            row.part,
            row.letter,
            bent[row.part].covered,
            "inside" if bent[row.part].keeps == "inside" else "outside",
            row.count + row.spare,
            row.width,
            row.height,
        )
        for row in rows
        if row.part in bent
    )


def _pieces(covers: Iterable[Covering], first: LengthUnit) -> str:
    """Return ``1 piece of C, 281.0 × 75.0 mm (11.06 × 2.95 in)`` of each part, one after another."""
    return series(
        f"{counted(one.pieces, 'piece')} of {one.letter}, {say_size(one.width, one.height, first)}{' each' if one.pieces > 1 else ''}"
        for one in covers
    )


def covering_words(
    covers: tuple[Covering, ...], first: LengthUnit = "mm", sheet: tuple[str, float, float] | None = None
) -> tuple[str, ...]:
    """Return what to buy: paper, in sheets of a size where one is given by its name, width and height (mm), and tape by its length."""
    said = []
    for what in ("paper", "tape"):
        own = [one for one in covers if one.what == what]
        if not own:
            continue
        over = f"to cover {_pieces(own, first)}"
        if what == "tape":
            said.append(
                f"strong tape, {paired(*TAPE_WORDS, first)} wide, {over}: {_run(sum(one.tape for one in own), first)}"
            )
        elif sheet is None:
            said.append(f"plain paper {over}")
        else:
            name, width, height = sheet
            count = sum(one.sheets(width, height) for one in own)
            said.append(f"plain paper {over}: {counted(count, 'sheet')} of {name} size")
    return tuple(said)


def _run(mm: float, first: LengthUnit) -> str:
    """Return a length of tape: ``1.3 m (5 ft)``, rounded up."""
    metres = rounded_up(mm / 1000.0, 1)
    return paired(f"{metres:.1f} m", f"{ceil(inches(mm) / 12.0 - 1e-9)} ft", first)
