"""Lines that close up in print: ``python -m tests.benchmarks.white_gaps [designs/bridge …] [--paper a3] [--gap 0.25]``.

At 300 dots an inch and one bit, less than 0.25 mm of white between two lines is lost. For each page of each variant this lists where lines
that do not meet run closer than that for at least a millimetre: their styles, the white between them, the length, the place. Ends with 1
when there is such a place.

No such place are lines of a black area, as the head of an arrow is, or lines that meet in that stretch: a sharp corner has a point where
any two lines come near, or their ink touches at one end of a short stretch and is apart at the other. Nor is one line drawn twice, nor, in
a layout to copy, what lies a knife's cut apart: there one line says as much as two, for the cut is one.
"""

import argparse
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, pi
from pathlib import Path

import numpy as np
import shapely

from publisher import api
from publisher.basics import Point
from publisher.pages import Page
from publisher.pages.model import Fill, Stroke
from publisher.pipeline import compose_packs
from tests.benchmarks.whole_path import ROOT

GAP = 0.25  # mm of white
RUN = 1.0  # mm: what is shorter is a corner where lines come near
CORNER = 35.0  # degrees by which a line turns at a corner, where another line begins for the eye
DOT = 0.09  # mm, a dot of 300 to the inch: lines that come nearer than this meet, or are one line, drawn twice
WEDGE = 3.0  # mm from where the ink of two lines touches to where they are apart: a sharp corner
ONE_CUT = frozenset({"piece", "straight_cut", "sheet", "offcut"})  # styles of what is cut from a sheet, in a layout


@dataclass(frozen=True)
class SmoothLine:
    """A line from corner to corner: its shape, half of its width (mm), the name of its style."""

    shape: shapely.LineString
    half: float
    style: str


@dataclass(frozen=True)
class Closing:
    """Two lines with too little white between them: their styles, the white (mm), how long (mm), and where (mm)."""

    styles: tuple[str, str]
    white: float
    long: float
    at: tuple[float, float]


def runs_of(page: Page) -> Iterator[SmoothLine]:
    """Yield the lines of every stroke, cut at their corners and by the window of the stroke."""
    for thing in page.drawn:
        if not isinstance(thing, Stroke):
            continue
        for path in thing.paths:
            points = [point for edge in path.edges for point in edge.points()]
            points += [path.edges[-1].end] if path.edges else []
            for own in _smooth(points):
                line = shapely.LineString(own)
                shown = line if thing.clip is None else shapely.clip_by_rect(line, *thing.clip.sides)
                for part in shapely.get_parts(shown):
                    if part.geom_type == "LineString" and part.length > 0.0:
                        yield SmoothLine(part, thing.style.width / 2.0, thing.style.name)


def _smooth(points: list[Point]) -> Iterator[list[Point]]:
    """Yield stretches without a corner of a line."""
    apart = [b for a, b in pairwise(points) if a != b]
    own = points[:1]
    for at in apart:
        if len(own) > 1:
            before, after = (atan2(q[1] - p[1], q[0] - p[0]) for p, q in ((own[-2], own[-1]), (own[-1], at)))
            if abs((after - before + pi) % (2 * pi) - pi) > CORNER / 180.0 * pi:
                yield own
                own = own[-1:]
        own.append(at)
    if len(own) > 1:
        yield own


def closings(page: Page, gap: float) -> Iterator[Closing]:
    """Yield the places of a page where lines that do not meet close up."""
    fills = [thing for thing in page.drawn if isinstance(thing, Fill) and thing.grey == 0.0]
    black = shapely.union_all([shapely.Polygon(path.points) for thing in fills for path in thing.paths])
    shapely.prepare(black)
    runs = tuple(run for run in runs_of(page) if not black.covers(run.shape))
    if not runs:
        return
    shapes = np.array([run.shape for run in runs], dtype=object)
    half = np.array([run.half for run in runs])
    tree = shapely.STRtree(shapes)
    first, second = tree.query(shapes, predicate="dwithin", distance=gap + 2.0 * half.max())
    keep = (first < second) & (
        shapely.distance(shapes[first], shapes[second]) < gap + half[first] + half[second] - 1e-3
    )
    for a, b in zip(first[keep], second[keep], strict=True):
        if {runs[a].style, runs[b].style} <= ONE_CUT:
            continue
        near = half[a] + half[b] + gap - 1e-3
        beside = shapely.intersection(shapes[a], shapely.buffer(shapes[b], near, cap_style="flat"))
        for part in shapely.get_parts(shapely.line_merge(beside)):
            away = float(shapely.distance(part, shapes[b]))
            ends = shapely.distance(shapely.get_point(part, [0, -1]), shapes[b])
            wedge = ends.min() <= half[a] + half[b] and ends.max() >= 0.95 * near and part.length <= WEDGE
            if part.length < RUN or away < DOT or wedge:
                continue
            at = part.interpolate(0.5, normalized=True)
            white = max(away - half[a] - half[b], 0.0)
            yield Closing((runs[a].style, runs[b].style), float(white), float(part.length), (at.x, at.y))


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
