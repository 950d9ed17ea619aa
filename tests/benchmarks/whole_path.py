"""How long the commands take as whole processes, as ratios in one run: ``python -m tests.benchmarks.whole_path``.

Each command runs in turn with its yardstick, A B A B …; the ratio is taken pair by pair and its median printed, so that it holds on
a busy machine. CPU time of the process and its children; peak memory is the largest single process.
"""

import os
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
YARDSTICK = "import click,jsonschema,shapely,reportlab.pdfgen.canvas,pypdf"
RUNS = 5
KEPT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""Byte code is kept between runs, as on any machine where the tool is installed; else each run would compile it again."""


def run(*words: str) -> tuple[float, float]:
    """Run a command; return its CPU seconds and its peak memory in MB. Raises RuntimeError when it fails."""
    process = subprocess.Popen(words, cwd=ROOT, env=KEPT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    if status != 0:
        raise RuntimeError(f"{' '.join(words)} ended with {status}")
    scale = 1024 if sys.platform != "darwin" else 1024 * 1024
    return usage.ru_utime + usage.ru_stime, usage.ru_maxrss / scale


def compare(name: str, command: tuple[str, ...], yardstick: tuple[str, ...], limit: float) -> bool:
    """Print one row: median seconds of both, median ratio, its limit, peak memory. Return whether the limit is kept."""
    run(*command), run(*yardstick)
    pairs = [(run(*command), run(*yardstick)) for _ in range(RUNS)]
    ratio = statistics.median(a[0] / b[0] for a, b in pairs)
    ours = statistics.median(a[0] for a, _ in pairs)
    theirs = statistics.median(b[0] for _, b in pairs)
    memory = max(a[1] for a, _ in pairs)
    print(f"{name:44} {ours:6.2f} s {theirs:6.2f} s {ratio:6.2f} × (at most {limit:g}) {memory:6.0f} MB")
    return ratio <= limit


def main() -> int:
    """Print the table; return 1 when a ratio is over its limit."""
    python = sys.executable
    with tempfile.TemporaryDirectory() as out:
        build = (python, "-m", "publisher", "build", "--paper", "a4", "--variant", "standard", "--out", out)
        rows = [
            compare(
                "publisher --help / import click",
                (python, "-m", "publisher", "--help"),
                (python, "-c", "import click"),
                4.0,
            ),
            *(
                compare(f"build {slug}, A4 / bare imports", (*build, f"designs/{slug}"), (python, "-c", YARDSTICK), 5.5)
                for slug in ("bridge", "island", "lock-stair", "quay", "toll-house")
            ),
        ]
    return 0 if all(rows) else 1


if __name__ == "__main__":
    sys.exit(main())
