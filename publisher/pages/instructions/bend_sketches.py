"""The sketches of what is done to parts that are bent: covered on one face, slit on the other, rolled over a tin.

Each shows the board in section, with its paper or tape dotted, so that the two faces are told apart from act to act.
"""

from math import cos, pi, sin

import shapely

from publisher.basics import Box, Point, Purpose
from publisher.joints import UNDERNEATH, UP, covered_face, slit_face
from publisher.pages.instructions.part_art import PartArt, part_cells
from publisher.pages.instructions.part_sketches import FIELD, FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import SketchPen, along_arc
from publisher.pages.instructions.sketch_places import frame_words, put_flag
from publisher.pages.type import CUT, PICTURE_CONTOUR, PICTURE_DETAIL

BENT_TALL = 26.0  # mm of the field at its foot for the parts; over them the board in section
BENT_THICK = 7.0  # mm: a board in section, much enlarged
COVER_THICK = 1.4  # mm: the paper or tape on it
SLITS_DRAWN = 5
COVERED_AT = (2.0, 34.0, BENT_TALL + 5.2)  # mm: left, right and low of a board that is covered
TAPE_HIGH = 2.4  # mm of the tape on a blade, which stops it
OVER_TAPE = 5.8  # mm over the board: clear of the word beside the tape, in any language


def covering(pen: SketchPen, parts: CountedParts, under: bool = False, what: str = "", *, bottle: bool = True) -> None:
    """The board in section, and paper, or strips of tape, that come down on it; under it the parts with that face covered. ``under``: the
    face that says THIS SIDE UP lies underneath; ``bottle``: glue for the paper comes out of one."""
    covered = [one for one in parts if covered_face(one[0])] or list(parts)
    left, right, low = COVERED_AT
    bending = covered[0][0].bending
    what = what or ("tape" if bending is not None and bending.covered == "tape" else "paper")
    coming_down(pen, what)
    if bottle and what == "paper":
        pen.bottle(left + 7.0, low + BENT_THICK + 0.9)
    if under:
        frame_words(pen, UP, (right + 3.0, low - 5.0), (right - 6.0, low))
        pen.count(UNDERNEATH, right + 3.0, low - 0.6, "left")
    else:
        frame_words(pen, UP, (right + 3.0, low + BENT_THICK - 3.0), (right - 4.0, low + BENT_THICK))
    for art in _arts(covered, BENT_TALL - 2.0):
        art.outline(pen)
        pen.papered(art.shape.buffer(-0.5))
        art.counted(pen)
        if not under:
            art.lettered(pen)


def coming_down(pen: SketchPen, what: str) -> None:
    """Draw a board in section, and on it paper, or strips of tape, that come down."""
    left, right, low = COVERED_AT
    pen.scene(f"coming_down_{what}")
    board_in_section(pen, left, right, low)
    if what == "tape":
        for at in (0.0, 1.0):
            _sheet(pen, left + 11.0 * at, low + BENT_THICK, left + 11.0 * (at + 1.0) - 0.3)
        _sheet(pen, left + 22.0, low + BENT_THICK + 7.0, right)
        pen.arrow((left + 27.0, low + BENT_THICK + 6.4), (left + 27.0, low + BENT_THICK + 1.0))
        pen.words("tape", right + 1.5, low + BENT_THICK + 6.6)
    else:
        _sheet(pen, left, low + BENT_THICK + 12.0, right)
        pen.arrow((left + 21.0, low + BENT_THICK + 11.4), (left + 21.0, low + BENT_THICK + 1.4))
        pen.words("paper", right + 1.5, low + BENT_THICK + 11.6)


def slitting_part(pen: SketchPen, parts: CountedParts, up: bool = True, deep: str = "") -> None:
    """The parts with their slits; over them a section with a knife that shows how ``deep`` they go, and one that goes through, crossed
    out. ``up``: the face that is slit says THIS SIDE UP."""
    slit = [one for one in parts if one[0].bending is not None] or list(parts)
    part = slit[0][0]
    bending = part.bending
    left, right, low = 4.0, 36.0, BENT_TALL + 5.0
    board_in_section(pen, left, right, low)
    if covered_face(part):
        _sheet(pen, left, low - COVER_THICK, right)
        pen.words(bending.covered if bending else "paper", right + 1.5, low - COVER_THICK - 0.4)
    cut = BENT_THICK * (bending.slit_depth / part.thickness if bending and bending.slit_depth else 0.6)
    for number in range(SLITS_DRAWN):
        x = left + 3.0 + 5.2 * number
        pen.line((x, low + BENT_THICK), (x, low + BENT_THICK - cut), style=PICTURE_CONTOUR)
    pen.knife((left + 3.0 + 5.2 * (SLITS_DRAWN - 1), low + BENT_THICK - cut))
    stop = left + 3.0 + 5.2 * (SLITS_DRAWN - 1)
    band = ((stop - 0.8, low + BENT_THICK + 0.2), (stop + 2.6, low + BENT_THICK + 0.2))
    pen.tape(*band, *((x, y + TAPE_HIGH) for x, y in reversed(band)))
    pen.words("tape", stop - 1.6, low + BENT_THICK + 0.9, "right")
    _depth(
        pen, right + 4.0, low + BENT_THICK, low + BENT_THICK - cut, deep
    )  # before the count, after which it would read as a product
    counts = {one.bending.slits for one, _ in slit if one.bending and one.bending.slits}
    if len(counts) == 1:
        pen.count(f"{counts.pop()} ×", left + 9.0, low + BENT_THICK + OVER_TAPE)
    elif counts:
        each = (f"{one.letter}: {one.bending.slits} ×" for one, _ in slit if one.bending and one.bending.slits)
        for line in pen.broken(each, 24.0, 2):
            pen.count(line, left, low + BENT_THICK + OVER_TAPE, "left")
    crossed_through(pen)
    arts = _arts(slit)
    for art in arts:
        art.outline(pen)
        art.marks(pen, (Purpose.BEND,))
        art.counted(pen)
        art.lettered(pen)
    if up:
        put_flag(pen, UP, FIELD, [art.shape for art in reversed(arts)])


def rolling(pen: SketchPen, parts: CountedParts) -> None:
    """A part that is rolled over a tin, its slits on the face that is slit and what covers it on the other one, and arrows down both
    ends."""
    bent = [one for one in parts if one[0].bending is not None] or list(parts)
    part = bent[0][0]
    cover, slits = covered_face(part), slit_face(part)
    rolled(pen, cover or "", slits or "")
    if cover:
        pen.words(part.bending.covered if part.bending else "paper", 46.5, 36.2)
    for art in part_cells(bent, Box(48.0, 40.0 if len(bent) == 1 else 24.0, FIELD_WIDE - 1.0, FIELD_TALL - 0.5)):
        art.outline(pen)
        art.counted(pen)


def rolled(pen: SketchPen, cover: str, slits: str) -> None:
    """Draw a strip in section that is rolled over a tin, arrows down both ends, and the tin from its side. ``cover``, ``slits``: on
    which face they are; "" where there are none."""
    pen.scene(f"rolled_{cover or 'bare'}_{slits or 'whole'}")
    middle, bottle, thick = (24.0, 17.0), 12.0, 4.0
    pen.arc(middle, bottle, 0.0, 360.0)
    pen.arc(middle, 3.4, 0.0, 360.0, style=PICTURE_DETAIL)
    inner = bottle + 0.6 + (COVER_THICK if cover == "inside" else 0.0)
    outer = inner + thick
    pen.section(*along_arc(middle, outer, 12.0, 168.0), *along_arc(middle, inner, 168.0, 12.0))
    start, end = (inner, outer - thick / 3) if slits == "inside" else (outer, inner + thick / 3)
    for turn in range(20, 165, 12) if slits else ():
        pen.line(along_arc(middle, start, turn, turn, 1)[0], along_arc(middle, end, turn, turn, 1)[0], style=CUT)
    far = outer
    if cover:
        low = outer if cover == "outside" else bottle + 0.6
        far = max(outer, low + COVER_THICK)
        ring = (*along_arc(middle, low + COVER_THICK, 12.0, 168.0), *along_arc(middle, low, 168.0, 12.0))
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_DETAIL, closed=True)
        pen.dotted(along_arc(middle, low + COVER_THICK / 2, 14.0, 166.0))
        tip = along_arc(middle, low + COVER_THICK / 2, 48.0, 48.0, 1)[0]
        pen.line(tip, (46.0, 37.0), style=PICTURE_DETAIL)
    pen.turning(middle, far + 3.0, 60.0, 15.0)
    pen.turning(middle, far + 3.0, 120.0, 165.0)
    _tin_lying(pen)


def board_in_section(pen: SketchPen, left: float, right: float, low: float) -> None:
    """Draw a board that is cut through, to whose faces other things are drawn."""
    pen.section((left, low), (right, low), (right, low + BENT_THICK), (left, low + BENT_THICK))
    pen.taken.append(shapely.box(left, low, right, low + BENT_THICK))


def _sheet(pen: SketchPen, left: float, low: float, right: float) -> None:
    """Draw paper or tape in section: thin, with dots."""
    ring = ((left, low), (right, low), (right, low + COVER_THICK), (left, low + COVER_THICK))
    pen.white(*ring)
    pen.line(*ring, style=PICTURE_DETAIL, closed=True)
    pen.dotted(((left + 0.8, low + COVER_THICK / 2), (right - 0.4, low + COVER_THICK / 2)))
    pen.taken.append(shapely.box(left, low, right, low + COVER_THICK))


def _arts(parts: CountedParts, tall: float = BENT_TALL) -> tuple[PartArt, ...]:
    return part_cells(parts, Box(1.0, 0.0, FIELD_WIDE - 1.0, tall))


def _tin_lying(pen: SketchPen) -> None:
    """Draw a tin from the side: that is what stands in the middle of the roll. A bottle was taken for one to buy, whatever the bend."""
    left, right, low, high, flat = 53.5, 67.5, 7.0, 17.0, 1.8
    middle, half = (low + high) / 2, (high - low) / 2
    turns = [pi * step / 12 for step in range(24)]
    lid = tuple((right + flat * cos(turn), middle + half * sin(turn)) for turn in turns)
    back = tuple((left + flat * cos(turn), middle + half * sin(turn)) for turn in turns[6:19])
    pen.line((right, high), *back, (right, low))
    pen.line(*lid, closed=True)
    pen.line((36.0, 15.0), (left - flat - 1.0, middle), style=PICTURE_DETAIL)


def _depth(pen: SketchPen, x: float, top: float, bottom: float, deep: str) -> None:
    """Draw how deep a slit goes, beside it."""
    for y in (top, bottom):
        pen.line((x - 4.0, y), (x + 1.0, y), style=PICTURE_DETAIL)
    pen.line((x, top), (x, bottom), style=PICTURE_DETAIL)
    pen.right(x - 1.0, top + 3.0)
    if deep:
        pen.count(deep, x + 1.6, (top + bottom) / 2 - 1.2, "left")


def crossed_through(pen: SketchPen) -> None:
    """Draw a slit that goes right through, crossed out."""
    left, low = FIELD_WIDE - 13.0, BENT_TALL + 5.0
    pen.scene("slit_through")
    right: Point = (left + 12.0, low + BENT_THICK)
    pen.section((left, low), (right[0], low), right, (left, low + BENT_THICK))
    pen.line((left + 6.0, low + BENT_THICK), (left + 6.0, low), style=PICTURE_CONTOUR)
    pen.wrong(left, low - 1.5, right[0], right[1] + 4.0)
