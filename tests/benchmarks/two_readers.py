"""Whether two readers of PDF show a page alike: ``python -m tests.benchmarks.two_readers [designs/bridge …] [--paper a3]``.

Each page of each variant is drawn by PDFium and, where ``pdftocairo`` is installed, by poppler, in grey at 150 dots an inch. One row a
pack: on the page that differs most the share of dots that differ by more than 64 of 255, beside the limit of 1 %: all dots; all but those
that the other reader has within a dot, as both set letters on whole dots, each in its way; and the lines alone, without words. Ends with 1
when the last two are beyond the limit on any page, with 2 where there is no poppler.
"""

import argparse
import shutil
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import numpy as np
import pypdfium2
from PIL import Image

from publisher import api
from publisher.pages import Pack, Words
from publisher.pipeline import compose_packs
from publisher.press import write_pdf
from tests.benchmarks.whole_path import ROOT

DPI = 150
FAR = 64  # of 255
LIMIT = 0.01  # of all dots of a page
WAYS = ("all dots", "within a dot", "lines alone")


def by_pdfium(data: bytes) -> list[Any]:
    """Return the pages as arrays of grey (rows, columns), 0 black."""
    document = pypdfium2.PdfDocument(data)
    try:
        return [np.asarray(page.render(scale=DPI / 72.0).to_pil().convert("L"), dtype=np.int16) for page in document]
    finally:
        document.close()


def by_poppler(data: bytes, like: list[Any]) -> list[Any]:
    """Return the same by poppler, each page on as many rows and columns as the ``like`` one: readers stretch a page to a whole number
    of dots, each in its way. Raises CalledProcessError where it cannot draw the file."""
    with TemporaryDirectory() as top:
        file, found = Path(top) / "pack.pdf", []
        file.write_bytes(data)
        for number, (rows, columns) in enumerate((page.shape for page in like), 1):
            asked = (
                "-f",
                str(number),
                "-l",
                str(number),
                "-singlefile",
                "-scale-to-x",
                str(columns),
                "-scale-to-y",
                str(rows),
            )
            subprocess.run(["pdftocairo", "-png", "-gray", *asked, str(file), str(Path(top) / "page")], check=True)
            found.append(np.asarray(Image.open(Path(top) / "page.png").convert("L"), dtype=np.int16))
        return found


def differing(one: Any, other: Any) -> float:
    """Return the share of dots that differ far."""
    return float((np.abs(one - other) > FAR).mean())


def differing_far(one: Any, other: Any) -> float:
    """Return the share of dots that are far from each of the nine round their place."""
    framed = np.pad(other, 1, mode="edge")
    rows, columns = other.shape
    nine = [framed[down : down + rows, across : across + columns] for down in range(3) for across in range(3)]
    low, high = np.minimum.reduce(nine), np.maximum.reduce(nine)
    return float(((one < low - FAR) | (one > high + FAR)).mean())


def without_words(pack: Pack) -> Pack:
    """Return a pack with its lines alone."""
    pages = (
        replace(page, drawn=tuple(t for t in page.drawn if not isinstance(t, Words)), structure=())
        for page in pack.pages
    )
    return replace(pack, pages=tuple(pages))


def shares(pack: Pack) -> list[tuple[float, float, float]]:
    """Return for each page what differs in each of the three ways."""
    found = []
    for one in (pack, without_words(pack)):
        data = write_pdf(one)
        seen = by_pdfium(data)
        found.append(list(zip(seen, by_poppler(data, seen), strict=True)))
    return [(differing(*whole), differing_far(*whole), differing(*lines)) for whole, lines in zip(*found, strict=True)]


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description="Pages by two readers")
    parser.add_argument("folders", nargs="*", type=Path)
    parser.add_argument("--paper", action="append", dest="papers")
    asked = parser.parse_args()
    if shutil.which("pdftocairo") is None:
        print("pdftocairo of poppler is not installed: nothing was compared", file=sys.stderr)
        raise SystemExit(2)
    worst = [0.0, 0.0, 0.0]
    for folder in asked.folders or sorted(spec.parent for spec in (ROOT / "designs").glob("*/spec.yaml")):
        brief = api.read(folder)
        for variant in api.variants(brief):
            for pack in compose_packs(api.work(brief, variant), tuple(asked.papers or ("a4", "letter")))[0]:
                pages = shares(pack)
                most = [max(page[way] for page in pages) for way in range(len(WAYS))]
                worst = [max(pair) for pair in zip(worst, most, strict=True)]
                beyond = sum(page[0] > LIMIT for page in pages)
                said = ", ".join(f"{way} {share:.2%}" for way, share in zip(WAYS, most, strict=True))
                print(
                    f"{folder.name:12} {variant or '-':12} {pack.paper.name:8} {said}; {beyond} of {len(pages)} pages over 1 % of all dots"
                )
    ratios = (f"{way} {share:.2%} (× {share / LIMIT:.2f})" for way, share in zip(WAYS, worst, strict=True))
    print(f"most on any page, and the ratio to {LIMIT:.0%}: {', '.join(ratios)}")
    raise SystemExit(int(max(worst[1:]) > LIMIT))


if __name__ == "__main__":
    main()
