"""What a finished file must show, as numbers in mm on the page. Proof reads the file and compares.

What a buyer acts on is promised by the room that computed it, before any page is made (rows of the cut list, layouts, sides,
sentences, drawings); the page that shows it only says where (``Carried``).

Page numbers run from 1. The origin of a page is its lower left corner, y upward.
"""

from typing import Literal

from publisher.basics.pose import Box, Point, Pose
from publisher.basics.records import record


@record
class PagePromise:
    """A page: its exact size, its label and kind, and the printable limit at whose corners corner marks stand.

    ``limit`` is the rectangle (mm) inside which all ink lies; ``corners`` says whether corner marks are drawn on it. ``task``: what
    the page is printed for, in the words of the print plan; from these proof works out itself which numbers the plan must say.
    ``true_size``: it is of use only when it is printed at 100 %, so that the print list must name it.
    """

    page: int
    width: float
    height: float
    label: str
    kind: str
    limit: Box
    corners: bool
    task: str = ""
    true_size: bool = False


@record
class LengthPromise:
    """A straight line that a buyer may measure: from ``start`` to ``end`` (mm on the page), ``length`` apart.

    ``purpose``: ``calibration`` (a side of the box), ``ruler`` (its base line), ``tick`` (a graduation, from the base line
    outwards; ``label`` is the printed number or empty), ``card``, ``gauge``, ``dimension``. ``label`` is the printed text
    that names the length, such as ``50 mm``; proof looks for it near the line.
    """

    page: int
    start: Point
    end: Point
    length: float
    purpose: Literal["calibration", "ruler", "tick", "card", "gauge", "dimension"]
    label: str = ""


@record
class OutlinePromise:
    """One drawn copy of a part's template on one page.

    ``rings`` are closed rings in the part's own coordinates (mm), the first the outside, the others openings;
    ``pose`` carries them to the page. ``window`` is the rectangle of the page in which they are drawn when the part is
    tiled (what lies outside is on other pages); None when the whole part stands on this page.
    ``row`` and ``column`` (from 1, from the top left) name the tile; 0 when the part is not tiled.
    ``width`` (mm) is that of the stroke.
    """

    page: int
    part: str
    letter: str
    copy: int
    pose: Pose
    rings: tuple[tuple[Point, ...], ...]
    window: Box | None = None
    row: int = 0
    column: int = 0
    width: float = 0.5


@record
class MarkPromise:
    """Lines drawn on one copy of a part that are not cut through: to score, fold, draw or glue along.

    ``lines`` are polylines in mm on the page, as drawn: interrupted where words stand, closed ones with their first point
    repeated. ``width`` and ``dash`` (mm, empty when continuous) say by which stroke a reader knows the ``kind``.
    ``window`` is the rectangle of the page in which they show when the part is tiled.
    """

    page: int
    part: str
    copy: int
    kind: str
    lines: tuple[tuple[Point, ...], ...]
    width: float
    dash: tuple[float, ...] = ()
    window: Box | None = None


@record
class SeamPromise:
    """A match mark printed on two neighbouring tiles of a part: the same ``label`` stands beside it on both pages.

    The mark is a circle of ``radius`` mm with a cross through it; its centre is the same point of the part.
    ``at`` are its centres on the two pages, in mm.
    """

    part: str
    copy: int
    label: str
    pages: tuple[int, int]
    at: tuple[Point, Point]
    radius: float


@record
class CompassPromise:
    """A strip that draws a round part instead of a template: a cross at ``pin`` and, at each radius (mm, the outer one first), a
    circle of ``hole`` mm about a point of ``pencils`` (mm on the page)."""

    page: int
    part: str
    letter: str
    pin: Point
    pencils: tuple[Point, ...]
    radii: tuple[float, ...]
    hole: float


@record
class TextPromise:
    """Words that must be readable on a page, such as a letter or ``cut 14``. ``near`` is their place in mm, if it matters.

    ``part``, ``copy``: they stand inside the outline of that copy on the page, so that the piece keeps them when it is cut out.
    """

    page: int
    text: str
    near: Point | None = None
    within: float = 0.0
    part: str = ""
    copy: int = 0


@record
class CodePromise:
    """The page code: a QR symbol (ISO/IEC 18004) that fills ``box`` and says ``text``.

    ``modules`` are its rows from the top, ``1`` for a dark module and ``0`` for a light one; four light modules more lie all round.
    """

    page: int
    box: Box
    text: str
    modules: tuple[str, ...]


FiducialPlace = Literal["lower left", "lower right", "upper right", "upper left", "bottom", "right", "top", "left"]


@record
class FiducialPromise:
    """A mark from which a photograph or a scan of its page is fitted: black ``lines`` of ``width`` mm, from end to end, ends butt.

    At a corner two lines of ``size`` mm run inwards from ``centre``, where their middle lines meet; ``gap`` is 0. At a side two dashes
    in a row, ``size`` mm over both, leave a gap of ``gap`` mm, whose middle is ``centre``. Nothing else shows in the boxes ``clear``.
    """

    page: int
    place: FiducialPlace
    centre: Point
    size: float
    gap: float
    width: float
    lines: tuple[tuple[Point, Point], ...]
    clear: tuple[Box, ...]


@record
class ClearPromise:
    """A box (mm) in which nothing shows: beside a line that a ``card`` or a ``ruler`` is laid along, so that its edge is seen."""

    page: int
    kind: Literal["card", "ruler"]
    box: Box


@record
class FurniturePromise:
    """A box (mm) of what a page carries whatever it shows: ``header``, ``footer``, ``code`` with its light modules.

    Everything on the page lies wholly inside such a box or wholly outside all of them: cover the boxes, and what is left is the
    page's ink.
    """

    page: int
    kind: Literal["header", "footer", "code"]
    box: Box


@record
class RowPromise:
    """A row of the cut list, made where the part is counted, before any page: proof finds the row in the file.

    ``count`` copies and ``spare`` ones are cut, ``mirrored`` of them as mirror images; ``width`` and ``height`` (mm) are the
    finished piece's over all, as drawn. The row also names the pages that show the part: those of its ``OutlinePromise``s.
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


@record
class WordPromise:
    """What a template says at a place of a part: the letter of a join, the angle of a bevel; ``at`` in the part's own coordinates."""

    text: str
    at: Point
    kind: Literal["letter", "bevel"]


@record
class PrintPromise:
    """What every print of a piece must show, made where the parts are put together, before any page.

    ``rings`` are those of its template in its own coordinates (mm), the first the outside, without openings in which others are nested.
    ``words``: what its edges and seats are marked with. ``names``: all other words at its places. ``lengths``: widths and depths (mm)
    of what is folded or slit, and those by which a cut piece is checked; ``angles`` (degrees) of bevels and folds.
    """

    part: str
    letter: str
    board: str
    thickness: float
    rings: tuple[tuple[Point, ...], ...]
    words: tuple[WordPromise, ...] = ()
    names: tuple[str, ...] = ()
    lengths: tuple[float, ...] = ()
    angles: tuple[float, ...] = ()


@record
class FigurePromise:
    """A number that the tool's own words may say on any page, made by the room that worked it out, before any page.

    ``value`` is in mm, grams or a plain number by ``kind``; a ``share`` is of 1. ``name`` says what it is, for messages.
    """

    name: str
    value: float
    kind: Literal["length", "mass", "count", "share"]


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
class WorkPromise:
    """What all parts of a list take: mm to cut, mm to score or fold, ``holes`` cut from inside (slots that are closed, windows), mm and
    ``strokes`` of texture, and how many blade tips that is, at least and at most."""

    key: str
    cut: float
    score: float
    holes: int
    texture: float
    strokes: int
    blades: tuple[int, int]


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


@record
class SidePromise:
    """What the print of a part must say of its sides, made where the parts are put together, before any page.

    ``mirrored``: of the print that is the mirror image. ``face``: which face of the finished piece the upper side is, in an
    assembly of panels; ``climbs`` for a layer whose arrow tells; ``either`` for a piece of which each face may be
    up: its print says nothing of sides; '' where it has no name. ``flip``: the template may be turned
    over. ``top``: the part stands wherever it is used, so that its upper edge is named.
    """

    key: str
    part: str
    letter: str
    mirrored: bool
    face: Literal["", "outside", "inside", "climbs", "either"]
    flip: bool
    top: bool


@record
class NumberPromise:
    """A number in a sentence: what the spec asks for there, its value in mm, degrees, mm², g or plain, and how it is printed."""

    expression: str
    value: float
    kind: str
    text: str


@record
class SentencePromise:
    """A text of the spec with its blanks filled, made where the facts were worked out, before any page.

    ``key`` says which: ``summary``, ``step:3:title``, ``step:3:say``. ``numbers``: those that stand in the blanks, in order.
    """

    key: str
    text: str
    numbers: tuple[NumberPromise, ...]


@record
class DrawingPromise:
    """The picture of a step, made where it was drawn, before any page: ``drawing`` names it, ``lines`` are in mm of the piece.

    ``lines`` are those that make the picture what it is; ``fine`` ones, texture and what lies behind, may be thinned out on a
    full page. ``labels``: words and their points. Of a photograph only ``width`` and ``height`` are known, in pixels.
    """

    key: str
    drawing: str
    width: float
    height: float
    lines: tuple[tuple[Point, ...], ...] = ()
    fine: tuple[tuple[Point, ...], ...] = ()
    labels: tuple[tuple[str, Point], ...] = ()


@record
class Carried:
    """Where a page shows what another room promised under ``key``: points of the promise times ``scale`` are carried by ``pose``.

    ``box`` (mm on the page) is what the thing takes there; ``copy`` of a part, where its words differ from copy to copy.
    """

    key: str
    page: int
    box: Box
    pose: Pose = Pose()
    scale: float = 1.0
    copy: int = 0


@record
class DrawnPromise:
    """One thing that a page draws, in the order in which they are painted: what a page module placed, before a file is written.

    ``words``: ``text`` from its baseline's start, ``first``. ``lines`` and ``area``: ``count`` lines, so many of them ``closed``, in
    ``box`` (without the width of strokes); ``first`` and ``last`` are the means of their starts and ends (of closed ones the start).
    ``width`` and ``dash`` (mm) of lines, ``grey`` from 0 (black). ``picture``: its ``box``. ``clip``: shown inside this box only.
    """

    page: int
    kind: Literal["words", "lines", "area", "picture"]
    first: Point
    box: Box | None = None
    last: Point = (0.0, 0.0)
    count: int = 1
    closed: int = 0
    width: float = 0.0
    dash: tuple[float, ...] = ()
    grey: float = 0.0
    text: str = ""
    clip: Box | None = None


@record
class AttachmentPromise:
    """A file attached to the PDF: its name, and the SHA-256 of its bytes in small hexadecimal letters."""

    name: str
    sha256: str


@record
class BookmarkPromise:
    """An entry of the outline tree: its title, the page that it leads to, and how deep it stands; 0 is the top."""

    title: str
    page: int
    depth: int


@record
class LinkPromise:
    """A rectangle (mm) of a page that leads a reader on a screen to the page ``to``."""

    page: int
    box: Box
    to: int


@record
class TagPromise:
    """An element of the tagged structure (ISO 32000-1, 14.8) under its page, in the order of reading.

    ``depth`` 0 stands right under the page; ``role`` is a standard type; ``alt``: words in the place of a figure; ``text``: its own
    words, those of elements under it aside.
    """

    page: int
    depth: int
    role: str
    alt: str
    text: str


@record
class Promises:
    """All that one finished PDF must show. ``given``: names and words as the designer wrote them, numbers in them included."""

    title: str
    language: str
    pages: tuple[PagePromise, ...]
    lengths: tuple[LengthPromise, ...]
    outlines: tuple[OutlinePromise, ...]
    seams: tuple[SeamPromise, ...]
    texts: tuple[TextPromise, ...]
    codes: tuple[CodePromise, ...]
    attachments: tuple[AttachmentPromise, ...] = ()
    marks: tuple[MarkPromise, ...] = ()
    furniture: tuple[FurniturePromise, ...] = ()
    rows: tuple[RowPromise, ...] = ()
    sheets: tuple[SheetsPromise, ...] = ()
    work: WorkPromise | None = None
    layouts: tuple[LayoutPromise, ...] = ()
    sides: tuple[SidePromise, ...] = ()
    sentences: tuple[SentencePromise, ...] = ()
    drawings: tuple[DrawingPromise, ...] = ()
    carried: tuple[Carried, ...] = ()
    compasses: tuple[CompassPromise, ...] = ()
    drawn: tuple[DrawnPromise, ...] = ()
    bookmarks: tuple[BookmarkPromise, ...] = ()
    fiducials: tuple[FiducialPromise, ...] = ()
    clear: tuple[ClearPromise, ...] = ()
    links: tuple[LinkPromise, ...] = ()
    tags: tuple[TagPromise, ...] = ()
    prints: tuple[PrintPromise, ...] = ()
    figures: tuple[FigurePromise, ...] = ()
    given: tuple[str, ...] = ()
