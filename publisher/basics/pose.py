"""Where a flat thing lies on a flat surface."""

from collections.abc import Iterable
from math import cos, radians, sin

from publisher.basics.records import record

Point = tuple[float, float]

# exact quarter turns keep rectangles exact: cos(90 deg) is 6e-17 in floats
_QUARTERS = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}


@record
class Pose:
    """A placement in the plane: mirror in the y axis first (x to -x) if asked, then turn, then shift.

    ``x``, ``y`` are millimetres; ``turn`` is degrees, anticlockwise.
    """

    x: float = 0.0
    y: float = 0.0
    turn: float = 0.0
    mirrored: bool = False

    @staticmethod
    def carrying(own: Point, to: Point, turn: float, mirrored: bool = False) -> "Pose":
        """Return the pose with this turn (degrees) that carries the point ``own`` to the point ``to`` (mm)."""
        x, y = Pose(turn=turn, mirrored=mirrored).apply(own)
        return Pose(to[0] - x, to[1] - y, turn, mirrored)

    def matrix(self) -> tuple[float, float, float, float, float, float]:
        """Return (a, b, c, d, e, f) with x' = a x + c y + e and y' = b x + d y + f."""
        c, s = _QUARTERS.get(self.turn % 360.0) or (cos(angle := radians(self.turn)), sin(angle))
        m = -1.0 if self.mirrored else 1.0
        return (m * c, m * s, -s, c, self.x, self.y)

    def apply(self, point: Point) -> Point:
        """Return the point (mm) carried from the thing's own coordinates to the surface's."""
        a, b, c, d, e, f = self.matrix()
        return (a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f)

    def apply_all(self, points: tuple[Point, ...]) -> tuple[Point, ...]:
        """Return all points (mm) carried by this pose."""
        a, b, c, d, e, f = self.matrix()
        return tuple((a * x + c * y + e, b * x + d * y + f) for x, y in points)


@record
class Box:
    """An upright rectangle in mm: left, bottom, right, top."""

    left: float
    bottom: float
    right: float
    top: float

    @property
    def width(self) -> float:
        """Width in mm."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.top - self.bottom

    @property
    def sides(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top: as other libraries take a box."""
        return (self.left, self.bottom, self.right, self.top)

    @staticmethod
    def round(points: Iterable[Point]) -> "Box":
        """Return the least box round the points. Raises ValueError when there are none."""
        xs, ys = zip(*points, strict=True)
        return Box(min(xs), min(ys), max(xs), max(ys))

    def moved(self, x: float, y: float) -> "Box":
        """Return the box shifted by (x, y) mm."""
        return Box(self.left + x, self.bottom + y, self.right + x, self.top + y)

    def common(self, other: "Box") -> "Box":
        """Return what two boxes share; turned inside out where they share nothing."""
        left, bottom = max(self.left, other.left), max(self.bottom, other.bottom)
        return Box(left, bottom, min(self.right, other.right), min(self.top, other.top))

    def overlap(self, other: "Box") -> float:
        """Return how far (mm) two boxes reach into each other, both ways at least; less than 0: how far they stand apart."""
        across = min(self.right, other.right) - max(self.left, other.left)
        return min(across, min(self.top, other.top) - max(self.bottom, other.bottom))

    def beyond(self, room: "Box") -> float:
        """Return how far (mm) the box reaches out of a room, at its farthest side; less than 0: it keeps so far inside."""
        return max(room.left - self.left, room.bottom - self.bottom, self.right - room.right, self.top - room.top)

    def grown(self, by: float) -> "Box":
        """Return the box with every side moved outwards by ``by`` mm (inwards when negative)."""
        return Box(self.left - by, self.bottom - by, self.right + by, self.top + by)

    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Return the corners anticlockwise from the lower left."""
        return (
            (self.left, self.bottom),
            (self.right, self.bottom),
            (self.right, self.top),
            (self.left, self.top),
        )
