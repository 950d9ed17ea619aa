"""How the time of a build grows with the number of different parts: ``python -m tests.benchmarks.many_parts [NUMBER …]``.

For each number a design of so many plates, no two alike, is written and built for one paper as a whole process. Printed: parts,
pages, CPU seconds, seconds for each part, peak memory. Returns 1 when a part of the largest design takes ``MOST_GROWTH`` times as
long as one of the smallest: with a time that is linear it takes less, as what every build costs is shared by more parts.
"""

import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pypdf

ROOT = Path(__file__).parents[2]
NUMBERS = (10, 20, 40, 60)
MOST_GROWTH = 1.5
HEAD = """format: 2
title: Many
version: 1.0.0
designer: Benchmark
licence: CC-BY-NC-4.0
summary: Plates that all differ.
use: trace
sizes: {board: 5 mm, side: 30 mm}
boards:
  foam: {thickness: board, thickness_spread: 0.2 mm, faces: bare, sheets: [500 x 700 mm], knife_gap: 1 mm, edge_margin: 3 mm,
         grain: none}
parts:
"""


def spec(number: int) -> str:
    """Return the spec of a design of so many plates."""
    row = "  p{0}: {{name: Plate {0}, board: foam, shape: rectangle, count: 2, with: {{width: side + {0} mm, height: side}}}}"
    return HEAD + "\n".join(row.format(n) for n in range(number)) + "\n"


def build(number: int, folder: Path) -> tuple[int, float, float]:
    """Build a design of so many plates; return its pages, CPU seconds, peak MB. Raises RuntimeError when it fails."""
    design, out = folder / f"many{number}", folder / "out"
    design.mkdir()
    (design / "spec.yaml").write_text(spec(number), encoding="utf-8")
    words = (sys.executable, "-m", "publisher", "build", "--paper", "a4", "--out", str(out), str(design))
    process = subprocess.Popen(words, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    if status != 0:
        raise RuntimeError(f"{' '.join(words)} ended with {status}")
    scale = 1024 if sys.platform != "darwin" else 1024 * 1024
    (pdf,) = out.glob(f"many{number}/**/*-a4.pdf")
    return len(pypdf.PdfReader(pdf).pages), usage.ru_utime + usage.ru_stime, usage.ru_maxrss / scale


def main(numbers: tuple[int, ...]) -> int:
    """Print the table; return 1 when time grows faster than the parts."""
    each: list[float] = []
    with tempfile.TemporaryDirectory() as folder:
        for number in numbers:
            pages, seconds, memory = build(number, Path(folder))
            each.append(seconds / number)
            print(f"{number:4} parts {pages:4} pages {seconds:7.2f} s {each[-1]:7.3f} s/part {memory:6.0f} MB")
    return 0 if each[-1] <= MOST_GROWTH * each[0] else 1


if __name__ == "__main__":
    sys.exit(main(tuple(int(word) for word in sys.argv[1:]) or NUMBERS))
