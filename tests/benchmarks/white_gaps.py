"""Lines that close up in print: ``python -m tests.benchmarks.white_gaps [designs/bridge …] [--paper a3] [--gap 0.25]``.

At 300 dots an inch and one bit, less than 0.25 mm of white between two lines is lost. For each page of each variant this lists where lines
that do not meet run closer than that for at least a millimetre: their styles, the white between them, the length, the place. Ends with 1
when there is such a place.
"""

import argparse
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import shapely

from publisher import api
from publisher.pages import Page
from publisher.pages.model import Stroke
from publisher.pipeline import compose_packs
from tests.benchmarks.whole_path import ROOT

GAP = 0.25  # mm of white
RUN = 1.0  # mm: what is shorter is a corner where lines come near
NEXT = 1.5  # mm along one path: a piece of a curve is near to the one after the next


@dataclass(frozen=True)
class Edges:
    """The straight pieces of all lines of a page: shapes, half of each line's width (mm), its style, its path and place along it."""

    shapes: tuple[shapely.LineString, ...]
    half: tuple[float, ...]
    style: tuple[str, ...]
    path: tuple[int, ...]
    along: tuple[float, ...]


@dataclass(frozen=True)
class Closing:
    """Two lines with too little white between them: their styles, the white (mm), how long (mm), and where (mm)."""

    styles: tuple[str, str]
    white: float
    long: float
    at: tuple[float, float]


def edges_of(page: Page) -> Edges:
    """Return the straight pieces of every stroke; arcs as one piece each, so that they do not lie near to themselves."""
    shapes: list[shapely.LineString] = []
    half: list[float] = []
    style: list[str] = []
    path: list[int] = []
    along: list[float] = []
    number = 0
    for thing in page.drawn:
        if not isinstance(thing, Stroke):
            continue
        for one in thing.paths:
            number += 1
            at = 0.0
            for edge in one.edges:
                points = [*edge.points(), edge.end]
                line = shapely.LineString(points)
                if thing.clip is not None:
                    line = shapely.clip_by_rect(line, *thing.clip.sides)
                if line.length > 0.0 and line.geom_type == "LineString":
                    shapes.append(line)
                    half.append(thing.style.width / 2.0)
                    style.append(thing.style.name)
                    path.append(number)
                    along.append(at)
                at += shapely.LineString(points).length
    return Edges(tuple(shapes), tuple(half), tuple(style), tuple(path), tuple(along))


def closings(page: Page, gap: float) -> Iterator[Closing]:
    """Yield the places of a page where lines that do not meet close up."""
    edges = edges_of(page)
    if not edges.shapes:
        return
    shapes = np.array(edges.shapes, dtype=object)
    half = np.array(edges.half)
    tree = shapely.STRtree(shapes)
    first, second = tree.query(shapes, predicate="dwithin", distance=gap + 2.0 * half.max())
    keep = first < second
    first, second = first[keep], second[keep]
    away = shapely.distance(shapes[first], shapes[second])
    white = away - half[first] - half[second]
    near = (away > 1e-6) & (white > 1e-3) & (white < gap - 1e-3)  # those that touch in print are drawn as one line
    for a, b, free in zip(first[near], second[near], white[near], strict=True):
        if edges.path[a] == edges.path[b] and abs(edges.along[a] - edges.along[b]) < NEXT + shapes[a].length:
            continue
        shared = shapely.intersection(shapes[a], shapely.buffer(shapes[b], gap + half[a] + half[b], cap_style="flat"))
        if shared.length < RUN:
            continue
        at = shapely.get_coordinates(shared).mean(axis=0)
        yield Closing((edges.style[a], edges.style[b]), float(free), float(shared.length), (float(at[0]), float(at[1])))


def main() -> None:
    """Print every place, and how many there are."""
    parser = argparse.ArgumentParser(description="Lines that close up in print")
    parser.add_argument("folders", nargs="*", type=Path)
    parser.add_argument("--paper", action="append", dest="papers")
    parser.add_argument("--gap", type=float, default=GAP)
    asked = parser.parse_args()
    count = pages = 0
    for folder in asked.folders or sorted(spec.parent for spec in (ROOT / "designs").glob("*/spec.yaml")):
        brief = api.read(folder)
        for variant in api.variants(brief):
            for pack in compose_packs(api.work(brief, variant), tuple(asked.papers or ("a4", "letter")))[0]:
                for page in pack.pages:
                    pages += 1
                    for one in closings(page, asked.gap):
                        count += 1
                        where = f"{folder.name} {variant or '-'} {pack.paper.name} page {page.number} ({page.kind})"
                        lines = f"{' and '.join(one.styles)}, {one.white:.2f} mm of white for {one.long:.1f} mm"
                        print(f"{where}: {lines} at {one.at[0]:.1f}, {one.at[1]:.1f}")
    print(f"{count} places on {pages} pages; least white {asked.gap:g} mm")
    raise SystemExit(int(count > 0))


if __name__ == "__main__":
    main()
