"""Time and memory of one sheet at the quick effort, for problems that are hard: ``python -m tests.benchmarks.sheet_limits``.

Each is laid out in a process of its own: seconds of its processor and its peak memory, imports included. Returns 1 when one takes more than
10 s or 300 MB, or a hint of a split more than a second.
"""

import subprocess
import sys
import time
from math import cos, pi, sin
from types import SimpleNamespace

import shapely

from publisher.material import Piece
from publisher.material.engines import EFFORTS, Desk, solve
from publisher.material.problem import Problem, alone, frames
from publisher.material.splitting import propose_split
from tests.benchmarks.reference_part import QUARTERS, board, layer, rings
from tests.benchmarks.whole_path import run

MOST_SECONDS, MOST_MB, MOST_HINT = 10.0, 300.0, 1.0
Ring = tuple[tuple[float, float], ...]


def wavy(points: int, long: float, high: float) -> Ring:
    """Return a wavy oval of so many points."""
    turns = (2 * pi * k / points for k in range(points))
    return tuple((long / 2 * cos(t) + cos(20 * t), high / 2 * sin(t) + sin(20 * t)) for t in turns)


def polygon(sides: int, radius: float) -> tuple[Ring, ...]:
    """Return a regular polygon."""
    return (tuple((radius * cos(2 * pi * k / sides), radius * sin(2 * pi * k / sides)) for k in range(sides)),)


ALONE: dict[str, Piece] = {
    "disc of 1 mm": Piece("a", rings(shapely.Point(0, 0).buffer(1.0, quad_segs=24)), ()),
    "polygon of 95 sides, 1 mm": Piece("a", polygon(95, 1.0), ()),
    "square of 3 mm": Piece("a", rings(shapely.box(0, 0, 3, 3)), ()),
    "sliver 400 × 1 mm": Piece("a", rings(shapely.box(0, 0, 400, 1)), ()),
    "strip 780 × 20 mm, askew only": Piece("a", rings(shapely.box(0, 0, 780, 20)), ()),
    "tile of 84.67 mm": Piece("a", rings(shapely.box(0, 0, 84.67, 84.67)), ()),
    "oval of 100,000 points": Piece("a", (wavy(100_000, 120.0, 80.0),), ()),
    "reference part": Piece("a", layer(), ()),
}
LISTS: dict[str, tuple[Piece, ...]] = {
    "400 layers and 300 tiles": (Piece("a", layer(), (), 400), Piece("b", rings(shapely.box(0, 0, 60, 41)), QUARTERS, 300)),
    "30 kinds of wedge, 4 of each": tuple(
        Piece(f"p{k}", (((0.0, 0.0), (40.0 + 3 * k, 0.0), (20.0, 30.0 + 2 * k)),), (), 4) for k in range(30)
    ),
}  # fmt: skip


def laid(name: str) -> int:
    """Lay one problem out; return how many sheets it takes."""
    foam = board(508.0, 762.0, 1.0)
    problem = (
        alone(ALONE[name], foam, foam.sheets[0])
        if name in ALONE
        else Problem(LISTS[name], foam, foam.sheets[0], frames("none"), False)
    )
    return len(solve(problem, Desk(EFFORTS["quick"])).sheets)


def hint_seconds(points: int) -> float:
    """Return the seconds of the processor that a hint takes for a part of so many points, at any turn and in quarters."""
    part = SimpleNamespace(outline=SimpleNamespace(holes=()))
    ring, start = wavy(points, 900.0, 240.0), time.process_time()
    for turns in ((), QUARTERS):
        assert propose_split(part, Piece("a", (ring,), turns), (502.0, 756.0), (0.0, 90.0)) is not None  # type: ignore[arg-type]
    return (time.process_time() - start) / 2


def main(words: list[str]) -> int:
    """Print a row for each problem; with a name, lay that one out."""
    if words:
        print(laid(words[0]))
        return 0
    good = True
    for name in (*ALONE, *LISTS):
        command = (sys.executable, "-m", "tests.benchmarks.sheet_limits", name)
        sheets = int(subprocess.run(command, capture_output=True, text=True, check=True).stdout)
        cpu, memory = run(*command)
        kept = cpu / sheets <= MOST_SECONDS and memory <= MOST_MB
        good &= kept
        print(f"{name:32} {cpu:6.1f} s on {sheets:3} sheet(s), {memory:5.0f} MB{'' if kept else '  over the limit'}")
    for points in (4, 1_000, 100_000):
        took = hint_seconds(points)
        good &= took <= MOST_HINT
        print(f"hint of a split, {points:7,} points  {took:6.2f} s")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
