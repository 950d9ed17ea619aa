"""No layout ever fails: random problems near every limit, each judged by geometry that no engine uses (polygons moved by shapely's
own transformations, distances between them)."""

from math import cos, hypot, pi, sin
from random import Random

import pytest
import shapely
from shapely.affinity import rotate, scale, translate

from publisher.basics import Place
from publisher.design import Board, SheetSize
from publisher.material import Item, Piece
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import best_turn
from publisher.material.problem import Problem, alone, frames
from tests.searches.profile import dice, rounds

CLOSE = 0.002  # mm; copies keep the gap, and the sheet's edge, to this
SHEETS = ((508.0, 762.0), (297.0, 420.0), (500.0, 700.0), (300.0, 200.0))
SCRAP = (
    90.0,
    60.0,
)  # hundreds of the smallest parts lie on it, all of which are judged; on a whole sheet lie 20,000, for as many seconds


def kth(chance: Random, width: float, height: float) -> shapely.Polygon:
    """Return a rectangle of which k go across the sheet and j up it exactly, or all but."""
    hair = chance.choice([0.0, 0.0, 1e-6, 0.001, 0.003, 0.004, -0.001])
    across, up = width / chance.randint(1, 9) + hair, height / chance.randint(1, 9) + chance.choice([0.0, hair])
    return shapely.box(0, 0, round(across, 6), round(up, 6))


def diagonal(chance: Random, width: float, height: float) -> shapely.Polygon:
    """Return a strip that fits only askew, or not at all."""
    return shapely.box(0, 0, round(chance.uniform(0.7, 1.0) * hypot(width, height), 2), chance.choice([3.0, 20.0]))


def sliver(chance: Random, width: float, height: float) -> shapely.Polygon:
    """Return a strip as narrow as a cut."""
    return shapely.box(0, 0, round(chance.uniform(0.1, 0.8) * max(width, height), 2), chance.choice([1.0, 2.0, 3.175]))


def small(chance: Random, *_: float) -> shapely.Polygon:
    """Return a disc, or a polygon, of a millimetre or two."""
    return shapely.Point(0, 0).buffer(chance.uniform(0.5, 2.0), quad_segs=chance.choice([1, 3, 24]))


def tabbed(chance: Random, *_: float) -> shapely.Polygon:
    """Return a wall with a tab, or with a notch."""
    body = shapely.box(0, 0, chance.uniform(40, 120), chance.uniform(40, 120))
    return chance.choice([body.union(shapely.box(10, -5, 25, 1)), body.difference(shapely.box(10, -1, 25, 5))])


def ring(chance: Random, *_: float) -> shapely.Polygon:
    """Return a ring, into whose hole others may go."""
    outer = chance.uniform(15, 140)
    hole = shapely.Point(0, 0).buffer(outer * chance.uniform(0.3, 0.9))
    return shapely.Point(0, 0).buffer(outer).difference(hole)


def angle(chance: Random, *_: float) -> shapely.Polygon:
    """Return an L."""
    side = chance.uniform(30, 200)
    return shapely.box(0, 0, side, side).difference(shapely.box(side / 3, side / 3, side, side))


def polygon(chance: Random, *_: float) -> shapely.Polygon:
    """Return a regular polygon at any turn."""
    radius, turn, sides = chance.uniform(15, 100), chance.uniform(0, 7), chance.randint(3, 9)
    turns = [turn + 2 * pi * k / sides for k in range(sides)]
    return shapely.Polygon([(radius * cos(t), radius * sin(t)) for t in turns])


OUTLINES = (kth, kth, diagonal, sliver, small, tabbed, ring, angle, polygon)
TINY = {sliver, small}


def lying(shape: shapely.Polygon, item: Item) -> shapely.Geometry:
    """Return a copy where it lies, by shapely's own means."""
    pose = item.pose
    bare = scale(shape, -1, 1, origin=(0, 0)) if pose.mirrored else shape
    return translate(rotate(bare, pose.turn, origin=(0, 0)), pose.x, pose.y)


def insist_that_it_holds(
    problem: Problem, shapes: dict[str, shapely.Polygon], sheets: tuple[tuple[Item, ...], ...]
) -> None:
    """Fail unless every copy lies on the sheet and keeps the gap."""
    free, gap = problem.free(), problem.board.knife_gap
    room = shapely.box(free.left - CLOSE, free.bottom - CLOSE, free.right + CLOSE, free.top + CLOSE)
    for sheet in sheets:
        laid = [lying(shapes[item.part], item) for item in sheet[:400]]
        assert shapely.covers(room, laid).all()
        tree = shapely.STRtree(laid)
        first, second = tree.query(laid, predicate="dwithin", distance=max(gap - CLOSE, 0.0))
        for i, j in zip(first.tolist(), second.tolist(), strict=True):
            if i < j and gap > CLOSE:
                pytest.fail(f"{shapely.distance(laid[i], laid[j]):.4f} mm apart instead of {gap}")
            if i < j:
                assert laid[i].intersection(laid[j]).area <= CLOSE * max(laid[i].length, laid[j].length)


@pytest.mark.search
def test_random_problems_are_all_laid_out() -> None:
    """Alone and in lists, gaps 0 and 1, margins, grain, turns: whatever fits one sheet is laid out whole, and nothing else is."""
    chance = dice(5)
    for _ in range(rounds(4, 10_000)):
        kinds = chance.choices(OUTLINES, k=chance.choice([1, 1, 3]))
        width, height = SCRAP if {*kinds} <= TINY and chance.random() < 0.95 else chance.choice(SHEETS)
        gap, margin = chance.choice([0.0, 0.0, 1.0]), chance.choice([0.0, 0.0, 3.0])
        grain = chance.choice(["none", "none", "along", "across"])
        board = Board("foam", 5.0, 0.2, "bare", (SheetSize("", width, height),), gap, margin, grain, Place("spec.yaml"))
        room = width - 2 * margin, height - 2 * margin
        shapes = {f"p{k}": kind(chance, *room) for k, kind in enumerate(kinds)}
        pieces = []
        for name, shape in shapes.items():
            rings = tuple(
                tuple((float(x), float(y)) for x, y in line.coords[:-1]) for line in (shape.exterior, *shape.interiors)
            )
            turns = chance.choice([(), (0.0, 90.0, 180.0, 270.0), (0.0, 180.0)]) if grain == "none" else (0.0, 180.0)
            count = chance.randint(1, 9)
            piece = Piece(name, rings, turns, count, chance.choice([0, count // 2]))
            if best_turn(piece, *room, frames(grain))[1] <= 0.0:
                pieces.append(piece)
        if not pieces:
            continue
        listed = Problem(tuple(pieces), board, board.sheets[0], frames(grain), False)
        desk = Desk(EFFORTS["quick"])
        packed = solve(listed, desk)
        assert sum(map(len, packed.sheets)) == sum(piece.count for piece in pieces)
        insist_that_it_holds(listed, shapes, packed.sheets)
        single = alone(max(pieces, key=lambda piece: shapes[piece.id].area), board, board.sheets[0])
        (sheet,) = solve(single, desk).sheets
        assert sheet
        insist_that_it_holds(single, shapes, (sheet,))
