"""A pen for small sketches of acts: boards in section, tools, arrows, what is right and what is wrong. Nothing is measured on a sketch.

Boards in section are hatched at 45° (as ISO 128-50 has it for cuts), arrows and crosses are thicker than what they speak of.
"""

from collections.abc import Iterable
from itertools import pairwise
from math import atan2, cos, hypot, pi, radians, sin, tan

import shapely

from publisher.basics import Layer, Path, Point, polar, polyline
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke
from publisher.pages.type import HATCH, NOTE, PICTURE_CUE, PICTURE_DETAIL, PICTURE_OUTLINE, Align, Setter

HATCH_APART = 1.6  # mm between the lines of a board in section
ARROW_HEAD = 2.6  # mm: length of an arrow head
BLADE = 8.0  # mm of a knife that are blade
TOOL_LONG = 17.0  # mm of a tool that are drawn
TOOL_WIDE = 2.4  # mm
PIN_LONG = 19.0  # mm


class SketchPen:
    """Draws in mm from the lower left corner of a sketch, which lies at ``origin`` of the page."""

    def __init__(self, setter: Setter, origin: Point) -> None:
        """Begin with an empty sketch."""
        self.drawn: list[Drawn] = []
        self._setter, self._origin = setter, origin

    def line(self, *points: Point, style: LineStyle = PICTURE_OUTLINE, closed: bool = False) -> None:
        """Draw lines from point to point."""
        self.drawn.append(Stroke(style, (self._path(points, closed),), Layer.PAGE, tag="figure"))

    def white(self, *points: Point) -> None:
        """Cover an area, so that what is drawn next stands before what was drawn."""
        self.drawn.append(Fill(1.0, (self._path(points, True),), Layer.PAGE, tag="artifact"))

    def section(self, *ring: Point) -> None:
        """Draw a board that is cut through."""
        area = shapely.Polygon(ring)
        left, bottom, right, top = area.bounds
        steps = int((right - left + top - bottom) / HATCH_APART) + 1
        starts = [left - (top - bottom) + (step + 0.5) * HATCH_APART for step in range(steps)]
        rising = shapely.linestrings([((x, bottom), (x + top - bottom, top)) for x in starts])
        inside = shapely.get_parts(shapely.intersection(rising, area))
        runs = [tuple(piece.coords) for piece in inside[shapely.length(inside) > 0.5]]
        self.white(*ring)
        paths = tuple(self._path(run, False) for run in runs)
        self.drawn.append(Stroke(HATCH, paths, Layer.PAGE, tag="figure"))
        self.line(*ring, closed=True)

    def knife(self, tip: Point, lean: float = 0.0) -> None:
        """Draw a knife that stands on its tip, ``lean`` degrees from upright (to the left is positive)."""
        blade = ((0.0, 0.0), (1.8, 3.4), (1.8, BLADE), (0.0, BLADE))
        handle = ((-0.5, BLADE), (2.5, BLADE), (2.5, TOOL_LONG), (-0.5, TOOL_LONG))
        for ring in (handle, blade):
            self._tool(ring, tip, lean)

    def pencil(self, tip: Point, lean: float = 0.0) -> None:
        """Draw a pencil that stands on its tip, ``lean`` degrees from upright (to the left is positive)."""
        half = TOOL_WIDE / 2
        self._tool(((-half, 4.0), (half, 4.0), (half, TOOL_LONG), (-half, TOOL_LONG)), tip, lean)
        self._tool(((0.0, 0.0), (half, 4.0), (-half, 4.0)), tip, lean)

    def pin(self, tip: Point, lean: float) -> None:
        """Draw a pin with its head, ``lean`` degrees from upright (to the left is positive)."""
        long, half = PIN_LONG, 0.9
        self.line(tip, _leant((0.0, long), tip, lean))
        self._tool(((-half, long), (half, long), (half, long + 1.6), (-half, long + 1.6)), tip, lean)

    def arrow(self, *points: Point) -> None:
        """Draw an arrow to the last of the points."""
        (ax, ay), (bx, by) = points[-2:]
        away, long = atan2(by - ay, bx - ax), hypot(bx - ax, by - ay)
        back = (bx - cos(away) * min(ARROW_HEAD, long), by - sin(away) * min(ARROW_HEAD, long))
        self.line(*points[:-1], back, style=PICTURE_CUE)
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

    def right(self, x: float, y: float) -> None:
        """Tick what is right."""
        self.line((x, y + 1.4), (x + 1.4, y), (x + 4.0, y + 4.2), style=PICTURE_CUE)

    def words(self, text: str, x: float, y: float, align: Align = "left") -> None:
        """Set a short word."""
        self.drawn += self._setter.line(
            text, NOTE.tagged("figure"), x + self._origin[0], y + self._origin[1], align=align
        )

    def arc(self, centre: Point, radius: float, start: float, end: float, style: LineStyle = PICTURE_OUTLINE) -> None:
        """Draw an arc; angles in degrees from the right, anticlockwise."""
        self.line(*along_arc(centre, radius, start, end), style=style)

    def _tool(self, ring: Iterable[Point], tip: Point, lean: float) -> None:
        points = tuple(_leant(point, tip, lean) for point in ring)
        self.white(*points)
        self.line(*points, style=PICTURE_DETAIL, closed=True)

    def _path(self, points: Iterable[Point], closed: bool) -> Path:
        x, y = self._origin
        moved = tuple((x + px, y + py) for px, py in points)
        distinct = (*(a for a, b in pairwise(moved) if a != b), moved[-1])
        return polyline(distinct, closed)


def along_arc(centre: Point, radius: float, start: float, end: float, steps: int = 24) -> tuple[Point, ...]:
    """Return points along an arc; angles in degrees from the right, anticlockwise."""
    return tuple(polar(radius, radians(start + (end - start) * n / steps), centre) for n in range(steps + 1))


def leaning(rise: float, lean: float) -> float:
    """Return how far to the left something that leans by ``lean`` degrees has moved over a ``rise`` in mm."""
    return rise * tan(radians(lean))


def _leant(point: Point, tip: Point, lean: float) -> Point:
    c, s = cos(radians(lean)), sin(radians(lean))
    return (tip[0] + point[0] * c - point[1] * s, tip[1] + point[0] * s + point[1] * c)
