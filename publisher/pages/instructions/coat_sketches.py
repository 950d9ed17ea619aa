"""The sketches of what is brushed or sprayed on what stands, or on parts, by what the step takes for it: thinned glue over all of it, then
dark paint over all of it and a lighter one over what is raised. Under each a board in section, much enlarged, which looks the same in
every pack."""

from dataclasses import replace

import shapely

from publisher.basics import Box, Point, remembered_few
from publisher.joints import GLUE, Drawing, coat_scenes, painted_with
from publisher.pages.instructions.finish_sketches import with_figure
from publisher.pages.instructions.part_art import part_cells
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import SketchPen, along_arc
from publisher.pages.type import PICTURE_DETAIL

COATED_LOW, COATED_TOP = 4.4, 10.2  # mm: where boards in section lie
COAT = 1.3  # mm: how thick what is brushed on is drawn
OFF = 0.55  # mm of white between a board and the line of a coat on it
DENTS = (5.0, 12.0, 19.0)  # mm along a board in section, where its face is pressed in
DENT_HALF, DENT_DEEP = 1.7, 2.0
COATED_LONG = 24.0  # mm of a board in section
SEAM = 0.13  # mm on the page left white on either side of an edge between faces that are painted dark
ROW = 26.0  # mm: how high each of two states is shown
OBJECT_WIDE, SECTION_AT = 31.0, 46.0  # mm: of what is painted, and where the board in section begins beside it
POT_WIDE = 9.0
BESIDE_BOTTLE = 28.5  # mm from the right of a sketch to the tip of a brush whose handle ends beside the bottle
STRAYS_PAINTED = 0.1  # mm by which the border of a dark face may stray
CLOSES = 0.2  # mm by which lines of an outline may miss one another
OUTER = frozenset(("contour", "outline", "added", "added_contour"))  # lines of a drawing that bound its faces


def sealing(pen: SketchPen, stands: Drawing | None, parts: CountedParts, uses: tuple[str, ...] = (GLUE,)) -> None:
    """What coats, on what stands or on the parts, by what the step ``uses``: white glue from its bottle, with water; what is in a pot;
    what a can sprays. Of glue and paint a board in section with a coat all round it, ticked; one that has it on one face, crossed out."""
    shown = coat_scenes("seal", uses)
    box = _on(pen, stands, parts, Box(1.0, 19.0, FIELD_WIDE - 18.0, FIELD_TALL - 1.0))
    if "can" in shown:
        _sprayed(pen, box)
        return
    tip = (min(box.right - 3.0, FIELD_WIDE - BESIDE_BOTTLE), box.bottom + 0.55 * box.height)
    if "sealed" in shown:
        pen.line(tip, (24.0, COATED_TOP + 3.4), style=PICTURE_DETAIL)
        sealed(pen)
    if "brush" in shown:
        pen.brush(tip, -38.0)
    left = FIELD_WIDE - 13.0
    if "bottle" in shown:
        pen.bottle(left + 0.6, 38.0)
        pen.count("+", left + 4.4, 41.0)
        _drop(pen, left + 8.0, 42.0)
        pen.arrow((left + 4.5, 36.6), (left + 4.5, 31.2))
    elif "brush" not in shown:
        pen.arrow((left - 0.6, 25.0), (left - 6.0, 28.0))
    pen.pot(left, 21.0)


def painting(
    pen: SketchPen,
    stands: Drawing | None,
    parts: CountedParts,
    figure: float,
    *,
    raised: bool,
    uses: tuple[str, ...] = (),
) -> None:
    """What stands, or the parts, with a figure: all of it dark, out of the first pot; then light, out of the second. Where a pattern is
    ``raised``, a board in section with dark paint in its dents too, and the second brush flat, over what is between them. Where the step
    ``uses`` a can, or varnish alone, one coat of that."""
    coat = painted_with(uses)
    if coat != "paint":
        box = _on(pen, stands, parts, Box(1.0, 4.0, FIELD_WIDE - 18.0, FIELD_TALL - 8.0), figure)
        if coat == "spray":
            _sprayed(pen, box)
        else:
            pen.brush((box.right - 3.0, box.bottom + 0.55 * box.height), -38.0)
            pen.pot(FIELD_WIDE - 13.0, box.bottom)
        return
    for number, low in ((1, ROW), (2, 0.0)):
        dark = number == 1
        wide = OBJECT_WIDE if raised else FIELD_WIDE - POT_WIDE - 14.0
        box = _on(pen, stands, parts, Box(0.5, low + 1.0, wide, low + ROW - 1.5), figure, dark=dark)
        pot = wide + 2.5 if raised else FIELD_WIDE - POT_WIDE - 1.0
        if raised:
            at = (box.left + 0.6 * box.width, box.bottom + 0.5 * box.height)
            pen.line(at, (SECTION_AT - 0.6, low + COATED_TOP), style=PICTURE_DETAIL)
        else:
            pen.brush((box.right - 1.0, box.bottom + 0.5 * box.height), -48.0)
        pen.pot(pot, low + 2.0)
        if dark:
            pen.blackened(shapely.box(pot + 1.6, low + 4.6, pot + 7.4, low + 6.8))
        pen.count(str(number), pot + POT_WIDE / 2, low + 12.0)
    middle = pot + POT_WIDE / 2
    pen.arrow((middle, ROW + 1.4), (middle, ROW - 8.0))
    if raised:
        painted_dark(pen)
        painted_raised(pen)


def sealed(pen: SketchPen) -> None:
    """Draw a board in section with a coat on all its faces and edges, a brush that runs round it, and a tick; and one with a coat on one
    face alone, crossed out."""
    pen.scene("sealed")
    for left, all_round in ((6.0, True), (44.0, False)):
        right = left + 20.0
        pen.section((left, COATED_LOW), (right, COATED_LOW), (right, COATED_TOP), (left, COATED_TOP))
        far = OFF + COAT
        pen.blackened(shapely.box(left - far, COATED_TOP + OFF, right + far, COATED_TOP + far))
        if all_round:
            pen.blackened(shapely.box(left - far, COATED_LOW - far, right + far, COATED_LOW - OFF))
            pen.blackened(shapely.box(left - far, COATED_LOW - far, left - OFF, COATED_TOP + far))
            pen.blackened(shapely.box(right + OFF, COATED_LOW - far, right + far, COATED_TOP + far))
        pen.taken.append(shapely.box(left, COATED_LOW, right, COATED_TOP).buffer(far))
    out = OFF + COAT + 1.4
    middle, high = 16.0, (COATED_LOW + COATED_TOP) / 2
    pen.arrow((middle - 6.0, COATED_TOP + out), (middle + 6.0, COATED_TOP + out))
    pen.arrow((middle + 6.0, COATED_LOW - out), (middle - 6.0, COATED_LOW - out))
    pen.arrow((26.0 + out, high + 3.0), (26.0 + out, high - 3.0))
    pen.arrow((6.0 - out, high - 3.0), (6.0 - out, high + 3.0))
    pen.right(32.0, high - 2.0)
    pen.wrong(46.0, COATED_LOW - 2.6, 62.0, COATED_TOP + 4.0)


def painted_dark(pen: SketchPen) -> None:
    """Draw a board in section with dents, dark paint all along its face and in them, and a brush that stands upright."""
    pen.scene("painted_dark")
    board = _dented(ROW)
    pen.section(*_points(board))
    pen.blackened(_coat(board))
    top = float(board.bounds[3])
    pen.brush((SECTION_AT + 13.0, top + OFF + COAT), -42.0)
    pen.arrow((SECTION_AT + 1.0, top + 5.0), (SECTION_AT + 10.0, top + 5.0))


def painted_raised(pen: SketchPen) -> None:
    """Draw the same board with dark paint in its dents alone, light paint between them, and a brush that lies flat and runs over it."""
    pen.scene("painted_raised")
    board = _dented(0.0)
    pen.section(*_points(board))
    left, _, right, top = board.bounds
    pen.blackened(_coat(board).intersection(shapely.box(left, 0.0, right, top - 0.1)))
    ends = [0.0, *(x + side * DENT_HALF for x in DENTS for side in (-1.0, 1.0)), COATED_LONG]
    for start, end in zip(ends[::2], ends[1::2], strict=True):
        ring = shapely.box(left + start, top + OFF, left + end, top + OFF + COAT)
        pen.line(*_points(ring), style=PICTURE_DETAIL, closed=True)
    pen.brush((left + 8.5, top + OFF + COAT + 0.8), -68.0)
    pen.arrow((left - 1.0, top + 5.0), (left + 7.0, top + 5.0))


def _dented(low: float) -> shapely.Polygon:
    """Return a board in section with dents in its face, in the row that begins so high."""
    top = low + COATED_TOP
    board = shapely.box(SECTION_AT, low + COATED_LOW, SECTION_AT + COATED_LONG, top)
    dents = [shapely.Polygon(along_arc((SECTION_AT + x, top), DENT_HALF, 180.0, 360.0, 12)) for x in DENTS]
    return board.difference(shapely.union_all(dents))


def _coat(board: shapely.Polygon) -> shapely.Geometry:
    """Return paint along the upper side of a board, down into its dents, off its line so that both are seen."""
    left, low, right, top = board.bounds
    over = shapely.box(left, low + 1.0, right, top + COAT + OFF)
    return board.buffer(OFF + COAT, quad_segs=6).difference(board.buffer(OFF, quad_segs=6)).intersection(over)


def _points(board: shapely.Polygon) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in board.exterior.coords[:-1])


def _on(
    pen: SketchPen, stands: Drawing | None, parts: CountedParts, room: Box, figure: float = 0.0, *, dark: bool = False
) -> Box:
    """Draw what stands in a room, or the parts; all their faces black where they are painted ``dark``."""
    if stands is not None:
        stands = _coarse(stands, finest=STRAYS_PAINTED * max(stands.width / room.width, stands.height / room.height))
        box = with_figure(pen, stands, room, figure, draw=not dark)
        if dark:
            pen.blackened(_faces(stands, box, SEAM / pen.scale))
        return box
    for art in part_cells(parts, room):
        if dark:
            pen.blackened(art.shape.buffer(-SEAM / pen.scale))
        art.outline(pen)
        if not dark:
            art.lettered(pen)
        art.counted(pen)
    return room


@remembered_few
def _coarse(stands: Drawing, *, finest: float) -> Drawing:
    """Return a drawing whose lines stray by no more than ``finest`` (mm of it): drawn small, most points of its curves are not seen."""
    lines = []
    for line in stands.lines:
        kept = shapely.get_coordinates(shapely.simplify(shapely.LineString(line.points), finest))
        lines.append(replace(line, points=tuple((float(x), float(y)) for x, y in kept)))
    return replace(stands, lines=tuple(lines))


def _faces(stands: Drawing, box: Box, seam: float) -> shapely.Geometry:
    """Return what is covered by what stands in a box, less a seam on either side of each edge between its faces."""
    scale = box.width / stands.width
    lines = shapely.union_all(
        [
            shapely.LineString([(box.left + scale * x, box.bottom + scale * y) for x, y in line.points])
            for line in stands.lines
            if line.weight in OUTER and len(line.points) > 1
        ]
    )
    rims = shapely.get_parts(shapely.buffer(lines, CLOSES))
    whole = shapely.union_all([shapely.Polygon(rim.exterior) for rim in rims])
    faces = whole.buffer(-CLOSES).difference(shapely.buffer(lines, seam, quad_segs=2))
    return shapely.simplify(faces, STRAYS_PAINTED)  # a page has room for so many lines alone


def _sprayed(pen: SketchPen, box: Box) -> None:
    """Draw a can at the right of what it sprays."""
    pen.can(FIELD_WIDE - 9.0, max(2.0, box.bottom + 0.5 * box.height - 12.0))


def _drop(pen: SketchPen, x: float, y: float) -> None:
    """Draw a drop of water."""
    ring = ((x, y + 3.2), (x + 1.1, y + 0.6), (x + 0.7, y - 0.4), (x, y - 0.7), (x - 0.7, y - 0.4), (x - 1.1, y + 0.6))
    pen.line(*ring, style=PICTURE_DETAIL, closed=True)
