"""Panels that are cut as one piece and folded: their outlines laid beside each other, with a line at each fold."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from math import atan2, degrees, dist, radians, tan

import numpy as np
import shapely

from publisher.basics import SAME_POINT, Finding, LineKind, Point, Pose, Purpose, polyline, record
from publisher.basics.wording import lengths_apart
from publisher.design import Design, FoldedPanel, FoldPlan
from publisher.geometry.making import placed, renamed, stated_edge, surviving_edges
from publisher.geometry.model import Edge, Fold, Mark, Opening, Part, Region
from publisher.geometry.paths import eroded, polygon, recover
from publisher.geometry.registry import Shape, deg
from publisher.geometry.rules import FOLD_PLACE

EQUAL = 0.01  # mm: mating edges are equally long
FOLD_TOUCH = 0.01  # mm² of two panels grown by 0.01 mm: more than a corner
FIELDS = np.linspace(0.1, 0.9, 9)  # shares of a panel's size at which its letter may stand
_TURNS = ("any", "half", "quarter", "none")
Letters = dict[tuple[str, str, str], set[str]]
CutParts = tuple[tuple[Part, ...], tuple[Finding, ...]]


@record
class _Laid:
    """A panel in its place on the flat piece: names are those of its part and edge, ``front.top``; the second time ``front_2.top``."""

    name: str
    part: Part
    shape: Shape
    openings: tuple[Opening, ...]

    def edge(self, name: str) -> Edge:
        """Return the edge in its place."""
        return next(edge for edge in self.shape.edges if edge.name == f"{self.name}.{name}")


def folded_parts(design: Design, parts: Sequence[Part]) -> CutParts:
    """Return the parts with those that are folded together replaced by their piece, where the first of them stood."""
    by_id = {part.id: part for part in parts}
    letters = _letters(design)
    made: dict[str, Part] = {}
    found: list[Finding] = []
    gone: set[str] = set()
    for plan in design.folds:
        if not all(part in by_id for part in plan.parts):
            continue  # what could not be drawn has its finding
        piece = _tried(plan, by_id, letters)
        if isinstance(piece, Part):
            made[plan.panels[0].part] = piece
            gone.update(plan.parts)
        else:
            found.append(piece)
    kept = [made.get(part.id, part) for part in parts if part.id in made or part.id not in gone]
    return tuple(kept), tuple(found)


def _tried(plan: FoldPlan, by_id: dict[str, Part], letters: Letters) -> Part | Finding:
    """Return one piece; one that the geometry library cannot make is a finding."""
    try:
        return _folded(plan, by_id, letters)
    except (shapely.errors.GEOSException, ArithmeticError, ValueError) as trouble:
        what = f"it could not be drawn ({type(trouble).__name__})"
        hint = "change a size a little; if that does not help, please report the spec as a fault of the tool"
        return _refused(plan.panels[-1], plan, what, hint)


def _folded(plan: FoldPlan, by_id: dict[str, Part], letters: Letters) -> Part | Finding:
    """Return one piece (mm) in the coordinates of its first panel, or the finding that says why it cannot be."""
    laid: list[_Laid] = []
    lines: list[tuple[FoldedPanel, tuple[Point, Point]]] = []
    for number, panel in enumerate(plan.panels):
        part = by_id[panel.part]
        times = sum(other.part == panel.part for other in plan.panels[:number])
        pose = Pose()
        if panel.on >= 0:
            on, own = laid[panel.on].edge(panel.on_edge), part.edge(panel.edge)
            assert own is not None
            wrong = _unequal(panel, plan, own, on)
            if wrong:
                return wrong
            pose = _beside(stated_edge(own), stated_edge(on))
        folded = {panel.edge} | {other.on_edge for other in plan.panels if other.on == number}
        laid.append(_lay(part, f"{part.id}_{times + 1}" if times else part.id, pose, folded, letters))
        if panel.on >= 0:
            lines.append((panel, _shared(laid[-1].edge(panel.edge), on)))
    crowded = _crowded(plan, laid)
    region, why = recover(
        shapely.union_all([polygon(one.shape.region) for one in laid], grid_size=SAME_POINT),
        [one.shape.region for one in laid],
    )
    if crowded or region is None:
        return _refused(plan.panels[-1], plan, crowded or why, "use another joint at one of the edges")
    return _piece(plan, laid, region, lines)


def _piece(
    plan: FoldPlan, laid: Sequence[_Laid], region: Region, lines: Sequence[tuple[FoldedPanel, tuple[Point, Point]]]
) -> Part:
    outer, edges = surviving_edges(region.outer, [one.shape for one in laid])
    outline = replace(region, outer=outer)
    first = laid[0].part
    template, _ = eroded(outline, first.trace_allowance)
    ground = polygon(template)
    folds = [Fold(panel.corner, groove(first.thickness, panel.corner)) for panel, _ in lines]
    marks = [mark for one in laid for mark in one.shape.marks]
    marks += [mark for (_, line), fold in zip(lines, folds, strict=True) for mark in _fold_marks(line, fold, ground)]
    marks += [_field(one, marks) for one in laid]
    folded = {f"{laid[p.on].name}.{p.on_edge}" for p, _ in lines}
    folded |= {f"{one.name}.{p.edge}" for one, p in zip(laid, plan.panels, strict=True)}
    return replace(
        first,
        id=plan.id,
        name=_name_of(laid),
        outline=outline,
        template=template,
        openings=tuple(opening for one in laid for opening in one.openings),
        marks=tuple(marks),
        edges=tuple(edge for edge in edges if edge.name not in folded),
        count=plan.count,
        spare=plan.spare,
        turning=max((one.part.turning for one in laid), key=_TURNS.index),
        place=plan.panels[0].place,
        folded=plan.parts,
        folds=tuple(dict.fromkeys(folds)),
    )


def _name_of(laid: Sequence[_Laid]) -> str:
    """Return the name of a piece: those of its different parts."""
    first, *others = (one.part.name for one in laid if one.name == one.part.id)
    return " + ".join([first, *(name[:1].lower() + name[1:] for name in others)])


def _fold_marks(line: tuple[Point, Point], fold: Fold, ground: shapely.Polygon) -> Iterator[Mark]:
    """Yield the stretches of a fold's line that lie on the template."""
    for stretch in shapely.get_parts(shapely.intersection(shapely.LineString(line), ground)):
        points = tuple((float(x), float(y)) for x, y in shapely.get_coordinates(stretch))
        if len(points) > 1:
            yield Mark(LineKind.FOLD, Purpose.BEND, polyline(points), name="fold", text=f"fold {deg(fold.corner)}")


def groove(thickness: float, corner: float) -> float:
    """Return the width of a fold's V-groove on the inside face, mm: 2t·tan((180° − corner)/2), two bevels of a mitre."""
    return 2.0 * thickness * tan(radians((180.0 - corner) / 2.0))


def _lay(part: Part, name: str, pose: Pose, folded: Collection[str], letters: Letters) -> _Laid:
    """Return a panel in its place. Folded edges need neither letters nor words of a bevel; no edge needs letters of folds."""

    def needed(mark: Mark) -> bool:
        if mark.purpose is Purpose.BEVEL:
            return mark.name not in folded
        joints = letters.get((part.id, mark.name, mark.text)) if mark.purpose is Purpose.MATCH else None
        return joints is None or (mark.name not in folded and joints != {"fold"})

    def kept(edge: Edge) -> tuple[str, ...]:
        return tuple(text for text in edge.matches if letters.get((part.id, edge.name, text)) != {"fold"})

    marks = tuple(filter(needed, part.marks))
    outline = part.outline
    edges = tuple(replace(edge, matches=kept(edge)) for edge in part.edges)
    plain = Shape(outline.outer, edges, outline.holes, marks)
    shape = renamed(placed(plain, pose), lambda own: f"{name}.{own}")
    openings = tuple(replace(one, ring=one.ring.placed(pose)) for one in part.openings)
    return _Laid(name, part, shape, openings)


def _letters(design: Design) -> Letters:
    """Return by part, edge and letter the joints that carry it, of joins at the edge itself."""
    found: Letters = {}
    for plan in design.panels:
        part_at = {place.name: place.part for place in plan.places}
        for join in plan.joins:
            for ref in (join.a, join.b) if join.at is None else ():
                if ref == join.b or not join.inset:
                    found.setdefault((part_at[ref.panel], ref.edge, join.match), set()).add(join.joint)
    return found


def _beside(own: tuple[Point, Point], on: tuple[Point, Point]) -> Pose:
    """Return the motion that lays an edge on another one, middle on middle, running against it."""
    (ax, ay), (bx, by) = own
    (cx, cy), (dx, dy) = on
    turn = degrees(atan2(cy - dy, cx - dx) - atan2(by - ay, bx - ax))
    return Pose.carrying(((ax + bx) / 2.0, (ay + by) / 2.0), ((cx + dx) / 2.0, (cy + dy) / 2.0), turn)


def _shared(own: Edge, on: Edge) -> tuple[Point, Point]:
    """Return the stretch at which both finished edges lie."""
    (x, y), size = on.start, dist(on.start, on.end)
    ux, uy = (on.end[0] - x) / size, (on.end[1] - y) / size
    first, last = sorted((px - x) * ux + (py - y) * uy for px, py in (own.start, own.end))
    low, high = max(0.0, first), min(size, last)
    return (x + ux * low, y + uy * low), (x + ux * high, y + uy * high)


def _field(laid: _Laid, marks: Sequence[Mark]) -> Mark:
    """Return the letter and name of a panel on its field, where most room is between cuts and other words."""
    body = polygon(laid.shape.region)
    left, bottom, right, top = body.bounds
    grid = [(left + u * (right - left), bottom + v * (top - bottom)) for v in FIELDS for u in FIELDS]
    points = shapely.points(grid)
    words = [shapely.Point(mark.path.points[0]) for mark in marks if mark.text]
    taken = shapely.union_all([body.boundary, *words])
    room = np.where(shapely.contains(body, points), shapely.distance(taken, points), -1.0)
    at = grid[int(np.argmax(np.round(room, 6)))]
    return Mark(
        LineKind.REFERENCE, Purpose.NAME, polyline((at,)), name="field", text=f"{laid.part.letter} {laid.part.name}"
    )


def _unequal(panel: FoldedPanel, plan: FoldPlan, own: Edge, on: Edge) -> Finding | None:
    one, other = own.nominal_length, on.nominal_length
    if abs(one - other) > EQUAL:
        own_length, length = lengths_apart(one, other)
        return _refused(
            panel,
            plan,
            f"the edge {on.name} is {length} long and {panel.part}.{panel.edge} {own_length}",
            "a fold has one length: make both edges equally long",
            (one, other),
        )
    if own.laps or on.laps:
        crossed = f"{panel.part}.{panel.edge}" if own.laps else on.name
        return _refused(panel, plan, f"a panel crosses at the folded edge {crossed}", "let it cross at another edge")
    return None


def _crowded(plan: FoldPlan, laid: Sequence[_Laid]) -> str:
    """Say which panels would lie over each other, or touch along more than their fold."""
    grown = [polygon(one.shape.region).buffer(0.01, join_style="mitre") for one in laid]
    for i, j in combinations(range(len(laid)), 2):
        neighbours = plan.panels[j].on == i
        over = shapely.intersection(grown[i], grown[j])
        if neighbours:
            over = shapely.buffer(over, -0.02, join_style="mitre")
        if over.area > FOLD_TOUCH:
            return f"laid flat, {laid[i].name} and {laid[j].name} lie over each other or touch beside their fold"
    return ""


def _refused(
    panel: FoldedPanel, plan: FoldPlan, what: str, hint: str, sizes: tuple[float, float] | None = None
) -> Finding:
    return FOLD_PLACE.found(
        f"{' + '.join(plan.parts)} cannot be folded from one piece: {what}",
        subject=f"part {plan.parts[0]}",
        hint=hint,
        place=panel.place,
        value=sizes[0] if sizes else None,
        limit=sizes[1] if sizes else None,
    )
