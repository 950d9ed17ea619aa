"""The sheet problems of the packing room, each beside its yardstick.

    python -m tests.benchmarks.reference_part

The reference part is a disc of radius 55 mm joined with a 30° step that reaches 105 mm; gap 1 mm, no margin, on a sheet of
508 × 762 mm. Yardsticks: general engines reached 26 at any turn and 25 in quarter turns (compared in 2026, 30 s each); 33 by
area. Each is laid out twice; times are of the processor, the improver's process included, and by the clock.
"""

import resource
import sys
import time
from math import cos, radians, sin

import shapely

from publisher.basics import Place
from publisher.design import Board, SheetSize
from publisher.material import Piece
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.fitting import grid_count
from publisher.material.packing import Packed
from publisher.material.problem import Problem, alone, frames

QUARTERS = (0.0, 90.0, 180.0, 270.0)


def rings(shape: shapely.Polygon) -> tuple[tuple[tuple[float, float], ...], ...]:
    """Return a polygon's rings, the last point not repeated."""
    loops = (shape.exterior, *shape.interiors)
    return tuple(tuple((float(x), float(y)) for x, y in shapely.get_coordinates(loop)[:-1]) for loop in loops)


def layer() -> tuple[tuple[tuple[float, float], ...], ...]:
    """Return the reference part."""
    arc = [(105.0 * cos(radians(a / 2)), 105.0 * sin(radians(a / 2))) for a in range(61)]
    return rings(shapely.Point(0, 0).buffer(55.0, quad_segs=90).union(shapely.Polygon([(0.0, 0.0), *arc])))


def board(width: float, height: float, gap: float) -> Board:
    """Return a board sold in one size, without a crushed margin."""
    return Board("foam", 5.0, 0.2, "bare", (SheetSize("", width, height),), gap, 0.0, "none", Place("spec.yaml"))


def run(title: str, problem: Problem, effort: str, grid: int | None, wanted: str) -> bool:
    """Lay one problem out twice, print a line, and return whether both layouts are the same."""
    made: list[Packed] = []
    spent, clock = _processor(), time.perf_counter()
    for _ in range(2):
        made.append(solve(problem, Desk(EFFORTS[effort])))  # judged inside: a layout that fails raises
    spent, clock = (_processor() - spent) / 2, (time.perf_counter() - clock) / 2
    count = f"{sum(map(len, made[0].sheets))} on {len(made[0].sheets)} sheet(s)"
    beside = "" if grid is None else f", grid {grid}"
    same = "the same twice" if made[0].sheets == made[1].sheets else "NOT THE SAME TWICE"
    print(f"{title}, {effort}: {count} by {made[0].engine}{beside}; wanted {wanted}; {spent:.1f} s of the processor, "
          f"{clock:.1f} s by the clock; {same}")  # fmt: skip
    return made[0].sheets == made[1].sheets


def _processor() -> float:
    used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(u.ru_utime + u.ru_stime for u in used)


def main() -> int:
    """Run all; return 1 when one is not the same twice."""
    foam = board(508.0, 762.0, 1.0)
    good = True
    for effort in ("quick", "careful"):
        for turns, wanted in (((), "27"), (QUARTERS, "25")):
            piece = Piece("layer", layer(), turns)
            grid = grid_count(piece, 508.0, 762.0, 1.0, frames("none"))
            name = "reference part, " + ("quarter turns" if turns else "any turn")
            good &= run(name, alone(piece, foam, foam.sheets[0]), effort, grid, wanted)
    exact = board(200.0, 300.0, 0.0)
    tile = Piece("tile", rings(shapely.box(0, 0, 50, 100)), QUARTERS)
    good &= run("rectangles 50 × 100 on 200 × 300", alone(tile, exact, exact.sheets[0]), "quick", 12, "12")
    ring = shapely.Point(0, 0).buffer(50.0, quad_segs=90).difference(shapely.Point(0, 0).buffer(35.0, quad_segs=90))
    mixed = (
        Piece("layer", layer(), (), 34),
        Piece("bar", rings(shapely.box(0, 0, 60, 200)), (), 14),
        Piece("ring", rings(ring), (), 9),
    )
    good &= run(
        "mixed list of 57", Problem(mixed, foam, foam.sheets[0], frames("none"), False), "quick", None, "3 sheets"
    )
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())
