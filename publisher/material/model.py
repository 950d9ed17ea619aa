"""Parts laid out on board sheets. Millimetres; a sheet's origin is its lower left corner."""

from typing import Literal

from publisher.basics import Box, Finding, LayoutPromise, Point, Pose, RowPromise, SheetsPromise, WorkPromise, record
from publisher.design import SheetSize

KnownAs = Literal["best possible at right angles", "at most one more at right angles", "area bound only"]


@record
class Piece:
    """A polygon to lay out, in its own coordinates (mm): outside ring, holes. ``angles``: allowed turns in degrees;
    () allows any turn.

    ``mirrored`` of the ``count`` copies are laid as mirror images (the pose mirrors first, then turns).
    """

    id: str
    rings: tuple[tuple[Point, ...], ...]
    angles: tuple[float, ...]
    count: int = 1
    mirrored: int = 0


@record
class Item:
    """One copy on a sheet: ``pose`` carries the part's own coordinates to the sheet."""

    part: str
    copy: int
    pose: Pose


@record
class Layout:
    """A verified layout of one sheet. ``key`` names the problem it solves (hash of outlines, sheet, gap, angles).

    ``made_with``: this program and the libraries of its engines, with the versions that found it; "" where that was not kept.
    """

    key: str
    board: str
    sheet: SheetSize
    items: tuple[Item, ...]
    engine: str
    seed: int
    made_with: str = ""


@record
class Ease:
    """How easily a layout is marked out and cut: copies that lie askew; different measures to set, across and up, over all sheets;
    the area (mm²) of the largest offcut of its emptiest sheet; and the straight cuts that several copies share."""

    askew: int = 0
    measures: int = 0
    offcut: float = 0.0
    shared: int = 0

    @property
    def order(self) -> tuple[float, ...]:
        """What sorts the easier one first."""
        return (self.askew, self.measures, -self.shared, -self.offcut)

    @property
    def density(self) -> tuple[float, ...]:
        """What sorts first the one that leaves more in one piece."""
        return (-self.offcut, self.askew, self.measures)


@record
class YieldRow:
    """One part alone on one sheet size: how many a careful layout gives, and how many a grid of bounding boxes.

    ``most``: more than this nobody can lay: at right angles when ``square`` (the part is a rectangle), else by area alone.
    """

    part: str
    careful: int
    grid: int
    layout: Layout
    most: int = 0
    square: bool = False
    ease: Ease = Ease()

    @property
    def known_as(self) -> KnownAs:
        """Say how good the layout is known to be."""
        if not self.square or self.most > self.careful + 1:
            return "area bound only"
        return "best possible at right angles" if self.careful >= self.most else "at most one more at right angles"


@record
class Spare:
    """Copies of one part that go on the sheets of the whole list beside all the others, free of charge: at least
    ``len(items)``; ``capped`` when the search stopped at its limit. ``sheets``: their places, on each sheet of the list."""

    part: str
    key: str
    sheets: tuple[tuple[Item, ...], ...]
    capped: bool

    @property
    def copies(self) -> int:
        """How many copies go on free."""
        return sum(map(len, self.sheets))


@record
class Yield:
    """One board on one sheet size: each part alone; the whole list's sheets; the least number of sheets by area.

    ``offcut_share`` is 1 - area of the parts / area of the sheets used; ``cut_length`` in mm is all outlines and openings of
    all copies laid, ``cut_lengths`` those of each sheet; ``score_length`` their marks to score or fold. ``pieces`` counts the
    copies laid, spares that the designer asked for included; ``spares`` are copies that would go on beside them.
    ``offcuts``: the largest upright rectangle that each sheet leaves (None when it is not worth keeping). ``left_out`` names
    the parts that fit no sheet of this size: they are in none of the numbers, and their rows say 0. ``fresh`` counts the
    layouts made in this run (the others were stored beside the spec, and only verified).
    """

    board: str
    sheet: SheetSize
    rows: tuple[YieldRow, ...]
    sheets: tuple[Layout, ...]
    grid_sheets: int  # sheets that a grid of bounding boxes would need for the whole list
    bound: int
    offcut_share: float
    cut_length: float
    score_length: float
    left_out: tuple[str, ...] = ()
    fresh: int = 0
    cut_lengths: tuple[float, ...] = ()
    spares: tuple[Spare, ...] = ()
    offcuts: tuple[Box | None, ...] = ()
    ease: Ease = Ease()

    @property
    def pieces(self) -> int:
        """How many copies are laid on all sheets."""
        return sum(len(layout.items) for layout in self.sheets)


@record
class CutRow:
    """One line of the cut list. ``width`` and ``height`` are the finished piece's overall size in mm, as drawn;
    ``cut_length`` is the outline and openings of all its copies (count + spare), in mm."""

    part: str
    letter: str
    name: str
    board: str
    count: int
    spare: int
    mirrored: int
    width: float
    height: float
    cut_length: float
    tracings: int = 0  # how often its template is traced; 0 when every copy has its own print
    sturdy: bool = False  # more than MOST_TRACINGS times: the template wants thick card, and a spare


@record
class BoardNeeds:
    """What to buy and how to lay it out. ``promises``: what the printed cut list must say, from the parts themselves; ``ways`` to buy
    board, and the ``work``: what the page of what to buy must say; ``layouts``: what the pictures of sheets must show."""

    cut_list: tuple[CutRow, ...]
    yields: tuple[Yield, ...]
    findings: tuple[Finding, ...]
    promises: tuple[RowPromise, ...] = ()
    layouts: tuple[LayoutPromise, ...] = ()
    ways: tuple[SheetsPromise, ...] = ()
    work: WorkPromise | None = None
