"""Parts at true size. Millimetres and degrees, y upward, seen on the drawn (outside) face."""

from dataclasses import field, replace
from math import dist
from typing import Literal

from publisher.basics import LineKind, Path, Place, Point, Pose, Purpose, record
from publisher.design import Printed, Rabbet


@record
class Region:
    """An outside path, anticlockwise, and the paths of its holes, clockwise; all closed."""

    outer: Path
    holes: tuple[Path, ...] = ()

    @property
    def paths(self) -> tuple[Path, ...]:
        """The outside, then the holes."""
        return (self.outer, *self.holes)

    def placed(self, pose: Pose) -> "Region":
        """Return the region carried by a pose; its paths keep the material on their left."""
        outer, *holes = (path.reversed() if pose.mirrored else path for path in self.paths)
        return Region(outer.placed(pose), tuple(hole.placed(pose) for hole in holes))


@record
class Mark:
    """A line to draw, score or fold on a part, or a reference. Not part of the outline."""

    kind: LineKind
    purpose: Purpose
    path: Path  # of no length where only words stand
    name: str = ""
    text: str = ""  # printed beside the path's first point, if not empty

    def placed(self, pose: Pose) -> "Mark":
        """Return the mark carried by a pose."""
        return replace(self, path=self.path.placed(pose))


@record
class Opening:
    """A hole with a meaning. ``ring`` is one of the outline's holes; width, height, sill in mm; centre along the bottom edge."""

    name: str
    kind: str
    ring: Path
    width: float
    height: float
    sill: float
    centre: float


@record
class Lap:
    """An open slot in which another panel crosses this one, ``at`` mm from its edge's left end: the middle of its ``floor``
    half way into the panel, the panel's nominal ``height`` there and the slot's width, in mm; the letters of its joins."""

    at: float
    floor: Point
    height: float
    width: float
    matches: tuple[str, ...]


@record
class Edge:
    """A named edge of the outside ring, in the ring's direction (anticlockwise seen on the drawn face).

    ``start``, ``end``: where the edge runs on the finished piece, without tabs. ``nominal_start``, ``nominal_end``: where the
    stated size puts it, before take-offs and bevels; joins meet on nominal edges. ``face``: the face on which the nominal
    edge lies (``outside``, or ``inside``: the inside face is ``thickness`` behind the drawn one). ``bevel``: degrees from
    square, positive when the inside face is shorter; ``shaped``: the one that the shape itself asks for, 0 for none.
    ``laps``: where other panels cross it. ``rabbet``: how far the foam is cut away behind the paper. ``centre`` and
    ``radius`` for an arc edge. ``joined``: other panels meet it, be it with a match letter or without.
    """

    name: str
    start: Point
    end: Point
    nominal_start: Point
    nominal_end: Point
    face: Literal["outside", "inside"] = "outside"
    bevel: float = 0.0
    matches: tuple[str, ...] = ()
    centre: Point | None = None
    radius: float = 0.0
    laps: tuple[Lap, ...] = ()
    rabbet: Rabbet | None = None
    shaped: float = 0.0
    joined: bool = False

    @property
    def nominal_length(self) -> float:
        """Length in mm of the nominal edge (straight edges)."""
        return dist(self.nominal_start, self.nominal_end)


Kept = Literal["outside", "inside", "middle"]


@record
class BendStretch:
    """A stretch of a flat strip, from ``start`` to ``end`` (mm along x), and the radius of the middle of its board when it is
    bent; its inside face is the hollow one."""

    start: float
    end: float
    radius: float
    fold: float = 0.0  # degrees by which the strip is folded to its inside where this stretch begins


@record
class BentForm:
    """How a flat part is bent about upright lines. ``keeps``: the face that keeps its length; ``slit_depth`` (mm) and ``slits``
    of the other one, 0 where it is bent whole; ``covered``: what is glued over the whole face that stays. ``tightest``: the radius
    of the middle of its board where that is not the least of its stretches: of a cone, which has none."""

    bends: tuple[BendStretch, ...]
    keeps: Kept
    slit_depth: float
    slits: int
    covered: str
    tightest: float = 0.0

    @property
    def radius(self) -> float:
        """Radius (mm) of the middle of the board where it bends most."""
        return self.tightest or min(bend.radius for bend in self.bends)


@record
class Fold:
    """A V-groove of a piece that is folded: the inside angle ``corner`` (degrees) and the groove's ``width`` (mm) inside."""

    corner: float
    width: float


@record
class DrawnFor:
    """A size of a shape that is drawn for a thing which does not shrink with the paper, in mm on the finished piece.

    ``slot``: ``size`` is the width of open slots for a crossing board ``thing`` mm thick. ``seam``: ``size`` is the strip's
    length once round a tube ``thing`` mm in diameter, whose two ends meet.
    """

    kind: Literal["slot", "seam"]
    size: float
    thing: float


@record
class LaidSeam:
    """A seam of a split part as it lies on it: its line; the plate behind it, None for none, and where the plate's lower left
    corner lies (mm, in the part's own coordinates); ``upright``: whether the seam runs along y."""

    line: tuple[Point, ...]
    plate: "Part | None"
    at: Point
    upright: bool


@record
class HalfTemplate:
    """Of a part whose template is drawn by half: the ``whole`` one, and the ``line`` (mm) along which the half is flipped over."""

    whole: Region
    line: tuple[Point, Point]


@record
class Part:
    """A part at true size.

    ``outline`` is the finished piece (openings, tabs, slots and notches cut out); ``template`` is what is drawn and proved:
    the outline with the trace allowance (equal to the outline when there is none). ``copies`` = count + spare is what the
    buyer cuts; ``mirrored`` of them are mirror images.
    """

    id: str
    letter: str
    name: str
    board: str
    thickness: float
    shape: str
    outline: Region
    template: Region
    openings: tuple[Opening, ...]
    marks: tuple[Mark, ...]
    edges: tuple[Edge, ...]
    count: int
    spare: int
    mirrored: int
    turning: str
    trace_allowance: float
    place: Place
    whole: str = ""  # for a piece or plate of a split part: the id of that part
    folded: tuple[str, ...] = ()  # for parts that are cut as one piece: their ids
    folds: tuple[Fold, ...] = ()  # the different grooves of such a piece
    bending: BentForm | None = None  # for a part that is bent
    drawn_for: tuple[
        DrawnFor, ...
    ] = ()  # what its shape itself meets: board in a rib's slots, the tube that it goes round
    seams: tuple[LaidSeam, ...] = ()  # where it is split, for who puts it together (``with_seams``)
    printed: Printed = "whole"  # how the pack shows it
    half: HalfTemplate | None = None  # where ``template`` is half of one

    def edge(self, name: str) -> Edge | None:
        """Return the edge with this name, or None."""
        return next((e for e in self.edges if e.name == name), None)


@record
class ParameterInfo:
    """A parameter as registered once: feeds the schema, the messages, the docs.

    ``kind``: length, angle, count, number or choice; ``default`` None means that the designer must give it (numbers in mm,
    degrees or plain, words for a choice). ``least`` and ``most`` are the allowed range (None = no bound). ``example`` is a
    sensible value for the docs and their picture, where the default is none or not telling.
    """

    name: str
    kind: Literal["length", "angle", "count", "number", "choice"]
    meaning: str
    default: float | str | None = None
    least: float | None = None
    most: float | None = None
    choices: tuple[str, ...] = ()
    example: float | str | None = None


@record
class ShapeInfo:
    """A shape as registered: one-line meaning, parameters, named edges, whether it takes openings and joins.

    ``least_feature``, of a surface pattern: the least distance in mm between two of its lines that is still drawn.
    ``layered``: one entry of the spec stands for several layers, and a drawing may give their outline. ``origin``: where its
    point (0, 0) lies, in words, about which it is turned in a stack; ``axis``: that is an axis, and so its middle.
    """

    name: str
    meaning: str
    parameters: tuple[ParameterInfo, ...]
    edges: tuple[str, ...] = ()
    openings: bool = field(default=False, kw_only=True)
    least_feature: float = field(default=0.0, kw_only=True)
    layered: bool = field(default=False, kw_only=True)
    origin: str = ""
    axis: bool = False
