"""Parts that are split: their pieces, and the plates that lap the seams, as parts of their own."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations, count, pairwise

import shapely

from publisher.basics import Finding, LineKind, Point, Purpose, polyline, record
from publisher.design import Design, SplitPlan, letter
from publisher.geometry.cutting.by_sizes import by_sizes
from publisher.geometry.cutting.folds import folded_parts
from publisher.geometry.cutting.halves import with_halves
from publisher.geometry.cutting.plates import plate_behind
from publisher.geometry.cutting.seams import Cut, Half, Seam, cut_in_two, misplaced, seam_of
from publisher.geometry.making import edge_words, left_of, surviving_edges
from publisher.geometry.model import Edge, LaidSeam, Mark, Part, Region
from publisher.geometry.paths import line_string, polygon
from publisher.geometry.registry import Shape
from publisher.geometry.rules import OWN_FAULT, SPLIT_PLACE

BESIDE_SEAM = 8.0  # mm between a seam and the words about it
SPLIT_WORDS_APART = 14.0  # mm between two marks' words
_SHARES = (0.5, 0.35, 0.65, 0.25, 0.75, 0.42, 0.58, 0.15, 0.85)
CutParts = tuple[tuple[Part, ...], tuple[Finding, ...]]


def cut_pieces(design: Design, parts: Sequence[Part]) -> CutParts:
    """Return what is cut from board: every split part replaced by its pieces and plates, parts that are folded
    together by their one piece; findings for seams and folds that cannot be.

    Pieces are lettered A1, A2, … from the left (or from below), plates go on after them; each knows its ``whole``.
    """
    splits = {plan.id: plan.splits for plan in design.parts if plan.splits}
    letters = free_letters(parts)
    made: list[Part] = []
    parts, problems = folded_parts(design, parts)
    found: list[Finding] = [*problems]
    for part in parts:
        pieces, problems = _tried(part, splits[part.id], letters) if part.id in splits else ((part,), ())
        made.extend(pieces)
        found.extend(problems)
    found.extend(by_sizes(made, [plan.id for plan in design.parts if plan.printed == "sizes"]))
    halves, problems = with_halves(made)
    return halves, (*found, *problems)


def free_letters(parts: Sequence[Part]) -> Iterator[str]:
    """Yield the match letters that no joint of these parts bears."""
    used = {mark.text for part in parts for mark in part.marks if mark.purpose is Purpose.MATCH}
    yield from (name for index in count() if (name := letter(index, small=True)) not in used)


def _tried(part: Part, plans: Sequence[SplitPlan], letters: Iterator[str]) -> CutParts:
    """Return one part's pieces and plates; a part that the geometry library cannot split is a finding."""
    try:
        return _split(part, plans, letters)
    except (shapely.errors.GEOSException, ArithmeticError, ValueError) as trouble:
        return (), (
            OWN_FAULT.found(
                f"part “{part.id}” could not be split here ({type(trouble).__name__})",
                subject=f"part {part.id}",
                hint="move the seam a little; if that does not help, please report the spec as a fault of the tool",
                place=plans[0].place,
            ),
        )


def with_seams(design: Design, parts: Sequence[Part]) -> tuple[Part, ...]:
    """Return the parts with their seams and the plates behind them; what cannot be split (``cut_pieces`` says why) as it is."""
    splits = {plan.id: plan.splits for plan in design.parts if plan.splits}
    return tuple(replace(part, seams=_seams(part, splits[part.id])) if part.id in splits else part for part in parts)


def _seams(part: Part, plans: Sequence[SplitPlan]) -> tuple[LaidSeam, ...]:
    try:
        laid = _laid(part, plans)
    except (shapely.errors.GEOSException, ArithmeticError, ValueError):
        return ()
    return laid.seams if isinstance(laid, _Sawn) else ()


@record
class _Sawn:
    """A split part: what lies between its seams, the cuts, and the seams with their plates."""

    halves: tuple[Half, ...]
    cuts: tuple[Cut, ...]
    seams: tuple[LaidSeam, ...]


def _split(part: Part, plans: Sequence[SplitPlan], letters: Iterator[str]) -> CutParts:
    """Return one part's pieces, then its plates."""
    laid = _laid(part, plans)
    if not isinstance(laid, _Sawn):
        return (), laid
    regions = [half.outline for half in laid.halves]
    marks = _seam_marks(regions, _letters(part, laid.halves), laid.cuts, part, letters)
    pieces = [_piece(part, half, number, marks[number - 1]) for number, half in enumerate(laid.halves, 1)]
    return (*pieces, *(seam.plate for seam in laid.seams if seam.plate is not None)), ()


def _letters(part: Part, halves: Sequence[Half]) -> list[str]:
    return [f"{part.letter}{number}" for number in range(1, len(halves) + 1)]


def _laid(part: Part, plans: Sequence[SplitPlan]) -> _Sawn | tuple[Finding, ...]:
    """Return one part with its seams and plates, or what is wrong with them."""
    halves, cuts, seams = [Half(part.outline, part.template)], list[Cut](), list[Seam]()
    for number, plan in enumerate(plans, 1):
        seam = seam_of(part, plan)
        wrong = tuple(misplaced(part, seam, seams))
        if wrong:
            return wrong
        seams.append(seam)
        after: list[Half] = []
        for half in halves:
            low, high = (polygon(half.outline).bounds[seam.axis + side] for side in (0, 2))
            if not low < seam.at < high:
                after.append(half)
                continue
            cut = cut_in_two(half.outline, half.template, seam, f"seam_{number}", part.trace_allowance)
            if cut is None:
                return (_in_the_way(part, plan),)
            cuts.append(cut)
            after += [cut.low, cut.high]
        halves = after
    names, laid, number = _letters(part, halves), list[LaidSeam](), 0
    for cut in cuts:
        line = tuple((float(x), float(y)) for x, y in shapely.get_coordinates(cut.line))
        own, at = None, line[0]
        if cut.seam.plan.plate:
            number += 1
            behind = [
                name for name, half in zip(names, halves, strict=True) if _touches(polygon(half.outline), cut.line)
            ]
            plate = plate_behind(part, cut, seams, (number, f"{part.letter}{len(halves) + number}"), behind)
            if isinstance(plate, Finding):
                return (plate,)
            own, at = plate
        laid.append(LaidSeam(line, own, at, cut.seam.axis == 0))
    return _Sawn(tuple(halves), tuple(cuts), tuple(laid))


def _piece(part: Part, half: Half, number: int, seam_marks: Sequence[Mark]) -> Part:
    """Return one piece with the edges, openings and marks that are on it."""
    outer, edges = surviving_edges(half.outline.outer, [Shape(part.outline.outer, part.edges)])
    outline = replace(half.outline, outer=outer)
    body = polygon(outline)
    edges = tuple(_own_laps(edge, body) for edge in edges)
    return replace(
        part,
        id=f"{part.id}_{number}",
        letter=f"{part.letter}{number}",
        name=f"{part.name}, piece {number}",
        outline=outline,
        template=half.template,
        openings=tuple(o for o in part.openings if _has(body, polygon(o.ring).representative_point())),
        marks=(*_left(_with_words(part.marks, edges, body, part.thickness), body, polygon(half.template)), *seam_marks),
        edges=edges,
        whole=part.id,
    )


def _has(body: shapely.Polygon, at: shapely.Point) -> bool:
    """Say whether a point lies over a piece, also in one of its openings."""
    left, bottom, right, top = body.bounds
    whole = shapely.Polygon(body.exterior)
    return bool(whole.covers(at)) or (left <= at.x <= right and bottom <= at.y <= top and whole.convex_hull.covers(at))


def _own_laps(edge: Edge, body: shapely.Polygon) -> Edge:
    laps = tuple(lap for lap in edge.laps if body.distance(shapely.Point(lap.floor)) < 1e-6)
    return edge if laps == edge.laps else replace(edge, laps=laps)


def _with_words(marks: Sequence[Mark], edges: Sequence[Edge], body: shapely.Polygon, thickness: float) -> list[Mark]:
    """Return the marks with the words and lines of bevels and rabbets made anew: each piece says what is cut at its edges."""
    kept = [mark for mark in marks if mark.purpose not in (Purpose.BEVEL, Purpose.RABBET)]
    return [*kept, *edge_words([edge for edge in edges if edge.bevel or edge.rabbet], (), body, thickness)]


def _left(marks: Sequence[Mark], body: shapely.Polygon, template: shapely.Polygon) -> Iterator[Mark]:
    """Yield what is left of the whole part's marks: lines as far as they lie on the template, words with their points."""
    shapely.prepare(template)
    lines = [line_string(mark.path) for mark in marks]
    inside = shapely.covers(template, lines)
    touched = shapely.intersects(body, lines)
    for mark, line, whole, some in zip(marks, lines, inside, touched, strict=True):
        if whole or (line.geom_type == "Point" and some):
            yield mark
        elif some:
            yield from left_of(mark, line, template)


def _seam_marks(
    regions: Sequence[Region], names: Sequence[str], cuts: Sequence[Cut], part: Part, letters: Iterator[str]
) -> list[list[Mark]]:
    """Return for each piece the letter of each of its seams, the same on both sides, and the piece to which it is glued."""
    bodies = [polygon(region) for region in regions]
    taken = [mark.path.points[0] for mark in part.marks if mark.text]
    marks: list[list[Mark]] = [[] for _ in regions]
    for cut in cuts:
        for one, other in combinations(range(len(regions)), 2):
            shared = _shared(cut.line, bodies[one], bodies[other])
            if shared is None:
                continue
            spots = _two_spots(shared, taken)
            text = next(letters)
            for piece, mate, way in ((one, other, -BESIDE_SEAM), (other, one, BESIDE_SEAM)):
                at, beside = (polyline((_moved(spot, cut.seam.axis, way),)) for spot in spots)
                marks[piece] += [
                    Mark(LineKind.REFERENCE, Purpose.MATCH, at, name="seam", text=text),
                    Mark(LineKind.REFERENCE, Purpose.NAME, beside, name="seam", text=f"glue to {names[mate]}"),
                ]
            taken += spots
    return marks


def _two_spots(shared: tuple[Point, Point], taken: Sequence[Point]) -> list[Point]:
    """Return two places along a seam for its words, as far as can be clear of those that stand already."""
    spots = [_along(shared, share) for share in _SHARES]
    return sorted(spots, key=lambda at: not all(_far(at, other) for other in taken))[:2]


def _shared(line: shapely.LineString, a: shapely.Polygon, b: shapely.Polygon) -> tuple[Point, Point] | None:
    """Return the longest straight stretch of a seam at which two pieces meet; None where they do not."""
    both = shapely.intersection(shapely.intersection(line, a.buffer(1e-5)), b.buffer(1e-5))
    found: list[tuple[float, tuple[Point, Point]]] = []
    for stretch in shapely.get_parts(shapely.line_merge(both)):
        if isinstance(stretch, shapely.LineString):
            ends = [(float(x), float(y)) for x, y in stretch.simplify(1e-4).coords]
            found += [(shapely.LineString(pair).length, pair) for pair in pairwise(ends)]
    length, ends_of = max(found, default=(0.0, None), key=lambda item: round(item[0], 3))
    return ends_of if length > 1.0 else None


def _along(ends: tuple[Point, Point], share: float) -> Point:
    (ax, ay), (bx, by) = ends
    return (ax + share * (bx - ax), ay + share * (by - ay))


def _far(at: Point, other: Point) -> bool:
    return abs(at[0] - other[0]) > 2.0 * SPLIT_WORDS_APART or abs(at[1] - other[1]) > SPLIT_WORDS_APART / 2.0


def _moved(at: Point, axis: int, by: float) -> Point:
    return (at[0] + by, at[1]) if axis == 0 else (at[0], at[1] + by)


def _touches(body: shapely.Polygon, line: shapely.LineString) -> bool:
    return bool(shapely.intersection(body.buffer(1e-5), line).length > 1.0)


def _in_the_way(part: Part, plan: SplitPlan) -> Finding:
    return SPLIT_PLACE.found(
        f"a seam of part “{part.id}” would not leave two pieces: another seam or its outline is in the way",
        subject=f"part {part.id}",
        hint="move the seam, or make its step smaller",
        place=plan.place,
        value=plan.at,
    )
