"""Things set down from above, each on what carries it. Mm."""

from collections.abc import Callable, Mapping
from math import inf

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import ThingPlan, WholePlan
from publisher.geometry import Part
from publisher.joints.outlines import Array
from publisher.joints.panels import PANEL_TOUCH, Deck, Panel, board_mass, boards_of, foot_of, weight_of
from publisher.joints.wholes.middle import middle_of_plan
from publisher.joints.wholes.surfaces import gaps_between, surfaces_of
from publisher.joints.wholes.things import box_of, carried

Weigh = Callable[[Part], float]


@record
class PlacedThing:
    """A thing in its place.

    ``gaps``: by the name of each thing that is to carry it, how far it stands over that one; inf where it lies beside it.
    ``foot``: in plan, the hull of all that it touches. ``mass`` in grams, ``weight``: the point under its centre of mass.
    """

    thing: ThingPlan
    panels: tuple[Panel, ...]
    gaps: tuple[tuple[str, float], ...]
    foot: shapely.Geometry
    mass: float
    weight: tuple[float, float]


@record
class PlacedWhole:
    """Things in their places, each after those that carry it."""

    plan: WholePlan
    things: tuple[PlacedThing, ...]
    decks: tuple[Deck, ...] = ()  # of its things, that other things carry

    @property
    def panels(self) -> tuple[Panel, ...]:
        """All panels and layers; each is called by its thing and its place there."""
        return tuple(
            Panel(f"{one.thing.name}.{p.name}", p.part, p.frame, p.rests, p.place, p.seated)
            for one in self.things
            for p in one.panels
        )

    @property
    def box(self) -> tuple[Array, Array]:
        """The lower and the upper corner of the upright box round all."""
        return box_of(self.panels)

    def thing(self, name: str) -> PlacedThing:
        """Return the thing with this name. Raises StopIteration when there is none (design never lets that pass)."""
        return next(one for one in self.things if one.thing.name == name)

    def bears(self, name: str) -> tuple[PlacedThing, ...]:
        """Return a thing with all that stands on it alone."""
        found: dict[str, PlacedThing] = {}
        for one in self.things:  # each comes after what carries it
            if one.thing.name == name or (one.thing.on and found.keys() >= set(one.thing.on)):
                found[one.thing.name] = one
        return tuple(found.values())

    def load(self, name: str) -> tuple[float, Array]:
        """Return the mass of a thing with all that stands on it alone, in grams, and the point under the centre of it.

        What others help to carry presses on it inside what both touch, and tips it no more than its own weight does.
        """
        bears = self.bears(name)
        masses = np.array([one.mass for one in bears])
        points = np.array([one.weight for one in bears])
        return float(masses.sum()), np.asarray((masses[:, None] * points).sum(axis=0) / masses.sum())


def put_things(plan: WholePlan, panels_of: Mapping[str, tuple[Panel, ...]], weigh: Weigh) -> PlacedWhole | None:
    """Return all things in their places; None where one of them could not be put together."""
    if not plan.things or not all(panels_of.get(thing.assembly) for thing in plan.things):
        return None
    done: dict[str, PlacedThing] = {}
    for thing in plan.things:
        done[thing.name] = _put(thing, panels_of[thing.assembly], [done[name] for name in thing.on], weigh)
    return PlacedWhole(plan, tuple(done.values()))


def _put(thing: ThingPlan, own: tuple[Panel, ...], on: list[PlacedThing], weigh: Weigh) -> PlacedThing:
    turned = carried(own, thing.turn, np.zeros(3))
    middle, ground = np.zeros(2), 0.0
    if on:
        below = [panel for other in on for panel in other.panels]
        middle, ground = middle_of_plan(below), float(box_of(below)[1][2])
    to = middle + np.asarray(thing.at) - middle_of_plan(turned)
    above = carried(turned, 0.0, np.array([*to, ground - float(box_of(turned)[0][2])]))
    if not on:
        foot = foot_of(boards_of(above))
        return PlacedThing(thing, above, (), foot, *_weight(above, weigh))
    under = surfaces_of(above, up=False)
    each = [gaps_between(under, surfaces_of(other.panels, up=True)) for other in on]
    least = [float(gaps.gaps.min(initial=inf)) for gaps in each]
    drop = min(least)
    down = 0.0 if drop == inf else drop
    placed = carried(above, 0.0, np.array([0.0, 0.0, -down]))
    touched = [gaps.points[gaps.gaps - down <= PANEL_TOUCH] for gaps in each]
    foot = shapely.convex_hull(shapely.multipoints(np.vstack(touched)))
    said = tuple((other.thing.name, gap - down) for other, gap in zip(on, least, strict=True))
    return PlacedThing(thing, placed, said, foot, *_weight(placed, weigh))


def _weight(panels: tuple[Panel, ...], weigh: Weigh) -> tuple[float, tuple[float, float]]:
    x, y = weight_of(boards_of(panels), weigh)
    return sum(board_mass(panel.part, weigh) for panel in panels), (float(x), float(y))
