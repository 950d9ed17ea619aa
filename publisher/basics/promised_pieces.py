"""What rooms before the pages worked out of pieces, steps and pictures, promised before any page; and where a page carries one."""

from typing import Literal

from publisher.basics.file_promise import PieceLine
from publisher.basics.pose import Box, Point, Pose
from publisher.basics.records import record


@record
class HolePromise:
    """A hole of a piece that is measured out: ``left`` and ``up`` mm from the piece's lower left corner to the hole's, or to the middle
    of a ``round`` one; ``width`` and ``height`` of it, the diameter of a round one."""

    left: float
    up: float
    width: float
    height: float
    round: bool


@record
class EdgePromise:
    """What is cut at a side of a piece that is measured out: the ``bevel`` in degrees from square, positive when the face underneath is
    shorter; the ``rabbet``: how wide (mm) foam is cut away behind the paper."""

    side: Literal["bottom", "right", "top", "left"]
    bevel: float
    rabbet: float


@record
class SizesPromise:
    """A piece that is shown by its sizes, without a template, made where pieces are cut, before any page: all mm of the finished piece.

    ``holes`` are numbered from 1 in their order. ``lines`` to draw right across it: whether level, and how far from the lower or the
    left side. A page that shows it tells by a ``Carried`` with its ``key`` where the words about it stand.
    """

    key: str
    part: str
    letter: str
    width: float
    height: float
    holes: tuple[HolePromise, ...] = ()
    lines: tuple[tuple[bool, float], ...] = ()
    edges: tuple[EdgePromise, ...] = ()


@record
class WordPromise:
    """What a template says at a place of a part: the letter of a join, the angle of a bevel; ``at`` in the part's own coordinates."""

    text: str
    at: Point
    kind: Literal["letter", "bevel"]


@record
class BendPromise:
    """What is done to a piece before it is bent: which face is ``covered`` with what, which is slit (``slit``) how deep (mm)."""

    covering: Literal["", "paper", "tape"]
    covered: Literal["", "inside", "outside"]
    slit: Literal["", "inside", "outside"]
    depth: float


@record
class PrintPromise:
    """What every print of a piece must show, made where the parts are put together, before any page.

    ``rings`` are those of its template in its own coordinates (mm), the first the outside, without openings in which others are nested.
    ``words``: what its edges and seats are marked with. ``names``: all other words at its places. ``lengths``: widths and depths (mm)
    of what is folded or slit, and those by which a cut piece is checked; ``angles`` (degrees) of bevels and folds.
    Where half a template is drawn, ``rings`` are the half's, ``whole`` those of both, and ``mirror`` is the line between them. ``lines``:
    all that is drawn, scored, folded or glued along inside it; ``strips``: where foam goes from behind, which is hatched as openings are.
    ``traced``: it is a template, drawn round with a pencil. ``bend``: what is done to it before it is bent; None where it is not.
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
    whole: tuple[tuple[Point, ...], ...] = ()
    mirror: tuple[Point, Point] | None = None
    lines: tuple[PieceLine, ...] = ()
    strips: tuple[tuple[Point, ...], ...] = ()
    traced: bool = False
    bend: BendPromise | None = None


@record
class FigurePromise:
    """A number that the tool's own words may say on any page, made by the room that worked it out, before any page.

    ``value`` is in mm, grams or a plain number by ``kind``; a ``share`` is of 1. ``name`` says what it is, for messages.
    """

    name: str
    value: float
    kind: Literal["length", "mass", "count", "share"]


@record
class SidePromise:
    """What the print of a part must say of its sides, made where the parts are put together, before any page.

    ``mirrored``: of the print that is the mirror image. ``face``: which face of the finished piece the upper side is, in an
    assembly of panels; ``climbs`` for a layer whose arrow tells; ``either`` for a piece of which each face may be
    up: its print says nothing of sides; '' where it has no name. ``flip``: the template may be turned
    over. ``top``: the part stands wherever it is used, so that its upper edge is named. ``alike``: either of its faces may be
    its outside. ``outer``: its outside looks out of the piece wherever it is used.
    """

    key: str
    part: str
    letter: str
    mirrored: bool
    face: Literal["", "outside", "inside", "climbs", "either"]
    flip: bool
    top: bool
    alike: bool = False
    outer: bool = False


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
    ``instead``: where pages show all that is promised under these keys, this one may be missing; so may one that takes ``room`` (mm of
    height) where the page of the summary has less free; 0: it never may.
    """

    key: str
    text: str
    numbers: tuple[NumberPromise, ...]
    instead: tuple[str, ...] = ()
    room: float = 0.0


@record
class DrawingPromise:
    """The picture of a step, made where it was drawn, before any page: ``drawing`` names it, ``lines`` are in mm of the piece.

    ``lines`` are those that make the picture what it is; ``fine`` ones, texture and what lies behind, may be thinned out on a
    full page. ``labels``: words and their points. Of a photograph only ``width`` and ``height`` are known, in pixels. ``instead``,
    ``room``: where it may be missing, as with a sentence. ``among``: other things stand in its box and may hide some of each line.
    ``heads``: the three corners of each head of an arrow. ``kinds``: how many of the ``fine`` lines are of each kind, in their order: none
    of these may be thinned out whole.
    """

    key: str
    drawing: str
    width: float
    height: float
    lines: tuple[tuple[Point, ...], ...] = ()
    fine: tuple[tuple[Point, ...], ...] = ()
    labels: tuple[tuple[str, Point], ...] = ()
    instead: tuple[str, ...] = ()
    room: float = 0.0
    among: bool = False
    heads: tuple[tuple[Point, ...], ...] = ()
    kinds: tuple[int, ...] = ()


@record
class DonePromise:
    """What a step does to a part and its sketch must show, worked out before any page: how many copies it takes in hand (``count``; 0
    where only its words say), the ``rings`` of the finished piece in its own coordinates (mm), so many signs that something is ``right``
    and that it is ``wrong``.

    A sketch shows the part where a ``Carried`` with its ``key`` says, at that scale; ``box`` is the whole sketch.
    """

    key: str
    act: str
    letter: str
    count: int
    rings: tuple[tuple[Point, ...], ...]
    right: int = 0
    wrong: int = 0


@record
class SaidPromise:
    """What the sketch of an act says beside its parts, worked out before any page: each of the ``texts`` stands in it, and each of
    those that are ``listed``, of which a sketch may leave the last ones out for a "…"; what is said ``over`` its parts is said of all of
    them. ``dark``: what is painted dark is black in it.

    A sketch shows it where a ``Carried`` with its ``key`` says. ``carded``: it is said of the templates of these parts, and not where a
    compass strip or a rule draws all of them.
    """

    key: str
    texts: tuple[str, ...] = ()
    listed: tuple[str, ...] = ()
    carded: tuple[str, ...] = ()
    over: str = ""
    dark: bool = False


@record
class NeededPromise:
    """What a step takes in hand, worked out before any page: the ``parts`` by their letters, each with how many copies; 0 where only the
    step's words say. A page lists them where a ``Carried`` with the ``key`` says. ``uses``: keys of the tools and materials that the
    step names: it sends to what is to be read before they are used."""

    key: str
    parts: tuple[tuple[str, int], ...]
    uses: tuple[str, ...] = ()


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
