"""Decks across things: the undermost boards of a thing that others carry, between what they touch. Mm."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from itertools import takewhile

import numpy as np
import shapely

from publisher.design import Board, Figure, PanelPlan
from publisher.geometry import PLATE
from publisher.joints.bending import SMALL, OnDeck
from publisher.joints.footing import GRAVITY, mass_of
from publisher.joints.outlines import Array, united
from publisher.joints.panels import (
    ON_TABLE,
    PANEL_TOUCH,
    UNDER,
    UPRIGHT,
    Deck,
    Panel,
    PanelAssembly,
    bears_figures,
    corners_of,
    deck_on,
    region_of,
    section_over,
    section_under,
    supports_of,
)
from publisher.joints.wholes.put import PlacedThing, PlacedWhole
from publisher.joints.wholes.surfaces import gaps_between, surfaces_of

LIES_LEVEL = 1.0 - 1e-6
"""Share of its normal that a board has upwards, at least, that is a layer."""

STIFF = 5.0
"""Boards: a wall at least so high, glued on a deck or beside it, carries it between what carries both. An assumption."""


def decks_between(
    whole: PlacedWhole,
    plans: Mapping[str, PanelPlan],
    steps: Collection[tuple[str, str]],
    boards: dict[str, Board],
    figure: Figure,
) -> tuple[Deck, ...]:
    """Return the undermost boards of all things that others carry, as decks on all that touches them.

    What lies higher in a thing is carried by the thing itself, and judged there. ``plans``: of assemblies of panels, by their
    names; every other thing is a stack, whose undermost layer is as thick as those on it that leave none of it bare. ``steps``: things
    and the names there of layers that wind or climb, and are judged where they stick out of those below.
    """
    found = []
    for one in whole.things:
        plan = plans.get(one.thing.assembly)
        for panel, region, held in _undermost(whole, one, plan, figure) if one.thing.on else ():
            if (one.thing.name, panel.name) in steps:
                continue
            free = shapely.difference(region, held)
            levels = [[panel]] if plan else _levels(whole, one)
            thick, glued = _glued(levels, free)
            counted = [board.frame for level in levels[:glued] for board in level]
            over = [board for board in _over(whole, one, plan, panel) if not any(board.frame is own for own in counted)]
            deck = deck_on(panel, thick, region, held, boards, figure, _standing_on(panel, free, over, boards))
            if deck is not None:
                name = f"{one.thing.name}.{panel.name}" if plan else one.thing.name
                found.append(replace(deck, panel=replace(panel, name=name), layered=plan is None))
    return tuple(found)


def decks_of_layers(
    layers: tuple[Panel, ...], steps: Collection[str], loose: Collection[str], boards: dict[str, Board], figure: Figure
) -> tuple[Deck, ...]:
    """Return the layers of a stack, from the table up, that reach out over the next lower one or span what is hollow there, with
    the knee braces among them, as decks on all that touches them from below.

    ``steps``: names of layers that are held by all steps under them, and judged at the root where they stick out of those; ``loose``: of
    those that are not glued to the one below, and stiffen nothing under them.
    """
    level = [layer for layer in layers if not _upright(layer) and layer.part.shape != PLATE]
    knees = [layer for layer in layers if _upright(layer)]
    found = []
    for at in range(1, len(level)):
        layer = level[at]
        if layer.name in steps or not any(bears_figures(one, figure) for one in level[at:]):
            continue  # what is narrow carries the figure that stands on a wide layer over it
        region = region_of(layer)
        under = [section_under(other, layer) for other in (level[at - 1], *knees)]
        held = shapely.intersection(united(under), region)
        free = shapely.difference(region, held)
        if free.area <= SMALL:  # it lies on the next lower one all over
            continue
        pile = [layer, *takewhile(lambda one: one.name not in loose, level[at + 1 :])]
        thick, glued = _glued([[one] for one in pile], free)
        over = [one for one in level[at + 1 :] if one not in pile[:glued]]
        deck = deck_on(layer, thick, region, held, boards, figure, _standing_on(layer, free, over, boards))
        found += [] if deck is None else [replace(deck, layered=True)]
    return tuple(found)


def _boards_of(one: PlacedThing) -> tuple[Panel, ...]:
    return tuple(panel for panel in one.panels if panel.part.shape != PLATE)


def _walls(whole: PlacedWhole, one: PlacedThing) -> list[Panel]:
    """Return the upright boards of a thing and of those that are glued on it."""
    glued_on = [other for other in whole.things if one.thing.name in other.thing.on and not other.thing.lifts_off]
    panels = (*_boards_of(one), *(panel for other in glued_on for panel in other.panels))
    return [panel for panel in panels if _upright(panel)]


def _undermost(
    whole: PlacedWhole, one: PlacedThing, plan: PanelPlan | None, figure: Figure
) -> Iterator[tuple[Panel, shapely.Geometry, shapely.Geometry]]:
    """Yield the undermost boards of a thing that bear figures, each with its face and what of that is carried: by what the thing stands
    on, by its own thing, and by high walls that are glued to it beside those."""
    own_boards, walls = _boards_of(one), _walls(whole, one)
    below = [panel for name in one.thing.on for panel in whole.thing(name).panels]
    made = _of_panels(own_boards, plan, below) if plan else [(own_boards[0], shapely.Polygon())]
    on_it = [board for other in whole.bears(one.thing.name) for board in _boards_of(other)]
    for panel, own in made:
        if not _bears(panel, on_it, figure):
            continue
        region = region_of(panel)
        under = united([section_under(other, panel) for other in below])
        held = shapely.intersection(united([under, own]), region)
        ribs = [section_over(wall, panel) for wall in walls if _high(wall, panel)]
        yield panel, region, united([held, *(rib for rib in ribs if shapely.dwithin(rib, held, UNDER))])


def _bears(panel: Panel, others: list[Panel], figure: Figure) -> bool:
    """Tell whether a figure stands on a board, or on a level one that lies on it, at once or on others that do."""
    if bears_figures(panel, figure):
        return True
    top = float(_heights(panel).max())
    over = [
        other
        for other in others
        if not _upright(other)
        and abs(float(_heights(other).min()) - top) <= PANEL_TOUCH
        and section_over(other, panel).intersection(region_of(panel)).area > SMALL
    ]
    return any(_bears(other, others, figure) for other in over)


def _of_panels(own: tuple[Panel, ...], plan: PanelPlan, below: list[Panel]) -> list[tuple[Panel, shapely.Geometry]]:
    """Return the undermost level panels of a thing, each with what of its own thing carries it."""
    assembly = PanelAssembly(plan, own, ())
    over = surfaces_of(below, up=True)
    ground = {
        panel.name
        for panel in own
        if (not _upright(panel) or _high(panel, panel))
        and (gaps_between(surfaces_of([panel], up=False), over).gaps <= PANEL_TOUCH).any()
    }
    low = min(float(_heights(panel).min()) for panel in own)
    return [
        (panel, supports_of(assembly, panel, region_of(panel), ground))
        for panel in own
        if not _upright(panel) and _heights(panel).max() <= low + panel.part.thickness + ON_TABLE
    ]


def _heights(panel: Panel) -> Array:
    return panel.frame.carry(corners_of(panel.part))[:, 2]


def _upright(panel: Panel) -> bool:
    return abs(float(panel.frame.outward[2])) < UPRIGHT


def _high(wall: Panel, deck: Panel) -> bool:
    """Tell whether a wall is high enough to carry a deck between what carries both."""
    return bool(np.ptp(_heights(wall)) >= STIFF * deck.part.thickness)


def _levels(whole: PlacedWhole, one: PlacedThing) -> list[list[Panel]]:
    """Return the layers of a stack, and of those that are glued on it, the undermost first; those of one height together."""
    found, more = [layer for layer in _boards_of(one) if not _upright(layer)], {one.thing.name}
    for other in whole.things:  # each comes after what carries it
        if other.thing.on and more >= set(other.thing.on) and not other.thing.lifts_off:
            more.add(other.thing.name)
            found += [layer for layer in _boards_of(other) if abs(float(layer.frame.outward[2])) > LIES_LEVEL]
    low = [round(float(_heights(layer).min()), 2) for layer in found]
    return [[layer for layer, own in zip(found, low, strict=True) if own == height] for height in sorted(set(low))]


def _over(whole: PlacedWhole, one: PlacedThing, plan: PanelPlan | None, deck: Panel) -> list[Panel]:
    """Return the boards that stand on the undermost layer of a thing: those over it in its stack, and all of what it alone bears; of a
    thing of panels, which carries its own, what stands on it alone is carried by all of it and bends no single board here."""
    if plan is not None:
        return []
    borne = whole.bears(one.thing.name)
    return [board for other in borne for board in _boards_of(other) if board is not deck and not _upright(board)]


def _standing_on(
    deck: Panel, free: shapely.Geometry, over: list[Panel], boards: dict[str, Board]
) -> tuple[OnDeck, ...]:
    """Return what level boards over a deck weigh on what nothing carries of it."""
    found = []
    for board in over:
        area = shapely.transform(region_of(board), lambda points, board=board: _moved(points, board, deck))
        there = shapely.intersection(area, free)
        if there.area > SMALL:
            found.append(OnDeck(there, mass_of(board.part, boards) * GRAVITY * float(there.area / area.area)))
    return tuple(found)


def _glued(levels: list[list[Panel]], bare: shapely.Geometry) -> tuple[float, int]:
    """Return how thick (mm) a stack is, from its undermost layer as far as each level covers what nothing carries, and how many levels
    that is."""
    lowest = levels[0][0]
    thick, top = lowest.part.thickness, float(_heights(lowest).max())
    count = 1
    for level in levels[1:]:
        own = [
            shapely.transform(region_of(layer), lambda points, layer=layer: _moved(points, layer, lowest))
            for layer in level
        ]
        gap = float(_heights(level[0]).min()) - top
        if gap > PANEL_TOUCH or shapely.area(shapely.difference(bare, united(own))) > SMALL:
            break
        thick += min(layer.part.thickness for layer in level)
        top = float(_heights(level[0]).max())
        count += 1
    return thick, count


def _moved(points: Array, layer: Panel, deck: Panel) -> Array:
    at = layer.frame.carry(np.column_stack([points, np.zeros(len(points))]))
    return np.asarray(deck.frame.back(at)[:, :2])
