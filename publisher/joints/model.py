"""How parts go together: layers, placed panels, facts, meetings, line drawings. Millimetres and degrees."""

from math import inf
from typing import Literal

from publisher.basics import (
    BoardPromise,
    DonePromise,
    DrawingPromise,
    FigurePromise,
    Finding,
    NeededPromise,
    Place,
    Point,
    Pose,
    PrintPromise,
    SaidPromise,
    SentencePromise,
    SidePromise,
    SizesPromise,
    record,
)
from publisher.design import Fact, ShopBoard

Difficulty = Literal["easy", "moderate", "demanding"]

EASY_PIECES, EASY_OPENINGS = 40, 8
HARD_PIECES, HARD_OPENINGS, HARD_BEVELS = 100, 40, 8

# common practice, no source: of an adult who has cut foam once or twice; docs/printing.md states the rule
MINUTES = {
    "once": 80.0,  # print check and coupon 20, sealing and paint 60
    "kinds": 10.0,  # a template to stick on card and to cut out
    "pieces": 3.0,  # tracing and cutting an outline
    "openings": 3.0,  # four plunge cuts each
    "bevels": 5.0,
    "slits": 1.0,
    "strokes": 0.05,  # of a texture that is pressed in: three seconds each
    "joints": 5.0,
}
SLOWER = 1.5
"""A careful first build takes so much longer than a practised one."""

Vector = tuple[float, float, float]

Manner = Literal["laid", "put", "bent", "folded"]
"""How something is added to what stands."""

SpaceMatrix = tuple[float, float, float, float, float, float, float, float, float, float, float, float]


@record
class StackLayer:
    """One layer of a stack: its part, its pose in plan, the height of its underside, its section, its number from 1."""

    part: str
    pose: Pose
    bottom: float
    thickness: float
    section: str
    number: int


@record
class Placed:
    """A panel placed in space. ``matrix`` is 3 × 4, row by row: it carries (x, y, z, 1) of the part to the assembly;
    the part's drawn face is z = 0 and its inside face z = -thickness; the assembly's z is up and the table z = 0."""

    place: str
    part: str
    matrix: SpaceMatrix


@record
class Meeting:
    """A printed size that meets something that does not shrink with the paper.

    ``printed`` is the finished size in mm; ``grown`` is what the template is drawn larger (mm, below zero when it is drawn
    smaller), which the pencil takes back at any print scale: twice the trace allowance for an opening, minus twice for an
    outline. So at the print scale s the cut size is ``s * (printed + grown) - grown``, and the design works while that is at
    least ``unprinted_least`` and, where ``loosest`` is given, at most ``loosest`` (mm).

    ``what`` says it in words: ``slot of part C for the tab of part B``. ``kind``: ``slot`` for board that goes into a slot,
    ``level`` for board that lies level with what is printed, ``seam`` for a strip round a tube, ``fit`` for a thing that goes
    into a room, ``need`` for what a need asks. ``place`` is where the spec makes the two meet.

    Where board is in what it meets, ``board`` names it, and ``boards`` says how many thicknesses of it (below zero: board takes
    from it): ``unprinted_least`` is reckoned for its thickest, ``thickness + spread`` mm, ``loosest`` for its thinnest.

    ``opening``: the opening whose size it is, where no play is written down that makes it.

    ``untraced``: the parts on whose templates lines of it stand without an allowance, and how many lines: a pencil makes an
    opening narrower by its width on each, and an outline, which counts below zero, wider.

    ``between``: of two printed sizes it is what the one leaves of the other, board and all.

    ``unsure``: boards of which nobody knows how often their thickness is in it: it holds for board as the spec says, and no more is
    said.
    """

    name: str
    part: str
    what: str
    printed: float
    unprinted_least: float
    loosest: float | None = None
    grown: float = 0.0
    kind: Literal["slot", "level", "seam", "fit", "need"] = "need"
    place: Place | None = None
    board: str = ""
    thickness: float = 0.0
    spread: float = 0.0
    boards: float = 0.0
    untraced: tuple[tuple[str, float], ...] = ()
    opening: str = ""
    between: bool = False
    unsure: tuple[str, ...] = ()

    def cut_at(self, scale: float) -> float:
        """Return the size (mm) that is cut from a sheet printed at this scale (1 = true size)."""
        return scale * (self.printed + self.grown) - self.grown

    def takes_board(self) -> tuple[float, float]:
        """Return the least and the greatest thickness (mm) of its board with which it holds at true size."""
        if not self.boards:
            return 0.0, inf
        thick = self.thickness + (self.spread if self.boards > 0.0 else -self.spread)
        thin = 2.0 * self.thickness - thick
        tight = thick + (self.printed - self.unprinted_least) / self.boards
        loose = None if self.loosest is None else thin + (self.printed - self.loosest) / self.boards
        if self.boards > 0.0:
            return 0.0 if loose is None else loose, tight
        return tight, inf if loose is None else loose

    def scale_for(self, size: float) -> float:
        """Return the print scale at which the cut size would be ``size`` (mm); inf when nothing is printed."""
        drawn = self.printed + self.grown
        return (size + self.grown) / drawn if drawn > 0.0 else inf


@record
class BoardRange:
    """The thicknesses (mm) that a board may have so that every meeting with it holds at true size: from ``least`` (0: any
    thinner) to ``most`` (inf: any thicker); ``least_by`` and ``most_by`` name the meetings that bind, '' for none.

    ``sold_as`` is a name, ``shop`` what is known of boards of that name; ``thickness`` and ``spread`` as the spec says.
    """

    board: str
    sold_as: str
    shop: ShopBoard | None
    thickness: float
    spread: float
    least: float
    most: float
    least_by: str = ""
    most_by: str = ""


@record
class ScaleBudget:
    """The print scales that a design allows on each axis (1 = true size).

    ``least`` and ``most`` lie within the general band of ±0.5 %; ``least_by`` and ``most_by`` name the meeting that binds
    (``Meeting.name``), '' when the general band does. ``fits_least`` and ``fits_most`` are what the meetings alone allow,
    (0, inf) without any, with the names of those that bind: true size may lie outside it when something does not fit at all.
    """

    least: float
    most: float
    least_by: str = ""
    most_by: str = ""
    fits_least: float = 0.0
    fits_most: float = inf
    fits_least_by: str = ""
    fits_most_by: str = ""


@record
class DrawnLine:
    """A visible line of a drawing: ``weight`` is ``outline`` (silhouettes and part edges), ``detail`` (marks, arcs' facets
    left out), ``ghost`` (what lies below, shown on purpose) or ``cue`` (line-up marks, arrows)."""

    weight: str
    points: tuple[Point, ...]


@record
class DrawingLabel:
    """Words at a point of a drawing (a part's letter, a matching letter)."""

    text: str
    at: Point


@record
class Drawing:
    """A line drawing in mm of the piece (not of the page), lower left at (0, 0); hidden lines are not in it.

    ``name``: ``whole:ASSEMBLY``, ``exploded:ASSEMBLY``, ``plan:ASSEMBLY:LAYER`` or ``part:PART``. ``alt`` says in a sentence what it shows.
    """

    name: str
    alt: str
    lines: tuple[DrawnLine, ...]
    labels: tuple[DrawingLabel, ...]
    width: float
    height: float


@record
class Labour:
    """What a builder does, counted over all copies, spares among them: ``kinds`` of pieces, ``pieces``, closed ``openings`` (slots,
    windows, holes), ``bevels`` (edges), ``bends`` (bent pieces) and their ``slits``, ``strokes`` of textures, and ``joints``:
    meetings of two pieces that are glued."""

    kinds: int
    pieces: int
    openings: int
    bevels: int
    bends: int
    slits: int
    strokes: int
    joints: int

    @property
    def difficulty(self) -> Difficulty:
        """``easy`` with up to 40 pieces and 8 closed openings, no bevel and no bend; ``demanding`` with a bend, or more than 100
        pieces, 40 openings or 8 bevels; else ``moderate``."""
        if self.bends or self.pieces > HARD_PIECES or self.openings > HARD_OPENINGS or self.bevels > HARD_BEVELS:
            return "demanding"
        if self.bevels or self.pieces > EASY_PIECES or self.openings > EASY_OPENINGS:
            return "moderate"
        return "easy"

    @property
    def hours(self) -> tuple[int, int]:
        """Hours of work that a practised and a careful first builder need, the drying of glue and paint not counted."""
        minutes = MINUTES["once"] + sum(rate * getattr(self, what) for what, rate in MINUTES.items() if what != "once")
        least = max(1, round(minutes / 60.0))
        return least, max(least + 1, round(SLOWER * minutes / 60.0))


@record
class Addition:
    """One act of building: what is added to what stands of one assembly, all at their final places in it.

    ``step``, and ``number`` in it, count from 1. ``before`` and ``added`` name movers of the assembly (``movers_of``): places of
    panels, ``layer_1`` and ``brace_1`` of a stack, things of a whole. ``times``: how many of the assembly are built so. ``part``:
    of which all that is added are copies; '' where they differ, and for things.

    ``how``: ``laid`` is the first of its assembly, which lies or stands on the table; ``put`` goes in by the straight moves
    ``ways`` (unit vectors, the way it travels, one after another: the last brings it to its place; () where none was found);
    braces under steps each have their own, and these are those of the first; ``bent`` is bent as it is put; ``folded`` hangs on
    what stands by a fold. ``together``: all of it was joined before and travels as one; else each goes in by itself, and
    ``one_on_another`` each layer upon the last, ``turn`` degrees
    (anticlockwise from above) further. ``trial``: it is put up dry and taken apart again.
    """

    step: int
    number: int
    assembly: str
    times: int
    before: tuple[str, ...]
    added: tuple[str, ...]
    part: str
    how: Manner
    ways: tuple[Vector, ...]
    together: bool = False
    one_on_another: bool = False
    turn: float = 0.0
    trial: bool = False

    @property
    def way(self) -> Vector | None:
        """The way it travels to its place at last; None where it is laid, folded, or no way was found."""
        return self.ways[-1] if self.ways else None


@record
class EndsAt:
    """What a step glues together at square edges: pieces of ``part`` end at the inside face of pieces of ``at``, at the match letters
    ``marks``; () where that is so wherever the two meet."""

    step: int
    part: str
    at: str
    marks: tuple[str, ...] = ()


@record
class InLine:
    """What a step glues together edge to edge in one plane: a piece of ``part`` and one of ``other``, at the match letters ``marks``."""

    step: int
    part: str
    other: str
    marks: tuple[str, ...] = ()


@record
class ReachesOver:
    """What a step lays on: the rim of ``part`` lies ``far`` mm beyond the outsides of pieces of ``wall``; below zero: before them."""

    step: int
    part: str
    wall: str
    far: float


@record
class ReachesEnds:
    """What a step lays on walls that run one way alone: the rim of ``part`` lies ``far`` mm beyond either end of pieces of ``wall``."""

    step: int
    part: str
    wall: str
    far: float


@record
class LevelAt:
    """What a step glues together edge to edge over the length of the shorter one: pieces of ``parts`` are level at this end, at the match
    letters ``marks``; () where that is so wherever they meet."""

    step: int
    parts: tuple[str, ...]
    end: Literal["foot", "top"]
    marks: tuple[str, ...] = ()


@record
class LaidSo:
    """What a step lays on a layer: a layer of ``part`` so that its letter ``mark`` lies over that of the layer of ``on``."""

    step: int
    part: str
    on: str
    mark: str


@record
class PutInto:
    """What a step puts into openings until its end lies level with the other face: pieces of ``part`` into ``host``; where that is
    ``lined``, a round one, the outside face in line with the lines beside each."""

    step: int
    part: str
    host: str
    lined: bool = False


@record
class Joined:
    """All that joints says about one design. ``sides``, ``sentences`` and ``pictures`` are what the pages must show."""

    layers: tuple[tuple[str, tuple[StackLayer, ...]], ...]  # per stack assembly, all its sections from the table up
    placed: tuple[tuple[str, tuple[Placed, ...]], ...]  # per panel assembly
    facts: tuple[Fact, ...]
    meetings: tuple[Meeting, ...]
    drawings: tuple[Drawing, ...]
    findings: tuple[Finding, ...]
    budget: ScaleBudget = ScaleBudget(0.995, 1.005)  # frozen
    sides: tuple[SidePromise, ...] = ()
    sentences: tuple[SentencePromise, ...] = ()
    pictures: tuple[DrawingPromise, ...] = ()
    boards: tuple[BoardRange, ...] = ()
    effort: Labour | None = None  # None until its pieces were counted
    additions: tuple[Addition, ...] = ()  # of the building, where steps say what they add
    prints: tuple[PrintPromise, ...] = ()
    figures: tuple[FigurePromise, ...] = ()
    sizes: tuple[SizesPromise, ...] = ()  # of pieces without a template
    bought: tuple[BoardPromise, ...] = ()
    done: tuple[DonePromise, ...] = ()
    needed: tuple[NeededPromise, ...] = ()
    said: tuple[SaidPromise, ...] = ()  # by sketches
    ends: tuple[EndsAt, ...] = ()  # by steps
    lines: tuple[InLine, ...] = ()
    reaches: tuple[ReachesOver, ...] = ()
    past_ends: tuple[ReachesEnds, ...] = ()
    levels: tuple[LevelAt, ...] = ()
    laid: tuple[LaidSo, ...] = ()
    put_into: tuple[PutInto, ...] = ()
    glued: tuple[tuple[str, int], ...] = ()  # per panel assembly how many pairs of its pieces are glued to each other
    seamed: tuple[tuple[str, int], ...] = ()  # per split part how many of the pieces and plates of one copy are

    def fact(self, name: str) -> Fact | None:
        """Return the fact with this name, or None."""
        return next((f for f in self.facts if f.name == name), None)

    def added(self, step: int, part: str) -> int:
        """Return how many copies of a part a step, from 1, puts in their places."""
        own = (act for act in self.additions if (act.step, act.part) == (step, part))
        return sum(act.times * len(act.added) for act in own)

    def meeting(self, name: str) -> Meeting | None:
        """Return the meeting with this name, or None."""
        return next((m for m in self.meetings if m.name == name), None)

    def drawing(self, name: str) -> Drawing | None:
        """Return the drawing with this name, or None."""
        return next((d for d in self.drawings if d.name == name), None)
