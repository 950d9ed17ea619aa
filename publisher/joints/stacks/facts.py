"""Facts of a stack, named ``stair.height`` and so on."""

from collections.abc import Iterator
from dataclasses import replace
from math import dist, inf

import numpy as np
import shapely

from publisher.basics import Place, record
from publisher.design import Board, Fact, Figure, Kind
from publisher.geometry import Part, mitred
from publisher.joints.facts import made_fact
from publisher.joints.footing import GRAVITY
from publisher.joints.model import StackLayer
from publisher.joints.outlines import pieces, without_hairs
from publisher.joints.stacks.balance import Balance, balance_of, bears_figures, spread_of
from publisher.joints.stacks.batches import likely_ends, worst_ends
from publisher.joints.stacks.bracing import (
    Root,
    brace_length,
    braced_layers,
    judged,
    propped,
    roots_of,
    strength_factor,
    weakest,
)
from publisher.joints.stacks.circles import CIRCLE_CLOSE, farthest
from publisher.joints.stacks.courses import Stagger, staggers_of
from publisher.joints.stacks.knees import Knee, knees_of
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import PlanGeometry
from publisher.joints.stacks.treads import Tread, treads_of

SLIVER = 0.005
"""mm: half of the least width of what stands on the ground. The flattening of arcs is as fine."""

SIMPLER = 0.0005
"""What stands on the ground all the way down is simplified by this much (mm) per layer, so that its outline stays short."""


@record
class StackReport:
    """All that is known about one stack: for facts, checks and drawings."""

    stack: LaidStack
    plan: PlanGeometry
    treads: tuple[Tread, ...]
    standing: tuple[Tread, ...]  # of all layers on which a figure finds room, a plinth and a landing among them
    balance: Balance
    staggers: tuple[Stagger, ...]
    place: Place
    grounds: tuple[shapely.Geometry, ...]
    roots: tuple[Root, ...]
    load: float  # N of the figure at the outer edge of a step
    braced: tuple[int, ...]  # layers under whose steps a knee stands
    knees: tuple[Knee, ...] = ()  # one for each of them
    whole: bool = (
        True  # an assembly with all its sections; False for one section, which the whole's checks look at as well
    )

    @property
    def own_roots(self) -> tuple[Root, ...]:
        """The roots that are judged as such: where a layer bends as a deck does, that is judged as one."""
        return judged(self.roots)

    @property
    def all_decks(self) -> bool:
        """Whether every step that sticks out bends as a deck does."""
        return bool(self.roots) and not self.own_roots


def report_on(
    stack: LaidStack,
    parts: dict[str, Part],
    boards: dict[str, Board],
    figure_height: float,
    place: Place,
    whole: bool = True,
    figure: Figure = Figure(),  # noqa: B008 - a frozen value
) -> StackReport:
    """Compute what is to be known about a stack. ``figure_height`` in mm: layers less than this above a tread narrow it."""
    plan = PlanGeometry(stack.layers, parts)
    treads = treads_of(stack, plan, figure_height)
    every = treads_of(stack, plan, figure_height, range(len(stack.layers))) if stack.steps else treads
    standing = tuple(
        replace(tread, area=without_hairs(tread.area))
        for tread in every
        if bears_figures(parts[stack.layers[tread.layer].part], figure)
    )
    grounds = grounds_of(plan)
    load = figure.mass * GRAVITY
    free = roots_of(stack, plan, grounds, load, figure.base)
    braced = braced_layers(stack, free, parts, boards)
    roots = propped(free, braced, stack.brace, figure.base)
    knee = parts.get(stack.brace.part) if stack.brace is not None else None
    thick = knee.thickness if knee is not None else stack.layers[0].thickness
    knees = knees_of(stack, plan, braced, thick)
    braced = tuple(knee.layer for knee in knees)
    balance = balance_of(stack, plan, treads, standing, parts, boards, figure, knees)
    return StackReport(
        stack,
        plan,
        treads,
        standing,
        balance,
        staggers_of(stack, plan, parts),
        place,
        grounds,
        roots,
        load,
        braced,
        knees,
        whole,
    )


def facts_of(report: StackReport, parts: dict[str, Part], boards: dict[str, Board]) -> tuple[Fact, ...]:
    """Return the facts of a stack in a fixed order; a fact that its stack cannot have (joints) is left out."""
    values = [
        *_sizes(report, parts, boards),
        *_standing(report),
        *_lying(report),
        *_bending(report, parts, boards),
        *per_layer(report),
    ]
    name = report.stack.name
    return tuple(made_fact(f"{name}.{fact}", value, kind, report.place) for fact, value, kind in values)


def _sizes(report: StackReport, parts: dict[str, Part], boards: dict[str, Board]) -> Iterator[tuple[str, float, Kind]]:
    stack, plan = report.stack, report.plan
    low, high = stack.layers[0], stack.layers[-1]
    yield "layers", len(stack.layers), "count"
    yield "height", high.bottom + high.thickness - low.bottom, "length"
    yield "height_spread", spread_of(stack, parts, boards), "length"
    yield from _spreads(report, parts, boards)
    left, bottom, right, top = shapely.total_bounds(plan.placed)
    yield "width", right - left, "length"
    yield "depth", top - bottom, "length"
    yield "mass", report.balance.mass, "mass"
    main = stack.main
    if main is not None:
        own = stack.layers[main.first : main.first + main.count]
        yield "steps", main.count, "count"
        yield "climb", sum(layer.thickness for layer in own), "length"
        yield "rise", own[0].thickness, "length"
        yield "turn_per_layer", main.turn, "angle"
        yield "total_turn", main.turn * (main.count - 1), "angle"
        if main.turn:
            yield "layers_to_a_turn", 360.0 / abs(main.turn), "number"
        if main.turn and len(own) > 1:
            yield "rim_chord", _chord(parts[own[0].part], own[0], own[1]), "length"


def _chord(part: Part, lower: StackLayer, upper: StackLayer) -> float:
    """Return how far apart the same corner of two layers lies, straight across: the one that is moved most."""
    corners = [point for edge in part.outline.outer.edges for point in (edge.start, edge.end)]
    return max(dist(lower.pose.apply(corner), upper.pose.apply(corner)) for corner in corners)


def _spreads(
    report: StackReport, parts: dict[str, Part], boards: dict[str, Board]
) -> Iterator[tuple[str, float, Kind]]:
    """Yield between which ends heights lie: in the worst case, and for 95 % of the stacks whose layers come from mixed boards."""
    stack = report.stack
    runs = [("height", stack.layers, len(stack.layers) - 1)]
    if stack.main is not None:
        own = stack.layers[stack.main.first : stack.main.first + stack.main.count]
        runs.append(("climb", own, len(own)))
    covered = [t for t in report.treads if t.covered_by is not None]
    if covered:
        lowest = min(covered, key=lambda tread: tread.headroom)
        between = stack.layers[lowest.layer + 1 : lowest.covered_by]
        runs.append(("headroom", between, len(between) + 1))
    for name, layers, lines in runs:
        least, most = worst_ends(layers, lines, parts, boards)
        yield f"{name}_least", least, "length"
        yield f"{name}_most", most, "length"
        if stack.sheets:
            least, most = likely_ends(layers, lines, parts, boards, stack.sheets)
            yield f"{name}_likely_least", least, "length"
            yield f"{name}_likely_most", most, "length"


def _standing(report: StackReport) -> Iterator[tuple[str, float, Kind]]:
    treads = report.treads
    if treads:
        yield "tread", min(t.area.area for t in treads), "area"
        yield "base_that_stands", min(t.base_stands for t in treads), "length"
        yield "base_that_does_not_tip", min(t.base_holds for t in treads), "length"
        yield "headroom", min(t.headroom for t in treads), "length"
        cover = [report.stack.layers[t.covered_by].number for t in treads if t.covered_by is not None]
        yield "cover_begins", min(cover, default=inf), "count"
    yield "balance_margin", report.balance.empty, "length"
    yield "balance_with_figures", report.balance.with_figures, "length"
    yield "least_plinth_radius", report.balance.plinth_radius, "length"
    yield "push_to_tip", report.balance.tip, "force"
    yield "push_to_slide", report.balance.slide, "force"


def _lying(report: StackReport) -> Iterator[tuple[str, float, Kind]]:
    layers, plan = report.stack.layers, report.plan
    contacts = [plan.contact(k) for k in range(len(layers) - 1)]
    if contacts:
        yield "contact_least", min(c.share for c in contacts), "ratio"
        yield "overhang_reach", max(c.reach for c in contacts), "length"
        yield "flying_reach", flying_reach(plan, report.grounds), "length"
    if report.staggers:
        yield "joint_stagger", min(s.share for s in report.staggers), "ratio"


def per_layer(report: StackReport) -> Iterator[tuple[str, float, Kind]]:
    """Yield the rows of every layer, named ``layer_5.overhang`` by its number from the table up."""
    stack, plan = report.stack, report.plan
    treads = {tread.layer: tread for tread in report.treads}
    roots = {root.layer: root for root in report.roots}
    for k, layer in enumerate(stack.layers):
        name = f"layer_{layer.number}"
        if k > 0:
            contact = plan.contact(k - 1)
            yield f"{name}.contact", contact.share, "ratio"
            yield f"{name}.overhang", contact.reach, "length"
        if k in treads:
            yield f"{name}.tread", treads[k].area.area, "area"
            yield f"{name}.base_that_stands", treads[k].base_stands, "length"
            yield f"{name}.headroom", treads[k].headroom, "length"
        if k in roots:
            yield f"{name}.root_stress", roots[k].stress, "number"


def _bending(
    report: StackReport, parts: dict[str, Part], boards: dict[str, Board]
) -> Iterator[tuple[str, float, Kind]]:
    """Yield what the steps bear; a stack that stands on the ground everywhere has no weak step."""
    stack, brace = report.stack, report.stack.brace
    roots = report.own_roots or report.roots
    root = weakest(roots)
    if root is not None:
        yield "weakest_step", stack.treads.index(root.layer) + 1, "count"
        yield "root_stress", root.stress, "number"
        factor = strength_factor(roots, stack, parts, boards)
        yield "strength_factor", factor, "number"
        yield "step_carries", factor * report.load, "force"
    if brace is not None:
        yield "brace_length", brace_length(brace), "length"
        yield "braces", len(report.braced), "count"


def grounds_of(plan: PlanGeometry) -> tuple[shapely.Geometry, ...]:
    """Return what stands on the ground all the way down, per layer: S_0 = L_0, S_k = S_k-1 ∩ L_k; ends before the first
    layer of which nothing does."""
    ground = plan.placed[0]
    grounds = [ground]
    seen: set[tuple[object, ...]] = {plan.key(0, 0)}
    for k in range(1, len(plan.layers)):
        key = plan.key(0, k)
        if key not in seen:  # a layer that lies just as an earlier one takes nothing more away
            seen.add(key)
            ground = _without_slivers(shapely.simplify(shapely.intersection(ground, plan.placed[k]), SIMPLER))
        if ground.is_empty:
            break
        grounds.append(ground)
    return tuple(grounds)


def _without_slivers(ground: shapely.Geometry) -> shapely.Geometry:
    """Return an area without what is thinner than twice ``SLIVER``: where edges of two layers lie over each other, a hair of both
    would reach to the end of a step and seem to carry it."""
    ground = pieces(ground, 0.0)
    thinner = mitred(ground, -SLIVER)
    return pieces(mitred(thinner, SLIVER), 0.0)


def flying_reach(plan: PlanGeometry, grounds: tuple[shapely.Geometry, ...]) -> float:
    """Return the greatest distance (mm) from a point of any layer to what stands on the ground all the way down there;
    inf when nothing of a layer stands on the ground."""
    if len(grounds) < len(plan.layers):
        return inf
    # the ground only shrinks upwards: no point of a layer is farther from it than from a circle in the last ground
    centre, rim = shapely.get_coordinates(shapely.maximum_inscribed_circle(grounds[-1]))
    inner = float(np.hypot(*(rim - centre)))
    reach = 0.0
    for k in range(len(plan.layers) - 1, 0, -1):
        corners = shapely.get_coordinates(plan.placed[k])
        if float(np.hypot(*(corners - centre).T).max()) - inner > reach + CIRCLE_CLOSE:
            reach = farthest(plan.placed[k], grounds[k], reach)
    return reach
