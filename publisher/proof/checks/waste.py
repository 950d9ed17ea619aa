"""What is cut out and thrown away is hatched or says so: an opening that looks like a mark is left in, a mark that looks open is cut."""

from collections.abc import Iterator

import numpy as np
import shapely

from publisher.basics import Check, Findings, OutlinePromise, PrintPromise
from publisher.proof.checks.frame import copy_name, judged, page_name
from publisher.proof.measuring import Case, StrokeSegments
from publisher.proof.reading import Array, TextLine

SEEN_FROM = 6.0  # mm across: in narrower openings and strips nobody would see a hatching
OFF_EDGE = 1.0  # mm from the edges of an opening to what is counted as standing in it


@judged(
    "proof/waste-unmarked",
    "What falls away is hatched",
    f"each opening of a print, and each strip where foam goes, that is {SEEN_FROM:g} mm wide or more has lines or words in it that say so: "
    "left white it is taken for a face of the piece",
    may_be_empty=True,
)
def waste_marked(case: Case, check: Check[Case]) -> Findings:
    """Look for ink in each opening and each strip of the pieces that were promised."""
    pieces = {piece.part: piece for piece in case.promises.prints}
    looked = 0
    for outline in case.promises.outlines:
        piece, strokes = pieces.get(outline.part), case.strokes(outline.page)
        if piece is None or strokes is None:
            continue
        words = case.lines(outline.page)
        for what, waste in _falls_away(piece, outline):
            looked += 1
            if not _marked(waste, strokes, words):
                x, y = waste.centroid.x, waste.centroid.y
                yield check.found(
                    f"{page_name(outline.page)}: {copy_name(outline)}: {what} about {x:.1f}, {y:.1f} mm is not marked as waste",
                    subject=outline.part,
                    hint="hatch what is cut out, or write “remove” into it",
                )
    return looked


def _falls_away(piece: PrintPromise, outline: OutlinePromise) -> Iterator[tuple[str, shapely.Geometry]]:
    """Yield what falls away of a piece, as far as this print shows it, where it is wide enough to be marked."""
    named = (*(("an opening", ring) for ring in piece.rings[1:]), *(("a strip of foam", ring) for ring in piece.strips))
    for what, ring in named:
        shown = shapely.Polygon(outline.pose.apply_all(ring)).buffer(0.0)
        if outline.window is not None:
            shown = shown.intersection(shapely.box(*outline.window.sides))
        if not shown.buffer(-SEEN_FROM / 2.0).is_empty:
            yield what, shown.buffer(-OFF_EDGE)


def _marked(waste: shapely.Geometry, strokes: StrokeSegments, words: tuple[TextLine, ...]) -> bool:
    middles: Array = (strokes.starts + strokes.ends) / 2.0
    if len(middles) and bool(shapely.contains_xy(waste, middles).any()):
        return True
    at = np.array([line.middle() for line in words]).reshape(-1, 2)
    return bool(shapely.contains_xy(waste, at).any())
