"""What a sweep is: rows, jumps, the best value; and what its own modules hand each other. Lengths in mm, angles in degrees."""

from collections.abc import Callable
from typing import Literal

from publisher.basics import record
from publisher.design import Kind, SizeSpan
from publisher.joints import BoardRange
from publisher.material import CountKey, SheetCount
from publisher.pages import PageCount

TO_SPARE = 0.5  # mm or degrees that a good value leaves to each need, but for needs that ask one exact value
CLOSE = 1e-6

Told = Callable[[int, int], None]


@record
class VariedNeed:
    """A need at one value: its fact, by how much it is kept (negative: missed; inf: open), and whether it asks one exact value."""

    fact: str
    kind: Kind
    value: float
    margin: float
    exact: bool

    @property
    def met(self) -> bool:
        """Whether it is met."""
        return self.margin >= -CLOSE

    @property
    def roomy(self) -> bool:
        """Whether it is met with something to spare, as far as it can be."""
        spare = TO_SPARE if self.kind in ("length", "angle") and not self.exact else 0.0
        return self.margin >= spare - CLOSE


@record
class VariedSheet:
    """A board on one sheet size: the sheets that the whole list takes (0: a part fits none), and copies of each part alone."""

    board: str
    sheet: str
    sheets: int
    copies: tuple[tuple[str, int], ...]  # letter, copies on one sheet


@record
class SweepRow:
    """The design at one value of each size that is varied. ``why`` says what stops it there, "" when nothing does; what could still
    be worked out is there all the same."""

    values: tuple[float, ...]
    why: str = ""
    needs: tuple[VariedNeed, ...] = ()
    sheets: tuple[VariedSheet, ...] = ()
    papers: tuple[PageCount, ...] = ()
    print_scale: tuple[float, float] = (0.0, 0.0)  # least, most; 1 = true size
    boards: tuple[BoardRange, ...] = ()

    @property
    def met(self) -> bool:
        """Whether it can be built and every need is met."""
        return not self.why and all(need.met for need in self.needs)

    @property
    def roomy(self) -> bool:
        """Whether it can be built and every need is met with something to spare."""
        return not self.why and all(need.roomy for need in self.needs)


JumpKind = Literal["built", "need", "sheets", "copies", "pages", "tiled"]


@record
class Jump:
    """Where something changes: it is ``before`` up to and with the value ``last``, and ``after`` from ``first`` on.

    ``size`` is the one that runs, ``beside`` the value of the other one. ``subject``: the fact, the sheet, the part on the sheet or
    the paper. Numbers are said as numbers, needs as ``met`` or ``missed``, whether
    it can be built as ``yes`` or ``no``, tiled parts by their letters.
    """

    kind: JumpKind
    subject: str
    size: str
    last: float
    first: float
    before: str
    after: str
    beside: tuple[tuple[str, float], ...] = ()


@record
class Missed:
    """A need that no value of the range meets: the value that comes nearest, and by how much it misses there."""

    fact: str
    kind: Kind
    values: tuple[float, ...]
    short: float


@record
class Saving:
    """What another value of the first size saves beside the size as it stands, with all other sizes as they stand.

    ``value`` is the nearest one that does, ``change`` its difference to the size; ``number`` of sheets, pages or tiled parts less, of
    which ``parts`` are the letters. ``subject``: the sheet or the paper. ``met``: whether every need is met there.
    """

    kind: str  # "tiled", "sheets", "pages"
    subject: str
    value: float
    change: float
    number: int
    parts: tuple[str, ...]
    met: bool


@record
class Sweep:
    """A design at many values. ``whole`` is False when it was stopped: ``rows`` are then those that were finished.

    ``now``: the row at the sizes as they stand; None where they are out of the ranges, or where it was stopped.
    ``best``: of the values that meet every need with something to spare, that with the fewest sheets, then the fewest pages, then
    the one nearest to the size as it stands; None when there is none.
    """

    slug: str
    variant: str
    spans: tuple[SizeSpan, ...]
    rows: tuple[SweepRow, ...]
    jumps: tuple[Jump, ...] = ()
    best: SweepRow | None = None
    missed: tuple[Missed, ...] = ()
    savings: tuple[Saving, ...] = ()
    now: SweepRow | None = None
    whole: bool = True


@record
class KnownCount:
    """A count as it is known at one value of the size that runs: no search of ours finds a better one there."""

    value: float
    count: SheetCount

    @property
    def key(self) -> CountKey:
        """What is counted."""
        return self.count.key

    @property
    def rank(self) -> float:
        """What sorts better counts first: more copies of a part, fewer sheets for a list, and last what fits no sheet."""
        number = self.count.number
        return -number if self.count.part else number or float("inf")


Trait = tuple[str, ...]
"""What may jump: its kind, then what it is about."""

TraitValue = bool | int | str | None


@record
class Looked:
    """A row with what its neighbours may use: the counts there, and the values of all else that may jump."""

    row: SweepRow
    marks: tuple[KnownCount, ...] = ()
    traits: tuple[tuple[Trait, TraitValue], ...] = ()

    def alike(self, other: "Looked") -> bool:
        """Say whether all that may jump is the same at another value."""
        own, others = ({mark.key: mark.count.number for mark in one.marks} for one in (self, other))
        return self.traits == other.traits and own == others


@record
class Refined:
    """What was found between two neighbouring values: jumps, and rows at those that may be the best value."""

    jumps: tuple[Jump, ...]
    rows: tuple[SweepRow, ...]
