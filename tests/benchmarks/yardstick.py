"""Small works beside a fixed one, as ratios that hold on a busy machine.

Each runs in turn with the yardstick, A B A B …; the median of the ratios of the pairs counts."""

from collections.abc import Callable
from math import cos, sin
from statistics import median
from time import process_time

import shapely

RUNS = 7


def fixed_work() -> object:
    """Do the yardstick's work, some 10 ms: numbers in Python and outlines in the library, as in most rooms."""
    rings = []
    for k in range(40):
        points = [((20.0 + k % 3) * cos(i / 16.0) + k, 20.0 * sin(i / 16.0)) for i in range(100)]
        rings.append(shapely.Polygon(points).buffer(0.5, join_style="mitre"))
    return shapely.union_all(rings)


def seconds(work: Callable[[], object]) -> float:
    """Return the processor time that ``work`` takes, in seconds."""
    start = process_time()
    work()
    return process_time() - start


def compare(name: str, work: Callable[[], object], most: float, runs: int = RUNS) -> bool:
    """Print one row: the least seconds, the ratio to the yardstick and the most it may be. Return whether it is kept."""
    work(), fixed_work()
    pairs = [(seconds(work), seconds(fixed_work)) for _ in range(runs)]
    ratio, least = median(ours / theirs for ours, theirs in pairs), min(ours for ours, _ in pairs)
    print(f"{name:40} {least * 1000:8.1f} ms {ratio:8.2f} × (at most {most:g})", flush=True)
    return ratio <= most
