"""Signs on the paper of a picture: straight arrows, the sign for turning the work, letters; each where it covers least. Mm."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from math import hypot
from typing import Literal

import numpy as np
import shapely

from publisher.basics import Box
from publisher.joints.act_pictures.paper_grid import PaperGrid, nearest
from publisher.joints.drawings import Sketch
from publisher.joints.outlines import Array

ARROW_LONG, ARROW_SHORT = 12.0, 5.5
HEAD_LONG, HEAD_HALF = 3.2, 1.5
"""mm: the longest and shortest arrow, and its head."""

UP_LONG, UP_WIDE, UP_CLEAR, UP_HEAD = 4.0, 1.6, 0.5, 0.5
"""mm: the arrow that says which end of a part is up, what it takes across, what it keeps off the border of its face; and the share that its
head is of that of other arrows, from which it must be told apart."""

UP_WORD, UP_LETTERS = "top", 4
"""What stands beside it, as on its template, and how many letters that is in the longest language."""

TURN_WIDE, TURN_HIGH = 9.0, 9.0
"""mm: the sign for turning the work round."""

TURN_SAID = 5.2
"""mm under it for its words."""

LABEL_HIGH, LABEL_WIDE = 2.8, 1.8
"""mm that a label is taken to be high, and wide for each sign."""

SWEEP_CLEAR = 1.6
"""mm on either side of an arrow along a curve that strokes and patterns leave free."""

CROSS_HALF = 2.4
"""mm: half of a cross through what is not done, each way."""

LABEL_ROOM = 0.8
"""mm kept free round a label."""

UP_SAID = (LABEL_WIDE * UP_LETTERS + LABEL_ROOM, LABEL_HIGH + LABEL_ROOM)
"""mm that the word beside such an arrow takes, across and up."""

LEADER_FROM = 1.2
"""mm: a label farther than this from what it names gets a line to it."""

LEADER_IN = 1.2
"""mm: it ends so far within the border of what it names, which other things may share, where that is wide enough."""


LABEL_TRIED = 150
"""The best places of a label, of which one is taken from which its line runs through no other words."""


Turning = Literal["", "turn round", "turn over", "stand up", "lay down"]
"""How the work is moved before it looks as it is shown: turned about an upright line, or tipped in one of three ways."""


@dataclass(slots=True)
class Sheet:
    """The paper of one picture in the making: its lines by weight, its ground, and areas that hatch and guides keep clear of."""

    sketch: Sketch
    ground: PaperGrid
    clear: list[shapely.Geometry]

    def take(self, box: Box) -> None:
        """Keep a box for a sign."""
        area = shapely.box(*box.sides)
        self.clear.append(area)
        self.ground.mark_area(shapely.buffer(area, 0.3))


def head(sketch: Sketch, tip: Array, way: Array, share: float = 1.0) -> None:
    """Add the full head of an arrow, or one of a ``share`` of its size."""
    way = way / max(hypot(*way), 1e-9)
    side = share * HEAD_HALF * np.array([-way[1], way[0]])
    base = tip - share * HEAD_LONG * way
    sketch.add_path("head", np.array([tip, base + side, base - side, tip]))


def put_arrow(sheet: Sheet, way: Array, gap: float, goal: Array, new: shapely.Geometry) -> None:
    """Add the arrow along a way (2,) from what is held off ``gap`` mm to the points ``goal`` (n, 2): between them or beside, where it
    crosses least."""
    size = hypot(*way)
    way = way / size if size > 1e-6 else np.array([0.0, -1.0])
    side = np.array([-way[1], way[0]])
    long = min(ARROW_LONG, max(ARROW_SHORT, 0.6 * gap))
    spread = goal @ side
    middle = goal.mean(axis=0) + ((spread.max() + spread.min()) / 2 - goal.mean(axis=0) @ side) * side - way * gap / 2
    reach = float(spread.max() - spread.min()) / 2 + HEAD_HALF + 4.0
    across, along = np.meshgrid(np.linspace(-reach, reach, 25), np.linspace(-0.35, 0.35, 7) * max(gap, long))
    at = middle + across.ravel()[:, None] * side + along.ravel()[:, None] * way
    cost = 0.25 * np.abs(across.ravel()) + 0.5 * np.abs(along.ravel())
    covered = sheet.ground.inside(new)
    for share in (-0.4, -0.2, 0.0, 0.2, 0.4):
        on = at + share * long * way
        cost = cost + 3.0 * np.minimum(sheet.ground.crossed(on, 2 * HEAD_HALF + 1.0, 2 * HEAD_HALF + 1.0), 100)
        cost = cost + 4.0 * sheet.ground.shares(covered, on, 2.0, 2.0)
    best = at[int(cost.argmin())]
    tail, tip = best - way * long / 2, best + way * long / 2
    sheet.sketch.add_path("cue", np.array([tail, tip - HEAD_LONG * way]))
    head(sheet.sketch, tip, way)
    wide = HEAD_HALF * np.abs(side)
    left, low = np.minimum(tail, tip) - wide
    right, high = np.maximum(tail, tip) + wide
    sheet.take(Box(float(left), float(low), float(right), float(high)))


def put_turn(sheet: Sheet, how: Turning, parts: shapely.Geometry) -> None:
    """Add the sign that the work is turned since the picture before, with its words under it: an arrow round an upright line, or round a
    level one where it is tipped; beside all ``parts`` where there is room, else over them, and none where there is no room at all."""
    for words in (how, ""):
        wide = max(TURN_WIDE, LABEL_WIDE * len(words)) + 1.5
        said = TURN_SAID if words else 0.0
        spot = _beside(sheet, parts, wide, TURN_HIGH + said + 1.5)
        if spot is not None:
            break
    else:
        return
    x, y = spot
    sheet.take(Box(x - wide / 2, y - (TURN_HIGH + said) / 2 - 0.7, x + wide / 2, y + (TURN_HIGH + said) / 2 + 0.7))
    if words:
        sheet.sketch.label(words, x, y - (TURN_HIGH + said) / 2 + LABEL_HIGH / 2)
    half = TURN_WIDE / 2
    angles = np.radians(np.linspace(-50.0, 215.0, 40))
    oval = np.column_stack([half * np.cos(angles), 0.42 * half * np.sin(angles)])
    axis = np.array([(0.0, -half), (0.0, half)])
    if how != "turn round":
        oval, axis = oval[:, ::-1], axis[:, ::-1]
    middle = np.array([x, y + said / 2])
    oval, axis = oval + middle, axis + middle
    sheet.sketch.add_path("cue", oval[:-3])
    way = oval[-1] - oval[-4]
    head(sheet.sketch, oval[-1] + 1.2 * way / hypot(*way), way)
    sheet.sketch.add_path("ring", axis)


def _beside(sheet: Sheet, parts: shapely.Geometry, wide: float, high: float) -> tuple[float, float] | None:
    """Return the middle of a free box beside all parts, else over them, as far to the upper right as can be without making the picture
    taller, where that can be; None where there is no room."""
    points = sheet.ground.grid()
    free = sheet.ground.crossed(points, wide, high) == 0
    if not free.any():
        return None
    free_of_parts = free & (sheet.ground.shares(sheet.ground.inside(parts), points, wide, high) == 0.0)
    free = free_of_parts if free_of_parts.any() else free
    _, low, _, top = (0.0, sheet.ground.box.bottom, 0.0, sheet.ground.box.top) if parts.is_empty else parts.bounds
    taller = np.maximum(points[:, 1] + high / 2 - top, 0.0) + np.maximum(low + high / 2 - points[:, 1], 0.0)
    box = sheet.ground.box
    cost = np.where(free, 0.0, np.inf) + nearest(points, (box.right, box.top)) + 100.0 * taller
    x, y = (float(v) for v in points[int(cost.argmin())])
    return x, y


def put_up(sheet: Sheet, way: Array, on: shapely.Geometry, *, word: bool) -> bool:
    """Add the fine arrow that a part has on its template, along a way (2,), where it finds room on an area: as far that way as can be,
    with its ``word`` beside it, else with a line to it; tell whether there was room."""
    way = way / max(hypot(*way), 1e-9)
    side = np.array([-way[1], way[0]])
    points = sheet.ground.grid(1)
    ground = sheet.ground.inside(shapely.buffer(on, -UP_CLEAR))
    fits = np.ones(len(points), dtype=bool)
    for along in (-0.5, 0.0, 0.5):
        at = points + along * UP_LONG * way
        fits &= (sheet.ground.crossed(at, UP_WIDE, UP_WIDE) == 0) & (sheet.ground.shares(ground, at, 0.6, 0.6) > 0.5)
    words = np.zeros((0, 2))
    if word:
        both = up_words_at(points, side, (-1.0, 1.0) if side[0] < 0.0 else (1.0, -1.0))
        free = [fits & (sheet.ground.crossed(at, *UP_SAID) == 0) for at in both]
        if (free[0] | free[1]).any():
            fits = free[0] | free[1]
            words = np.where(free[0][:, None], both[0], both[1])
    if not fits.any():
        return False
    middle = shapely.get_coordinates(on.centroid)[0]
    cost = np.where(fits, 0.0, np.inf) - points @ way + 0.5 * np.abs((points - middle) @ side)
    best = int(cost.argmin())
    box = up_arrow(sheet, "leader", points[best], way, UP_LONG)
    if word and not len(words):
        put_label(sheet, UP_WORD, shapely.box(*box.sides), shapely.Polygon())
    elif word:
        up_word(sheet, words[best])
    return True


def up_words_at(points: Array, side: Array, turns: tuple[float, float]) -> list[Array]:
    """Return where the word has its middle beside arrows at points (n, 2), on the one side of their way and on the other."""
    wide, high = UP_SAID
    off = UP_WIDE / 2 + abs(side[0]) * wide / 2 + abs(side[1]) * high / 2
    return [points + turn * off * side for turn in turns]


def up_arrow(sheet: Sheet, weight: str, middle: Array, way: Array, long: float) -> Box:
    """Add an arrow that says which end of a part is up, its shaft in lines of a ``weight``; return the box that it takes."""
    foot, tip = middle - long / 2 * way, middle + long / 2 * way
    sheet.sketch.add_path(weight, np.array([foot, tip - UP_HEAD * HEAD_LONG * way]))
    head(sheet.sketch, tip, way, UP_HEAD)
    ends = np.vstack([np.minimum(foot, tip) - UP_WIDE / 2, np.maximum(foot, tip) + UP_WIDE / 2])
    box = Box(*(float(v) for v in ends.ravel()))
    sheet.take(box)
    return box


def up_word(sheet: Sheet, at: Array) -> None:
    """Add the word that stands beside such an arrow, its middle at a point (2,)."""
    (x, y), (wide, high) = (float(v) for v in at), UP_SAID
    sheet.sketch.label(UP_WORD, x, y)
    sheet.take(Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2))


def put_sweep(sheet: Sheet, path: Array, text: str, *, wrong: bool) -> None:
    """Add an arrow along a curve (n, 2) with words at its middle; crossed out where nothing is to be turned."""
    way = path[-1] - path[-3]
    sheet.sketch.add_path("cue", path[:-2] if len(path) > 4 else path)
    head(sheet.sketch, path[-1], way)
    sheet.ground.mark(np.array([shapely.LineString(path)]))
    if wrong:
        middle = path[len(path) // 2]
        for side in (1.0, -1.0):
            arm = CROSS_HALF * np.array([1.0, side])
            sheet.sketch.add_path("cue", np.array([middle - arm, middle + arm]))
    spot = shapely.Point(path[len(path) // 2]).buffer(1.0)
    put_label(sheet, text, spot, shapely.Polygon(), led=False)
    sheet.clear.append(
        shapely.buffer(shapely.LineString(path), SWEEP_CLEAR)
    )  # no box: it would show as a window in strokes
    sheet.ground.mark_area(shapely.box(*path.min(axis=0), *path.max(axis=0)))


def put_times(sheet: Sheet, times: int) -> None:
    """Add how often all that is shown is done, in a frame, at a free place high at the left."""
    text = f"{times} ×"
    wide, high = LABEL_WIDE * len(text) + 4 * LABEL_ROOM, LABEL_HIGH + 4 * LABEL_ROOM
    points = sheet.ground.grid()
    free = points[sheet.ground.crossed(points, wide + 1.0, high + 1.0) == 0]
    if not len(free):
        return
    box = sheet.ground.box
    x, y = (float(v) for v in free[int(nearest(free, (box.left, box.top)).argmin())])
    sheet.sketch.label(text, x, y)
    frame = shapely.box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
    sheet.sketch.add("ring", shapely.boundary(frame))
    sheet.take(Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2))


def put_label(sheet: Sheet, text: str, on: shapely.Geometry, other: shapely.Geometry, *, led: bool = True) -> None:
    """Add words at the middle of an area, or as near to it as no line runs, and not on what belongs to something else; with a line to
    the area where they stand off it, if they may be ``led``."""
    wide, high = LABEL_WIDE * len(text) + 2 * LABEL_ROOM, LABEL_HIGH + 2 * LABEL_ROOM
    middle = _roomiest(on)
    points = np.vstack([middle, sheet.ground.grid()])
    cost = nearest(points, (float(middle[0]), float(middle[1])))
    cost += 1000.0 * (sheet.ground.crossed(points, wide, high) > 0)
    own, foreign = sheet.ground.inside(on), sheet.ground.inside(shapely.difference(other, on))
    cost += 60.0 * sheet.ground.shares(foreign, points, wide, high)
    cost += 8.0 * (sheet.ground.shares(own, points, wide, high) < 0.9)
    x, y, line = _spot(sheet, points, cost, partial(_leader, size=(wide, high), on=on) if led else None)
    sheet.sketch.label(text, x, y)
    if not line.is_empty:
        sheet.sketch.add("leader", line)
        sheet.ground.mark(np.array([line]))
    sheet.take(Box(*(float(v) for v in shapely.bounds(_label_box((x, y), (wide, high))))))


def _spot(
    sheet: Sheet, points: Array, cost: Array, leader: Callable[[Array], shapely.Geometry] | None
) -> tuple[float, float, shapely.Geometry]:
    """Return the best place of a label, and the line that leads from it: of places that are nearly as good one from which the line runs
    through no other words; where there is none, the line leaves these out."""
    order = np.argsort(cost, kind="stable")
    best = points[order[0]]
    line = shapely.LineString() if leader is None else leader(best)
    taken = shapely.union_all(sheet.clear)
    if leader is not None and shapely.intersects(line, taken):
        near = order[(cost[order] < 1000.0) | (cost[order[0]] >= 1000.0)][:LABEL_TRIED]
        lines = [leader(points[at]) for at in near]
        free = [(at, one) for at, one in zip(near, lines, strict=True) if not shapely.intersects(one, taken)]
        best, line = (points[free[0][0]], free[0][1]) if free else (best, shapely.difference(line, taken))
    return float(best[0]), float(best[1]), line


def _label_box(at: Sequence[float] | Array, size: tuple[float, float]) -> shapely.Geometry:
    """Return what a label takes, of which ``size`` has some room round it."""
    (x, y), wide, high = at, size[0] - LABEL_ROOM, size[1] - LABEL_ROOM
    return shapely.box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def _leader(at: Array, size: tuple[float, float], on: shapely.Geometry) -> shapely.Geometry:
    """Return the line from a label to what it names; an empty one where it stands close to that."""
    box = _label_box(at, size)
    if float(shapely.distance(box, on)) <= LEADER_FROM:
        return shapely.LineString()
    inner = shapely.buffer(on, -LEADER_IN)
    return shapely.shortest_line(box, on if inner.is_empty else inner)


def _roomiest(area: shapely.Geometry) -> Array:
    """Return the point of an area that is farthest from its border: there is most room for a label."""
    if area.geom_type == "Polygon" and area.area > 1.0:
        return np.asarray(shapely.get_coordinates(shapely.maximum_inscribed_circle(area, tolerance=0.3))[0])
    return np.asarray(shapely.get_coordinates(shapely.point_on_surface(area))[0])
