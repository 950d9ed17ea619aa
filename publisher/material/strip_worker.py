"""A program of its own, run by ``improver``: asks spyrrow for a strip and prints the first layout that is short enough.

spyrrow (MIT; core: jagua-rs and sparrow) cannot be asked to stop, so it gets a process that can. Reads one JSON object from
standard input::

    {"height": mm, "target": mm, "seconds": s, "clock": s, "seed": whole, "workers": whole,
     "pieces": [{"points": [[x, y], …], "count": n, "turns": [degrees, …] or null}, …]}

and writes one: ``{"length": mm, "places": [[piece, x, y, turn], …]}``: the first layout no longer than ``target``, or the
shortest one found when there is none (``length`` tells). With a target of 0 it uses up its seconds: when the engine has come to an
end, it is asked again with the next seed. Seconds are of the processor, all workers together, so that a busy machine comes to the same
layout; ``clock`` are those of the clock after which it answers with what it has.
"""

import json
import os
import sys
import threading
import time
from itertools import count
from typing import Any, NoReturn

import spyrrow

POLL_SECONDS = 0.02
EXPLORED = 0.75  # of the time for finding layouts; the rest compresses the best one, which gains up to a hundredth
QUADTREE_DEPTH = 3  # for tens of copies the engine finds the same layouts a twentieth sooner than at its usual 4


def main() -> None:
    """Solve until the first layout that is short enough, or for all the seconds; print it, and end the whole process."""
    asked = json.load(sys.stdin)
    asked["end"] = time.monotonic() + asked["clock"]
    items = [
        spyrrow.Item(str(number), [tuple(p) for p in piece["points"]], piece["count"], piece["turns"])
        for number, piece in enumerate(asked["pieces"])
    ]
    strip = spyrrow.StripPackingInstance("strip", asked["height"], items)
    # the processor may be shared: its own time counts, and the clock is set far beyond it
    speed = pace(strip, asked["workers"], asked["seed"]) if asked["target"] <= 0 else 0.0
    best = None
    for seed in count(asked["seed"]):
        left = asked["seconds"] - time.process_time()
        best = _solve(strip, asked, seed, EXPLORED * left / speed if speed else asked["clock"], best)
        if asked["target"] > 0 or time.process_time() >= asked["seconds"] or time.monotonic() >= asked["end"]:
            _say(best)


def pace(strip: "spyrrow.StripPackingInstance", workers: int, seed: int) -> float:
    """Return how many seconds of the processor the engine gets now for one of the clock, by which alone it can be told its time."""
    clock, own = time.perf_counter(), time.process_time()
    strip.solve(_config(workers, seed, 1, 0))
    return (time.process_time() - own) / (time.perf_counter() - clock)


def _config(workers: int, seed: int, explore: float, compress: float) -> "spyrrow.StripPackingConfig":
    return spyrrow.StripPackingConfig(
        early_termination=True,  # it ends by what it fails to find, and by the clock only if that takes too long
        quadtree_depth=QUADTREE_DEPTH,
        total_computation_time=None,
        exploration_time=max(1, round(explore)),
        compression_time=round(compress),
        num_workers=workers,
        seed=seed,
    )


def _solve(
    strip: "spyrrow.StripPackingInstance",
    asked: dict[str, Any],
    seed: int,
    explore: float,
    best: "spyrrow.StripPackingSolution | None",
) -> "spyrrow.StripPackingSolution | None":
    """Return the shortest layout, the ``best`` so far or one that is found with a seed; the first short enough is said at once.

    ``explore``: seconds of the clock after which the best layout is only compressed.
    """
    config = _config(asked["workers"], seed, explore, asked["clock"])
    reports = spyrrow.ProgressQueue()
    solver = threading.Thread(target=strip.solve, args=(config, reports), daemon=True)
    solver.start()
    going = True
    while going:
        solver.join(POLL_SECONDS)
        going = solver.is_alive() and time.process_time() < asked["seconds"] and time.monotonic() < asked["end"]
        for kind, found in reports.drain():
            feasible = kind in (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas, spyrrow.ReportType.Final)
            if feasible and (best is None or found.width < best.width):
                best = found
                # reports are taken in their order: the first short enough is the same however fast the machine
                if found.width <= asked["target"]:
                    _say(found)
    return best


def _say(found: "spyrrow.StripPackingSolution | None") -> NoReturn:
    """Print a layout and end the process: the solver's thread would go on."""
    length = found.width if found else None
    places = [[int(p.id), *p.translation, p.rotation] for p in found.placed_items] if found else []
    sys.stdout.write(json.dumps({"length": length, "places": places}))
    sys.stdout.flush()
    os._exit(0)


if __name__ == "__main__":
    main()
