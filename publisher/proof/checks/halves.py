"""Half templates: with their mirror image they are the whole template, and they say that they are flipped over."""

from collections.abc import Sequence
from math import atan2, degrees, inf

import shapely

from publisher.basics import Check, Findings, Point, Pose, PrintPromise
from publisher.proof.checks.frame import about, copy_name, judged, page_name, words_at
from publisher.proof.measuring import Case
from publisher.proof.reading import normal

HALF = "Half: trace all but the marked side, flip it over along that side, trace again."
WHOLE_OFF = 0.01  # mm between the whole template and both halves
SEAM_DUST = 1e-3  # mm by which halves may lie apart along their line


@judged(
    "proof/half-template",
    "Half a template and its mirror image are the whole",
    f"who traces it, flips it over and traces it again has the piece, to {WHOLE_OFF:g} mm; whoever is not told has half a piece",
    may_be_empty=True,
)
def half_templates(case: Case, check: Check[Case]) -> Findings:
    """Hold both halves of each promised template against the whole one, and read what each print says of it."""
    halves = {piece.part: piece for piece in case.promises.prints if piece.mirror is not None}
    hint = "draw half of the template that was made of the piece, and say what is done with it"
    for piece in halves.values():
        off = _off(piece)
        if off > WHOLE_OFF:
            what = f": half of its template and its mirror image are {off:.3f} mm off the whole"
            yield about(check, f"part {piece.letter} ({piece.part})", what, hint, off, WHOLE_OFF)
    for outline in case.promises.outlines:
        if outline.part not in halves or outline.row > 1 or outline.column > 1:
            continue
        keys = {side.key for side in case.promises.sides if side.part == outline.part}
        said = " ".join(words_at(case, where) for key in sorted(keys) for where in case.carried(key))
        if normal(HALF) not in said:
            who = f"{page_name(outline.page)}: {copy_name(outline)}"
            yield about(check, who, f"does not say “{HALF}”", hint)
    return len(halves)


def _off(piece: PrintPromise) -> float:
    """Return how far (mm) both halves are off the whole template."""
    half, whole = _region(piece.rings), _region(piece.whole)
    other = _region([_flipped(ring, piece.mirror) for ring in piece.rings if piece.mirror])
    both = shapely.union_all([half, other], grid_size=SEAM_DUST)
    if not isinstance(both, shapely.Polygon) or len(both.interiors) != len(whole.interiors):
        return inf
    return float(shapely.hausdorff_distance(both.boundary, whole.boundary, densify=0.1))


def _region(rings: Sequence[tuple[Point, ...]]) -> shapely.Polygon:
    return shapely.Polygon(rings[0], rings[1:])


def _flipped(ring: tuple[Point, ...], line: tuple[Point, Point]) -> tuple[Point, ...]:
    """Return a ring turned over about a line."""
    (x, y), (far, high) = line
    turn = degrees(atan2(high - y, far - x))
    level = Pose(turn=-turn).apply_all(tuple((a - x, b - y) for a, b in ring))
    return Pose(x, y, turn).apply_all(tuple((a, -b) for a, b in level))
