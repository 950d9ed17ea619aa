"""The improver: asks a general engine for irregular strips, spyrrow, for more than our own engines found.

It runs in a process of its own that can be ended, with a fixed seed and a fixed number of workers, and the first layout that
is short enough is taken: so the answer does not depend on the speed of the machine, unless the time runs out first. It knows
no holes and misses exact fits, so it only ever betters a layout that is there already.
"""

import json
import subprocess
import sys
from collections.abc import Sequence
from math import ceil
from pathlib import Path

import shapely

from publisher.basics import Pose, record
from publisher.material.bottom_left import CopyKind
from publisher.material.model import Item, Piece
from publisher.material.outlines import OUTLINE_HAIR, offset
from publisher.material.packing import numbered

ENGINE = "spyrrow 0.9.0"
SEARCH_CHORD = 0.1  # mm; fewer points make it much faster
WORKERS = 1  # more of them give other layouts
WORKER = Path(__file__).with_name("strip_worker.py")
SLOWEST = 10  # seconds of the clock to one of the processor: then the machine is too busy
PATIENCE = 10  # seconds that the process may take beyond its time to start and to answer

WidthHeight = tuple[float, float]


@record
class Strip:
    """What is asked: copies of kinds, the sheet (width, height in mm), gap (mm), seed, seconds; whether the strip runs up the
    sheet instead of across it."""

    kinds: tuple[CopyKind, ...]
    size: WidthHeight
    gap: float
    seed: int
    seconds: float  # of the processor, all workers together
    upright: bool
    workers: int = WORKERS

    def request(self, target: float | None = None) -> dict[str, object]:
        """Return the request to the worker: outlines grown by half the gap, on a strip grown as much."""
        height, length = self.size if self.upright else self.size[::-1]
        more = self.gap - 2 * OUTLINE_HAIR if self.gap > 2 * OUTLINE_HAIR else 0.0
        back = 90.0 if self.upright else 0.0
        return {
            "height": height + more,
            "target": (length if target is None else target) + more,
            "seconds": self.seconds,
            "seed": self.seed,
            "workers": self.workers,
            "pieces": [
                {
                    "points": _points(kind),
                    "count": kind.count,
                    "turns": [(t - back) % 360.0 for t in kind.turns] if kind.turns else None,
                }
                for kind in self.kinds
            ],
        }


def _points(kind: CopyKind) -> list[list[float]]:
    """Return the grown outline (mm) with fewer points, never inside the given one; mirrored if the kind is."""
    fine = shapely.Polygon(kind.outline.grown)
    simple = fine.simplify(SEARCH_CHORD)
    short = float(shapely.distance(simple, shapely.points(kind.outline.grown)).max())
    ring = offset(simple, short) if short > 1e-6 and simple.is_valid else kind.outline.grown
    sign = -1.0 if kind.mirrored else 1.0
    points = [[sign * x, y] for x, y in ring.tolist()]
    return points[::-1] if kind.mirrored else points


def ask(request: dict[str, object]) -> tuple[float | None, list[tuple[int, float, float, float]]]:
    """Return the length (mm) of the layout found, and its places (kind, x, y, turn); None when nothing was found.

    The process is ended when its time is over, and when this one is interrupted. A worker that fails is no answer: the
    improver may be missing on a machine, and nothing else needs it.
    """
    seconds = request["seconds"]
    assert isinstance(seconds, int | float)
    clock = ceil(SLOWEST * seconds)
    command = [sys.executable, str(WORKER)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as process:
        try:
            answer, _ = process.communicate(json.dumps(request | {"clock": clock}).encode(), timeout=clock + PATIENCE)
        except subprocess.TimeoutExpired:
            answer = b""
        finally:
            process.kill()
    if process.returncode != 0 or not answer:
        return None, []
    found = json.loads(answer)
    return found["length"], [(int(k), float(x), float(y), float(turn)) for k, x, y, turn in found["places"]]


def one_sheet(strip: Strip, pieces: Sequence[Piece], origin: WidthHeight) -> tuple[Item, ...]:
    """Return all copies on one sheet whose free area begins at ``origin`` (mm), or () when they were not brought onto it."""
    request = strip.request()
    length, places = ask(request)
    target = request["target"]
    assert isinstance(target, float)
    if length is None or length > target:
        return ()
    return laid(strip, pieces, places, origin)


def _nearest(turn: float, allowed: tuple[float, ...]) -> float:
    """Return the allowed turn that a turn in single precision stands for; itself when any is allowed."""
    return min(allowed, key=lambda t: abs((turn - t + 180.0) % 360.0 - 180.0), default=turn)


def laid(
    strip: Strip, pieces: Sequence[Piece], places: Sequence[tuple[int, float, float, float]], origin: WidthHeight
) -> tuple[Item, ...]:
    """Return the worker's places as items on the sheet."""
    half = max(strip.gap / 2 - OUTLINE_HAIR, 0.0)
    items = []
    for number, along, up, given in places:
        kind = strip.kinds[number]
        x, y, turn = along - half, up - half, given
        if strip.upright:  # the strip is turned back onto the sheet by a quarter
            x, y, turn = strip.size[0] - y, x, given + 90.0
        turn = _nearest(turn, kind.turns)
        pose = Pose(round(x + origin[0], 4), round(y + origin[1], 4), round(turn % 360.0, 6) % 360.0, kind.mirrored)
        items.append(Item(pieces[kind.piece].id, 0, pose))
    (sheet,) = numbered(pieces, (items,))
    return sheet
