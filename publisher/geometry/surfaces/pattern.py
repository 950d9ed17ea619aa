"""What a pattern module gives: its registration, and lines in mm over a box."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from publisher.basics import Box, Finding, Point
from publisher.geometry.model import ShapeInfo
from publisher.geometry.values import Values

Line = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Pattern:
    """A registered surface pattern. ``lines`` returns families of lines that cover a box (mm); lines of one family do not
    cross each other, so that each family can be clipped at once. ``seed`` makes irregular patterns the same every time."""

    info: ShapeInfo
    lines: Callable[[Values, Box, int], tuple[tuple[Line, ...], ...]]
    check: Callable[[Values], Iterable[Finding]]
    units: Callable[[Values], float]  # area of one unit in mm², to foresee how many lines there will be
