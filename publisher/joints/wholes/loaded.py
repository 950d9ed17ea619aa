"""Decks of panels inside a thing, under what stands on them: the thing alone was judged without it. Mm, N."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import shapely

from publisher.design import Board, Figure, PanelPlan
from publisher.geometry import PLATE
from publisher.joints.bending import SMALL, OnDeck
from publisher.joints.footing import GRAVITY
from publisher.joints.outlines import united
from publisher.joints.panels import Deck, Panel, PanelAssembly, decks_of, region_of, section_over
from publisher.joints.wholes.put import PlacedThing, PlacedWhole


def loaded_decks(
    whole: PlacedWhole, plans: Mapping[str, PanelPlan], boards: dict[str, Board], figure: Figure
) -> tuple[Deck, ...]:
    """Return the decks of all things of panels on which other things stand, each under what these weigh where they touch it.

    A thing with all that it alone bears weighs on all that it touches alike, by area: on a wall under the deck as on the deck. What several
    things carry together is not counted on any of them. ``plans``: of assemblies of panels, by their names. Decks on which nothing
    stands are judged in the assembly itself.
    """
    found = []
    for one in whole.things:
        plan = plans.get(one.thing.assembly)
        over = [other for other in whole.things if other.thing.on == (one.thing.name,)]
        if plan is None or not over:
            continue
        own = tuple(panel for panel in one.panels if panel.part.shape != PLATE)
        standing = {panel.name: _on(panel, over, own, whole) for panel in own}
        decks = decks_of(PanelAssembly(plan, own, ()), boards, figure, standing)
        found += [
            replace(deck, panel=replace(deck.panel, name=f"{one.thing.name}.{deck.panel.name}"))
            for deck in decks
            if standing[deck.panel.name]
        ]
    return tuple(found)


def _on(deck: Panel, over: Sequence[PlacedThing], own: Sequence[Panel], whole: PlacedWhole) -> tuple[OnDeck, ...]:
    """Return what each thing weighs on a panel, where it touches that."""
    found = []
    for other in over:
        there = _touched(other, deck)
        if there.area > SMALL:
            every = sum(float(_touched(other, panel).area) for panel in own)
            weight = whole.load(other.thing.name)[0] * GRAVITY
            found.append(OnDeck(there, weight * float(there.area) / every))
    return tuple(found)


def _touched(thing: PlacedThing, panel: Panel) -> shapely.Geometry:
    """Return where a thing stands on a panel, in the panel's coordinates."""
    return shapely.intersection(united([section_over(one, panel) for one in thing.panels]), region_of(panel))
