"""Where the next layer of a stack lies, drawn on the template of the one below, where no other mark says it."""

from collections import defaultdict
from collections.abc import Iterator

import shapely

from publisher.basics import LineKind, Purpose, polyline, remembered_few
from publisher.geometry import Mark, Part
from publisher.joints.outlines import whole_polygon
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry

SEATS_ALIKE = 0.01
"""mm: outlines and centres that are nearer to each other are one."""

LAYER_SEAT = "seat of the next layer"


def layer_seats(stack: LaidStack, parts: dict[str, Part]) -> dict[str, tuple[Mark, ...]]:
    """Return, by part, the outline and the letter of the layer that lies on it, in the part's own coordinates (mm).

    None where the part says already where the next layer lies, where both have a centre to be put one over the other, where the layers
    cover each other, and where a part carries different layers, or one in different ways: one outline too many is worse than none.
    """
    plan = PlanGeometry(stack.layers, parts)
    seats: dict[str, list[tuple[str, shapely.Geometry]]] = defaultdict(list)
    for number, (lower, upper) in enumerate(zip(stack.layers, stack.layers[1:], strict=False)):
        touch = plan.contact(number).touch
        over = _all_over(whole_polygon(parts[lower.part]), touch)
        if told_by_marks(parts[lower.part], parts[upper.part]) or (over and lower.part == upper.part):
            continue  # of two alike, outline on outline, only the upper one carries what comes next
        seats[lower.part].append(("" if over else parts[upper.part].letter, touch))
    return {part: tuple(_drawn(*own[0])) for part, own in seats.items() if own[0][0] and _alike(own)}


def told_by_marks(lower: Part, upper: Part) -> bool:
    """Say whether marks of the shape tell where the next layer lies: a line or an outline of it, or two centres."""
    marks = {mark.purpose for mark in lower.marks}
    centres = all(any(mark.purpose is Purpose.CENTRE for mark in part.marks) for part in (lower, upper))
    return bool(marks & {Purpose.LINE_UP, Purpose.LAP}) or centres


@remembered_few  # most layers of a stair are alike
def _all_over(body: shapely.Geometry, touch: shapely.Geometry) -> bool:
    return bool(shapely.hausdorff_distance(body, touch) < SEATS_ALIKE) if not shapely.is_empty(touch) else True


def _alike(own: list[tuple[str, shapely.Geometry]]) -> bool:
    letter, first = own[0]
    return all(other == letter and shapely.hausdorff_distance(first, touch) < SEATS_ALIKE for other, touch in own)


def _drawn(letter: str, touch: shapely.Geometry) -> Iterator[Mark]:
    """Yield the outline of each piece of a seat, and the letter in the roomiest place of the largest."""
    pieces = [piece for piece in shapely.get_parts(touch) if isinstance(piece, shapely.Polygon)]
    for piece in pieces:
        points = tuple((float(x), float(y)) for x, y in piece.exterior.coords[:-1])
        yield Mark(LineKind.GLUE, Purpose.LAP, polyline(points, True), name=LAYER_SEAT)
    if pieces:
        largest = max(pieces, key=lambda piece: float(piece.area))
        x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(largest, 0.5))[0]
        yield Mark(LineKind.REFERENCE, Purpose.MATCH, polyline(((float(x), float(y)),)), name=LAYER_SEAT, text=letter)
