"""Lap plates: strips of the same board that are glued behind a seam."""

from collections.abc import Sequence
from dataclasses import replace

import shapely

from publisher.basics import Finding, LineKind, Point, Purpose, polyline
from publisher.basics.wording import say_length
from publisher.geometry.cutting.seams import SHORTEST_PLATE, Cut, Seam
from publisher.geometry.model import Mark, Part, Region
from publisher.geometry.paths import (
    eroded,
    line_string,
    straight,
)
from publisher.geometry.rules import SPLIT_PLACE

PLATE = "lap_plate"  # stands where a part's shape does


def plate_behind(
    part: Part, cut: Cut, seams: Sequence[Seam], number: tuple[int, str], behind: Sequence[str]
) -> tuple[Part, Point] | Finding:
    """Return the plate of one seam, with the place of its lower left corner on the part, or the finding that there is no room for it.

    A rectangle about the seam, as long as the part is there over the plate's whole width, less the thickness of a board at
    either end, so that it keeps clear of panels that stand there, and of the plates of seams that it meets. ``number``: of the
    plate, and its letter; ``behind``: letters of the pieces that it holds.
    """
    plan, axis = cut.seam.plan, cut.seam.axis
    low, high = _room(part, cut, seams)
    length = high - low
    names = " and ".join([", ".join(behind[:-1]), behind[-1]] if len(behind) > 1 else behind)
    if length < SHORTEST_PLATE:
        return SPLIT_PLACE.found(
            f"there is no room for a plate behind the seam between {names} of part “{part.id}”",
            subject=f"part {part.id}",
            hint=f"a plate is at least {say_length(SHORTEST_PLATE)} long: make it narrower, move the seam, or leave the plate out",
            place=plan.place,
            value=max(0.0, length),
            limit=SHORTEST_PLATE,
        )
    width, height = (plan.plate, length) if axis == 0 else (length, plan.plate)
    corners = (((0.0, 0.0), "bottom"), ((width, 0.0), "right"), ((width, height), "top"), ((0.0, height), "left"))
    outline = Region(straight(corners))
    # a stepped seam looks the other way round from behind, where the plate's drawn face is glued
    middle = ((width / 2.0, 0.0), (width / 2.0, height)) if axis == 0 else ((0.0, height / 2.0), (width, height / 2.0))
    inset = part.trace_allowance
    line = tuple((min(max(x, inset), width - inset), min(max(y, inset), height - inset)) for x, y in middle)
    seam = Mark(LineKind.REFERENCE, Purpose.LAP, polyline(line), name="seam", text="seam")
    plate = replace(
        part,
        id=f"{part.id}_plate_{number[0]}",
        letter=number[1],
        name=f"Plate behind {names}",
        shape=PLATE,
        outline=outline,
        template=eroded(outline, part.trace_allowance)[0],
        openings=(),
        marks=() if plan.step else (seam,),
        edges=(),
        mirrored=0,
        place=plan.place,
        whole=part.id,
    )
    beside = cut.seam.at - plan.plate / 2.0
    return plate, (beside, low) if axis == 0 else (low, beside)


def _room(part: Part, cut: Cut, seams: Sequence[Seam]) -> tuple[float, float]:
    """Return from where to where (mm along the seam) a plate may reach."""
    axis, half = cut.seam.axis, cut.seam.plan.plate / 2.0
    left, bottom, right, top = cut.body.bounds
    at = cut.seam.at
    strip = shapely.box(*((at - half, bottom, at + half, top) if axis == 0 else (left, at - half, right, at + half)))
    ends = [float(v) for v in shapely.get_coordinates(cut.line)[:, 1 - axis]]
    middle = (min(ends) + max(ends)) / 2.0
    stops = [float(v) for v in shapely.get_coordinates(shapely.intersection(cut.body, strip))[:, 1 - axis]]
    for mark in part.marks:
        if mark.kind is LineKind.GLUE and len(mark.path.points) > 1:
            stops += shapely.get_coordinates(line_string(mark.path).intersection(strip))[:, 1 - axis].tolist()
    low = max((v for v in stops if v <= middle), default=middle)
    high = min((v for v in stops if v > middle), default=middle)
    return low + _clear(part, low, axis, seams), high - _clear(part, high, axis, seams)


def _clear(part: Part, end: float, axis: int, seams: Sequence[Seam]) -> float:
    """Return how much shorter (mm) a plate is at one end: by a board, or by half the plate of a seam that runs there."""
    crossing = [s for s in seams if s.axis != axis and abs(s.at - end) <= s.plan.step / 2.0 + 1e-6]
    return max([part.thickness if not crossing else 0.0, *(s.plan.plate / 2.0 for s in crossing)])
