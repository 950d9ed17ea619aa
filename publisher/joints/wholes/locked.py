"""What stands in the way of a thing that lifts off. Mm."""

from publisher.joints.panels import PANEL_TOUCH
from publisher.joints.wholes.put import PlacedWhole
from publisher.joints.wholes.surfaces import gaps_between, surfaces_of


def locked_by(whole: PlacedWhole, name: str) -> tuple[str, ...]:
    """Return the names of the things that lie over a thing, but for those that it carries: they go up with it.

    A thing is set down from above, so that nothing that carries it can hold it; what stands beside it can, where it reaches
    over it.
    """
    own = whole.thing(name)
    top = surfaces_of(own.panels, up=True)
    found = []
    for other in whole.things:
        if other is own or name in _carriers(whole, other.thing.name):
            continue
        gaps = gaps_between(surfaces_of(other.panels, up=False), top)
        if (gaps.gaps > -PANEL_TOUCH).any():
            found.append(other.thing.name)
    return tuple(found)


def _carriers(whole: PlacedWhole, name: str) -> set[str]:
    """Return all things that carry one, directly or not."""
    direct = whole.thing(name).thing.on
    return set(direct).union(*(_carriers(whole, other) for other in direct)) if direct else set()
