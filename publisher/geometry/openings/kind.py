"""What a kind of opening gives: its registration, its rules, its drawing."""

from collections.abc import Callable, Iterable

from publisher.basics import Finding, Path, record
from publisher.design import OpeningPlan
from publisher.geometry.model import Mark, Opening, ParameterInfo, ShapeInfo
from publisher.geometry.registry import Values

MIDDLE = "middle"
CENTRE = ParameterInfo("centre", "length", "distance of its middle from the panel's left end", MIDDLE, 0.0)


@record
class DrawnOpening:
    """An opening in the panel's frame: its closed ``path`` anticlockwise (edges ``NAME.sill`` ``.right`` ``.head`` ``.left``, or
    ``.rim``), and whether it is open at the bottom edge (then the path begins with the sill).

    With a ``mark`` it is no hole: the path says what it takes up, the mark is what is drawn.
    """

    opening: Opening
    path: Path
    open_below: bool
    mark: Mark | None = None


@record
class OpeningKind:
    """A registered kind of opening. ``draw`` takes the plan, its sizes and the panel's middle (mm); it is called only when
    ``check`` finds nothing."""

    info: ShapeInfo
    draw: Callable[[OpeningPlan, Values, float], DrawnOpening]
    check: Callable[[Values], Iterable[Finding]]


def centre_of(values: Values, middle: float) -> float:
    """Return where the opening's middle stands, mm from the panel's left end."""
    return middle if values.word("centre") == MIDDLE else values.number("centre")
