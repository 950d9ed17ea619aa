"""Where tools, flags and letters stand in a sketch: no word is covered, and no line to what is named crosses one. Mm of the sketch."""

from collections.abc import Callable, Sequence
from math import inf
from typing import TYPE_CHECKING

import numpy as np
import shapely

from publisher.basics import Box, Point
from publisher.pages.instructions.sketch_pen import TOOL_LONG, SketchPen, leant
from publisher.pages.type import PICTURE_DETAIL

if TYPE_CHECKING:
    import numpy.typing as npt

DrawsTool = Callable[[Point, float], None]  # draws a tool on its tip, leaning by so many degrees

COVERED = ((-1.4, 0.6), (1.4, 0.6), (3.0, 8.0), (3.0, TOOL_LONG), (-1.4, TOOL_LONG))
"""What a tool covers that stands upright on (0, 0): a knife, a pencil or a stick."""

TURN_ACROSS, TURN_CLEAR = 8.0, 0.8  # mm: the sign for turning over, and what stays free round it
FLAG_CLEAR = 2.0  # mm: a line that runs nearer beside a cross or a tool seems to name it
BRACKET, STEM_CLEAR = 1.2, 0.8  # mm that a bracket is high, and what its stem keeps off tools and words
HIDES = 2000.0  # to a mm² that a frame covers: the shaft of an arrow is no more, and with it goes what the arrow says
TURN_OVER = "turn over"
STEEPEST, LEVELLEST = 24.0, 88.0  # degrees by which a tool leans from upright, to either side
TRIED = 8  # places that are looked at together: most sketches have room at one of the first
A_HAIR = 1e-6  # of a cost, by which areas and lengths may be off


def stand_tool(pen: SketchPen, tool: DrawsTool, tips: Sequence[Point], field: Box) -> None:
    """Draw a tool on the first of the points at which it covers no word, as upright as it can be with its handle in the field."""
    room = shapely.box(*field.sides)
    kept = shapely.union_all(pen.said) if pen.said else shapely.Polygon()
    busy = shapely.union_all(pen.taken) if pen.taken else shapely.Polygon()
    turns = np.arange(STEEPEST, LEVELLEST, 8.0)
    tried = [
        (number, tip, lean) for number, tip in enumerate(tips) for turn in turns.tolist() for lean in (-turn, turn)
    ]
    if not tried:
        return
    far = np.array([3.0 * number + 0.1 * abs(lean) for number, _, lean in tried])

    def cost(some: "npt.NDArray[np.intp]", _: float) -> "npt.NDArray[np.float64]":
        areas = shapely.polygons([[leant(at, *tried[one][1:]) for at in COVERED] for one in some.tolist()])
        outside = shapely.area(areas) - shapely.area(shapely.intersection(areas, room))
        over, near = (_shared(areas, area, shapely.area) for area in (kept, busy))
        return np.asarray(far[some] + 50.0 * outside + 100.0 * over + near)

    _, tip, lean = tried[_least(far, cost)]
    tool(tip, lean)


def _least(
    known: "npt.NDArray[np.float64]",
    cost: "Callable[[npt.NDArray[np.intp], float], npt.NDArray[np.float64]]",
) -> int:
    """Return the first place of the least cost. What is ``known`` of each is no more than it costs, but for a hair: the whole ``cost`` is
    asked for only of places at which it may be the least. It is told the least so far, and need not count on above that."""
    order = np.argsort(known, kind="stable")
    best = (inf, 0)
    for start in range(0, len(order), TRIED):
        if known[order[start]] > best[0] + A_HAIR:
            break
        some = np.sort(order[start : start + TRIED])
        costs = cost(some, best[0])
        least = int(costs.argmin())
        best = min(best, (float(costs[least]), int(some[least])))
    return best[1]


def _shared(
    things: "npt.NDArray[np.object_]",
    area: shapely.Geometry,
    measure: "Callable[[npt.NDArray[np.object_]], npt.NDArray[np.float64]]",
) -> "npt.NDArray[np.float64]":
    """Return how much of things lies in an area, which is mostly nothing: that is told in a tenth of the time that a cut takes."""
    shapely.prepare(area)
    met = shapely.intersects(area, things)
    found = np.zeros(len(things))
    found[met] = measure(shapely.intersection(things[met], area))
    return found


def put_flag(pen: SketchPen, text: str, field: Box, parts: Sequence[shapely.Polygon], around: float = 0.0) -> None:
    """Set words in a frame, at all the parts of which they are said: with a line to a single one, over several with a bracket round all of
    them; ``around``: mm that each takes beside its outline. The frame covers no tool and no word, and its line crosses none."""
    if len(parts) > 1:
        _put_group(pen, text, field, parts, around)
    elif parts:
        _put_leader(pen, text, field, parts[0])


def _put_group(pen: SketchPen, text: str, field: Box, parts: Sequence[shapely.Polygon], around: float) -> None:
    """Set words in a frame over a bracket that spans all parts; where they stand in rows its legs run down beside all of them."""
    boxes = np.array([part.bounds for part in parts])
    left, right = max(boxes[:, 0].min() - around - 0.9, 0.1), min(boxes[:, 2].max() + around + 0.9, field.right - 0.1)
    top, foot = float(boxes[:, 3].max()) + around + 0.7, float(boxes[:, 1].min()) - around
    rows = bool(boxes[:, 1].max() >= boxes[:, 3].min())
    put_bracket(pen, text, field, (float(left), float(right)), top, top + BRACKET - foot if rows else BRACKET)


def put_bracket(
    pen: SketchPen, text: str, field: Box, ends: tuple[float, float], top: float, leg: float = BRACKET
) -> None:
    """Set words in a frame over a bracket that spans from one end to the other over what lies no higher than ``top``, its legs so long
    (mm): they hold for all that lies under it. The frame stands on it or at the top of the field, where it covers least."""
    left, right = ends
    low = top + BRACKET
    kept = shapely.union_all([*pen.said, *pen.taken])
    near = kept.buffer(STEM_CLEAR, quad_segs=2)
    line = shapely.LineString([(left, low - leg), (left, low), (right, low), (right, low - leg)])
    for run in shapely.get_parts(shapely.difference(line, kept.buffer(0.3))):
        if run.length > 0.5:
            pen.line(*((float(x), float(y)) for x, y in run.coords), style=PICTURE_DETAIL)
    cap = pen.setter.cap(pen.small) / pen.scale
    half, high = pen.wide(text) / 2 + 1.2, cap + 1.9
    xs = np.arange(min(right, field.right - half), left + half - 0.01, -1.0)
    if not len(xs):  # of a bracket that is narrower than the words the frame stands over its middle
        xs = np.array([min(max((left + right) / 2, field.left + half), field.right - half)])
    places = np.array([(x, base) for base in (low, field.top - high) for x in xs.tolist()])
    x, base = places.T
    frames = shapely.box(x - half - 0.4, base - 0.2, x + half + 0.4, base + high)
    ends_of_stems = np.column_stack((x, np.full(len(x), low))), np.column_stack((x, base + 0.01))
    stems = shapely.linestrings(np.stack(ends_of_stems, axis=1))
    known = 0.2 * np.abs(right - half - x) + shapely.length(stems) + 1000.0 * np.maximum(base + high - field.top, 0.0)

    def cost(some: "npt.NDArray[np.intp]", _: float) -> "npt.NDArray[np.float64]":
        met = HIDES * _shared(frames[some], kept, shapely.area) + 300.0 * _shared(stems[some], near, shapely.length)
        return np.asarray(met + known[some])

    x, base = places[_least(known, cost)].tolist()
    if base > low:
        pen.line((x, low), (x, base), style=PICTURE_DETAIL)
        pen.taken.append(shapely.LineString([(x, low), (x, base)]).buffer(0.4))
    frame_text(pen, text, (x, base))


def frame_text(pen: SketchPen, text: str, at: Point) -> None:
    """Set words in a frame whose lower side has its middle at a point."""
    x, base = at
    cap = pen.setter.cap(pen.small) / pen.scale
    half, high = pen.wide(text) / 2 + 1.2, cap + 1.9
    ring = Box(x - half, base, x + half, base + high).corners()
    pen.white(*ring)
    pen.line(*ring, style=PICTURE_DETAIL, closed=True)
    pen.count(text, x, base + (high - cap) / 2)


def _put_leader(pen: SketchPen, text: str, field: Box, part: shapely.Polygon) -> None:
    """Set words in a frame at the top of a field, with a line to the part that they say it of, which ends beside its openings."""
    cap = pen.setter.cap(pen.small) / pen.scale
    half, high = pen.wide(text) / 2 + 1.2, cap + 1.9
    low, kept = field.top - high, shapely.union_all([*pen.said, *pen.taken])
    beside = kept.buffer(FLAG_CLEAR, quad_segs=2)
    xs = np.arange(field.right - half, field.left + half - 0.01, -2.0)
    ends = np.array(_spots(part))
    if not len(xs):
        xs = np.array([(field.left + field.right) / 2])
    frames = shapely.box(xs - half - 0.6, low - 0.6, xs + half + 0.6, field.top)
    covers = HIDES * _shared(frames, kept, shapely.area) + 200.0 * _shared(frames, part, shapely.area)
    known = covers + 0.2 * (field.right - half - xs)
    away = np.hypot(xs[:, None] - ends[:, 0], low - ends[:, 1])

    def cost(some: "npt.NDArray[np.intp]", best: float) -> "npt.NDArray[np.float64]":
        frame, end = np.divmod(some, len(ends))
        starts = np.column_stack((xs[frame], np.full(len(some), low)))
        lines = shapely.linestrings(np.stack((starts, ends[end]), axis=1))
        costs = known[frame] + shapely.length(lines)
        for weight, area in ((300.0, kept), (30.0, beside)):
            at = np.flatnonzero(costs <= best)
            costs[at] += weight * _shared(lines[at], area, shapely.length)
        return np.asarray(costs)

    frame, end = divmod(_least((known[:, None] + away).ravel(), cost), len(ends))
    x, on = float(xs[frame]), (float(ends[end, 0]), float(ends[end, 1]))
    clear = shapely.difference(
        shapely.LineString([(x, low), on]), shapely.union_all(pen.said)
    )  # a letter may stand at its end
    for run in shapely.get_parts(clear):
        pen.line(*((float(px), float(py)) for px, py in run.coords), style=PICTURE_DETAIL)
    pen.taken.append(shapely.LineString([(x, low), on]).buffer(0.4))
    frame_text(pen, text, (x, low))


def frame_words(pen: SketchPen, text: str, at: Point, on: Point) -> None:
    """Set words in a frame whose lower left corner is ``at``, with a line from it to what they are said of, at its left."""
    cap = pen.setter.cap(pen.small) / pen.scale
    wide, high = pen.wide(text) + 2.4, cap + 1.9
    pen.line((at[0], at[1] + high / 2), on, style=PICTURE_DETAIL)
    box = shapely.box(at[0], at[1], at[0] + wide, at[1] + high)
    ring = Box(*box.bounds).corners()
    pen.white(*ring)
    pen.line(*ring, style=PICTURE_DETAIL, closed=True)
    pen.count(text, at[0] + 1.2, at[1] + (high - cap) / 2, "left")
    pen.taken += [box, shapely.LineString([(at[0], at[1] + high / 2), on]).buffer(0.4)]


def put_turn_over(pen: SketchPen, field: Box) -> None:
    """Draw the sign that a piece is turned over since the act before, with its words under it where they find room: an arrow round a level
    line, as high and as far right as can be; as in the pictures of what is put together."""
    half, cap = TURN_ACROSS / 2, pen.setter.cap(pen.small) / pen.scale
    wide, low = max(half, pen.wide(TURN_OVER) / 2), half + 2.4 + cap
    spot, room = _roomy(pen, field, wide, low, half)
    said = room >= TURN_CLEAR
    x, y = spot if said else _roomy(pen, field, half, half, half)[0]
    turned_round(pen, (x, y))
    if said:
        pen.count(TURN_OVER, x, y - low)


def turned_round(pen: SketchPen, at: Point) -> None:
    """Draw an arrow round a level line whose middle is at a point."""
    (x, y), half = at, TURN_ACROSS / 2
    pen.scene("turned_over", at)
    turns = np.radians(np.linspace(-50.0, 215.0, 24))
    bow = [(x + 0.42 * half * float(np.sin(turn)), y + half * float(np.cos(turn))) for turn in turns]
    pen.line((x - half, y), (x + half, y), style=PICTURE_DETAIL)
    pen.arrow(*bow)


def _roomy(pen: SketchPen, field: Box, wide: float, low: float, high: float) -> tuple[Point, float]:
    """Return a point of a field with room round it for what reaches so far (mm) to both sides, down and up: as high and as far right as
    can be, else where there is most; and how far that keeps off all else."""
    xs = np.arange(field.left + wide, field.right - wide + 0.01, 1.5)
    ys = np.arange(field.bottom + low, field.top - high + 0.01, 1.5)
    points = np.array(np.meshgrid(xs, ys)).reshape(2, -1).T
    busy = shapely.union_all([*pen.said, *pen.taken, *map(shapely.LineString, pen.lines)])
    boxes = shapely.box(points[:, 0] - wide, points[:, 1] - low, points[:, 0] + wide, points[:, 1] + high)
    room = shapely.distance(boxes, busy)
    free = np.flatnonzero(room >= TURN_CLEAR)
    away = np.hypot(points[:, 0] - field.right, points[:, 1] - field.top)
    best = free[int(away[free].argmin())] if len(free) else int((room - 1e-3 * away).argmax())
    return (float(points[best, 0]), float(points[best, 1])), float(room[best])


def room_for(pen: SketchPen, shape: shapely.Polygon) -> tuple[Point, float]:
    """Return the middle of the largest circle on a shape that no tool, rule or arrow touches, and its radius (mm)."""
    left = shapely.difference(shape, shapely.union_all(pen.taken)) if pen.taken else shape
    pieces = [piece for piece in shapely.get_parts(left) if piece.geom_type == "Polygon" and not piece.is_empty]
    found = [shapely.maximum_inscribed_circle(piece, 0.2) for piece in pieces]
    if not found:
        return (0.0, 0.0), 0.0
    circle = max(found, key=lambda one: float(one.length))
    (x, y), _ = circle.coords
    return (float(x), float(y)), float(circle.length)


def _spots(part: shapely.Polygon) -> list[Point]:
    """Return points on a part off its edges and openings, where a line to it may end."""
    inner = next((one for by in (1.0, 0.3, 0.0) if not (one := part.buffer(-by)).is_empty), part)
    left, bottom, right, top = inner.bounds
    xs, ys = map(np.ravel, np.meshgrid(np.linspace(left, right, 9), np.linspace(bottom, top, 7), indexing="ij"))
    on = shapely.contains_xy(inner, xs, ys)
    found = list(zip(xs[on].tolist(), ys[on].tolist(), strict=True))
    return found or [(float(x), float(y)) for x, y in shapely.point_on_surface(inner).coords]
