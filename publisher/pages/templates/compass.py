"""Compass strips: a round part needs no template, only a strip of card with a hole for a pin and one for the pencil.

A strip is drawn about its own origin, its lower left corner: the pin at the left, the pencil's holes on the same level at its right.
The pencil runs on the circle itself, so that a strip bears the finished radius and no allowance.
"""

from itertools import pairwise

from publisher.basics import (
    CompassPromise,
    Layer,
    LengthPromise,
    Path,
    Point,
    Pose,
    Purpose,
    TextPromise,
    circle,
    polyline,
    record,
)
from publisher.basics.wording import LengthUnit, say_length
from publisher.geometry import Part, radii_of
from publisher.pages.model import Drawn, Stroke, Words
from publisher.pages.sheet import Body, Context
from publisher.pages.templates.template_forms import Chunk
from publisher.pages.type import DIMENSION, GAUGE, LEADER, LEAST, NOTE, Block, Setter, TypeStyle

STRIP_END = 9.0  # mm from the middle of a hole to the end of the strip
OVER_AXIS = 11.0  # mm of a strip over the line from pin to pencil
UNDER_AXIS = 4.0  # mm from that line down to the words under it
STRIP_INSET = 3.0  # mm from the sides of a strip to its words
PIN_ARM, PENCIL_ARM = 3.0, 2.5  # mm, arms of the crosses in the middle of the holes
PENCIL_HOLE = 1.25  # mm, its radius: the tip of a pencil
LEAST_COMPASS = 40.0  # mm: on a shorter radius a template takes little
LEAST_APART = 6.0  # mm between the middles of two holes: nearer ones tear the card between them
LABEL_ROW = 3.2  # mm from a line of words over the axis to the next
OVER_HOLES, BESIDE_CROSS = 1.2, 1.0  # mm from the axis up to the words over it, and from a cross to the words beside it
STRIP_WORDS_APART = 1.5  # mm between two words of one line
HOW = "Glue to card. Pin through the cross, pencil through the hole; cut on the pencil line."
TICKS = "Draw two lines at right angles through the pin’s hole: they mark the quarters."


@record
class StripLabel:
    """What stands over a hole: the words, where they begin along the strip, how far over the axis, in mm."""

    text: str
    left: float
    over: float


@record
class CompassStrip:
    """A compass strip of a part: radii in mm, the outer one first; whether its rim has ticks at the quarters; its words."""

    part: Part
    radii: tuple[float, ...]
    ticks: bool
    title: TypeStyle
    labels: tuple[StripLabel, ...]

    @property
    def axis(self) -> float:
        """Return how far below the upper side of the strip pin and pencil stand, in mm: each radius has a line of words of its own."""
        return OVER_AXIS + (len(self.radii) - 1) * LABEL_ROW


def strip_of(context: Context, part: Part) -> CompassStrip | None:
    """Return the strip that draws a part; None for a part that is not round, has what a compass does not draw, or whose words find no
    room on it."""
    radii = radii_of(part) if context.design.use == "trace" and _plain(part) else ()
    if not radii or radii[0] < LEAST_COMPASS or any(a - b < LEAST_APART for a, b in pairwise((*radii, 0.0))):
        return None
    room = radii[0] + 2 * STRIP_END - 2 * STRIP_INSET
    title = context.type.fitting(_name(part), (NOTE.bold(), LEAST.bold()), room)
    labels = _labels(context.type, radii, context.paper.first)
    if title is None or labels is None:
        return None
    return CompassStrip(part, radii, any(mark.name == "quarter" for mark in part.marks), title, labels)


def _plain(part: Part) -> bool:
    """Say whether a part has nothing but an outline and a centre for a compass to draw."""
    edges = any(edge.bevel or edge.rabbet is not None for edge in part.edges)
    marks = {mark.purpose for mark in part.marks} <= {Purpose.CENTRE}
    return marks and part.half is None and not edges and not part.folds and part.bending is None


def _name(part: Part) -> str:
    spare = f"\u00a0+\u00a0{part.spare}\u00a0spare" if part.spare else ""
    return f"{part.letter} {part.name}, cut\u00a0{part.count}{spare}: compass strip"


def _labels(setter: Setter, radii: tuple[float, ...], unit: LengthUnit) -> tuple[StripLabel, ...] | None:
    """Return the word over the pin and those over each hole for the pencil, as the radii stand; None where they find no room.

    The shorter a radius, the lower its line, so that the line up from a hole meets no words: these end left of it, or begin right of it.
    """
    pin = StripLabel("pin", STRIP_END + PIN_ARM + BESIDE_CROSS, OVER_HOLES)
    free_from = pin.left + setter.width(pin.text, LEAST) + STRIP_WORDS_APART
    found = []
    for row, radius in enumerate(reversed(radii)):
        said = f"pencil, radius {say_length(radius, first=unit)}"
        width, hole, clear = setter.width(said, LEAST), STRIP_END + radius, PENCIL_ARM + BESIDE_CROSS
        nearest = min((STRIP_END + other for other in radii if other > radius), default=hole + 2 * STRIP_END)
        if hole - clear - width >= (free_from if row == 0 else STRIP_INSET):
            left = hole - clear - width
        elif hole + clear + width <= nearest - clear:
            left = hole + clear
        else:
            return None
        found.append(StripLabel(said, left, OVER_HOLES + row * LABEL_ROW))
    return (pin, *reversed(found))


def strip_key(part: Part) -> str:
    """Return the key of the chunk that is a part's strip."""
    return f"@{part.id}"


def strip_chunk(context: Context, strip: CompassStrip) -> Chunk:
    """Return what a strip fills of a page; it may lie along the page or across."""
    wide = strip.radii[0] + 2 * STRIP_END
    tall = strip.axis + UNDER_AXIS + _words(context.type, strip, wide).height + STRIP_INSET
    ring = ((0.0, 0.0), (wide, 0.0), (wide, tall), (0.0, tall))
    return Chunk(strip_key(strip.part), ring, wide * tall, (0.0, 90.0))


def _words(setter: Setter, strip: CompassStrip, wide: float) -> Block:
    said = f"{HOW} {TICKS}" if strip.ticks else HOW
    return setter.paragraph(said, LEAST, 0.0, 0.0, wide - 2 * STRIP_INSET, layer=Layer.NOTES)


def strip_body(context: Context, strip: CompassStrip, chunk: Chunk, pose: Pose, page: int) -> Body:
    """Return a strip as it lies on its page, with the promises about it."""
    setter, part = context.type, strip.part
    wide, tall = chunk.ring[2]
    axis = tall - strip.axis
    pin = (STRIP_END, axis)
    holes = tuple((STRIP_END + radius, axis) for radius in strip.radii)
    stops = (pin, *reversed(holes))
    lines = tuple(polyline((a, b)) for a, b in pairwise(stops))
    crosses = (*_cross(pin, PIN_ARM), *(line for hole in holes for line in _cross(hole, PENCIL_ARM)))
    rings = tuple(circle(hole, PENCIL_HOLE) for hole in holes)
    pencils = strip.labels[1:]
    ups = tuple(
        polyline(((x, y + PENCIL_ARM), (x, y + label.over + setter.cap(LEAST))))
        for (x, y), label in zip(holes, pencils, strict=True)
        if label.over > OVER_HOLES
    )
    drawn: list[Drawn] = [
        Stroke(LEADER, _placed((polyline(chunk.ring, True), *ups), pose), Layer.OUTLINES, None, "figure"),
        Stroke(GAUGE, _placed((*crosses, *rings), pose), Layer.OUTLINES, None, "figure"),
        Stroke(DIMENSION, _placed(lines, pose), Layer.DIMENSIONS, None, "figure"),
    ]
    whole = _name(part)
    drawn += _line(setter, whole, strip.title, (STRIP_INSET, tall - 1.4 - setter.cap(strip.title)), pose)
    for label in strip.labels:
        drawn += _line(setter, label.text, LEAST, (label.left, axis + label.over), pose)
    for thing in _words(setter, strip, wide).drawn:
        if isinstance(thing, Words):
            drawn += _line(setter, thing.text, LEAST, (thing.x + STRIP_INSET, thing.y + axis - UNDER_AXIS), pose)
    at, ends = pose.apply(pin), tuple(pose.apply(hole) for hole in holes)
    lengths = tuple(
        LengthPromise(page, at, end, radius, "dimension", label.text)
        for end, radius, label in zip(ends, strip.radii, pencils, strict=True)
    )
    promise = CompassPromise(page, part.id, part.letter, at, ends, strip.radii, PENCIL_HOLE, pose.apply_all(chunk.ring))
    return Body(tuple(drawn), lengths=lengths, compasses=(promise,), texts=(TextPromise(page, whole),))


def _cross(at: Point, arm: float) -> tuple[Path, Path]:
    x, y = at
    return polyline(((x - arm, y), (x + arm, y))), polyline(((x, y - arm), (x, y + arm)))


def _placed(paths: tuple[Path, ...], pose: Pose) -> tuple[Path, ...]:
    return tuple(path.placed(pose) for path in paths)


def _line(setter: Setter, text: str, style: TypeStyle, at: Point, pose: Pose) -> tuple[Drawn, ...]:
    return setter.line(text, style, *pose.apply(at), turn=pose.turn, layer=Layer.NOTES)
