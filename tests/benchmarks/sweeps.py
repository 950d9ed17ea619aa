"""A sweep beside a check, as whole processes: ``python -m tests.benchmarks.sweeps``. Returns 1 when the ratio is over its limit.

Seconds by the clock, as the sweep is shared by all cores: to be run on a quiet machine. CPU seconds stand beside them.
"""

import sys
import time

from tests.benchmarks.whole_path import run

MOST_CHECKS = 6.0  # times a check
CHECK = ("check", "designs/lock-stair")
SWEEP = ("sizes", "designs/lock-stair", "--variant", "standard", "--vary", "reach = 80 mm to 120 mm")


def timed(*words: str) -> tuple[float, float]:
    """Return the seconds by the clock and of the processor that a command takes, its processes included."""
    start = time.perf_counter()
    cpu, _ = run(sys.executable, "-m", "publisher", *words)
    return time.perf_counter() - start, cpu


def main() -> int:
    """Print the ratio to a check of the whole design, and to that of one variant."""
    whole, one = timed(*CHECK), timed(*CHECK, "--variant", "standard")
    clock, cpu = timed(*SWEEP)
    print(f"sweep of 41 values {clock:.1f} s by the clock, {cpu:.1f} s of processor")
    for name, (beside, own) in (("a check, all variants", whole), ("a check, one variant", one)):
        print(
            f"{name:22} {beside:.1f} s, {own:.1f} s of processor: {clock / beside:.1f} × by the clock (at most {MOST_CHECKS:g})"
        )
    return 0 if clock / whole[0] <= MOST_CHECKS else 1


if __name__ == "__main__":
    sys.exit(main())
