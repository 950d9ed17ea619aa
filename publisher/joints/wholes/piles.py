"""Things of layers that lie on each other, as the one stack that they are: what bends there at its root, and how. Mm, N."""

from collections.abc import Iterator, Mapping, Sequence
from math import atan2, degrees

from publisher.basics import Place, Pose, record
from publisher.design import Board, Fact, Figure, Kind
from publisher.geometry import PLATE, Part
from publisher.joints.footing import GRAVITY
from publisher.joints.model import StackLayer
from publisher.joints.panels import UPRIGHT, Panel
from publisher.joints.stacks import (
    LaidStack,
    PlanGeometry,
    Root,
    StackReport,
    grounds_of,
    judged,
    propped,
    roots_of,
    strength_factor,
    weakest,
)
from publisher.joints.wholes.put import PlacedThing, PlacedWhole


@record
class PiledThings:
    """Things of layers, from one on the table up, each lying on the next lower one alone: as one stack, the thing and the name there of
    each of its layers, and the roots of its steps. ``all_of_it``: the whole has no other things."""

    stack: LaidStack
    names: tuple[tuple[str, str], ...]
    roots: tuple[Root, ...]
    all_of_it: bool
    place: Place

    @property
    def own_roots(self) -> tuple[Root, ...]:
        """The roots that are judged as such: where a layer bends as a deck does, that is judged as one."""
        return judged(self.roots)

    @property
    def steps(self) -> frozenset[tuple[str, str]]:
        """The things and the names there of the layers that wind or climb."""
        return frozenset(self.names[k] for k in self.stack.steps)


def facts_of_roots(
    piles: tuple[PiledThings, ...],
    decks: Sequence[Fact],
    parts: dict[str, Part],
    boards: dict[str, Board],
    figure: Figure,
) -> Iterator[tuple[str, float, Kind]]:
    """Yield what the steps of piles bear, by the names that this has for stacks: ``weakest_step`` of a whole that is one pile,
    ``root_stress`` (MPa), ``strength_factor`` (figures that break it), ``step_carries`` (N). Where no step is judged at its root, these say
    what the ``decks`` bear (facts of the whole), as those of a stack do."""
    every = [(pile, pile.own_roots or pile.roots) for pile in piles]
    own = [(pile, pile.own_roots) for pile in piles if pile.own_roots] or [case for case in every if case[1]]
    worst = max(own, key=lambda case: max(root.stress for root in case[1]), default=None)
    if worst is None:
        return
    root = weakest(worst[1])
    if root is None:
        return
    if worst[0].all_of_it:
        yield "weakest_step", worst[0].stack.treads.index(root.layer) + 1, "count"
    yield "root_stress", root.stress, "number"
    factor = min(strength_factor(roots, pile.stack, parts, boards) for pile, roots in own)
    carries = factor * figure.mass * GRAVITY
    if not worst[0].own_roots:
        said = {fact.name.rpartition(".")[2]: fact.value for fact in decks}
        factor, carries = said.get("deck_strength_factor", factor), said.get("deck_carries", carries)
    yield "strength_factor", factor, "number"
    yield "step_carries", carries, "force"


def piles_of(
    whole: PlacedWhole, reports: Mapping[str, StackReport], parts: dict[str, Part], figure: Figure
) -> tuple[PiledThings, ...]:
    """Return the piles of things of layers, at least two on each other, by the uppermost of each. ``reports``: of stacks, by name."""
    paths: dict[str, tuple[PlacedThing, ...]] = {}
    for one in whole.things:  # each comes after what carries it
        below = paths.get(one.thing.on[0], ()) if len(one.thing.on) == 1 else ()
        if one.thing.assembly in reports and (below or not one.thing.on):
            paths[one.thing.name] = (*below, one)
    carrying = {path[-2].thing.name for path in paths.values() if len(path) > 1}
    highest = [path for name, path in paths.items() if name not in carrying and len(path) > 1]
    return tuple(_pile(whole, path, reports, parts, figure) for path in highest)


def _pile(
    whole: PlacedWhole,
    path: tuple[PlacedThing, ...],
    reports: Mapping[str, StackReport],
    parts: dict[str, Part],
    figure: Figure,
) -> PiledThings:
    layers, names, loose, braced = list[StackLayer](), list[tuple[str, str]](), list[int](), dict[str, list[int]]()
    for one in path:
        own, first = reports[one.thing.assembly], len(layers)
        flat = [p for p in one.panels if abs(float(p.frame.outward[2])) >= UPRIGHT and p.part.shape != PLATE]
        loose += [first] if one.thing.lifts_off or not one.thing.on else []
        loose += [first + k for k in own.stack.loose if k]
        braced[one.thing.name] = [first + k for k in own.braced]
        layers += [_layer(panel, one.thing.name, first + k) for k, panel in enumerate(flat, 1)]
        names += [(one.thing.name, panel.name) for panel in flat]
    stack = LaidStack(whole.plan.name, tuple(layers), (), tuple(loose))
    plan = PlanGeometry(stack.layers, parts)
    roots = roots_of(stack, plan, grounds_of(plan), figure.mass * GRAVITY, figure.base)
    for one in path:
        roots = propped(roots, braced[one.thing.name], reports[one.thing.assembly].stack.brace, figure.base)
    return PiledThings(stack, tuple(names), roots, len(path) == len(whole.things), whole.plan.place)


def _layer(panel: Panel, thing: str, number: int) -> StackLayer:
    """Return a layer where it lies in the whole."""
    (a, *_), (b, *_), _ = panel.frame.axes
    x, y, top = (float(v) for v in panel.frame.origin)
    pose = Pose(x, y, degrees(atan2(float(b), float(a))))
    return StackLayer(panel.part.id, pose, top - panel.part.thickness, panel.part.thickness, thing, number)
