"""Things on things: assemblies that stand on the table and on each other. Millimetres and degrees."""

from publisher.basics import Place, Point, record


@record
class ThingPlan:
    """An assembly in its place. ``on``: names of the things that carry it, () for the table.

    ``at``: where the middle of the rectangle round it lies, seen from above, [across, deep] from the middle of the rectangle
    round what carries it; on the table, from the middle of the whole. ``turn``: degrees, anticlockwise seen from above.
    ``lifts_off``: it is not glued to what carries it.
    """

    name: str
    assembly: str
    on: tuple[str, ...]
    at: Point
    turn: float
    lifts_off: bool
    place: Place


@record
class WholePlan:
    """An assembly of assemblies: each thing comes after all that carry it."""

    name: str
    things: tuple[ThingPlan, ...]
    place: Place
