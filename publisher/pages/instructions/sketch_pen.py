"""A pen for small sketches of acts: boards in section, tools, arrows, what is right and what is wrong. Nothing is measured on a sketch.

Hatched is waste and nothing else, as on templates: boards in section are white. Arrows and crosses are thicker than what they speak of.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, dist, hypot, pi, radians, sin, tan

import shapely

from publisher.basics import SAME_POINT, Box, Layer, Path, Point, Pose, changed, polar, polyline
from publisher.pages.instructions.sketch_areas import Covers, hatch_runs, level_runs, solid_rings
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke
from publisher.pages.type import (
    CUT,
    HATCH,
    NOTE,
    PICTURE_CUE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_OUTLINE,
    PICTURE_PAPER,
    SMALL,
    TRIM,
    Align,
    Setter,
    TypeStyle,
)

ARROW_HEAD = 2.6  # mm: length of an arrow head
BLADE = 8.0  # mm of a knife that are blade
TOOL_LONG = 17.0  # mm of a tool that are drawn
TOOL_WIDE = 2.4  # mm
WORDS_WHITE = 0.5  # mm round what is counted or measured
STICK_WIDE = 3.2  # mm: a stick with a round end, which presses and cannot cut
PIN_LONG = 19.0  # mm
DIMENSION_HEAD = 1.6  # mm: length of the head of a dimension line


class SketchPen:
    """Draws in mm from the lower left corner of a sketch, which lies at ``origin`` of the page; ``scale`` times as large, but for its
    words."""

    def __init__(
        self, setter: Setter, origin: Point, scale: float = 1.0, small: TypeStyle = SMALL, note: TypeStyle = NOTE
    ) -> None:
        """Begin with an empty sketch. ``small``: how counts are set, bold; ``note``: how words are."""
        self.small, self.note = small, note
        self.drawn: list[Drawn] = []
        self.setter, self.origin, self.scale = setter, origin, scale
        self.said: list[shapely.Polygon] = []  # where words stand: tools and leaders keep off
        self.taken: list[shapely.Geometry] = []  # where tools, rules and arrows are: letters keep off
        self.parts: list[
            tuple[str, Pose, float]
        ] = []  # each part and scene that is shown: its id, where its (0, 0) lies on the page, its scale
        self.lines: list[Sequence[Point]] = []  # all that is drawn as a line: signs find room beside it

    def seen(self) -> tuple[Drawn, ...]:
        """Return what is seen of the sketch: lines end where an area covers them, and nothing is drawn that is covered whole."""
        whites = [
            (at, thing.paths[0]) for at, thing in enumerate(self.drawn) if isinstance(thing, Fill) and thing.grey == 1.0
        ]
        lines = [(at, path) for at, thing in enumerate(self.drawn) if isinstance(thing, Stroke) for path in thing.paths]
        left = iter(Covers(whites).uncovered(lines))
        found: list[Drawn] = []
        for thing in self.drawn:
            if isinstance(thing, Fill) and thing.grey == 1.0:
                continue
            if not isinstance(thing, Stroke):
                found.append(thing)
                continue
            paths = tuple(part for _ in thing.paths for part in next(left))
            if paths:
                found.append(changed(thing, paths=paths))
        return tuple(found)

    def on_page(self, point: Point) -> Point:
        """Return where a point of the sketch lies on the page."""
        return self.origin[0] + self.scale * point[0], self.origin[1] + self.scale * point[1]

    def shows(self, part: str, at: Point, scale: float) -> None:
        """Note that a part is shown: where its own (0, 0) lies (mm of the sketch), and how small it is drawn there."""
        self.parts.append((part, Pose(*self.on_page(at)), scale * self.scale))

    def scene(self, name: str, at: Point = (0.0, 0.0), turn: float = 0.0, *, mirrored: bool = False) -> None:
        """Note that something is drawn that looks the same in every pack, promised under this name: where its own (0, 0) lies (mm of the
        sketch), turned by so many degrees."""
        self.parts.append((f"scene:{name}", Pose(*self.on_page(at), turn, mirrored), self.scale))

    def line(self, *points: Point, style: LineStyle = PICTURE_OUTLINE, closed: bool = False) -> None:
        """Draw lines from point to point."""
        way = (*points, points[0]) if closed else points
        if any(
            dist(one, other) > SAME_POINT for one, other in pairwise(way)
        ):  # an arrow as short as its head has no shaft
            self.lines.append(way)
            self.drawn.append(Stroke(style, (self._path(points, closed),), Layer.PAGE, tag="figure"))

    def white(self, *points: Point) -> None:
        """Cover an area, so that what is drawn next stands before what was drawn."""
        self.drawn.append(Fill(1.0, (self._path(points, True),), Layer.PAGE, tag="artifact"))

    def section(self, *ring: Point) -> None:
        """Draw a board that is cut through."""
        self.white(*ring)
        self.line(*ring, closed=True)

    def knife(self, tip: Point, lean: float = 0.0, out: float = BLADE, *, flip: bool = False) -> None:
        """Draw a knife that stands on its tip, ``lean`` degrees from upright (to the left is positive), its blade ``out`` mm; its back at
        the right, or where you ``flip`` it at the left."""
        if out == BLADE:
            self.scene("knife", tip, lean, mirrored=flip)
        side, end = -1.0 if flip else 1.0, out + TOOL_LONG - BLADE
        blade = ((0.0, 0.0), (1.8, 3.4), (1.8, out), (0.0, out))
        handle = ((-0.5, out), (2.5, out), (2.5, end), (-0.5, end))
        for ring in (handle, blade):
            self._tool([(side * x, y) for x, y in ring], tip, lean)

    def pencil(self, tip: Point, lean: float = 0.0, long: float = TOOL_LONG) -> None:
        """Draw a pencil that stands on its tip, ``lean`` degrees from upright (to the left is positive)."""
        half = TOOL_WIDE / 2
        self.scene("pencil", tip, lean)
        self._tool(((-half, 4.0), (half, 4.0), (half, long), (-half, long)), tip, lean)
        self._tool(((0.0, 0.0), (half, 4.0), (-half, 4.0)), tip, lean)

    def stick(self, tip: Point, lean: float = 0.0, long: float = TOOL_LONG) -> None:
        """Draw a stick with a round end that stands on it, ``lean`` degrees from upright (to the left is positive)."""
        half = STICK_WIDE / 2
        self.scene("stick", tip, lean)
        end = tuple(polar(half, radians(turn), (0.0, half)) for turn in range(180, 361, 15))
        self._tool((*end, (half, long), (-half, long)), tip, lean)

    def pin(self, tip: Point, lean: float, long: float = PIN_LONG, hidden: float = 0.0) -> None:
        """Draw a pin with its head, ``lean`` degrees from upright (to the left is positive); dashed so far (mm) from its tip as it is
        ``hidden`` in a board."""
        half = 0.9
        if hidden:
            self.line(tip, leant((0.0, hidden), tip, lean), style=PICTURE_GHOST)
        self.line(leant((0.0, hidden), tip, lean), leant((0.0, long), tip, lean))
        self._tool(((-half, long), (half, long), (half, long + 1.6), (-half, long + 1.6)), tip, lean)

    def arrow(self, *points: Point) -> None:
        """Draw an arrow to the last of the points."""
        (ax, ay), (bx, by) = points[-2:]
        away, long = atan2(by - ay, bx - ax), hypot(bx - ax, by - ay)
        back = (bx - cos(away) * min(ARROW_HEAD, long), by - sin(away) * min(ARROW_HEAD, long))
        self.line(*points[:-1], back, style=PICTURE_CUE)
        self.taken.append(shapely.LineString(points).buffer(ARROW_HEAD / 2, quad_segs=2))
        sides = (polar(ARROW_HEAD / cos(0.35), away + pi + turn, points[-1]) for turn in (0.35, -0.35))
        self.drawn.append(Fill(0.0, (self._path((points[-1], *sides), True),), Layer.PAGE, tag="figure"))

    def turning(self, centre: Point, radius: float, start: float, end: float) -> None:
        """Draw an arrow along an arc; angles in degrees from the right, anticlockwise."""
        steps = 16
        turns = (radians(start + (end - start) * n / steps) for n in range(steps + 1))
        self.arrow(*(polar(radius, turn, centre) for turn in turns))

    def wrong(self, left: float, bottom: float, right: float, top: float) -> None:
        """Cross out what is wrong, from corner to corner, without hiding it."""
        self.line((left, bottom), (right, top), style=PICTURE_CUE)
        self.line((left, top), (right, bottom), style=PICTURE_CUE)
        self.taken.append(shapely.box(left, bottom, right, top))

    def right(self, x: float, y: float) -> None:
        """Tick what is right."""
        self.line((x, y + 1.4), (x + 1.4, y), (x + 4.0, y + 4.2), style=PICTURE_CUE)
        self.taken.append(shapely.box(x, y, x + 4.0, y + 4.2))

    def words(self, text: str, x: float, y: float, align: Align = "left") -> None:
        """Set a short word."""
        self._keep(text, self.note, x, y, align)
        self.drawn += self.setter.line(text, self.note.tagged("figure"), *self.on_page((x, y)), align=align)

    def count(self, text: str, x: float, y: float, align: Align = "centre", white: float = WORDS_WHITE) -> None:
        """Set what is counted or measured, bold: ``2 × A``, ``24 h``; on white so far round it (mm) that no line runs through it."""
        style = self.small.bold().tagged("figure")
        box = self._keep(text, style, x, y, align)
        tail = self.setter.tail(text, style) / self.scale
        self.white(*replace(box, bottom=box.bottom - tail).grown(white).corners())
        self.drawn += self.setter.line(text, style, *self.on_page((x, y)), align=align)

    def _keep(self, text: str, style: TypeStyle, x: float, y: float, align: Align) -> Box:
        """Note where words stand, in mm of the sketch: they are as large in a sketch that is drawn smaller."""
        wide, high = self.setter.width(text, style) / self.scale, self.setter.cap(style) / self.scale
        left = x - {"left": 0.0, "centre": 0.5, "right": 1.0}[align] * wide
        box = Box(left, y, left + wide, y + high)
        self.said.append(shapely.box(*box.grown(0.3).sides))
        return box

    def broken(self, said: Iterable[str], wide: float, lines: int = 1, between: str = "   ") -> tuple[str, ...]:
        """Return what is counted in lines of at most ``wide`` mm, as many as ``lines`` allow: of more, the last ends in "…"."""
        found: list[str] = []
        for text in said:
            if found and self.wide(longer := found[-1] + between + text) <= wide:
                found[-1] = longer
            else:
                found.append(text)
        if len(found) <= lines:
            return tuple(found)
        *first, last = found[:lines]
        while between in last and self.wide(f"{last}{between}…") > wide:
            last = last.rpartition(between)[0]
        return (*first, f"{last}{between}…")

    def wide(self, text: str) -> float:
        """Return how wide ``count`` sets a text (mm of the sketch)."""
        return self.setter.width(text, self.small.bold()) / self.scale

    def sheet(self, left: float, bottom: float, right: float, top: float, number: str = "") -> None:
        """Draw a sheet of paper with a corner turned down, and its page number in the other one."""
        ear = min(3.0, (right - left) / 4)
        ring = ((left, bottom), (right, bottom), (right, top - ear), (right - ear, top), (left, top))
        self.white(*ring)
        self.line(*ring, closed=True)
        self.line((right - ear, top), (right - ear, top - ear), (right, top - ear), style=PICTURE_DETAIL)
        if number:
            self.count(number, left + 1.4, top - 4.0, "left")

    def rule(self, left: float, bottom: float, right: float, top: float) -> None:
        """Draw a steel rule with its divisions along the lower or the left edge."""
        ring = ((left, bottom), (right, bottom), (right, top), (left, top))
        self.taken.append(shapely.Polygon(ring))
        self.white(*ring)
        self.line(*ring, closed=True)
        level = right - left > top - bottom
        for at in range(1, int((right - left if level else top - bottom) / 1.5)):
            long = 1.6 if at % 2 == 0 else 0.9
            start = (left + 1.5 * at, top) if level else (left, bottom + 1.5 * at)
            end = (start[0], start[1] - long) if level else (left + long, start[1])
            self.line(start, end, style=PICTURE_DETAIL)

    def clock(self, x: float, y: float, text: str, radius: float = 4.6) -> None:
        """Draw a clock with its middle at a point, an arrow round it, and how long to wait under it."""
        self.scene("clock", (x, y))
        self.white(*along_arc((x, y), radius, 0.0, 360.0)[:-1])
        self.line(*along_arc((x, y), radius, 0.0, 360.0)[:-1], closed=True)
        for hour in range(12):
            turn = radians(30.0 * hour)
            self.line(polar(radius, turn, (x, y)), polar(radius - 0.8, turn, (x, y)), style=PICTURE_DETAIL)
        self.line((x, y + radius - 1.6), (x, y), (x + radius - 2.6, y), style=PICTURE_CUE)
        self.turning((x, y), radius + 1.3, 140.0, 45.0)
        self.count(text, x, y - radius - 3.6)

    def bottle(self, x: float, y: float) -> None:
        """Draw a bottle of glue on its tip at a point, with a drop."""
        body = ((-1.9, 4.2), (-1.9, 10.2), (1.9, 10.2), (1.9, 4.2), (0.5, 2.4), (0.5, 1.2), (-0.5, 1.2), (-0.5, 2.4))
        ring = tuple((x + px, y + py) for px, py in body)
        self.scene("bottle", (x, y))
        self.taken.append(shapely.Polygon(ring))
        self.white(*ring)
        self.line(*ring, closed=True)
        self.line((x - 1.9, y + 8.6), (x + 1.9, y + 8.6), style=PICTURE_DETAIL)
        self.drawn.append(
            Fill(0.0, (self._path(along_arc((x, y), 0.55, 0.0, 340.0, 10), True),), Layer.PAGE, tag="figure")
        )

    def glue_stick(self, x: float, y: float) -> None:
        """Draw a glue stick, its end down at a point: paper that is glued with wet glue grows."""
        cap, end = (
            ((-1.8, 2.2), (1.8, 2.2), (1.8, 9.4), (-1.8, 9.4)),
            ((-1.3, 0.0), (1.3, 0.0), (1.3, 2.2), (-1.3, 2.2)),
        )
        for ring in (cap, end):
            points = tuple((x + px, y + py) for px, py in ring)
            self.taken.append(shapely.Polygon(points))
            self.white(*points)
            self.line(*points, closed=True)
        self.line((x - 1.8, y + 7.6), (x + 1.8, y + 7.6), style=PICTURE_DETAIL)

    def brush(self, tip: Point, lean: float = -35.0) -> None:
        """Draw a brush on its tip, ``lean`` degrees from upright (to the left is positive)."""
        self.scene("brush", tip, lean)
        self._tool(((-1.6, 1.5), (1.6, 1.5), (1.6, 6.0), (-1.6, 6.0)), tip, lean)
        self._tool(((-0.6, 6.0), (0.6, 6.0), (0.6, TOOL_LONG), (-0.6, TOOL_LONG)), tip, lean)
        for x in (-1.2, -0.4, 0.4, 1.2):
            self.line(leant((x * 0.6, 0.0), tip, lean), leant((x, 4.5), tip, lean), style=PICTURE_DETAIL)

    def pot(self, left: float, bottom: float) -> None:
        """Draw an open pot of paint."""
        wide, high = 9.0, 7.0
        self.scene("pot", (left, bottom))
        ring = ((left, bottom), (left + wide, bottom), (left + wide, bottom + high), (left, bottom + high))
        self.white(*ring)
        self.line(*ring, closed=True)
        rim = tuple(
            (left + wide / 2 + wide / 2 * cos(radians(turn)), bottom + high + 1.2 * sin(radians(turn)))
            for turn in range(0, 360, 15)
        )
        self.white(*rim)
        self.line(*rim, closed=True)
        self.line((left, bottom + 2.0), (left + wide, bottom + 2.0), style=PICTURE_DETAIL)

    def can(self, left: float, bottom: float) -> None:
        """Draw a spray can, and what it sprays to the left."""
        right, high = left + 6.4, bottom + 11.0
        before, behind = left + 1.7, right - 1.7
        neck, nozzle, top = high + 1.6, high + 3.6, high + 4.6
        body = ((left, bottom), (right, bottom), (right, high), (behind, neck), (before, neck), (left, high))
        head = ((before, neck), (behind, neck), (behind, top), (before, top))
        self.scene("can", (left, bottom))
        for ring in (body, head):
            self.taken.append(shapely.Polygon(ring))
            self.white(*ring)
            self.line(*ring, closed=True)
        self.line((left, high), (right, high), style=PICTURE_DETAIL)
        for turn in (166.0, 180.0, 194.0):
            ends = (polar(out, radians(turn), (before, nozzle)) for out in (1.4, 7.0))
            self.line(*ends, style=PICTURE_DETAIL)

    def books(self, left: float, bottom: float, wide: float) -> None:
        """Draw two books, one upon the other, and an arrow that presses on them."""
        self.taken.append(shapely.box(left, bottom, left + wide, bottom + 8.4))
        for number, inset in enumerate((0.0, 1.5)):
            low, high = bottom + 4.2 * number, bottom + 4.2 * number + 4.2
            ring = ((left + inset, low), (left + wide - inset, low), (left + wide - inset, high), (left + inset, high))
            self.white(*ring)
            self.line(*ring, closed=True)
            for at in (0.9, 1.8, 2.7, 3.4):
                self.line((left + inset, low + at), (left + wide - inset - 1.4, low + at), style=PICTURE_DETAIL)
        self.arrow((left + wide / 2, bottom + 16.0), (left + wide / 2, bottom + 9.0))

    def tape(self, *ring: Point) -> None:
        """Draw a strip of tape: white, with torn ends."""
        self.white(*ring)
        self.line(*ring, style=PICTURE_DETAIL, closed=True)

    def hatched(self, area: shapely.Geometry) -> None:
        """Hatch an area that is waste, without its border."""
        paths = tuple(self._path(run, False) for run in hatch_runs(area))
        if paths:
            self.drawn.append(Stroke(HATCH, paths, Layer.PAGE, tag="figure"))

    def blackened(self, area: shapely.Geometry) -> None:
        """Fill an area black: where two parts differ, and dark paint."""
        self.drawn += (Fill(0.0, (self._path(ring, True),), Layer.PAGE, tag="figure") for ring in solid_rings(area))

    def papered(self, area: shapely.Geometry) -> None:
        """Dot an area in rows, as paper or tape on a face is."""
        rows = tuple(self._path(run, False) for run in level_runs(area))
        if rows:
            self.drawn.append(Stroke(PICTURE_PAPER, rows, Layer.PAGE, tag="figure"))

    def dotted(self, points: Iterable[Point]) -> None:
        """Draw a row of dots along points, as of paper in section."""
        self.line(*points, style=PICTURE_PAPER)

    def dimension(self, start: Point, end: Point) -> None:
        """Draw a dimension line with a small head at both ends."""
        self.line(start, end, style=PICTURE_DETAIL)
        away = atan2(end[1] - start[1], end[0] - start[0])
        for tip, turn in ((start, 0.0), (end, pi)):
            sides = (polar(DIMENSION_HEAD, away + turn + by, tip) for by in (0.25, -0.25))
            self.drawn.append(Fill(0.0, (self._path((tip, *sides), True),), Layer.PAGE, tag="figure"))

    def trimmed(self, *points: Point) -> None:
        """Draw a trim line."""
        self.line(*points, style=TRIM)

    def cut(self, *points: Point, closed: bool = False) -> None:
        """Draw a cut line."""
        self.line(*points, style=CUT, closed=closed)

    def arc(self, centre: Point, radius: float, start: float, end: float, style: LineStyle = PICTURE_OUTLINE) -> None:
        """Draw an arc; angles in degrees from the right, anticlockwise."""
        self.line(*along_arc(centre, radius, start, end), style=style)

    def _tool(self, ring: Iterable[Point], tip: Point, lean: float) -> None:
        points = tuple(leant(point, tip, lean) for point in ring)
        self.taken.append(shapely.Polygon(points))
        self.white(*points)
        self.line(*points, style=PICTURE_DETAIL, closed=True)

    def _path(self, points: Iterable[Point], closed: bool) -> Path:
        moved = tuple(map(self.on_page, points))
        distinct = (*(a for a, b in pairwise(moved) if a != b), moved[-1])
        if len(distinct) > 3 and hypot(distinct[0][0] - distinct[-1][0], distinct[0][1] - distinct[-1][1]) < SAME_POINT:
            return polyline(distinct[:-1], True)  # a full turn: rounding would tell readers one thing or the other
        return polyline(distinct, closed)


def along_arc(centre: Point, radius: float, start: float, end: float, steps: int = 24) -> tuple[Point, ...]:
    """Return points along an arc; angles in degrees from the right, anticlockwise."""
    return tuple(polar(radius, radians(start + (end - start) * n / steps), centre) for n in range(steps + 1))


def leaning(rise: float, lean: float) -> float:
    """Return how far to the left something that leans by ``lean`` degrees has moved over a ``rise`` in mm."""
    return rise * tan(radians(lean))


def leant(point: Point, tip: Point, lean: float) -> Point:
    """Return where a point of a tool that stands upright on (0, 0) is on a tip, leaning by ``lean`` degrees to the left."""
    c, s = cos(radians(lean)), sin(radians(lean))
    return (tip[0] + point[0] * c - point[1] * s, tip[1] + point[0] * s + point[1] * c)
