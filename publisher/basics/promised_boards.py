"""What was counted and laid out on boards, as promises made before any page: rows of the cut list, ways to buy, layouts with their cuts."""

from typing import Literal

from publisher.basics.pose import Box, Point
from publisher.basics.records import record


@record
class RowPromise:
    """A row of the cut list, made where the part is counted, before any page: proof finds the row in the file.

    ``count`` copies and ``spare`` ones are cut, ``mirrored`` of them as mirror images; ``width`` and ``height`` (mm) are the
    finished piece's over all, as drawn. ``traced_often``: how often its one template is traced, where that is so often that it wants more
    card; 0 elsewhere. The row also names the pages that show the part: those of its ``OutlinePromise``s.
    """

    part: str
    letter: str
    name: str
    board: str
    count: int
    spare: int
    mirrored: int
    width: float
    height: float
    traced_often: int = 0


@record
class BoardPromise:
    """A board to buy, made where the parts were put together: how it is ``called``, its faces (``bare``, ``paper_one`` or ``paper_both``),
    the name under which it is sold, its measured thickness (mm), from which (0: any) to which (inf: any) the design takes."""

    board: str
    called: str
    faces: str
    sold_as: str
    thickness: float
    least: float
    most: float


@record
class SheetsPromise:
    """A way to buy board, made where the list was laid out: so many ``sheets`` of this size hold every part of a board.

    ``spares``: part's letter, how many more copies of it go on beside the list, of one part at a time, and whether more than that may.
    ``offcut``: the sides (mm) of the largest rectangle left, as the sheet lies; None when it is not worth keeping.
    """

    key: str
    board: str
    label: str
    width: float
    height: float
    sheets: int
    spares: tuple[tuple[str, int, bool], ...]
    offcut: tuple[float, float] | None


@record
class TipPromise:
    """How far (mm) the tip of a blade cuts, at least and at most, in board with paper on it (``papered``) or in bare board."""

    papered: bool
    least: float
    most: float


@record
class WorkPromise:
    """What all parts of a list take: mm to cut, mm to score or fold, ``holes`` cut from inside (slots that are closed, windows), mm and
    ``strokes`` of texture, and how many blade tips that is, at least and at most; how far a ``tip`` lasts in each kind of board of the
    list, bare board first."""

    key: str
    cut: float
    score: float
    holes: int
    texture: float
    strokes: int
    blades: tuple[int, int]
    tips: tuple[TipPromise, ...] = ()


@record
class MeasurePromise:
    """A point of a copy to measure out on a board sheet: ``at`` mm to the right of and over the sheet's lower left corner; ``own`` is
    the same point in the part's own coordinates."""

    at: Point
    own: Point


@record
class CutReading:
    """A straight cut as a rule is read for it: its place and its ends in mm, each a whole number of the rule's steps. It stays clear of
    every piece that is laid by measures read on the same rule."""

    at: float
    start: float
    end: float


@record
class CutPromise:
    """A straight cut across what is left of a board sheet, from ``start`` to ``end``: one that runs ``level``, ``at`` mm over the lower
    edge, or an upright one, ``at`` mm from the left edge. Straight sides of so many ``pieces`` lie on it. ``mm`` and ``inches``: as it is
    printed for rules of either kind, once the layout's steps are chosen."""

    level: bool
    at: float
    start: float
    end: float
    pieces: int
    mm: CutReading | None = None
    inches: CutReading | None = None


@record
class PlacePromise:
    """One copy of a part where it was laid on a board sheet: its ``rings`` in mm on the sheet, the first the outside.

    ``turn`` (degrees) and ``mirrored``: how it lies. ``measures``: the points that mark it out, one for a copy that stands upright (the
    lower left corner of its box), two for one that lies askew. ``order``: as which it comes free, from 1.
    """

    part: str
    letter: str
    copy: int
    rings: tuple[tuple[Point, ...], ...]
    turn: float = 0.0
    mirrored: bool = False
    measures: tuple[MeasurePromise, ...] = ()
    order: int = 0


@record
class LayoutPromise:
    """A board sheet as it was laid out, made where it was laid, before any page. The origin is the sheet's lower left corner.

    ``number`` is that of the sheet among ``total``, the first of ``alike`` that are laid out the same. A page that shows it
    tells by a ``Carried`` with its ``key`` where, at which scale, and whether turned. ``cuts``: the straight cuts, in the order in
    which they are made; then each piece along its outline. ``offcut``: the largest rectangle left, None when it is not worth keeping.

    Measures are printed to ``step_mm``, or on a rule that parts an inch into ``parts_of_inch``: laid by what is printed, no copy lies
    over another or over the sheet's edge, and no straight cut runs into one; where pieces lie too close for any rule, by no more
    than a step of the finest.
    """

    key: str
    board: str
    sheet: str
    width: float
    height: float
    number: int
    alike: int
    total: int
    places: tuple[PlacePromise, ...]
    cuts: tuple[CutPromise, ...] = ()
    offcut: Box | None = None
    step_mm: float = 0.1
    parts_of_inch: int = 100

    def key_of(self, what: Literal["caption", "piece", "cut", "offcut"], number: int = 0) -> str:
        """Return the key under which a page carries words of this layout: of the copy or the cut with this number, in their order."""
        return f"{self.key}:{what}:{number}"
