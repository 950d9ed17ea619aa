"""What the designer's values mean: sizes worked out, parts, assemblies, steps as plans. Millimetres and degrees."""

from typing import Literal

from publisher.basics import Finding, Place, Point, record
from publisher.basics.wording import Rounds
from publisher.brief import SpecFile
from publisher.design.records.combinations import CombineStep, Family, Parameter
from publisher.design.records.edges import EdgeTreatment
from publisher.design.records.faces import FaceSeat
from publisher.design.records.folds import FoldPlan
from publisher.design.records.meetings import BracePlan, FitPlan, MeetPlan
from publisher.design.records.seams import SplitPlan
from publisher.design.records.texts import MaterialPlan, PaperWish, PicturePlan, StepPlan, TextPlan
from publisher.design.records.wholes import WholePlan

Kind = Literal["length", "angle", "count", "number", "ratio", "area", "mass", "force"]


@record
class Quantity:
    """A value by itself: mm, degrees, mm², grams, newtons or plain by ``kind``."""

    value: float
    kind: Kind


@record
class Size:
    """A named size: its value (mm, degrees or plain), its kind, and the expression it came from."""

    name: str
    value: float
    kind: Kind
    expression: str
    place: Place


@record
class Fact:
    """Something that follows from the design, such as ``stair.height``. ``value`` is mm, degrees, mm², grams, newtons or plain
    by ``kind``; ``math.inf`` means open: nothing limits it (a tread with no layer over it). ``rounds``: how its figure is
    rounded, down for what is promised (a base that stands), up for what must be found room for."""

    name: str
    value: float
    kind: Kind
    place: Place | None = None
    rounds: Rounds = "nearest"


@record
class Figure:
    """The figure that the piece is built for: width of its base (mm), its mass (g), and whether that is ``assumed`` by its
    base and not said by the designer."""

    base: float = 25.0
    mass: float = 30.0
    assumed: bool = True


@record
class SheetSize:
    """A sheet as sold: ``label`` as the designer wrote it (``20 x 30 in``), width and height in mm."""

    label: str
    width: float
    height: float


@record
class ShopBoard:
    """A name under which boards are sold, and between which thicknesses (mm) boards of that name lie."""

    name: str
    least: float
    most: float


@record
class Board:
    """A board: measured thickness and its spread (± mm), faces, sheets on sale, knife gap, crushed edge margin, grain.

    ``faces``: ``bare``, ``paper_one`` or ``paper_both``. ``grain``: ``none``, ``along`` or ``across`` the sheet's first side.
    """

    id: str
    thickness: float
    spread: float
    faces: str
    sheets: tuple[SheetSize, ...]
    knife_gap: float
    edge_margin: float
    grain: str
    place: Place
    bending_strength: float | None = None  # MPa; None: not measured
    areal_mass: float | None = None  # g/m²; None: by the stated assumption
    paper: float = 0.0  # mm on one face; 0: not said
    squeeze: float = 0.0  # mm that the board gives when it is pushed into a slot
    sold_as: str = ""  # the name under which it is sold, which is no measure; '': not said
    shop: ShopBoard | None = None  # what is known of boards of that name; None: nothing
    also: tuple[ShopBoard, ...] = ()  # what is known of other names that the spec gives it
    material: str = "foam"  # foam, card or paper
    stiffness: float | None = None  # MPa, modulus of elasticity in bending; None: not measured
    prefer: str = "ease"  # or density: which of two layouts as full is taken
    peeled: bool = False  # sold with paper, which is taken off


@record
class OpeningPlan:
    """A door, window or slit. Parameters as written and worked out: head, width, height, centre, sill, rise, …"""

    name: str
    kind: str
    parameters: tuple[Parameter, ...]
    place: Place


@record
class SurfacePlan:
    """A pattern to draw on a part's face."""

    pattern: str
    parameters: tuple[Parameter, ...]
    seed: int
    place: Place
    how: str = ""  # pressed or drawn, '' if unsaid


@record
class DrawingPlan:
    """A part whose outline comes from an SVG of the folder. ``lines``: kind of line -> ids, as (kind, ids) pairs.

    ``width``, ``height``: what the outline must measure (mm) after all is made ``scale`` times as large, both ways.
    """

    file: str
    id: str
    width: float | None
    height: float | None
    lines: tuple[tuple[str, tuple[str, ...]], ...]
    place: Place
    scale: float = 1.0


Printed = Literal["whole", "half", "sizes"]
"""How a pack shows a part: as a whole template, as half of one that is flipped over, or without one, as a drawing with its sizes."""


@record
class PartPlan:
    """A part to draw. ``count`` is what the assemblies (or the spec) need, ``spare`` copies come on top.

    ``shape`` is empty when ``drawing`` gives the outline. ``turning``: ``any``, ``half``, ``quarter`` or ``none``: how the
    part may be turned on a sheet. ``mirrored``: copies (of ``count``) that are needed as mirror images.
    """

    id: str
    letter: str
    name: str
    board: str
    thickness: float
    shape: str
    parameters: tuple[Parameter, ...]
    openings: tuple[OpeningPlan, ...]
    surface: SurfacePlan | None
    drawing: DrawingPlan | None
    treatments: tuple[EdgeTreatment, ...]
    count: int
    spare: int
    mirrored: int
    turning: str
    trace_allowance: float  # mm; 0 for use: paste
    place: Place
    family: Family | None = None  # for a part that is one layer of several
    combine: tuple[CombineStep, ...] = ()  # done to the shape before openings and joins
    splits: tuple[SplitPlan, ...] = ()  # seams at which it is cut in pieces, for boards that are too short
    printed: Printed = "whole"


@record
class StackRow:
    """``count`` copies of a part, one on another; each is turned by ``turn`` degrees and shifted against the one below.

    Its origin lies over the origin of the layer below, and it is turned about it; ``centred``: its middle lies over the
    middle of the layer below, and over it lies what comes next. The lowest layer of all has none below it and lies as it
    is drawn.
    """

    part: str
    count: int
    turn: float
    shift: tuple[float, float]
    place: Place
    centred: bool = False


@record
class StackPlan:
    """A stack from the table up. ``on`` names the stack that it stands on ('' = the table); ``loose``: not glued there.

    ``turn``: how far the whole of it is turned against the layer that it stands on, on top of its lowest row's own turn.
    """

    name: str  # assembly, or assembly_section for a section
    rows: tuple[StackRow, ...]
    on: str
    turn: float
    loose: bool
    place: Place
    brace: BracePlan | None = None
    sheets: int = 0  # of different batches, from which its layers come in turn; 0: all from one


@record
class EdgeRef:
    """``place.edge`` of a panel assembly; a place alone, its edge '', for a panel that lies on the table."""

    panel: str
    edge: str

    def __str__(self) -> str:
        """Print as the spec writes it."""
        return f"{self.panel}.{self.edge}" if self.edge else self.panel


@record
class PanelPlace:
    """A place in an assembly and the part that stands there."""

    name: str
    part: str
    place: Place


Joint = Literal["butt", "rabbet", "mitre", "fold", "tab_and_slot", "cross_lap"]


@record
class Join:
    """Two edges that meet at the inside angle ``corner`` (degrees).

    Geometry of every join: the **nominal** edge of b (on b's nominal face) lies on a's joint line, the line parallel to a's
    nominal edge at ``inset`` (0 = the edge itself) on a's nominal face; b is turned so that the inside faces make ``corner``.
    For ``butt``, ``through`` is the place that runs through. For ``tab_and_slot``, ``tabs_on`` is the place with the tabs;
    a is then always the slotted panel (design swaps a and b if written the other way round). For ``rabbet``, ``through`` is the
    place with the rabbet, which is a. A ``fold`` lies as a mitre does, of one piece of board.
    ``unsaid``: the corner of a mitre is not written; it is 90, or what the bevels of both shapes ask for.
    ``flush``: where edges of unequal length meet over the shorter one's, the place on whose template an end of its edge is
    named, and that end: bottom, top, left or right; the others' ends lie apart there. None: they meet over their whole length.
    For ``cross_lap``, a's slot is open above and b's below, with their middles ``at`` mm
    from the left ends of the two edges; the panels cross at right angles there.
    """

    a: EdgeRef
    b: EdgeRef
    joint: Joint
    corner: float
    through: str
    tabs_on: str
    tabs: int
    inset: float
    play: float
    loosest: float | None  # mm of play that still holds in the thinnest board; None: joints work it out
    match: str  # the letter printed on both edges; empty where every part that meets there fits any place
    place: Place
    at: tuple[float, float] | None = None
    unsaid: bool = False
    flush: tuple[str, str] | None = None


@record
class Rest:
    """``panel`` lies with its inside face on the given edges (a roof on the slopes of its gables).

    ``cut_to_slope``: those of them that are bevelled so that the panel lies on their whole width, as the top of a wall under
    a lean-to roof; their stated height is that of their outside face. ``at``: how far (mm) it is moved from where it lies by
    itself, across and up its template. ``loose``: it lifts off, and is not glued there.
    """

    panel: str
    on: tuple[EdgeRef, ...]
    place: Place
    cut_to_slope: tuple[EdgeRef, ...] = ()
    at: Point = (0.0, 0.0)
    loose: bool = False


@record
class Lining:
    """The bent part at ``panel`` lies with its outside along curved edges (a soffit under the arches of a bridge)."""

    panel: str
    along: tuple[EdgeRef, ...]
    place: Place


@record
class PanelPlan:
    """Panels joined at their edges. ``stands_on`` is the edge that stands on the table, or the panel that lies there."""

    name: str
    places: tuple[PanelPlace, ...]
    stands_on: EdgeRef
    joins: tuple[Join, ...]
    rests: tuple[Rest, ...]
    place: Place
    seats: tuple[FaceSeat, ...] = ()  # panels on faces of others
    linings: tuple[Lining, ...] = ()  # bent parts along curved edges


@record
class NeedPlan:
    """A limit on a fact, and the size that may be changed to meet it ('' if none)."""

    fact: str
    at_least: float | None
    at_most: float | None
    kind: Kind
    adjust: str
    place: Place
    over: Literal["measured", "spread"] = "measured"  # whether it binds over the whole spread of board


@record
class Design:
    """One variant of a design, worked out. ``variant`` is '' for the sizes as written."""

    slug: str
    variant: str
    variant_title: str
    title: str
    version: str
    designer: str
    licence: str
    summary: TextPlan
    language: str
    use: Literal["trace", "paste"]
    sizes: tuple[Size, ...]
    boards: tuple[Board, ...]
    parts: tuple[PartPlan, ...]
    stacks: tuple[StackPlan, ...]
    panels: tuple[PanelPlan, ...]
    needs: tuple[NeedPlan, ...]
    tools: tuple[str, ...]
    materials: tuple[MaterialPlan, ...]
    steps: tuple[StepPlan, ...]
    papers: tuple[PaperWish, ...]
    fonts: tuple[str, ...]  # names of SpecFiles of kind font, in the order to try
    files: tuple[SpecFile, ...]
    findings: tuple[Finding, ...]
    cover: PicturePlan | None = None  # what the cover shows; the whole piece if unsaid
    photos: tuple[PicturePlan, ...] = ()  # of the finished piece, for a shop
    meets: tuple[MeetPlan, ...] = ()  # sizes at which the design meets other packs
    folds: tuple[FoldPlan, ...] = ()  # parts that are cut as one piece of board
    fits: tuple[FitPlan, ...] = ()  # things that go into rooms of parts
    wholes: tuple[WholePlan, ...] = ()  # assemblies that stand on each other
    figure: Figure = Figure()  # the heaviest that stands on the piece
    handled: bool = False  # hands press and lean on it: what they may press is judged too

    def board(self, board_id: str) -> Board:
        """Return the board with this id. Raises StopIteration when there is none (design never lets that pass)."""
        return next(b for b in self.boards if b.id == board_id)

    def file(self, name: str) -> SpecFile | None:
        """Return the file that the spec names ``name``."""
        return next((f for f in self.files if f.name == name), None)
