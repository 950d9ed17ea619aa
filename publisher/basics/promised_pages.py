"""What pages carry, as promises: size and label, words, codes, marks of position, furniture, links, tags, and each thing that is painted.

Millimetres on the page; page numbers run from 1, the origin of a page is its lower left corner, y upward.
"""

from typing import Literal

from publisher.basics.pose import Box, Point
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
class PaperPromise:
    """The paper that was asked for, by its name in small letters. ``width``, ``height`` and ``margins`` (mm: left, bottom, right, top) are
    the designer's own words of it; 0 and None where it is known by its name alone."""

    name: str
    width: float = 0.0
    height: float = 0.0
    margins: tuple[float, float, float, float] | None = None


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
class DrawnPromise:
    """One thing that a page draws, in the order in which they are painted: what a page module placed, before a file is written.

    ``words``: ``text`` from its baseline's start, ``first``. ``lines`` and ``area``: ``count`` lines, so many of them ``closed``, in
    ``box`` (without the width of strokes); ``first`` and ``last`` are the means of their starts and ends (of closed ones the start);
    ``points`` of their knots are summed up in ``weighed``, each times ``weight_of`` its place, so that none moves without the sum.
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
    points: int = 0
    weighed: Point = (0.0, 0.0)


WEIGHTS = 997  # a prime: no row of like lines repeats with it


def weight_of(place: int) -> float:
    """Return the weight of a knot by its place among all knots of a path, from 0: 1 to 2 or -1 to -2, as if by chance.

    Knots are the ends of straight lines, and of an arc the points of ``Arc.knots``; of a closed line its first is not repeated. As
    weights are of both signs, what numbers lose where they are written adds up to nothing.
    """
    spread = (place % WEIGHTS + 1) * 0.6180339887498949 % 1.0  # the golden section: an even spread without a period
    return (1.0 + spread) * (-1.0 if (place % WEIGHTS + 1) * 0.4142135623730951 % 1.0 < 0.5 else 1.0)


@record
class AttachmentPromise:
    """A file attached to the PDF: its name, and the SHA-256 of its bytes in small hexadecimal letters."""

    name: str
    sha256: str


@record
class FontPromise:
    """A font that the pack is set in: its name, and the TrueType program from which letters are taken."""

    name: str
    program: bytes


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
