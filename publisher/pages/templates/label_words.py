"""The words of a template's label: which part, how many to cut, how large, which side up."""

from collections.abc import Iterator
from dataclasses import replace

from publisher.basics import Purpose, record
from publisher.basics.wording import LengthUnit, said_angle, say_length, say_thickness, size_in_both
from publisher.geometry import GLUED_BEHIND, Part, polygon
from publisher.joints import UP
from publisher.pages.sheet import Context
from publisher.pages.templates.dimension_lines import said_off_part

HALF = "Half: trace all but the marked side, flip it over along that side, trace again."
TRACED_BY_HALVES = "Then cut on the pencil line."
TRACED = "Trace, lift, cut on the pencil line."
FACES = {"": "", "outside": "the outside face", "inside": "the inside face", "climbs": "the arrow climbs", "either": ""}


@record
class Says:
    """The words of one label. ``boxes``: how many tick boxes for copies as drawn, for mirrored ones, for spares.

    ``letter``, ``cut`` (how many of them, or which of so many) and ``sides`` (which side up, whether it may be flipped) are what a
    piece must not lose when it is cut out (no sides where either will do); ``copies`` says of ``cut`` all there is to say, ``face``
    which face the upper side is; ``measures`` lengths of it that no line on it shows.
    """

    letter: str
    name: str
    board: str
    cut: str
    copies: str
    boxes: tuple[int, int, int]
    size: tuple[str, str]
    sides: tuple[str, ...]
    face: str
    notes: tuple[str, ...]
    measures: tuple[str, ...] = ()
    top: bool = False  # the label shows with an arrow which end is up: the part has no room for it


def says(context: Context, part: Part, copy: int = 0, mirrored: bool = False) -> Says:
    """Return what the label of a part says. ``copy`` from 1 where every copy is printed, 0 for a template to trace.

    ``mirrored``: this printed copy is the mirror image.
    """
    copies = context.copies(part)
    cut = f"cut\u00a0{part.count}"  # never broken: the page promises it as one
    line = f"{cut}\u00a0+\u00a0{part.spare}\u00a0spare" if part.spare else cut
    left, bottom, right, top = polygon(part.outline).bounds
    width, height = right - left, top - bottom
    millimetres, imperial = (said.replace(" ", "\u00a0") for said in size_in_both(width, height))  # read as one word
    one, other = (millimetres, imperial) if context.paper.first == "mm" else (imperial, millimetres)
    size = (f"finished {one}" if part.trace_allowance else one, "({})".format(other.replace("\u00a0", " ")))
    board = f"{part.board.replace('_', ' ')} {say_thickness(part.thickness, context.paper.first)}"
    if copy:
        spare = ", a spare" if copy > part.count else ""
        if copies > 1:
            line = f"{line}: this is {copy}\u00a0of\u00a0{copies}{spare}"
            cut = f"{copy}\u00a0of\u00a0{copies}"  # the print is the piece: no more of it are cut
        boxes = (1, 0, 0)
    else:
        cut = line  # two labels of one piece ask for the same number
        boxes = (part.count - part.mirrored, part.mirrored, part.spare)
    side = context.side(part, mirrored)
    sides = () if side.face == "either" else (UP,) if side.flip else (UP, "Do not flip.")
    sides = (*sides, HALF) if part.half else sides
    traced = (TRACED_BY_HALVES if part.half else TRACED,) if context.design.use == "trace" and not copy else ()
    notes = (*traced, *_notes(part, copy, mirrored, context.paper.first, side.face))
    top = side.top and not any(m.purpose is Purpose.TOP for m in part.marks)
    measures = said_off_part(part, context.paper.first)
    return Says(part.letter, part.name, board, cut, line, boxes, size, sides, FACES[side.face], notes, measures, top)


def shortened(said: Says) -> Iterator[Says]:
    """Yield a label's words and then ever fewer of them: without the board and inches; without boxes, measures and notes but that on
    tracing, which every page says; without that too."""
    yield said
    said = replace(said, board="", size=(said.size[0], ""))
    yield said
    said = replace(said, boxes=(0, 0, 0), measures=(), notes=tuple(note for note in said.notes if note == TRACED))
    yield said
    yield replace(said, notes=())


def _notes(part: Part, copy: int, mirrored: bool, unit: LengthUnit, up: str = "") -> Iterator[str]:
    """Say what is done to the piece, and what must not be done with the template."""
    for fold in part.folds:
        corner, wide = f"{said_angle(fold.corner):g}°", say_length(fold.width, first=unit)
        yield f"Fold {corner}: V-groove from inside, {wide} wide; leave the outer skin whole."
    if part.bending is not None and part.bending.covered != "none":
        kept = "inside" if part.bending.keeps == "inside" else "outside"
        how = "Glue paper" if part.bending.covered == "paper" else "Lay tape"
        yield f"{how} over the whole {kept} face before you bend it."
    if part.bending is not None and part.bending.slits:
        face = "inside" if part.bending.keeps == "outside" else "outside"
        carried = "" if up in ("", face) else "; carry the ends of the lines round to it"
        yield f"Slit the {face} face, {say_length(part.bending.slit_depth, first=unit)} deep{carried}."
    if any(mark.name == GLUED_BEHIND for mark in part.marks):
        yield "Glue lines: carry their ends round the edges to the inside face."
    if any(edge.rabbet for edge in part.edges):
        yield "Rabbet: cut the foam away behind, the front paper stays."
    if any(edge.bevel > 0.0 and edge.centre is None for edge in part.edges):
        yield "Bevel: the face underneath ends at the dotted line."
    if any(m.purpose is Purpose.TOP for m in part.marks):
        yield "Copy “top” to the foam."
    if part.mirrored and not copy and part.half is None:
        as_drawn = part.count - part.mirrored
        first = f"{as_drawn} as drawn, " if as_drawn else ""
        yield f"{first}{part.mirrored} mirrored: turn the template over for those."
    elif mirrored:
        yield "Mirror image: drawn turned over."
