"""Pages as placed strokes, words and pictures in mm; origin at the page's lower left, y upward."""

from typing import Literal

from publisher.basics import Box, FileKind, Finding, Layer, Path, Pose, Promises, record
from publisher.basics.wording import LengthUnit


@record
class LineStyle:
    """How a line looks: width in mm, dash lengths in mm (on, off, …; () = solid), grey (0 = black), round caps or butt."""

    name: str
    width: float
    dash: tuple[float, ...] = ()
    grey: float = 0.0
    round_ends: bool = False


@record
class Stroke:
    """Lines of one style, written as one path object. ``clip``: draw only inside this box. ``tag`` names the structure element; that of
    a figure may add what it shows in words, after a colon."""

    style: LineStyle
    paths: tuple[Path, ...]
    layer: Layer
    clip: Box | None = None
    tag: str = ""


@record
class Fill:
    """Areas filled with a grey (0 = black, 1 = white), even-odd. For arrow heads, code modules, small symbols: never large black."""

    grey: float
    paths: tuple[Path, ...]
    layer: Layer
    clip: Box | None = None
    tag: str = ""


@record
class Words:
    """One line of words, placed by its baseline start. ``size`` is the em in mm; ``turn`` in degrees anticlockwise.

    ``tag``: structure element it belongs to (h1, h2, p, lbl, li, td, th, figure, artifact); ``grey`` 0 = black. ``goes_on``: in the
    paragraph of the words drawn before it. ``cell``: its row and column in a table; headings are row -1.
    """

    text: str
    font: str  # name of a FontFile of the pack
    size: float
    x: float
    y: float
    layer: Layer
    turn: float = 0.0
    grey: float = 0.0
    tag: str = "p"
    goes_on: bool = False
    cell: tuple[int, int] | None = None


@record
class Picture:
    """A photograph in a box. ``image`` names a PackImage; ``alt`` is its text for readers who cannot see it."""

    image: str
    box: Box
    alt: str
    layer: Layer


@record
class Link:
    """A rectangle that leads to another page of the pack (numbered from 1)."""

    box: Box
    page: int


Drawn = Stroke | Fill | Words | Picture | Link
Role = Literal["H1", "H2", "P", "L", "LI", "Lbl", "LBody", "Table", "TR", "TH", "TD", "Figure"]
"""Standard structure types (ISO 32000-1, 14.8.4) that pages have."""


@record
class StructureElement:
    """A structure element of a page: the things in it, by their places in ``drawn``, or the elements under it; ``alt``: words in the
    place of a figure."""

    role: Role
    things: tuple[int, ...] = ()
    kids: tuple["StructureElement", ...] = ()
    alt: str = ""


@record
class Tile:
    """A part, or the piece of it that this page shows: as in the promise, kept for the page table."""

    part: str
    copy: int
    row: int
    column: int
    window: Box | None
    pose: Pose


@record
class Page:
    """One finished page. ``kind``: what stands on it, as the table ``PAGES`` of ``compose`` names it.

    ``structure``: what its things are, in the order of reading; those in no element are furniture. ``ink``: SHA-256 of what it shows
    outside its furniture, numbers of pages aside; ``text``: its lines of words there, in the order in which they are drawn.
    """

    number: int
    label: str
    kind: str
    title: str
    width: float
    height: float
    drawn: tuple[Drawn, ...]
    tiles: tuple[Tile, ...] = ()
    ink: str = ""
    text: tuple[str, ...] = ()
    structure: tuple[StructureElement, ...] = ()


@record
class FontFile:
    """A TrueType font to embed as a subset."""

    name: str
    data: bytes


@record
class PackImage:
    """A picture's bytes as the designer gave them."""

    name: str
    data: bytes


@record
class ShownPage:
    """A page of the pack as a picture, for pages that show it small: its size in mm."""

    image: PackImage
    width: float
    height: float


@record
class Bookmark:
    """An entry of the outline tree; ``depth`` 0 is the top. ``top``: height in mm on its page that a viewer should show at the top
    of its window; None for the page as a whole."""

    title: str
    page: int
    depth: int = 0
    top: float | None = None


@record
class Attachment:
    """A file attached to the PDF."""

    name: str
    description: str
    mime: str
    data: bytes


@record
class Paper:
    """A paper: name in small letters, size upright in mm, printable limit as margins for upright pages, source of the size, the
    unit that stands first on its pages, and the edition that sets it: inches where the paper is a North American one."""

    name: str
    title: str
    width: float
    height: float
    margins: tuple[float, float, float, float]  # left, bottom, right, top
    source: str
    first: LengthUnit = "mm"
    edition: str = "international"


@record
class Pack:
    """A pack for one paper, or one of the small files that are given beside it (``purpose``), ready to be written.

    ``title``: of the file, with the boards that it is drawn for and what is tried. ``id``: eight hexadecimal digits of the digest that
    names it; ``trial``: sizes were given with the command, so that they are not those of the spec; ``print_plan``: (task, first
    page, last page); ``acts``: key and title of what the pack itself says before the designer's first step, in order.
    """

    id: str
    trial: bool
    slug: str
    version: str
    variant: str
    title: str
    designer: str
    licence: str
    summary: str
    language: str
    paper: Paper
    pages: tuple[Page, ...]
    bookmarks: tuple[Bookmark, ...]
    print_plan: tuple[tuple[str, int, int], ...]
    fonts: tuple[FontFile, ...]
    images: tuple[PackImage, ...]
    attachments: tuple[Attachment, ...]
    promises: Promises
    findings: tuple[Finding, ...]
    purpose: FileKind = "pack"
    acts: tuple[tuple[str, str], ...] = ()
