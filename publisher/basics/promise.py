"""What a finished file must show, as numbers in mm on the page. Proof reads the file and compares.

What a buyer acts on is promised by the room that computed it, before any page is made (rows of the cut list, layouts, sides,
sentences, drawings); the page that shows it only says where (``Carried``).

Page numbers run from 1. The origin of a page is its lower left corner, y upward.
"""

from typing import Literal

from publisher.basics.promised_boards import BoardPromise, LayoutPromise, RowPromise, SheetsPromise, WorkPromise
from publisher.basics.promised_lines import CompassPromise, LengthPromise, MarkPromise, OutlinePromise, SeamPromise
from publisher.basics.promised_pages import (
    AttachmentPromise,
    BookmarkPromise,
    ClearPromise,
    CodePromise,
    DrawnPromise,
    FiducialPromise,
    FontPromise,
    FurniturePromise,
    LinkPromise,
    PagePromise,
    PaperPromise,
    TagPromise,
    TextPromise,
)
from publisher.basics.promised_pieces import (
    Carried,
    DonePromise,
    DrawingPromise,
    FigurePromise,
    NeededPromise,
    PrintPromise,
    SaidPromise,
    SentencePromise,
    SidePromise,
    SizesPromise,
)
from publisher.basics.records import record

FileKind = Literal["pack", "test_page", "phone", "shop"]
"""What a PDF is for: the whole pack, a page to try printer and board with before anybody buys it, the instructions for a phone, or pages
of which a shop shows pictures."""


@record
class Promises:
    """All that one finished PDF must show. ``given``: names and words as the designer wrote them, numbers in them included.
    ``paper``: what it is printed on; None for what is looked at on a screen. ``used``: keys of the tools and materials that the design
    and its steps name. ``purpose``: what the file is for; of the small ones that are given beside a pack less is asked."""

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
    sizes: tuple[SizesPromise, ...] = ()
    given: tuple[str, ...] = ()
    purpose: FileKind = "pack"
    fonts: tuple[FontPromise, ...] = ()
    boards: tuple[BoardPromise, ...] = ()
    paper: PaperPromise | None = None
    done: tuple[DonePromise, ...] = ()
    said: tuple[SaidPromise, ...] = ()
    needed: tuple[NeededPromise, ...] = ()
    used: tuple[str, ...] = ()
