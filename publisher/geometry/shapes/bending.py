"""One rule for all that is bent: how deep and how close it is slit, which face stays whole, what is drawn for it.

Common practice, no source: bare foam tears beyond 2 % of strain unless paper or tape covers the whole face that stays and slits
from the other side let it bend; slits reach two thirds through and leave 1.5 mm; they stand about a thickness apart.
"""

from collections.abc import Iterator
from math import floor

from publisher.basics import Finding, LineKind, Purpose, polyline
from publisher.geometry.model import Mark, ParameterInfo
from publisher.geometry.registry import Values, choice, mm
from publisher.geometry.rules import LEAST_SLIT_BOARD

SLIT_LEAVES = 1.5  # mm of board under a slit, at least

COVERED: ParameterInfo = choice(
    "covered",
    "what is glued over the whole face that stays, before it is bent over a bottle: bare foam tears without",
    ("none", "paper", "tape"),
)


def slit_depth(thickness: float) -> float:
    """Return how deep (mm) a slit is: two thirds of the board, with 1.5 mm left at least; down to a tenth, as it is read."""
    deepest = min(2.0 * thickness / 3.0, thickness - SLIT_LEAVES)
    return max(0.0, floor(10.0 * deepest + 1e-6) / 10.0)


def slits_in(length: float, thickness: float) -> int:
    """Return how many slits a stretch of this length (mm) gets: one for each thickness of the board."""
    return max(1, round(length / thickness))


def slit_marks(start: float, end: float, height: float, thickness: float) -> Iterator[Mark]:
    """Yield the slits of a stretch along x, half a pitch from its ends and a pitch apart."""
    number = slits_in(end - start, thickness)
    for k in range(number):
        x = start + (k + 0.5) * (end - start) / number
        yield Mark(LineKind.SCORE, Purpose.BEND, polyline(((x, 0.0), (x, height))), name="slit")


def too_thin_to_slit(values: Values, name: str, plain: str) -> Iterator[Finding]:
    """Find board that has no room for a slit. ``name``: of the size that asks for slits; ``plain``: how to ask for none."""
    if values.thickness < LEAST_SLIT_BOARD - 1e-6:
        yield values.wrong(
            name,
            f"board {mm(values.thickness)} thick is too thin to slit: {mm(SLIT_LEAVES)} must be left under a slit two thirds deep",
            f"board under {mm(LEAST_SLIT_BOARD)} bends whole: write {plain}; or take thicker board",
        )
