"""A page before it has a number: what the makers of pages hand to ``compose``, and what they get.

Every maker is a function ``…_drafts(context: Context) -> tuple[PageDraft, ...]`` that stands in the
table ``PAGES`` of ``compose``. A draft's
``body`` is called when all pages are numbered, so that a page may name any other.
"""

from collections.abc import Callable
from dataclasses import field, fields, replace

from publisher.basics import (
    Carried,
    ClearPromise,
    CodePromise,
    CompassPromise,
    FiducialPromise,
    FileKind,
    Finding,
    FurniturePromise,
    LengthPromise,
    MarkPromise,
    OutlinePromise,
    SeamPromise,
    SidePromise,
    TextPromise,
    record,
)
from publisher.design import Design, Fact, TextPlan
from publisher.geometry import Part
from publisher.joints import Joined, to_take
from publisher.material import BoardNeeds
from publisher.pages.model import Drawn, Paper, ShownPage, Tile
from publisher.pages.sheet.board_words import drawn_for
from publisher.pages.sheet.editions import Edition, edition_called
from publisher.pages.sheet.frame import Frame
from publisher.pages.sheet.paper_table import read_on
from publisher.pages.type import Setter


@record
class Body:
    """What stands on one page, with the promises about it (mm; the page's number is already in each promise)."""

    drawn: tuple[Drawn, ...] = ()
    tiles: tuple[Tile, ...] = ()
    lengths: tuple[LengthPromise, ...] = ()
    outlines: tuple[OutlinePromise, ...] = ()
    seams: tuple[SeamPromise, ...] = ()
    texts: tuple[TextPromise, ...] = ()
    codes: tuple[CodePromise, ...] = ()
    findings: tuple[Finding, ...] = ()
    marks: tuple[MarkPromise, ...] = ()
    furniture: tuple[FurniturePromise, ...] = ()
    carried: tuple[Carried, ...] = ()
    compasses: tuple[CompassPromise, ...] = ()
    fiducials: tuple[FiducialPromise, ...] = ()
    clear: tuple[ClearPromise, ...] = ()

    def __add__(self, other: "Body") -> "Body":
        """Return both together, this one drawn first."""
        return Body(*(getattr(self, own.name) + getattr(other, own.name) for own in fields(Body)))


@record
class TruePage:
    """What a page that must print true shows: its number and size (mm), the letters of its parts, the outlines on it, the sides of a
    square to be measured; ``corner``: the side (mm) of the square in its corner, 0 without one; ``compasses``: its compass strips."""

    page: int
    width: float
    height: float
    letters: tuple[str, ...]
    outlines: tuple[OutlinePromise, ...]
    squares: tuple[LengthPromise, ...]
    corner: float = 0.0
    compasses: tuple[CompassPromise, ...] = ()


@record
class Numbers:
    """The page numbers of a pack as one page sees them: its own, how many there are, and where things are.

    ``names_others`` is set once it was asked where another page is: what the page says then depends on how the pack is numbered.
    """

    page: int
    total: int
    keys: tuple[tuple[str, int], ...]  # draft key -> page
    kinds: tuple[tuple[str, int, int], ...]  # kind of page -> first, last
    parts: tuple[tuple[str, int], ...]  # part id -> page of a template or tile, in order of pages
    plan: tuple[tuple[str, int, int], ...] = ()  # print plan: task -> first, last
    true: tuple[int, ...] = ()  # pages that must print true
    shown: tuple[TruePage, ...] = ()  # these pages, once they are drawn: not while they are
    _asked: list[str] = field(default_factory=list, init=False, repr=False, compare=False)

    @property
    def names_others(self) -> bool:
        """Whether it was asked for the number of another page."""
        return bool(self._asked)

    def unnumbered(self) -> "Numbers":
        """Return the same pages, each with the number 0."""
        return Numbers(
            0,
            0,
            tuple((key, 0) for key, _ in self.keys),
            tuple((kind, 0, 0) for kind, _, _ in self.kinds),
            tuple((part, 0) for part, _ in self.parts),
            tuple((task, 0, 0) for task, _, _ in self.plan),
            tuple(0 for _ in self.true),
            tuple(replace(page, page=0) for page in self.shown),
        )

    def print_plan(self) -> tuple[tuple[str, int, int], ...]:
        """Return the print plan: tasks with their first and last pages."""
        self._asked.append("plan")
        return self.plan

    def true_pages(self) -> tuple[int, ...]:
        """Return the numbers of the pages that must print true."""
        self._asked.append("true")
        return self.true

    def previews(self) -> tuple[TruePage, ...]:
        """Return what the pages that must print true show; () for such a page itself."""
        self._asked.append("previews")
        return self.shown

    def page_of(self, key: str) -> int | None:
        """Return the page of the draft with this key; None when there is none."""
        self._asked.append(key)
        return next((page for name, page in self.keys if name == key), None)

    def range_of(self, kind: str) -> tuple[int, int] | None:
        """Return the first and last page of a kind; None when the pack has no such page."""
        self._asked.append(kind)
        return next(((first, last) for name, first, last in self.kinds if name == kind), None)

    def pages_of_part(self, part: str) -> tuple[int, ...]:
        """Return the pages that show a template or tile of the part."""
        self._asked.append(part)
        return tuple(page for name, page in self.parts if name == part)


@record
class PageDraft:
    """A page to be: ``key`` is its own name (``templates:2``), ``title`` stands in its header.

    ``bookmarks``: (title, depth, key) entries that lead here, depth 1 or more (``compose`` writes the depth 0 entry of each kind
    of page), ``key`` that of what the page carries under this title, "" for the page as a whole. ``parts``: ids of the parts whose
    templates or tiles stand on it. ``task``: what the print plan calls the pages
    of this stretch (``templates``, ``tiles of part D``); drafts with the same task follow each other.
    """

    kind: str
    key: str
    title: str
    frame: Frame
    body: Callable[[Numbers], Body]
    task: str
    bookmarks: tuple[tuple[str, int, str], ...] = ()
    parts: tuple[str, ...] = ()
    findings: tuple[Finding, ...] = ()


@record
class Context:
    """All that a maker of pages may look at. ``purpose``: what the pages are for; ``acts``: key and title of those of the pack that a
    phone copy goes with, ``shown``: its pages, for the pictures of a shop."""

    design: Design
    parts: tuple[Part, ...]
    joined: Joined
    needs: BoardNeeds
    paper: Paper
    type: Setter
    trial: str = ""  # what is tried, in words; "" for the sizes as written
    purpose: FileKind = "pack"
    acts: tuple[tuple[str, str], ...] = ()
    shown: tuple[ShownPage, ...] = ()
    _ids: dict[str, Part] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Index the parts."""
        object.__setattr__(self, "_ids", {p.id: p for p in self.parts})

    @property
    def facts(self) -> tuple[Fact, ...]:
        """All facts of the design."""
        return self.joined.facts

    @property
    def templates(self) -> tuple[Part, ...]:
        """The parts that have templates: all but those that are measured out."""
        return tuple(part for part in self.parts if part.printed != "sizes")

    @property
    def measured(self) -> tuple[Part, ...]:
        """The parts without a template, which are measured out on the board."""
        return tuple(part for part in self.parts if part.printed == "sizes")

    @property
    def boards(self) -> str:
        """The boards that the pack is drawn for, in words."""
        return drawn_for(self.design.boards, self.parts, self.paper.first)

    @property
    def edition(self) -> Edition:
        """The edition of the paper: words of there, and its sheets on sale."""
        return edition_called(self.paper.edition)

    @property
    def read_on(self) -> Paper:
        """The paper of pages that are only read: another one where this is a sheet for plans."""
        return read_on(self.paper)

    def part(self, part_id: str) -> Part | None:
        """Return the part with this id; None when it could not be drawn."""
        return self._ids.get(part_id)

    def side(self, part: Part, mirrored: bool) -> SidePromise:
        """Return what the print of a part must say of its sides. Raises StopIteration when nobody has worked that out."""
        return next(side for side in self.joined.sides if side.part == part.id and side.mirrored == mirrored)

    def to_take(self, part_id: str) -> tuple[Part, ...]:
        """Return what a step takes in hand when it names a part: itself, its pieces and plates, or the piece that it is folded in."""
        return to_take(self, part_id)

    def copies(self, part: Part) -> int:
        """Return how many copies the buyer cuts, spares among them."""
        return part.count + part.spare

    def say(self, text: TextPlan | None) -> str:
        """Return a text of the spec with its blanks filled (what is wrong with it is found once, by ``compose``)."""
        from publisher.design import fill

        said = fill(text, self.design, self.facts, self.paper.first)[0] if text is not None else ""
        return said if self.type.tongue is None else self.type.tongue.keep(said)
