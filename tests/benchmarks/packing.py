"""Strip packing of open nesting instances, beside the published figures.

    python -m tests.benchmarks.packing tests/benchmarks/nesting/fu.json --seconds 30

Reads any file of that form (polygons, quantities, allowed angles, strip width), lays all pieces on a strip of that width
with the room's bottom-left placement and then by the improver; prints density, length, engine, time, and the judge's verdict.
The density is 100 · area of the pieces / (width · length). Seconds are of the processor, in one process: the wrapped engine goes first, as
it comes, and our way gets as many as that took. Of less than 2 s none are for the engine: bottom-left placement is then repeated in
orders that are changed at random from a fixed seed.

The published figures are Tables 2 and 3 of J. Gardeyn, G. Vanden Berghe, T. Wauters, "An open-source heuristic to reboot
2D nesting research", arXiv 2509.13329 (2025). A density above the published best means that the overlap check is broken.
"""

import argparse
import json
import random
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path
from typing import Any

from publisher.material import Item, Piece
from publisher.material.bottom_left import Bin, CopyKind, fill
from publisher.material.container import container
from publisher.material.judge import flaws
from publisher.material.outlines import NESTING_GRID, OUTLINE_HAIR
from publisher.material.packing import items, kinds_of, numbered
from publisher.material.strip_search import ENGINE, Strip, ask, laid

SCALE = 10.0  # mm to a unit: pieces of the instances are some ten units wide, our parts some ten centimetres
SEED = 2
WORKERS = 3  # threads of the improver: in the same seconds of the processor they come further than one
LEAST_FOR_ENGINE = 2.0  # s
PUBLISHED = {  # best average, best known (percent)
    "albano": (88.01, 89.82), "dagli": (87.50, 90.17), "fu": (91.95, 92.41), "jakobs1": (89.09, 89.26),
    "jakobs2": (83.56, 87.73), "mao": (83.76, 86.87), "marques": (89.97, 92.02), "shapes0": (68.73, 69.98),
    "shapes1": (75.86, 76.73), "blaz": (83.02, 86.23), "shirts": (88.21, 90.92), "swim": (74.66, 79.83),
    "trousers": (90.48, 92.62), "dighe1": (100.0, 100.0), "dighe2": (100.0, 100.0),  # jigsaws that fill a square
}  # fmt: skip


def read(path: Path) -> tuple[str, tuple[Piece, ...], float, float]:
    """Return an instance's name, pieces (mm), strip width (mm) and total area of the pieces (mm²)."""
    data: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    pieces = tuple(
        Piece(
            p["id"],
            (tuple((x * SCALE, y * SCALE) for x, y in p["polygon"]),),
            tuple(float(a) for a in p["angles"]),
            p["quantity"],
        )
        for p in data["pieces"]
    )
    return data["name"], pieces, data["strip_width"] * SCALE, data["total_piece_area"] * SCALE**2


def search(pieces: tuple[Piece, ...], width: float, seconds: float) -> tuple[tuple[Item, ...], float, int]:
    """Return the shortest layout found, its length (mm), and how many were tried: one at the least."""
    area = sum(k.outline.area * k.count for k in kinds_of(pieces, 0.0))
    long = 4 * area / width + 1000.0
    free = container((((0.0, 0.0), (long, 0.0), (long, width), (0.0, width)),))
    kinds = kinds_of(pieces, 0.0)
    queue = [k for k in sorted(kinds, key=lambda k: (-k.outline.area, k.piece)) for _ in range(k.count)]
    chance = random.Random(1)
    start, tried = time.process_time(), 0
    best: tuple[int, list[CopyKind], Bin] | None = None
    while best is None or time.process_time() - start < seconds:
        changed = list(best[1]) if best else queue
        for _ in range(chance.choice((1, 1, 2, 3)) if best else 0):
            i, j = chance.randrange(len(changed)), chance.randrange(len(changed))
            if chance.random() < 0.5:
                changed[i], changed[j] = changed[j], changed[i]
            else:
                changed.insert(j, changed.pop(i))
        (sheet,) = fill(free, changed, 1, True, empty={})
        tried += 1
        reach = sheet.used(True)
        if best is None or reach <= best[0]:
            best = (reach, changed, sheet)
    (found,) = numbered(pieces, items(pieces, [best[2]]))
    return found, best[0] / NESTING_GRID, tried


def improve(pieces: tuple[Piece, ...], width: float, seconds: float, length: float) -> tuple[tuple[Item, ...], float]:
    """Return the shortest layout that the improver found, and its length (mm); none and ``length`` when it is no shorter."""
    kinds = tuple(replace(k, turns=pieces[k.piece].angles) for k in kinds_of(pieces, 0.0))
    strip = Strip(kinds, (length, width), 0.0, SEED, seconds, upright=False, workers=WORKERS)
    found, places = ask(strip.request(0.0))
    if found is None or found >= length:
        return (), length
    return laid(strip, pieces, places, (0.0, 0.0)), found + 2 * OUTLINE_HAIR


def alone(file: Path, seconds: float) -> tuple[float, float]:
    """Return the length (mm) that the engine comes to by itself, and the seconds of the processor that it took."""
    command = [sys.executable, "-m", "tests.benchmarks.engine_alone", str(file), str(seconds)]
    answer = json.loads(subprocess.run(command, capture_output=True, check=True).stdout)
    return answer["length"], answer["seconds"]


def verdict(pieces: tuple[Piece, ...], laid: tuple[Item, ...], width: float, length: float) -> str:
    """Return what the judge says of a layout on the strip cut off at its length."""
    strip = (((0.0, 0.0), (length, 0.0), (length, width), (0.0, width)),)
    wrong = flaws(pieces, strip, 0.0, (laid,), complete=True)
    return "holds" if not wrong else f"WRONG: {wrong[0].message}"


def main(arguments: list[str]) -> int:
    """Run one instance; return 1 when the layout does not hold or beats the published best."""
    parser = argparse.ArgumentParser(description="Strip packing of an open instance.")
    parser.add_argument("file", type=Path)
    parser.add_argument("--seconds", type=float, default=30.0)
    given = parser.parse_args(arguments)
    name, pieces, width, area = read(given.file)
    asked = given.seconds >= LEAST_FOR_ENGINE
    plain, seconds = alone(given.file, given.seconds) if asked else (0.0, given.seconds)
    start = time.process_time()
    found, length, tried = search(pieces, width, 0.0 if asked else seconds)
    engine = "bottom-left"
    if asked:
        better, length = improve(pieces, width, seconds - (time.process_time() - start), length)
        found, engine = (better, ENGINE) if better else (found, engine)
    density = 100 * area / (width * length)
    says = verdict(pieces, found, width, length)
    print(
        f"{name}: density {density:.2f} %, length {length / SCALE:.3f}, by {engine} after {tried} layouts of our own, "
        f"{seconds:.1f} s of the processor; the judge: {says}"
    )
    if asked:
        print(f"  the engine alone, as it comes: {100 * area / (width * plain):.2f} % in the same seconds")
    average, best = PUBLISHED.get(name.lower(), (None, None))
    if best is not None and average is not None:
        print(f"  published: best average {average:.2f} %, best known {best:.2f} %")
        if density > best + 0.01:
            print("  above the published best: the overlap check is broken")
            return 1
    return 0 if says == "holds" else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
