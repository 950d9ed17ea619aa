"""What proof reads out of a file, in mm on the page as a viewer shows it: origin lower left, y upward."""

from dataclasses import field
from itertools import pairwise
from typing import Any, Literal

import numpy as np

from publisher.basics import Box, Finding, record

Array = np.ndarray[Any, np.dtype[Any]]
ARTIFACT = -1  # mark of what is no part of the structure: furniture and ornaments
Matrix = tuple[float, float, float, float, float, float]


@record
class Clip:
    """Where ink may appear: inside ``box`` and inside every ring set of ``shapes`` (rings, even-odd rule or not)."""

    box: Box
    shapes: tuple[tuple[tuple[Array, ...], bool], ...] = ()


@record
class PaintedPath:
    """One painted path: subpaths with Béziers flattened to 0.002 mm.

    ``points`` (N, 2) holds all subpaths one after another, closed ones with their first point repeated; subpath i is
    ``points[starts[i]:starts[i + 1]]``. ``width`` (mm) is the stroke's least width over all
    directions, ``widest`` the greatest; ``grey`` and ``fill_grey`` run from 0 (black) to 1 (white) after transparency, None
    when the path is not stroked, not filled. ``order`` counts what was painted before it on the page. ``knots`` says which points are
    ends of lines, or middles or ends of Béziers; None: all. ``box`` goes round all points: many checks ask for it.
    """

    order: int
    points: Array
    box: Box
    starts: Array
    width: float
    widest: float
    dash: tuple[float, ...]
    grey: float | None
    fill_grey: float | None
    even_odd: bool
    clip: Clip
    visible: bool
    solid_fill: bool = True
    knots: Array | None = None

    def lines(self) -> list[Array]:
        """Return the subpaths."""
        return [self.points[a:b] for a, b in pairwise(self.starts.tolist())]


@record
class TextRun:
    """Letters shown by one operator: text by /ToUnicode, baseline start and end, em in mm, how they are painted.

    ``broken`` counts letters that the font shows as a missing-letter box or that have no meaning in /ToUnicode. ``mark``: number of the
    marked content that it stands in, by which the structure finds it; ``ARTIFACT``; None for neither. ``letters``: for each letter that
    leaves ink, where it begins along the baseline and the box of its ink from there, in em; ``frame`` carries these to mm on the page.
    """

    order: int
    text: str
    x: float
    y: float
    end_x: float
    end_y: float
    size: float
    x_height: float
    font: str
    grey: float
    invisible: bool
    clip: Clip
    visible: bool
    broken: int = 0
    mark: int | None = None
    frame: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    letters: tuple[tuple[float, tuple[float, float, float, float]], ...] = ()


@record
class PlacedImage:
    """A picture: pixels across and down, and the size in mm at which each direction is placed; its corners on the page."""

    order: int
    pixels_across: int
    pixels_down: int
    across: float
    down: float
    corners: tuple[tuple[float, float], ...]
    clip: Clip
    visible: bool
    is_mask: bool = False


@record
class FontRead:
    """A font that a page names: whether its program is embedded, whether its letters have a meaning, and a fault in words."""

    name: str
    embedded: bool
    meaning: bool
    shown: bool
    kind: str


@record
class GlyphRead:
    """A letter that a font of the file shows: its text by /ToUnicode, its width in em, and its outline as ``glyph_shapes`` says it; None
    when the program cannot be read."""

    font: str
    text: str
    width: float
    shape: tuple[float, ...] | None


@record
class LinkRead:
    """A rectangle (mm) of a page that leads to a page of the file; 0: to none that the file has."""

    box: Box
    page: int


@record
class TagRead:
    """An element of the tagged structure: the page that its contents stand on (0: it names none), how deep it stands, its standard type,
    the words in place of a figure, its own words."""

    page: int
    depth: int
    role: str
    alt: str
    text: str


@record
class PageRead:
    """One page as read. ``media`` and ``crop`` are in mm after UserUnit, in the file's own axes; ``width`` × ``height`` is what
    a viewer shows. ``operators`` counts path operators; ``unread`` says in words what the walk could not follow;
    ``other_boxes``: name and box of TrimBox, BleedBox and ArtBox where they are set; ``links``: addresses that it leads to;
    ``inner_links``: those to pages of the file."""

    number: int
    width: float
    height: float
    media: Box
    crop: Box
    rotate: int
    user_unit: float
    pieces: tuple[PaintedPath, ...]
    texts: tuple[TextRun, ...]
    images: tuple[PlacedImage, ...]
    fonts: tuple[FontRead, ...]
    operators: int
    hidden_layers: tuple[str, ...]
    unread: tuple[str, ...]
    links: tuple[str, ...] = ()
    annotations: tuple[str, ...] = ()
    actions: tuple[str, ...] = ()
    other_boxes: tuple[tuple[str, Box], ...] = ()
    inner_links: tuple[LinkRead, ...] = ()


@record
class BookmarkRead:
    """An entry of the outline tree: title, number of the page that it leads to (0: none of this file), depth from 0."""

    title: str
    page: int
    depth: int


@record
class FileRead:
    """A PDF as read. ``trouble`` says in words why it cannot be read at all (then there are no pages).

    ``two_minds``: some dictionary gives one key two values, of which different readers take different ones.
    ``wishes``: in words, what else it asks of print programs; ``labels``: of its pages; ``bookmarks``: in the order of the tree;
    ``glyphs``: each letter of each embedded TrueType font that is shown, once;
    ``attachments``: name and SHA-256 of each attached file; ``tags``: the tagged structure in the order of reading.
    """

    name: str
    trouble: str = ""
    encrypted: bool = False
    pages: tuple[PageRead, ...] = ()
    print_scaling: str = ""
    enforced: tuple[str, ...] = ()
    duplex: str = ""
    pick_tray: bool | None = None
    title: str = ""
    language: str = ""
    actions: tuple[str, ...] = ()
    two_minds: bool = False
    wishes: tuple[str, ...] = ()
    labels: tuple[str, ...] = ()
    bookmarks: tuple[BookmarkRead, ...] = ()
    attachments: tuple[tuple[str, str], ...] = ()
    tags: tuple[TagRead, ...] = ()
    glyphs: tuple[GlyphRead, ...] = ()


@record
class Measured:
    """One reading: what was measured, on which page, what was promised and what was found (mm)."""

    what: str
    page: int
    promised: float
    found: float


@record
class ThingsLooked:
    """What was looked at on a page: by which reader (``operators``: the walk through what the page draws; ``dots``: the page as it is
    drawn), how many things, and how far the farthest was from its promise (mm; None: not a length)."""

    what: str
    reader: Literal["operators", "dots"]
    things: int
    largest: float | None = None


@record
class PageLooked:
    """All that was looked at on one page, numbered from 1."""

    page: int
    looked: tuple[ThingsLooked, ...]


@record
class Proof:
    """What proof says of one file: its findings, its readings, what it could judge and what it could not; ``opened``: whether it
    could read the file at all; ``attached``: the SHA-256 of each file that it carries; ``pages``: what
    was looked at on each."""

    name: str
    findings: tuple[Finding, ...]
    measured: tuple[Measured, ...] = field(default=())
    judged: tuple[str, ...] = ()
    unjudged: tuple[str, ...] = ()
    opened: bool = True
    attached: tuple[str, ...] = ()
    pages: tuple[PageLooked, ...] = ()
