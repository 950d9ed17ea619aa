"""A program of its own, run by ``improver``: asks spyrrow for a strip and prints the first layout that is short enough.

spyrrow (MIT; core: jagua-rs and sparrow) cannot be asked to stop, so it gets a process that can. Reads one JSON object from
standard input::

    {"height": mm, "target": mm, "seconds": whole, "seed": whole, "workers": whole,
     "pieces": [{"points": [[x, y], …], "count": n, "turns": [degrees, …] or null}, …]}

and writes one: ``{"length": mm, "places": [[piece, x, y, turn], …]}``: the first layout no longer than ``target``, or the
shortest one found when there is none (``length`` tells). With a target of 0 it runs for all its seconds. Seconds are of the
processor, so that a busy machine comes to the same layout.
"""

import json
import os
import sys
import threading
import time

import spyrrow

POLL_SECONDS = 0.02


def main() -> None:
    """Solve until the first layout that is short enough, print it, and end the whole process."""
    asked = json.load(sys.stdin)
    items = [
        spyrrow.Item(str(number), [tuple(p) for p in piece["points"]], piece["count"], piece["turns"])
        for number, piece in enumerate(asked["pieces"])
    ]
    strip = spyrrow.StripPackingInstance("strip", asked["height"], items)
    config = spyrrow.StripPackingConfig(
        early_termination=asked["target"] > 0,
        total_computation_time=asked[
            "clock"
        ],  # the processor may be shared: its own time counts, and the clock far beyond it
        num_workers=asked["workers"],
        seed=asked["seed"],
    )
    reports = spyrrow.ProgressQueue()
    solver = threading.Thread(target=strip.solve, args=(config, reports), daemon=True)
    solver.start()
    best: spyrrow.StripPackingSolution | None = None
    going = True
    while going:
        solver.join(POLL_SECONDS)
        going = solver.is_alive() and time.process_time() < asked["seconds"] * asked["workers"]
        for kind, found in reports.drain():
            feasible = kind in (spyrrow.ReportType.ExplFeas, spyrrow.ReportType.CmprFeas, spyrrow.ReportType.Final)
            if feasible and (best is None or found.width < best.width):
                best = found
                # reports are taken in their order: the first short enough is the same however fast the machine
                if found.width <= asked["target"]:
                    _say(found)
    _say(best)


def _say(found: "spyrrow.StripPackingSolution | None") -> None:
    """Print a layout and end the process: the solver's thread would go on."""
    length = found.width if found else None
    places = [[int(p.id), *p.translation, p.rotation] for p in found.placed_items] if found else []
    sys.stdout.write(json.dumps({"length": length, "places": places}))
    sys.stdout.flush()
    os._exit(0)


if __name__ == "__main__":
    main()
