"""Lines of very many points with fewer of them: what no knife and no printer can tell apart makes pages that printers refuse."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby

import shapely

from publisher.basics import SAGITTA, Line, Path, PathEdge, polyline
from publisher.geometry.model import Mark, Region
from publisher.geometry.rules.drawings import TOO_FINE, Trouble

MANY_EDGES = 1_000  # of one line of a drawing: with fewer, each of its points stays
MOST_DRAWN_EDGES = (
    3_000  # of a part and all that is drawn on it; a page of 210 × 297 mm may hold 4000 with all else on it
)


def fewer(path: Path) -> Path:
    """Return the path (mm) without points that lie within 0.005 mm of the line through their neighbours; arcs stay.

    A path of few edges comes back as it is, and so does one that would touch itself.
    """
    if len(path.edges) <= MANY_EDGES:
        return path
    edges: list[PathEdge] = []
    for (straight, name), run in groupby(path.edges, key=lambda edge: (isinstance(edge, Line), edge.name)):
        stretch = list(run)
        if not straight:
            edges += stretch
            continue
        line = shapely.LineString([stretch[0].start, *(edge.end for edge in stretch)])
        points = shapely.get_coordinates(shapely.simplify(line, SAGITTA, preserve_topology=False)).tolist()
        edges += polyline([(x, y) for x, y in points], name=name).edges
    found = Path(tuple(edges), path.closed)
    if path.closed and (len(found.points) < 3 or not shapely.LinearRing(found.points).is_simple):
        return path
    return found


def with_fewer(region: Region, marks: Sequence[Mark]) -> tuple[Region, tuple[Mark, ...]]:
    """Return a part's region and marks with fewer points where they have very many."""
    thin = Region(fewer(region.outer), tuple(map(fewer, region.holes)))
    return thin, tuple(
        mark if len(mark.path.edges) <= MANY_EDGES else replace(mark, path=fewer(mark.path)) for mark in marks
    )


def too_fine(region: Region, marks: Sequence[Mark], wanted: str) -> list[Trouble]:
    """Return the finding for a part of more lines than a printed page can hold; [] for any other."""
    count = sum(len(path.edges) for path in (*region.paths, *(mark.path for mark in marks)))
    if count <= MOST_DRAWN_EDGES:
        return []
    message = f"the outline “{wanted}” and what is drawn on it come to {count:,} lines and arcs, after all points were left out "
    message += f"that lie within {SAGITTA:g} mm of a line: a printed page holds {MOST_DRAWN_EDGES:,} of one part"
    hint = "simplify its paths in the drawing program, or draw less texture"
    return [Trouble(TOO_FINE, message, hint, value=float(count), limit=float(MOST_DRAWN_EDGES))]
