"""Where knee braces are glued, drawn on the templates of the steps that they stand under."""

from collections import defaultdict
from dataclasses import replace
from itertools import groupby
from math import dist

import shapely

from publisher.basics import LineKind, Point, Purpose, polyline, record
from publisher.geometry import Mark, Part, polygon
from publisher.joints.stacks.facts import StackReport
from publisher.joints.stacks.knees import lowest_ply

KNEE_SEAT = "seat of a brace"
"""The name of the marks where a brace is glued: on the face of the template, while it stands under the other one."""

THROUGH = "prick its corners through"
"""What is done with a seat: a template shows it on its face, and it is that of the underside."""

WORDS_ASIDE = 3.5
"""mm between a seat and the middle of its words."""

SAME_SEAT = 0.2
"""mm: seats that lie nearer to each other are one; they are found along flattened arcs."""


@record
class _Seat:
    """A brace in the coordinates of the part that it stands under: its corners, and the steps (from 1) at which it does."""

    corners: tuple[Point, ...]
    steps: tuple[int, ...]


def knee_marks(report: StackReport, parts: dict[str, Part]) -> dict[str, tuple[Mark, ...]]:
    """Return, by part, the outline and the letter of each brace under it; where not every copy has it, with the steps."""
    stack, brace = report.stack, report.stack.brace
    if brace is None or brace.part not in parts:
        return {}
    knee_part = parts[brace.part]
    seats: dict[str, list[_Seat]] = defaultdict(list)
    for knee in report.knees:
        if knee.blocked:
            continue
        ply = lowest_ply(stack, knee.layer)
        layer = stack.layers[ply]
        corners = shapely.get_coordinates(report.plan.to_local(knee.in_plan(brace.run, knee_part.thickness), ply))[:-1]
        own = tuple((float(x), float(y)) for x, y in corners)
        step = stack.treads.index(knee.layer) + 1
        known = next((seat for seat in seats[layer.part] if _same(seat.corners, own)), None)
        if known is None:
            seats[layer.part].append(_Seat(own, (step,)))
        else:
            seats[layer.part][seats[layer.part].index(known)] = _Seat(known.corners, (*known.steps, step))
    copies = {part: sum(layer.part == part for layer in stack.layers) for part in seats}
    return {
        part: tuple(
            mark
            for seat in own
            for mark in _drawn(seat, knee_part.letter, len(seat.steps) == copies[part], parts[part])
        )
        for part, own in seats.items()
    }


def _same(one: tuple[Point, ...], other: tuple[Point, ...]) -> bool:
    return all(abs(a - b) < SAME_SEAT for p, q in zip(one, other, strict=True) for a, b in zip(p, q, strict=True))


def _drawn(seat: _Seat, letter: str, every: bool, part: Part) -> tuple[Mark, ...]:
    steps = f"step{'s' * (len(seat.steps) > 1)} {_ranges(seat.steps)}"
    text = f"{letter}, below" if every else f"{letter}, below {steps}"
    x, y = _beside(seat, part)
    outline = Mark(LineKind.GLUE, Purpose.LAP, polyline(seat.corners, True), name=KNEE_SEAT)
    words = Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((x, y),)), name=KNEE_SEAT, text=text)
    return outline, words, replace(words, text=THROUGH)


def _beside(seat: _Seat, part: Part) -> Point:
    """Return where the letter stands: beside the seat, which is too narrow for words, on the side where more of the part is."""
    (lx, ly), (rx, ry), *_ = seat.corners
    thick = dist((lx, ly), (rx, ry))
    across = ((lx - rx) / thick, (ly - ry) / thick)
    x, y = (sum(corner[axis] for corner in seat.corners) / len(seat.corners) for axis in (0, 1))
    away = thick / 2.0 + WORDS_ASIDE
    sides = [(x + way * away * across[0], y + way * away * across[1]) for way in (1.0, -1.0)]
    body = polygon(part.outline)
    return max(
        sides, key=lambda at: float(body.boundary.distance(shapely.Point(at))) * bool(shapely.contains_xy(body, *at))
    )


def _ranges(numbers: tuple[int, ...]) -> str:
    """Return numbers in words: 4, 7-9."""
    runs = [[n for _, n in run] for _, run in groupby(enumerate(sorted(numbers)), key=lambda one: one[1] - one[0])]
    return ", ".join(f"{run[0]}-{run[-1]}" if len(run) > 1 else f"{run[0]}" for run in runs)
