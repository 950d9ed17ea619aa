"""Openings and slots against the outline and against each other: inside, apart, and with enough board between."""

from collections.abc import Iterator, Sequence

import shapely

from publisher.basics import SAME_POINT, Finding, Path, Place, record
from publisher.geometry.paths import polygon
from publisher.geometry.registry import mm
from publisher.geometry.rules import (
    CARD,
    LEAST_CARD_WALL,
    LEAST_WALL,
    OPENING_OVER_EDGE,
    OVERLAP,
    SLOT_OFF_PANEL,
    THIN_WALL,
)


@record
class Void:
    """Something that is cut out: its closed path, in words what it is, where the designer wrote it.

    ``slot``: it belongs to a join. ``open_at``: the edge of the outline that it may touch (a door's bottom edge), '' for none.
    """

    path: Path
    what: str
    place: Place
    slot: bool = False
    open_at: str = ""


def wall_findings(voids: Sequence[Void], outer: Path, subject: str, thickness: float) -> Iterator[Finding]:
    """Find voids over the edge, overlapping voids, and walls too thin to cut in board of this thickness (mm). ``outer`` is the outline
    without the voids."""
    least = LEAST_WALL if thickness >= CARD else LEAST_CARD_WALL
    shapes = [polygon(void.path) for void in voids]
    body = polygon(outer)
    for void, shape in zip(voids, shapes, strict=True):
        edges = shapely.MultiLineString([[*e.points(), e.end] for e in outer.edges if e.name != void.open_at])
        over = shapely.difference(shape, body).area
        if over > SAME_POINT:
            rule = SLOT_OFF_PANEL if void.slot else OPENING_OVER_EDGE
            yield rule.found(
                f"{void.what} runs over the edge of the part (by {over:.1f} mm²)",
                subject=subject,
                hint="move it inwards, or make it smaller"
                if not void.slot
                else "change the inset or the number of tabs",
                place=void.place,
                value=over,
                limit=0.0,
            )
            continue
        yield from _thin(shape.distance(edges), f"{void.what} and the edge of the part", void, subject, least)
    for i, (a, shape) in enumerate(zip(voids, shapes, strict=True)):
        for b, other in zip(voids[i + 1 :], shapes[i + 1 :], strict=True):
            apart = shape.distance(other)
            if apart < SAME_POINT:
                yield OVERLAP.found(
                    f"{a.what} and {b.what} overlap or touch", subject=subject, hint="move them apart", place=b.place
                )
            else:
                yield from _thin(apart, f"{a.what} and {b.what}", b, subject, least)


def _thin(apart: float, between: str, void: Void, subject: str, least: float) -> Iterator[Finding]:
    if apart < least - SAME_POINT:
        yield THIN_WALL.found(
            f"only {mm(apart)} of board stay between {between}",
            subject=subject,
            hint=f"leave at least {mm(least)}: move it, or make it smaller",
            place=void.place,
            value=apart,
            limit=least,
        )
