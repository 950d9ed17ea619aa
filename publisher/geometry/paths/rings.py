"""Closed paths drawn edge by edge, their area and the way they run."""

from collections.abc import Iterable, Sequence
from math import radians, sin
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from publisher.basics import Arc, Line, Path, PathEdge, Point
from publisher.geometry.model import Region

Around = TypeVar("Around", bound=np.generic)


def next_of(ring: npt.NDArray[Around]) -> npt.NDArray[Around]:
    """Return for each place of a closed ring (n, …) what stands at the next one.

    As ``numpy.roll`` by one does, at a tenth of its time for the few points of a ring.
    """
    return np.concatenate((ring[1:], ring[:1]))


def one_before(ring: npt.NDArray[Around]) -> npt.NDArray[Around]:
    """Return for each place of a closed ring (n, …) what stands at the one before."""
    return np.concatenate((ring[-1:], ring[:-1]))


class Pen:
    """Draws a chain of named edges from a point (mm)."""

    def __init__(self, at: Point) -> None:
        """Put the pen down at ``at``."""
        self.at = at
        self.edges: list[PathEdge] = []

    def line(self, to: Point, name: str) -> "Pen":
        """Draw a straight line."""
        return self.along((Line(name, self.at, to),))

    def arc(self, to: Point, centre: Point, radius: float, name: str, ccw: bool = True) -> "Pen":
        """Draw an arc of less than a full turn about ``centre``; the pen and ``to`` lie on its circle."""
        return self.along((Arc.between(name, self.at, to, centre, radius, ccw),))

    def along(self, edges: Iterable[PathEdge]) -> "Pen":
        """Draw edges that go on from where the pen is."""
        self.edges.extend(edges)
        self.at = self.edges[-1].end
        return self

    def path(self) -> Path:
        """Return what is drawn as a closed path."""
        return Path(tuple(self.edges))


def straight(corners: Sequence[tuple[Point, str]]) -> Path:
    """Return the closed path of lines through the corners; each corner comes with the name of the edge that starts there."""
    return Path(tuple(Line(name, start, corners[(i + 1) % len(corners)][0]) for i, (start, name) in enumerate(corners)))


def signed_area(path: Path) -> float:
    """Return the exact area in mm² inside a closed path: positive anticlockwise, arcs as arcs.

    Shoelace over the edges' ends plus the circular segments r²(a − sin a)/2.
    """
    total = 0.0
    for edge in path.edges:
        total += (edge.start[0] * edge.end[1] - edge.end[0] * edge.start[1]) / 2.0
        if isinstance(edge, Arc):
            sweep = radians(edge.sweep)
            total += edge.radius**2 * (sweep - sin(sweep)) / 2.0
    return total


def oriented(path: Path, hole: bool = False) -> Path:
    """Return the closed path anticlockwise, or clockwise for a hole."""
    return path if (signed_area(path) > 0.0) is not hole else path.reversed()


def area(region: Region) -> float:
    """Return the exact area of a region in mm², holes taken off."""
    return sum(signed_area(path) for path in region.paths)


def path_length(region: Region) -> float:
    """Return the exact length in mm of all outlines of a region: what a knife travels."""
    return sum(path.length for path in region.paths)
