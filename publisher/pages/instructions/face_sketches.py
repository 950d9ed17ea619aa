"""The sketches of what is done to the faces of parts and not through them: a pattern pressed in or drawn on, a fold scored.

Each shows the board in section, much enlarged, with the tool in it, and crossed out the knife that goes through.
"""

from collections.abc import Sequence
from math import atan2, cos, degrees, hypot, sin

import shapely
from shapely.affinity import rotate, translate

from publisher.basics import Box, LineKind, Point, Purpose
from publisher.basics.wording import said_angle
from publisher.geometry import Part
from publisher.joints import UP, FacePaper, scored
from publisher.pages.instructions.part_art import BOARD_ROUND, PartArt, board_round, part_cells
from publisher.pages.instructions.part_sketches import FIELD, FIELD_TALL, FIELD_WIDE, CountedParts
from publisher.pages.instructions.sketch_pen import ARROW_HEAD, STICK_WIDE, SketchPen, along_arc
from publisher.pages.instructions.sketch_places import put_flag, stand_tool
from publisher.pages.type import CUT, PICTURE_ADDED_CONTOUR, PICTURE_CONTOUR, PICTURE_DETAIL, PICTURE_OUTLINE

PARTS_TALL = 25.0  # mm of the field at its foot for the parts; over them the board in section
SECTION_LOW, SECTION = 29.0, 7.0  # mm: where a board in section lies, and how thick it is drawn
SECTION_TOP = SECTION_LOW + SECTION
DENT = 2.0  # mm: how deep the round end goes in
WRONG_LEFT = 53.0  # from where on the wrong way is shown
FACE = Box(0.0, 0.0, FIELD_WIDE, PARTS_TALL + 2.0)
MOST_IN_BOARD = 3  # parts that are shown with the board round them: more would be too small
PRESSED: dict[str, tuple[float, float, tuple[float, ...], float]] = {
    **dict.fromkeys(("bare", "kept", "peeled"), (1.0, 44.0, (8.0, 19.0), 30.0)),
    "grooved": (31.0, 45.0, (), 38.0),
}
"""mm: from where to where a board is drawn that is pressed in, its dents, and where the stick stands."""

RULE_FOOT, RULE_CLEAR = (
    3.0,
    0.6,
)  # mm from a row down to the foot of the rule along it, and from there to the edge of the part
FOLD_WIDE = 9.0  # mm of board on either side of a fold in section


def pressing_in(pen: SketchPen, parts: CountedParts, paper: FacePaper = "bare") -> None:
    """Faces with their patterns, and a stick with a round end along a rule; over them the board in section with the dent that it
    presses; a knife that goes through is crossed out. Of layers the ticks at their edges, and a groove down the edge."""
    ticked = [
        one for one in parts if has_purpose(one[0], Purpose.JOINT_TICK) and not has_purpose(one[0], Purpose.SURFACE)
    ]
    grooved = bool(ticked) and len(ticked) == len(parts)
    lies = not grooved and len(parts) <= MOST_IN_BOARD
    arts = part_cells(parts, Box(1.0, 0.0, FIELD_WIDE - 1.0, PARTS_TALL), BOARD_ROUND + 0.2 if lies else 0.6)
    for art in arts:
        if lies:
            board_round(pen, art)
        art.outline(pen, PICTURE_CONTOUR if grooved else PICTURE_OUTLINE)
        art.marks(pen, (Purpose.SURFACE, Purpose.JOINT_TICK), PICTURE_CONTOUR if grooved else PICTURE_DETAIL)
        art.counted(pen)
    if grooved:
        at = _tick(arts[0])
        edge_grooved(pen)
        dent = PRESSED["grooved"][3]
        pressed(pen, "grooved")
    else:
        at = _row_ruled(pen, arts[0])
        dent = PRESSED[paper][3]
        pressed(pen, paper)
    _looked_at(pen, at, (dent, SECTION_LOW))
    if not grooved:
        stand_tool(pen, pen.stick, [at], FACE)
    cut_through(pen)
    for art in arts:
        art.lettered(pen)
    if not grooved:
        put_flag(pen, UP, FIELD, [art.shape for art in reversed(arts)], BOARD_ROUND if lies else 0.0)


def drawing_on(pen: SketchPen, parts: CountedParts) -> None:
    """Faces with their patterns, and a pencil that draws them along a rule: on paper nothing is pressed."""
    arts = part_cells(parts, Box(1.0, 0.0, FIELD_WIDE - 1.0, FIELD_TALL - 8.0), BOARD_ROUND + 0.2)
    for art in arts:
        board_round(pen, art)
        art.outline(pen, PICTURE_OUTLINE)
        art.marks(pen, (Purpose.SURFACE, Purpose.JOINT_TICK))
        art.counted(pen)
    stand_tool(pen, pen.pencil, [_row_ruled(pen, arts[0])], FIELD)
    for art in arts:
        art.lettered(pen)
    put_flag(pen, UP, FIELD, [art.shape for art in reversed(arts)], BOARD_ROUND)


def scoring(pen: SketchPen, parts: CountedParts) -> None:
    """Parts with the lines at which they fold; over them the board in section with a cut that stops short of the other face, the board
    folded, and a cut that goes through, crossed out."""
    wanted = [one for one in parts if scored(one[0])] or list(parts)
    arts = part_cells(wanted, Box(1.0, 0.0, FIELD_WIDE - 1.0, PARTS_TALL), 0.6)
    for art in arts:
        art.outline(pen)
        for line in _score_lines(art):
            pen.line(*((float(x), float(y)) for x, y in line.coords), style=CUT)
        art.counted(pen)
    grooves = [fold for part, _ in wanted for fold in part.folds]
    scored_section(pen, grooved=bool(grooves))
    lines = _score_lines(arts[0])
    if lines:
        _looked_at(pen, _point(lines[0].interpolate(0.85, normalized=True).coords[0]), (10.0, SECTION_LOW))
    for art in arts:
        art.lettered(pen)
    corners = sorted({said_angle(fold.corner) for fold in grooves})
    for said in pen.broken([f"{corner:g}°" for corner in corners], 20.0, between=" / "):
        pen.count(said, 36.0, FIELD_TALL - 4.0)


def has_purpose(part: Part, purpose: Purpose) -> bool:
    """Tell whether a part has a mark of this purpose."""
    return any(mark.purpose is purpose for mark in part.marks)


def pressed(pen: SketchPen, what: str) -> None:
    """Draw a board in section with round dents in its face, and in the last of them the stick that presses down. ``what``: what is on
    its face, or ``grooved``: the edge of a layer."""
    left, right, dents, at = PRESSED[what]
    pen.scene(f"pressed_{what}")
    board = shapely.box(left, SECTION_LOW, right, SECTION_TOP)
    half = STICK_WIDE / 2
    for x in (*dents, at):
        ball = shapely.union(
            shapely.Point(x, SECTION_TOP - DENT + half).buffer(half, quad_segs=8),
            shapely.box(x - half, SECTION_TOP - DENT + half, x + half, SECTION_TOP + 1.0),
        )
        board = board.difference(ball)
    ring = tuple((float(x), float(y)) for x, y in board.exterior.coords[:-1])
    pen.section(*ring)
    pen.taken.append(shapely.box(left, SECTION_LOW, right, SECTION_TOP))
    if what == "kept":
        face = [point for point in _clockwise(ring) if point[1] > SECTION_LOW + 0.5]
        pen.line(*((x, y + 0.5) for x, y in face), style=CUT)
    if what == "peeled":
        _peeled_off(pen, left)
    long = 9.5
    pen.stick((at, SECTION_TOP - DENT), 0.0, long)
    pen.arrow((at, FIELD_TALL - 0.5), (at, SECTION_TOP - DENT + long + 0.6))
    pen.right(at + 4.0, SECTION_TOP + 3.0)


def _clockwise(ring: Sequence[Point]) -> list[Point]:
    """Return the points of the upper side of a section from left to right."""
    start = min(range(len(ring)), key=lambda n: (ring[n][0], -ring[n][1]))
    turned = [*ring[start:], *ring[:start]]
    return turned if turned[1][1] > SECTION_LOW + 0.5 else [turned[0], *reversed(turned[1:])]


def _peeled_off(pen: SketchPen, left: float) -> None:
    """Draw paper that comes off the face of a board, and is thrown away."""
    x = left + 1.0
    pen.line(
        (x, SECTION_TOP + 0.7),
        *along_arc((x + 4.0, SECTION_TOP + 3.4), 2.7, -90.0, -270.0, 12),
        (x - 0.5, SECTION_TOP + 6.1),
        style=CUT,
    )
    pen.arrow((x + 6.0, SECTION_TOP + 8.6), (x - 0.5, SECTION_TOP + 8.6))
    pen.words("paper", x + 7.0, SECTION_TOP + 7.6)


def cut_through(pen: SketchPen) -> None:
    """Draw a knife that cuts through the board, crossed out."""
    pen.scene("cut_through")
    right = FIELD_WIDE - 1.0
    middle = (WRONG_LEFT + right) / 2
    for left, end in ((WRONG_LEFT, middle - 0.4), (middle + 0.4, right)):
        pen.section((left, SECTION_LOW), (end, SECTION_LOW), (end, SECTION_TOP), (left, SECTION_TOP))
    pen.taken.append(shapely.box(WRONG_LEFT, SECTION_LOW, right, SECTION_TOP))
    pen.knife((middle, SECTION_LOW - 0.6), 0.0)
    pen.wrong(WRONG_LEFT + 0.5, SECTION_LOW - 1.5, right - 0.5, SECTION_TOP + 8.0)


def edge_grooved(pen: SketchPen) -> None:
    """Draw the edge of a layer, much larger, with grooves down from its ticks, and a stick with a round end that presses one in."""
    pen.scene("edge_grooved")
    left, wide, high = 1.0, 22.0, 9.5
    low = SECTION_LOW - 1.0
    slope = (3.0, 5.0)
    face = ((left, low), (left + wide, low), (left + wide, low + high), (left, low + high))
    roof = (
        face[3],
        face[2],
        (face[2][0] + slope[0], face[2][1] + slope[1]),
        (face[3][0] + slope[0], face[3][1] + slope[1]),
    )
    for ring in (roof, face):
        pen.white(*ring)
        pen.line(*ring, style=PICTURE_CONTOUR, closed=True)
    pen.taken.append(shapely.box(left, low, left + wide + slope[0], low + high + slope[1]))
    for step in range(3):
        x = left + 4.0 + 7.0 * step
        pen.line((x + 0.5, low + high + 0.8), (x + 2.2, low + high + 3.6), style=PICTURE_DETAIL)
        if step < 2:
            bottom, half = low, 0.8
            pen.line((x - half, bottom), (x - half, low + high), style=PICTURE_DETAIL)
            pen.line((x + half, bottom), (x + half, low + high), style=PICTURE_DETAIL)
            pen.line(*along_arc((x, low + high), half, 0.0, 180.0, 8), style=PICTURE_CONTOUR)
    x = left + 18.0
    tip = (x, low + 3.0)
    for side in (-0.8, 0.8):
        pen.line((x + side, low + 3.0), (x + side, low + high), style=PICTURE_DETAIL)
    pen.stick(tip, -32.0, 15.0)
    pen.arrow((x - 3.0, low + high - 0.8), (x - 3.0, low + 1.2))


def _row_ruled(pen: SketchPen, art: PartArt) -> Point:
    """Draw a rule along the longest row of a part's pattern, the row thick; return where a tool is on it."""
    row = _longest_row(art)
    if row is None:
        (x, y), _ = shapely.maximum_inscribed_circle(art.shape, 0.3).coords
        return float(x), float(y)
    (ax, ay), (bx, by) = row
    pen.rule(max(0.5, ax - 2.0), ay - RULE_FOOT, min(FIELD_WIDE - 0.5, bx + 2.0), ay - 0.3)
    pen.line((ax, ay), (bx, by), style=PICTURE_ADDED_CONTOUR)
    pen.arrow((ax + 0.1 * (bx - ax), ay + 1.6), (ax + 0.1 * (bx - ax) + max(ARROW_HEAD, 0.3 * (bx - ax)), ay + 1.6))
    return ax + 0.62 * (bx - ax), ay


def _looked_at(pen: SketchPen, at: Point, to: Point) -> None:
    """Draw a ring round the place of a part that the section shows, with a line from it to the section."""
    radius = 2.0
    pen.line(*along_arc(at, radius, 0.0, 345.0, 23), style=PICTURE_DETAIL, closed=True)
    turn = atan2(to[1] - at[1], to[0] - at[0])
    start = (at[0] + radius * cos(turn), at[1] + radius * sin(turn))
    pen.line(start, to, style=PICTURE_DETAIL)
    pen.taken += [shapely.Point(at).buffer(radius), shapely.LineString([start, to]).buffer(0.4)]


def scored_section(pen: SketchPen, *, grooved: bool) -> None:
    """Draw a board with a cut for a fold, a knife in it and a tick; the board folded; and one that is cut through, crossed out.

    ``grooved``: a V that closes when the board is folded to the cut side, else a cut that opens as it is folded away from it.
    """
    pen.scene("scored_grooved" if grooved else "scored_plain")
    left, skin = 1.0, 1.8
    middle = left + FOLD_WIDE
    half = SECTION - skin if grooved else 0.25
    deep = SECTION_LOW + (skin if grooved else SECTION / 2)
    right = left + 2 * FOLD_WIDE
    notch = ((middle + half, SECTION_TOP), (middle, deep), (middle - half, SECTION_TOP))
    pen.section((left, SECTION_LOW), (right, SECTION_LOW), (right, SECTION_TOP), *notch, (left, SECTION_TOP))
    pen.knife((middle, deep), -40.0 if grooved else 0.0)
    pen.right(left, SECTION_TOP + 4.0)
    pen.arrow((21.5, SECTION_LOW + 4.0), (26.5, SECTION_LOW + 4.0))
    hinge = (37.0, SECTION_LOW + (1.0 if grooved else 4.0))
    for ring in _folded_limbs(hinge, skin, grooved):
        pen.section(*ring)
    if grooved:
        pen.turning(hinge, 13.0, 170.0, 100.0)
    else:
        pen.turning((hinge[0], hinge[1]), 12.0, 170.0, 215.0)
    pen.taken.append(shapely.box(left, SECTION_LOW, 50.0, SECTION_TOP + 9.0))
    cut_through(pen)


def _folded_limbs(hinge: Point, skin: float, grooved: bool) -> tuple[tuple[Point, ...], ...]:
    """Return both halves of a board folded by a right angle at a hinge."""
    if grooved:  # the V closes: both halves meet in a mitre, the skin runs round outside
        arm, deep = FOLD_WIDE + 2.0, SECTION - skin
        flat = shapely.Polygon([(-skin, -skin), (arm, -skin), (arm, deep), (deep, deep), (0.0, 0.0), (-skin, 0.0)])
        other = shapely.Polygon([(0.0, -skin), (-arm, -skin), (-arm, deep), (-deep, deep), (0.0, 0.0)])
        turned = (flat, rotate(other, -90.0, origin=(0.0, 0.0)))
    else:  # the cut opens at the outside
        low = -SECTION / 2
        flat = shapely.Polygon([(0.0, low), (FOLD_WIDE + 2.0, low), (FOLD_WIDE + 2.0, -low), (0.0, -low)])
        other = shapely.Polygon([(0.0, low), (-FOLD_WIDE - 2.0, low), (-FOLD_WIDE - 2.0, -low), (0.0, -low)])
        turned = (flat, rotate(other, 45.0, origin=(0.0, 0.0)))
    return tuple(tuple((float(x), float(y)) for x, y in translate(one, *hinge).exterior.coords[:-1]) for one in turned)


def _score_lines(art: PartArt) -> list[shapely.LineString]:
    """Return the lines of a part along which it is cut half through, in the sketch, the longest first."""
    lines = [
        art.line_of(mark.path)
        for mark in art.part.marks
        if mark.kind in (LineKind.SCORE, LineKind.FOLD)
        and (mark.purpose is Purpose.SURFACE or (mark.purpose is Purpose.BEND and bool(art.part.folds)))
        and len(mark.path.points) > 1
    ]
    return sorted(lines, key=lambda line: -line.length)


def _longest_row(art: PartArt) -> tuple[Point, Point] | None:
    """Return the longest level line of a part's pattern in the middle half of its height, in the sketch, so high that the rule under it
    hides no edge of the part; the highest where none is."""
    low, high = art.shape.bounds[1], art.shape.bounds[3]
    rows = [
        art.line_of(mark.path)
        for mark in art.part.marks
        if mark.purpose is Purpose.SURFACE and len(mark.path.points) > 1
    ]
    level = []
    for row in rows:
        (ax, ay), (bx, by) = row.coords[0], row.coords[-1]
        turned = abs(degrees(atan2(by - ay, bx - ax))) % 180.0
        straight = hypot(bx - ax, by - ay) > 0.999 * row.length  # an arc has level ends too
        if straight and min(turned, 180.0 - turned) < 5.0 and low + 0.2 * (high - low) < ay < high - 0.1 * (high - low):
            level.append(((ax, ay), (bx, by)) if ax < bx else ((bx, by), (ax, ay)))
    clear = [ends for ends in level if ends[0][1] - RULE_FOOT > low + RULE_CLEAR]
    if not clear:
        return max(level, key=lambda ends: ends[0][1], default=None)
    return max(clear, key=lambda ends: (round(ends[1][0] - ends[0][0], 1), ends[0][1]))


def _tick(art: PartArt) -> Point:
    """Return where a joint tick of a layer meets its edge, the one nearest to the section."""
    ticks = [mark.path.points[0] for mark in art.part.marks if mark.purpose is Purpose.JOINT_TICK]
    return max(map(art.carry, ticks), key=lambda point: point[0] + 2 * point[1])


def _point(at: Sequence[float]) -> Point:
    return float(at[0]), float(at[1])
