"""Pieces without a template: what a buyer measures out on the board by rule, promised; or why a rule does not do.

All is measured from the lower left corner of the finished piece, as one looks at its drawn face.
"""

from collections.abc import Iterator, Sequence

import shapely

from publisher.basics import EdgePromise, Finding, HolePromise, Line, LineKind, Path, Place, Purpose, SizesPromise
from publisher.basics.wording import series
from publisher.geometry.making import whole_circle
from publisher.geometry.model import Edge, Mark, Part
from publisher.geometry.paths import polygon
from publisher.geometry.rules import NOT_BY_SIZES

OFF_UPRIGHT = 1e-3  # mm by which a side may be off its axis
OFF_SQUARE = 1e-6  # share of its box that a rectangle may not fill: dust of sines
MOST_KINDS_NAMED = 4  # kinds of lines in a message
AT_RIM = 1.0  # mm from the rim at which a line across a piece may end
DRAWN_LINES = (LineKind.DRAW, LineKind.REFERENCE)
SAID_AT_EDGES = (Purpose.BEVEL, Purpose.RABBET)


def sizes_key(part: str) -> str:
    """Return the name under which the sizes of a piece are promised."""
    return f"sizes:{part}"


def sizes_of(piece: Part) -> SizesPromise:
    """Return what the drawing of a piece must say. Raises ValueError for one that a rule does not mark out."""
    if why := hindrance(piece):
        raise ValueError(why)
    left, bottom, right, top = polygon(piece.outline).bounds
    holes = (_hole(ring, left, bottom) for ring in piece.outline.holes)
    lines = (_line(mark, (left, bottom, right, top)) for mark in piece.marks if _is_line(mark))
    return SizesPromise(
        sizes_key(piece.id),
        piece.id,
        piece.letter,
        right - left,
        top - bottom,
        tuple(sorted((hole for hole in holes if hole), key=lambda hole: (hole.left, hole.up))),
        tuple(sorted({line for line in lines if line})),
        tuple(edge for edge in map(_edge, piece.edges) if edge),
    )


def by_sizes(pieces: Sequence[Part], wanted: Sequence[str]) -> Iterator[Finding]:
    """Yield why pieces that are to have no template need one; ``wanted``: the ids of parts that ask for none."""
    for piece in pieces:
        if piece.printed != "sizes" and not set(piece.folded) & set(wanted):
            continue
        if why := hindrance(piece):
            yield _refused(piece, why, piece.place)


def _refused(piece: Part, why: str, place: Place) -> Finding:
    return NOT_BY_SIZES.found(
        f"part {piece.letter} “{piece.id}” is to be printed as sizes, but {why}",
        subject=f"part {piece.id}",
        hint="remove printed: sizes, so that it has a template",
        place=place,
    )


def hindrance(piece: Part) -> str:
    """Return in words why a rule does not mark a piece out; empty when it does."""
    other = [mark for mark in piece.marks if not _is_said(mark, polygon(piece.outline).bounds)]
    names = series([*dict.fromkeys((mark.name or mark.purpose).replace("_", " ") for mark in other)][:MOST_KINDS_NAMED])
    handed = piece.outline.holes or any(edge.bevel or edge.rabbet for edge in piece.edges)
    handed = handed or any(_is_line(mark) for mark in piece.marks)
    reasons = (
        (piece.folded, "it is folded from several panels in one piece"),
        (piece.bending is not None, "it is bent"),
        (not _is_rectangle(piece.outline.outer), "it is no upright rectangle with whole sides"),
        (
            not all(_is_rectangle(hole) or whole_circle(hole) for hole in piece.outline.holes),
            "it has an opening that is neither an upright rectangle nor round",
        ),
        (other, f"it has lines or letters that are copied from a template: {names}"),
        (piece.mirrored and handed, "some of its copies are mirror images"),
    )
    return next((why for hinders, why in reasons if hinders), "")


def _is_rectangle(ring: Path) -> bool:
    if not all(isinstance(edge, Line) for edge in ring.edges):
        return False
    left, bottom, right, top = shapely.Polygon(ring.points).bounds
    box = (right - left) * (top - bottom)
    return bool(abs(shapely.Polygon(ring.points).area - box) <= OFF_SQUARE * box)


def _is_line(mark: Mark) -> bool:
    return len(mark.path.points) > 1 and mark.purpose not in SAID_AT_EDGES


def _is_said(mark: Mark, bounds: tuple[float, float, float, float]) -> bool:
    """Say whether words can tell all of a mark: words and lines of a bevel or rabbet, lines right across the piece."""
    if _is_line(mark):  # what is scored or folded is no line to draw
        return mark.kind in DRAWN_LINES and _line(mark, bounds) is not None
    return mark.purpose in SAID_AT_EDGES


def _line(mark: Mark, bounds: tuple[float, float, float, float]) -> tuple[bool, float] | None:
    """Return of a straight line right across a piece whether it is level, and how far (mm) it lies from the lower or left side."""
    left, bottom, right, top = bounds
    (ax, ay), (bx, by) = mark.path.points[0], mark.path.points[-1]
    if len(mark.path.points) > 2 or mark.path.closed:
        return None
    if abs(ay - by) < OFF_UPRIGHT and min(ax, bx) - left < AT_RIM and right - max(ax, bx) < AT_RIM:
        return True, round(ay - bottom, 6)
    if abs(ax - bx) < OFF_UPRIGHT and min(ay, by) - bottom < AT_RIM and top - max(ay, by) < AT_RIM:
        return False, round(ax - left, 6)
    return None


def _hole(ring: Path, left: float, bottom: float) -> HolePromise | None:
    """Return a hole as it is measured: a rectangle by its lower left corner, a round one by its middle."""
    if found := whole_circle(ring):
        (x, y), radius = found
        return HolePromise(x - left, y - bottom, 2.0 * radius, 2.0 * radius, True)
    a, b, c, d = shapely.Polygon(ring.points).bounds
    return HolePromise(a - left, b - bottom, c - a, d - b, False)


def _edge(edge: Edge) -> EdgePromise | None:
    """Return what is cut at an edge beside its line; None for a square one."""
    if not edge.bevel and edge.rabbet is None:
        return None
    (ax, ay), (bx, by) = edge.start, edge.end
    rabbet = edge.rabbet.width if edge.rabbet else 0.0
    if abs(ay - by) < OFF_UPRIGHT:
        return EdgePromise("bottom" if bx > ax else "top", edge.bevel, rabbet)
    return EdgePromise("right" if by > ay else "left", edge.bevel, rabbet)
