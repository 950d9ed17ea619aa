"""``python -m tests.benchmarks.proof_time [--pages 40]``: the proof of a large pack beside what reading it takes at the least.

At the least: pypdf opens the file and parses what each page draws, operator by operator, and PDFium draws each page at 300 dpi. Both and
the proof are timed in one process, in turns, by seconds of the processor; the least of each counts.
"""

import argparse
import cProfile
import pstats
import tempfile
import time
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pypdfium2
from pypdf import PdfReader
from pypdf.generic import ContentStream

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import compose_packs, work
from publisher.press import write_pdf
from publisher.proof import prove

DPI = 300
SPEC = """\
format: 2
title: Long quay
version: 1.0.0
designer: Ebbwater Patterns
use: paste
sizes: {{board: 5 mm}}
boards: {{foam: {{thickness: board, sheets: [20 x 30 in]}}}}
parts:
  wall:
    name: Wall
    board: foam
    count: {count}
    shape: wall_panel
    with: {{width: 180 mm, height: 200 mm}}
    openings: {{window: {{kind: window, head: square, width: 22 mm, height: 20 mm, centre: 30 mm, sill: 20 mm}}}}
    surface: {{pattern: brick, with: {{length: 9 mm, height: 3 mm, bond: running}}}}
papers: [a4]
steps: [{{title: Print and cut, stage: print, say: Print page 2 first., parts: [wall]}}]
"""


def long_pack(pages: int) -> Pack:
    """Return a pack of about so many pages, nearly all of them templates with bricks: each copy is printed for itself."""
    with tempfile.TemporaryDirectory() as room:
        folder = Path(room) / "long-quay"
        folder.mkdir()
        (folder / "spec.yaml").write_text(SPEC.format(count=pages - 7), encoding="utf-8")
        worked = work(read_brief(folder))
        assert not errors(worked.findings), worked.findings
        (pack,), _ = compose_packs(worked)
    return pack


def bare_walk(pdf: bytes) -> int:
    """Open a file and parse the content of each page; return how many operators there are."""
    reader = PdfReader(BytesIO(pdf))
    return sum(len(ContentStream(page.get_contents(), reader).operations) for page in reader.pages)


def bare_raster(pdf: bytes) -> int:
    """Draw each page at 300 dpi; return how many dots there are."""
    document = pypdfium2.PdfDocument(pdf)
    dots = 0
    for index in range(len(document)):
        bitmap = document[index].render(scale=DPI / 72, grayscale=True)
        dots += bitmap.width * bitmap.height
        bitmap.close()
    document.close()
    return dots


def _seconds(do: Callable[[], object]) -> float:
    start = time.process_time()
    do()
    return time.process_time() - start


def main() -> None:
    """Print the seconds of each, and the ratio; with ``--profile`` where the proof's go."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.proof_time", description=__doc__)
    parser.add_argument("--pages", type=int, default=40)
    parser.add_argument("--design", type=Path, help="a design's pack instead, as large as it is")
    parser.add_argument("--times", type=int, default=3)
    parser.add_argument("--profile", action="store_true")
    given = parser.parse_args()
    pack = compose_packs(work(read_brief(given.design)))[0][0] if given.design else long_pack(given.pages)
    pdf = write_pdf(pack)
    runs = {
        "walk": lambda: bare_walk(pdf),
        "raster": lambda: bare_raster(pdf),
        "proof": lambda: prove(pdf, pack.promises, "p.pdf"),
    }
    least = dict.fromkeys(runs, float("inf"))
    for _ in range(given.times):
        for name, do in runs.items():
            least[name] = min(least[name], _seconds(do))
    bare = least["walk"] + least["raster"]
    print(
        f"{len(pack.pages)} pages, {bare_walk(pdf):,} operators: bare walk {least['walk']:.2f} s, bare raster at {DPI} dpi "
        f"{least['raster']:.2f} s, proof {least['proof']:.2f} s: {least['proof'] / bare:.2f} of both together (wanted: at most 2)"
    )
    if given.profile:
        with cProfile.Profile() as profile:
            runs["proof"]()
        pstats.Stats(profile).sort_stats("tottime").print_stats(35)


if __name__ == "__main__":
    main()
