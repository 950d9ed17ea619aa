"""Half templates: of a piece that is its own mirror image one half is drawn, flipped over along the line between both, and drawn again."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from publisher.basics import Finding, LineKind, Point, Purpose, polyline
from publisher.geometry.making import left_of
from publisher.geometry.model import HalfTemplate, Mark, Part, Region
from publisher.geometry.paths import line_string, polygon, recover
from publisher.geometry.rules import NO_HALF

SAME_OUTLINE = 0.01  # mm between an outline or a line and its mirror image
BEYOND_HALF = 1.0  # mm by which what is cut with reaches over the piece
LEAST_FLIP = 8.0  # mm: the shortest straight side along which a card is flipped over
FLIP = "flip along this side"
MIRROR_LINE = "mirror line"


def with_halves(pieces: Sequence[Part]) -> tuple[tuple[Part, ...], tuple[Finding, ...]]:
    """Return the pieces, those that ask for it with half a template; findings for those that are not their own mirror image."""
    made: list[Part] = []
    found: list[Finding] = []
    for piece in pieces:
        half = halved(piece) if piece.printed == "half" else piece
        if isinstance(half, Part):
            made.append(half)
            continue
        made.append(piece)
        found.append(
            NO_HALF.found(
                f"part {piece.letter} “{piece.id}” is to be printed as half a template, but {half}",
                subject=f"part {piece.id}",
                hint="remove printed: half, or make both its sides alike",
                place=piece.place,
            )
        )
    return tuple(made), tuple(found)


def halved(piece: Part) -> Part | str:
    """Return a piece with half its template, or in words why neither way to cut it gives one: it is cut across its longer side where both
    ways will do."""
    if piece.folded:
        return "it is folded from several panels in one piece"
    whole = polygon(piece.template)
    left, bottom, right, top = whole.bounds
    why: list[str] = []
    for axis in (0, 1) if right - left >= top - bottom else (1, 0):
        reason = _unlike(piece, whole, axis)
        half = None if reason else _half(piece.template, whole, axis)
        if half is not None:
            return replace(piece, template=half[0], half=HalfTemplate(piece.template, half[1]))
        why.append(reason or "half of it falls apart, or has no straight side to be flipped over along")
    return ", and ".join(dict.fromkeys(why))


def half_marks(piece: Part) -> tuple[Mark, ...]:
    """Return what of a piece's marks lies on its half template, and the words at the side along which that is flipped over; of a piece
    with a whole template all its marks."""
    if piece.half is None:
        return piece.marks
    ground = polygon(piece.template)
    kept = (mark for one in piece.marks for mark in _left(one, ground))
    middle = _side(ground, piece.half.line).interpolate(0.5, normalized=True)
    words = Mark(LineKind.REFERENCE, Purpose.CENTRE, polyline(((middle.x, middle.y),)), name=MIRROR_LINE, text=FLIP)
    return (*kept, words)


def _left(mark: Mark, ground: shapely.Polygon) -> Iterator[Mark]:
    line = line_string(mark.path)
    if line.geom_type == "Point" or len(mark.path.points) == 1:
        if ground.covers(shapely.Point(mark.path.points[0])):
            yield mark
    elif ground.covers(line):
        yield mark
    else:
        yield from left_of(mark, line, ground)


def _mirrored(geometry: shapely.Geometry, axis: int, bounds: tuple[float, ...]) -> shapely.Geometry:
    """Return a geometry turned over about the middle line of a box: upright (``axis`` 0) or level (1)."""
    twice = bounds[axis] + bounds[axis + 2]
    move, sign = ((twice, 0.0), (-1.0, 1.0)) if axis == 0 else ((0.0, twice), (1.0, -1.0))
    return shapely.transform(geometry, lambda points: points * sign + move)


def _unlike(piece: Part, whole: shapely.Polygon, axis: int) -> str:
    """Return in words what of a piece differs from its mirror image; empty when nothing does."""
    bounds, way = whole.bounds, ("left and right", "top and bottom")[axis]
    turned = _mirrored(whole, axis, bounds)
    if shapely.hausdorff_distance(whole.boundary, turned.boundary) > SAME_OUTLINE:
        return f"its outline or an opening differs {way}"
    for mark in piece.marks:
        image = _mirrored(line_string(mark.path), axis, bounds)
        if not any(_alike(mark, image, other) for other in piece.marks):
            name = (mark.text or mark.name or mark.purpose).replace("_", " ")
            return f"“{name}” on it differs {way}"
    return ""


def _alike(mark: Mark, image: shapely.Geometry, other: Mark) -> bool:
    same = (mark.kind, mark.purpose, mark.text) == (other.kind, other.purpose, other.text)
    return bool(same and shapely.hausdorff_distance(image, line_string(other.path)) <= SAME_OUTLINE)


def _half(template: Region, whole: shapely.Polygon, axis: int) -> tuple[Region, tuple[Point, Point]] | None:
    """Return the left or the lower half of a template and the line between both; None where it is not one piece with a straight side."""
    left, bottom, right, top = whole.bounds
    middle = (left + right) / 2.0 if axis == 0 else (bottom + top) / 2.0
    box = (
        left - BEYOND_HALF,
        bottom - BEYOND_HALF,
        *((middle, top + BEYOND_HALF) if axis == 0 else (right + BEYOND_HALF, middle)),
    )
    x, y, far, high = box
    corners = ((x, y), (far, y), (far, high), (x, high))
    region, _ = recover(
        shapely.intersection(whole, shapely.box(*box)), (template, Region(polyline(corners, True, MIRROR_LINE)))
    )
    line = ((middle, bottom), (middle, top)) if axis == 0 else ((left, middle), (right, middle))
    if region is None or _side(polygon(region), line).length < LEAST_FLIP:
        return None
    return region, line


def _side(ground: shapely.Polygon, line: tuple[Point, Point]) -> shapely.LineString:
    """Return the longest stretch of a half's rim along the line at which it is flipped over."""
    along = shapely.intersection(ground.boundary, shapely.LineString(line).buffer(1e-4, cap_style="flat"))
    pieces = [one for one in shapely.get_parts(shapely.line_merge(along)) if one.geom_type == "LineString"]
    return max(pieces, key=lambda one: one.length, default=shapely.LineString())
