"""The wrapped engine by itself on a nesting instance, as it comes: one worker, its own split of the time.

    python -m tests.benchmarks.engine_alone tests/benchmarks/nesting/fu.json 30

Prints one JSON object: the length (mm) of its shortest strip, by its own reckoning, and the seconds of the processor that it took.
"""

import json
import sys
import time
from pathlib import Path

import spyrrow

from publisher.material.strip_worker import pace
from tests.benchmarks.packing import SEED, read


def main(file: str, seconds: str) -> None:
    """Ask the engine once; on a busy machine it is given as many more seconds of the clock as it needs for those of the processor."""
    _, pieces, width, _ = read(Path(file))
    items = [
        spyrrow.Item(str(number), list(piece.rings[0]), piece.count, list(piece.angles))
        for number, piece in enumerate(pieces)
    ]
    strip = spyrrow.StripPackingInstance("strip", width, items)
    clock = round(float(seconds) / pace(strip, 1, SEED))
    start = time.process_time()
    config = spyrrow.StripPackingConfig(early_termination=False, total_computation_time=clock, num_workers=1, seed=SEED)
    found = strip.solve(config)
    json.dump({"length": found.width, "seconds": time.process_time() - start}, sys.stdout)


if __name__ == "__main__":
    main(*sys.argv[1:])
