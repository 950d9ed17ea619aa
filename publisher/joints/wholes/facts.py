"""Facts of a whole that is made of things: its sizes, its mass. Mm, grams."""

from publisher.design import Fact, Kind
from publisher.joints.facts import made_fact
from publisher.joints.wholes.put import PlacedWhole
from publisher.joints.wholes.things import box_of


def facts_of(whole: PlacedWhole) -> tuple[Fact, ...]:
    """Return ``WHOLE.things``, ``width`` (x), ``depth`` (y), ``height``, ``mass``, and ``WHOLE.THING_height``: how high above
    the table each thing that others carry begins."""
    low, high = whole.box
    name, place = whole.plan.name, whole.plan.place
    values: list[tuple[str, float, Kind]] = [
        ("things", len(whole.things), "count"),
        ("width", high[0] - low[0], "length"),
        ("depth", high[1] - low[1], "length"),
        ("height", high[2] - low[2], "length"),
        ("mass", sum(one.mass for one in whole.things), "mass"),
    ]
    for one in whole.things:
        if one.thing.on:
            values.append((f"{one.thing.name}_height", float(box_of(one.panels)[0][2]), "length"))
    return tuple(made_fact(f"{name}.{fact}", value, kind, place) for fact, value, kind in values)
