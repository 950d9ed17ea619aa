"""The judge: every layout, wherever it comes from, is verified on the true outlines before anyone sees it.

Millimetres, floating point, distances between polygons (shapely), where the engines pack simplified outlines on whole numbers.
The free area of the sheet is the one that the engines were given.
"""

from collections import Counter
from collections.abc import Sequence

import numpy as np
import numpy.typing as npt
import shapely

from publisher.basics import Point, record
from publisher.material.model import Item, Piece

Laid = npt.NDArray[np.object_]  # shapely polygons
LAYOUT_TOLERANCE = 0.01  # mm; gaps and edges are kept to this
ANGLE_TOLERANCE = 1e-6  # degrees


class LayoutFault(Exception):
    """A layout of ours is wrong: a fault of this program (exit 3), never a row of a table."""


@record
class Flaw:
    """One thing wrong with a layout, in words, with the number found and the limit (mm, degrees or plain)."""

    message: str
    value: float
    limit: float


def polygons(pieces: Sequence[Piece], items: Sequence[Item]) -> Laid:
    """Return the items' true outlines (holes included) where they lie, as shapely polygons."""
    rings = {p.id: [np.array(ring) for ring in p.rings] for p in pieces}
    shapes = {name: shapely.Polygon(outer, holes) for name, (outer, *holes) in rings.items()}
    # an outline that crosses itself has no inside that geometry could judge: its hull is the least that is safe
    shapes = {name: shape if shape.is_valid else shape.convex_hull for name, shape in shapes.items()}
    bare = np.array([shapes[i.part] for i in items], dtype=object)
    matrices = np.array([i.pose.matrix() for i in items]).reshape(-1, 6)
    points, owner = shapely.get_coordinates(bare, return_index=True)
    a, b, c, d, e, f = matrices[owner].T
    x, y = points[:, 0], points[:, 1]
    return np.asarray(shapely.set_coordinates(bare.copy(), np.column_stack((a * x + c * y + e, b * x + d * y + f))))


def flaws(
    pieces: Sequence[Piece],
    container: tuple[tuple[Point, ...], ...],
    gap: float,
    sheets: Sequence[Sequence[Item]],
    complete: bool,
) -> tuple[Flaw, ...]:
    """Return all that is wrong with a layout; () when it holds.

    Checked: every part known, its pose finite, its turn among its allowed angles, no copy twice, no more copies (and no
    other number of mirrored ones) than asked, all copies there when ``complete``, inside the container, gaps kept.
    """
    known = {p.id: p for p in pieces}
    found: list[Flaw] = []
    for item in (i for sheet in sheets for i in sheet):
        if item.part not in known:
            return (Flaw(f"part “{item.part}” is not in the list", 0.0, 0.0),)
        if not np.isfinite((item.pose.x, item.pose.y, item.pose.turn)).all():
            return (Flaw(f"part “{item.part}” lies nowhere: its place is not a number", 0.0, 0.0),)
        angles = known[item.part].angles
        away = min(abs((item.pose.turn - a + 180.0) % 360.0 - 180.0) for a in angles) if angles else 0.0
        if away > ANGLE_TOLERANCE:
            found.append(Flaw(f"part “{item.part}” is turned as its board does not allow", item.pose.turn, away))
    found += _counted(known, [i for sheet in sheets for i in sheet], complete)
    free = shapely.Polygon(container[0], container[1:]).buffer(LAYOUT_TOLERANCE, join_style="mitre")
    shapely.prepare(free)
    for number, sheet in enumerate(sheets, 1):
        if sheet:
            laid = polygons(pieces, sheet)
            found += _inside(number, laid, free)
            found += _apart(number, laid, gap)
    return tuple(found)


def _counted(known: dict[str, Piece], items: Sequence[Item], complete: bool) -> list[Flaw]:
    """Check the numbers of copies, and that none is there twice."""
    found = []
    for (part, copy), times in Counter((i.part, i.copy) for i in items).items():
        if times > 1:
            found.append(Flaw(f"copy {copy} of part “{part}” lies there {times} times", times, 1))
    for piece in known.values():
        laid = Counter(i.pose.mirrored for i in items if i.part == piece.id)
        for mirrored, wanted in ((True, piece.mirrored), (False, piece.count - piece.mirrored)):
            if laid[mirrored] > wanted or (complete and laid[mirrored] < wanted):
                words = "mirrored copies" if mirrored else "copies"
                found.append(
                    Flaw(f"{laid[mirrored]} {words} of part “{piece.id}” instead of {wanted}", laid[mirrored], wanted)
                )
    return found


def _inside(number: int, laid: Laid, free: shapely.Polygon) -> list[Flaw]:
    """Check that all outlines lie in the free area, within the tolerance."""
    outside = laid[~shapely.covers(free, laid)]
    return [
        Flaw(f"a part reaches over the edge of sheet {number}", float(g.difference(free).area), 0.0) for g in outside
    ]


def _apart(number: int, laid: Laid, gap: float) -> list[Flaw]:
    """Check that all outlines keep the gap, within the tolerance."""
    if len(laid) < 2:
        return []
    if gap > LAYOUT_TOLERANCE:
        first, second = shapely.STRtree(laid).query(laid, predicate="dwithin", distance=gap - LAYOUT_TOLERANCE)
    else:
        # outlines that may touch: what is left of them without a rim of half the tolerance must not
        laid = shapely.buffer(laid, -LAYOUT_TOLERANCE / 2, join_style="mitre")
        first, second = shapely.STRtree(laid).query(laid, predicate="intersects")
    return [
        Flaw(f"two parts on sheet {number} lie closer than the gap", float(shapely.distance(laid[i], laid[j])), gap)
        for i, j in zip(first.tolist(), second.tolist(), strict=True)
        if i < j
    ]


def insist(
    pieces: Sequence[Piece],
    container: tuple[tuple[Point, ...], ...],
    gap: float,
    sheets: Sequence[Sequence[Item]],
    *,
    complete: bool,
    what: str,
) -> None:
    """Raise LayoutFault when a layout that we made does not hold."""
    wrong = flaws(pieces, container, gap, sheets, complete)
    if wrong:
        raise LayoutFault(f"{what}: {wrong[0].message} ({wrong[0].value:.4f}, limit {wrong[0].limit:.4f})")
