"""Many designs by one process and by all cores: ``python -m tests.benchmarks.batches``. Returns 1 when the gain or the memory is
beyond its limit.

40 designs on two papers; seconds by the clock: to be run on a quiet machine. Memory is that of the largest process.
"""

import os
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

DESIGNS = 40
LEAST_GAIN = 0.9  # of the cores: 1.8 times on two
MOST_MB = 300
DEMO = Path("designs/quay")


def timed(shelf: Path, out: Path, jobs: int) -> float:
    """Return the seconds by the clock that a build of the shelf takes."""
    start = time.perf_counter()
    words = (
        "-m",
        "publisher",
        "build",
        shelf,
        "--out",
        out,
        "--paper",
        "a4",
        "--paper",
        "letter",
        "--variant",
        "standard",
    )
    subprocess.run([sys.executable, *map(str, words), "--jobs", str(jobs)], check=True, capture_output=True)
    return time.perf_counter() - start


def digest(folder: Path) -> dict[str, bytes]:
    """Return the bytes of every file."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def main() -> int:
    """Print seconds, gain and memory."""
    cores = os.cpu_count() or 1
    with tempfile.TemporaryDirectory() as name:
        room = Path(name)
        for number in range(DESIGNS):
            shutil.copytree(DEMO, room / "shelf" / f"quay-{number:02}")
        one, all_cores = timed(room / "shelf", room / "one", 1), timed(room / "shelf", room / "all", cores)
        alike = digest(room / "one") == digest(room / "all")
    memory = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / (1024 if sys.platform != "darwin" else 1024**2)
    print(
        f"{DESIGNS} designs, two papers: {one:.1f} s by one process, {all_cores:.1f} s by {cores}: {one / all_cores:.2f} ×"
    )
    print(f"largest process {memory:.0f} MB (at most {MOST_MB}); the same bytes: {'yes' if alike else 'NO'}")
    return 0 if alike and memory <= MOST_MB and one / all_cores >= LEAST_GAIN * cores else 1


if __name__ == "__main__":
    sys.exit(main())
