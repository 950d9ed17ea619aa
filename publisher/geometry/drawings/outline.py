"""What is wrong with a drawing as findings, and how large an outline of it is."""

from collections.abc import Sequence

import shapely

from publisher.basics import Finding, Place, Point
from publisher.geometry.drawings.picks import Missing
from publisher.geometry.drawings.tree import Unreadable
from publisher.geometry.model import Region
from publisher.geometry.registry import mm
from publisher.geometry.rules.drawings import NOT_IN_DRAWING, SIZE_NOT_SAID, UNREADABLE_DRAWING, Trouble


def refused_as(refused: Unreadable) -> Trouble:
    """Return a refusal as the rule that it breaks."""
    which = NOT_IN_DRAWING if isinstance(refused, Missing) else UNREADABLE_DRAWING
    return Trouble(which, str(refused), refused.hint, refused.line)


def findings(troubles: Sequence[Trouble], file: str, subject: str, place: Place | None) -> tuple[Finding, ...]:
    """Return troubles as findings at the spec's place, with the drawing's own line in words; the SVG's place if there is none."""
    return tuple(
        t.rule.found(
            f"{file}{f', line {t.line}' if t.line else ''}: {t.message}" if place else t.message,
            subject=subject,
            hint=t.hint,
            place=place or Place(file, t.line, 1 if t.line else 0),
            value=t.value,
            limit=t.limit,
        )
        for t in troubles
    )


def corner(region: Region) -> Point:
    """Return the lower left corner (mm) of a region."""
    left, bottom, _, _ = bounds_of(region)
    return left, bottom


def bounds_of(region: Region) -> tuple[float, float, float, float]:
    """Return left, bottom, right, top in mm."""
    left, bottom, right, top = shapely.LinearRing(region.outer.points).bounds
    return float(left), float(bottom), float(right), float(top)


def size_unsaid(width: float, height: float) -> Trouble:
    """Return the warning that a size rests on the px rule alone."""
    return Trouble(
        SIZE_NOT_SAID,
        f"the drawing's page has no width and height in mm; with 96 units to the inch it is {mm(width)} by {mm(height)}",
        "give the page its size in mm in the drawing program, or say width: … under drawing",
    )
