"""Parts that are easily taken for one another, side by side: large letters, an equals sign crossed out, black where they differ."""

from collections.abc import Iterator, Sequence
from itertools import combinations

import shapely
from shapely.affinity import rotate, scale, translate

from publisher.basics import Box, LineKind, Purpose, remembered
from publisher.geometry import Part, polygon
from publisher.pages.instructions.part_art import PartArt, part_cells, ring_points
from publisher.pages.instructions.part_sketches import FIELD_TALL, FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.sketch_places import room_for
from publisher.pages.type import PICTURE_ADDED_CONTOUR, PICTURE_CUE, PICTURE_GHOST, TITLE

TAKEN_FOR = 5.0  # mm: outlines that differ by less are taken for one another; mirror images are, whatever their size
QUARTERS = (0.0, 90.0, 180.0, 270.0)
UNDER_PART = 1.2  # mm between a thin part and its letter under it
EQUAL_WITHIN = 0.05  # mm: outlines that differ by less are equal

Pair = tuple[Part, Part]


def alike_pairs(parts: Sequence[Part]) -> tuple[Pair, ...]:
    """Return the pairs of different parts that look alike, however one of them lies or is turned over; parts that are equal are none,
    whichever of them is taken fits."""
    pairs = (pair for pair in combinations(parts, 2) if pair[0].letter != pair[1].letter)
    return tuple(pair for pair in pairs if _apart(*pair) < TAKEN_FOR and not equal(*pair))


@remembered
def equal(one: Part, other: Part) -> bool:
    """Tell whether two parts are one piece under two letters: of one board, of one outline where one lies turned on the other, with edges
    worked alike and the same lines on their faces."""
    if (one.board, round(one.thickness, 3)) != (other.board, round(other.thickness, 3)) or one.bending != other.bending:
        return False
    own = _centred(polygon(one.outline))
    turned = (_centred(rotate(polygon(other.outline), turn)) for turn in QUARTERS)
    return any(_distance(own, lying) < EQUAL_WITHIN for lying in turned) and _worked(one) == _worked(other)


def _worked(part: Part) -> tuple[object, ...]:
    """Return what is done to a part's edges and drawn on its face, for all but letters."""
    edges = sorted(
        (round(edge.nominal_length, 2), round(edge.bevel, 2), edge.rabbet is not None) for edge in part.edges
    )
    lines = sorted(
        (mark.kind.name, mark.purpose.name, round(mark.path.length, 1))
        for mark in part.marks
        if mark.purpose is Purpose.SURFACE or mark.kind in (LineKind.SCORE, LineKind.FOLD)
    )
    return (edges, lines)


def telling_apart(pen: SketchPen, pair: Pair) -> None:
    """Two parts to one scale, a crossed-out equals sign between them; black is what one has and the other lacks where they lie on one
    another; mirror images do not."""
    one, other = (polygon(part.outline) for part in pair)
    shown = [one, other, *(lain for lain in (_laid_on(one, other), _laid_on(other, one)) if lain is not None)]
    wide = max(shape.bounds[2] - shape.bounds[0] for shape in shown)
    high = max(shape.bounds[3] - shape.bounds[1] for shape in shown)
    room = (FIELD_WIDE - 14.0) / 2
    cells = (Box(0.0, 1.0, room, FIELD_TALL - 1.0), Box(FIELD_WIDE - room, 1.0, FIELD_WIDE, FIELD_TALL - 1.0))
    most = min((room - 2.0) / wide, (FIELD_TALL - 9.0) / high, 1.0)
    arts = [_at_scale(part, cell, most) for part, cell in zip(pair, cells, strict=True)]
    unlike = _distance(*(_centred(art.shape) for art in arts)) >= EQUAL_WITHIN
    for art, beside in (arts, arts[::-1]):
        art.outline(pen)
        if not unlike:  # the outlines tell nothing: what is on the faces and at the edges does
            art.marks(pen, (Purpose.SURFACE, Purpose.JOINT_TICK, Purpose.BEND))
            for edge in art.part.edges:
                if abs(edge.bevel) > 0.5:
                    pen.line(art.carry(edge.start), art.carry(edge.end), style=PICTURE_ADDED_CONTOUR)
        lain = _laid_on(art.shape, beside.shape, most)
        if lain is not None:
            pen.line(*ring_points(lain.exterior), style=PICTURE_GHOST, closed=True)
            pen.blackened(art.shape.difference(lain.buffer(0.15)))
    for art in arts:
        _large_letter(pen, art)
    x, y = FIELD_WIDE / 2, FIELD_TALL / 2
    for up in (-1.0, 1.0):
        pen.line((x - 3.0, y + up), (x + 3.0, y + up), style=PICTURE_CUE)
    pen.wrong(x - 4.0, y - 4.0, x + 4.0, y + 4.0)


def _at_scale(part: Part, cell: Box, most: float) -> PartArt:
    """Return a part in a cell at a scale that both parts share."""
    (art,) = part_cells([(part, 0)], cell)
    left, bottom, right, top = polygon(part.outline).bounds
    x = (cell.left + cell.right) / 2 - most * (left + right) / 2
    y = (cell.bottom + 6.0 + cell.top) / 2 - most * (bottom + top) / 2
    return PartArt(part, cell, (x, y), most, art.count, art.around)


def _large_letter(pen: SketchPen, art: PartArt) -> None:
    """Set a part's letter on it, as large as a step's number; under one that has no room for it: without letters nothing is told."""
    (x, y), radius = room_for(pen, art.shape)
    high = pen.setter.cap(TITLE) / pen.scale
    if radius < high:
        left, bottom, right, _ = art.shape.bounds
        x, y = (left + right) / 2, bottom - UNDER_PART - high / 2
    box = Box(x - high / 2, y - high / 2, x + high / 2, y + high / 2).grown(0.8)
    pen.white(*box.corners())
    pen.said.append(shapely.box(*box.sides))
    pen.drawn += pen.setter.line(
        art.part.letter, TITLE.tagged("figure"), *pen.on_page((x, y - high / 2)), align="centre"
    )


@remembered
def _apart(one: Part, other: Part) -> float:
    """Return by how many mm the outlines of two parts differ where one lies best on the other, turned, or turned over."""
    own = _centred(polygon(one.outline))
    return min((_distance(own, lying) for lying in _ways(polygon(other.outline))), default=TAKEN_FOR)


def _ways(shape: shapely.Polygon) -> Iterator[shapely.Polygon]:
    for mirrored in (1.0, -1.0):
        for turn in QUARTERS:
            yield _centred(rotate(scale(shape, mirrored, 1.0), turn))


def _laid_on(shape: shapely.Polygon, other: shapely.Polygon, smaller: float = 1.0) -> shapely.Polygon | None:
    """Return the other part laid on one, turned where it must be, both so much ``smaller`` than they are; None where it would have to be
    turned over."""
    own = _centred(shape)
    turned = [_centred(rotate(other, turn)) for turn in QUARTERS]
    best = min(turned, key=lambda lying: round(_distance(own, lying), 1))
    if _distance(own, best) >= TAKEN_FOR * smaller:
        return None
    middle = shapely.box(*shape.bounds).centroid
    return translate(best, middle.x, middle.y)


def _centred(shape: shapely.Polygon) -> shapely.Polygon:
    middle = shapely.box(*shape.bounds).centroid
    return translate(shape, -middle.x, -middle.y)


def _distance(one: shapely.Polygon, other: shapely.Polygon) -> float:
    """Return how far (mm) two outlines with their openings are apart at most; no more than a glance where their sizes differ."""
    sizes = [(b[2] - b[0], b[3] - b[1]) for b in (one.bounds, other.bounds)]
    rough = float(max(abs(a - b) / 2 for a, b in zip(*sizes, strict=True)))
    if rough >= TAKEN_FOR:
        return rough
    return float(shapely.hausdorff_distance(one.boundary, other.boundary, densify=0.2))
