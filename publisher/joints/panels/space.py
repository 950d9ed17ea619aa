"""Places in space: a panel's frame, from its own coordinates (x, y on the drawn face, z outward) to the assembly's. Mm, degrees."""

from math import cos, radians, sin

import numpy as np
import numpy.typing as npt

from publisher.basics import Point, record
from publisher.geometry import Edge
from publisher.joints.model import SpaceMatrix

Array = npt.NDArray[np.float64]


STEEP = 0.5
"""A part stands when its own up points up by more than 30 degrees."""


@record
class PanelFrame:
    """A panel's place: columns of ``axes`` are its x, y and outward z in the assembly; ``origin`` is where its (0, 0, 0) lies."""

    axes: Array
    origin: Array

    def carry(self, points: Array) -> Array:
        """Carry points (n, 3) from the part to the assembly."""
        return np.asarray(points @ self.axes.T + self.origin)

    def point(self, at: Point, depth: float) -> Array:
        """Return the point of the part at (x, y), ``depth`` mm behind the drawn face."""
        return np.asarray(self.axes @ np.array([at[0], at[1], -depth]) + self.origin)

    def back(self, points: Array) -> Array:
        """Carry points (n, 3) from the assembly to the part."""
        return np.asarray((points - self.origin) @ self.axes)

    @property
    def outward(self) -> Array:
        """Unit vector that the drawn face looks along."""
        return np.asarray(self.axes[:, 2])

    def matrix(self) -> SpaceMatrix:
        """Return the 3 × 4 matrix, row by row."""
        rows = np.column_stack([self.axes, self.origin])
        flat = [float(v) + 0.0 for v in np.round(rows.ravel(), 12)]
        return tuple(flat)  # type: ignore[return-value]


def stands(rise: float) -> bool:
    """Tell whether a part stands whose own up rises by this share of its length: 1 upright, 0 lying, -1 upside down."""
    return rise > STEEP


def crossed(one: Array, other: Array) -> Array:
    """Return the cross products of the rows of two arrays (n, 3): as ``numpy.cross``, in half its time for the few rows of a ring."""
    (a, b, c), (d, e, f) = one.T, other.T
    return np.column_stack([b * f - c * e, c * d - a * f, a * e - b * d])


def planes_of(normals: Array, on: Array) -> Array:
    """Return the planes z = p·x + q·y + r (n, 3) that look along normals (n, 3), of any length, and hold these points (n, 3)."""
    level = (normals * on).sum(axis=1)
    return np.asarray(np.column_stack([-normals[:, 0], -normals[:, 1], level]) / normals[:, 2:3])


@record
class EdgeLine:
    """A nominal edge, or a line parallel to it, in the part's own coordinates: direction as the edge runs, middle, length,
    depth behind the drawn face, unit vector into the panel."""

    along: Array  # (2,)
    middle: Point
    length: float
    depth: float

    @property
    def inward(self) -> Array:
        """Unit vector (2,) in the plane of the panel, from the edge into it: left of an anticlockwise edge."""
        return np.array([-self.along[1], self.along[0]])


def line_of(start: Point, end: Point, depth: float) -> EdgeLine:
    """Return the line from start to end, ``depth`` mm behind the drawn face."""
    way = np.array([end[0] - start[0], end[1] - start[1]])
    length = float(np.hypot(way[0], way[1]))
    return EdgeLine(way / length, ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2), length, depth)


def depth_of(edge: Edge, thickness: float) -> float:
    """Return how far behind the drawn face the nominal edge lies."""
    return thickness if edge.face == "inside" else 0.0


def standing(edge: EdgeLine) -> PanelFrame:
    """Return the frame of a panel that stands upright on an edge, drawn face to the front (-y), the edge along +x on z = 0."""
    return _frame(edge, np.array([1.0, 0.0, 0.0]), np.array([0.0, -1.0, 0.0]), np.array([edge.length / 2, 0.0, 0.0]))


def flat(low: Point, high: Point, thickness: float, *, inside_up: bool) -> PanelFrame:
    """Return the frame of a panel between two corners that lies on z = 0, its left and front on x = 0 and y = 0."""
    if inside_up:  # turned over about its x axis
        return PanelFrame(np.diag([1.0, -1.0, -1.0]), np.array([-low[0], high[1], 0.0]))
    return PanelFrame(np.eye(3), np.array([-low[0], -low[1], thickness]))


def joined(a: PanelFrame, joint_line: EdgeLine, b: EdgeLine, corner: float) -> PanelFrame:
    """Return the frame of the panel whose edge ``b`` meets ``joint_line`` of the panel at ``a``, inside faces ``corner`` apart.

    Edges of two panels seen from outside run against each other. With u into panel a and N its outward normal, panel b
    runs into cos(corner)·u − sin(corner)·N and looks along −cos(corner)·N − sin(corner)·u.
    """
    along = a.axes[:, :2] @ joint_line.along
    inward = a.axes[:, :2] @ joint_line.inward
    turn = radians(corner)
    outward = -cos(turn) * a.outward - sin(turn) * inward
    return _frame(b, -along, outward, a.point(joint_line.middle, joint_line.depth))


def let_in(a: PanelFrame, slot: EdgeLine, b: EdgeLine) -> PanelFrame:
    """Return the frame of the panel that is let into an upward slot of the panel at ``a``, floor of slot on floor of slot.

    The panels cross at right angles; the second looks to the right of the first, seen from the first one's drawn face.
    """
    up = -(a.axes[:, :2] @ slot.inward)
    outward = np.cross(up, a.outward)
    return _frame(b, np.cross(up, outward), outward, a.point(slot.middle, slot.depth))


def letting_in(b: PanelFrame, slot: EdgeLine, a: EdgeLine) -> PanelFrame:
    """Return the frame of the panel into whose upward slot the panel at ``b`` is let: the other way round of ``let_in``."""
    up = b.axes[:, :2] @ slot.inward
    outward = np.cross(b.outward, up)
    return _frame(a, np.cross(-up, outward), outward, b.point(slot.middle, slot.depth))


def resting(edge: EdgeLine, along: Array, outward: Array, middle: Array) -> PanelFrame:
    """Return the frame of a panel whose edge runs ``along`` with its middle at ``middle``, drawn face looking ``outward``."""
    return _frame(edge, along, outward, middle)


def _frame(edge: EdgeLine, along: Array, outward: Array, middle: Array) -> PanelFrame:
    """Return the frame in which the edge runs along a direction, its panel looks along another, its middle lies at a point."""
    along = along / np.linalg.norm(along)
    outward = outward / np.linalg.norm(outward)
    inward = np.cross(outward, along)
    # own axes: x = cos·along − sin·inward …: the edge's direction and inward vector are a turn of the part's x and y
    c, s = float(edge.along[0]), float(edge.along[1])
    axes = np.column_stack([c * along - s * inward, s * along + c * inward, outward])
    axes[np.abs(axes) < 1e-15] = 0.0
    local = np.array([edge.middle[0], edge.middle[1], -edge.depth])
    return PanelFrame(axes, middle - axes @ local)
