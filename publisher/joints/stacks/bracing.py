"""Strength of steps that stick out of their core: root stress, the weakest step, knee braces.

The root of a step is where its layer leaves what stands on the ground all the way down; of one that has no such core, or one that is
narrower than a part may be, the rim of the lower layer over which it bends most (``corbels``). There it bends like a beam that is
held at one end: s = 6·F·a / (w·h²) with F the load at the outer edge of the tread, a the way from there to the root, w the
width of the root, of which the load of a figure on a base b spreads over no more than b + a, and h the thickness of all boards that are
glued together over its whole width (elementary bending: moment F·a over the section modulus w·h²/6).
"""

from collections.abc import Collection, Iterator
from dataclasses import replace
from math import hypot, inf

import numpy as np
import shapely

from publisher.basics import record
from publisher.design import Board, BracePlan
from publisher.geometry import Part
from publisher.joints.bending import SAME_BEND, neck_out, strength_of
from publisher.joints.footing import LEAST_TREAD
from publisher.joints.least_sizes import THICKNESS
from publisher.joints.least_sizes import WHOLE_PART as LEAST_CORE
from publisher.joints.outlines import Array, pieces, without_hairs
from publisher.joints.stacks.circles import farthest
from publisher.joints.stacks.corbels import BESIDE_BRACE, DEEP, FREE, LEAST_BRACED, hangings_of
from publisher.joints.stacks.knees import lowest_ply
from publisher.joints.stacks.layers import LaidStack
from publisher.joints.stacks.plan_geometry import LayerKey, PlanGeometry

LEAST_ROOT = 0.5
"""mm: a shorter root carries no step worth the name."""

LONG = 1.0e4
"""mm: longer than any part."""

BRACE_CLOSE = 1e-9
"""mm: a step this much lower than its knee is high enough (both come from sums of floats)."""


@record
class Root:
    """The root of one step: its layer (index), the arm and the width in mm, the boards glued there and how thick they are
    together (mm), the stress in MPa; the arm is shorter where a knee brace carries the step. ``deck``: it bends there as a deck on
    the next lower layer, and is judged as that."""

    layer: int
    arm: float
    width: float
    plies: int
    thick: float
    stress: float
    braced: bool
    deck: bool = False
    beside: "Root | None" = None  # the root that bends most on its other sides


def roots_of(
    stack: LaidStack, plan: PlanGeometry, grounds: tuple[shapely.Geometry, ...], load: float, base: float
) -> tuple[Root, ...]:
    """Return the root of every step that sticks out over what stands on the ground, from the table up, without braces; of one that
    sticks out on several sides the root that bends most.

    ``load``: N at the outer edge, of one figure on a base so wide (mm). ``grounds``: what stands on the ground all the way down, per
    layer; shorter than the stack when nothing more does.
    """
    sticking: dict[LayerKey, tuple[_Sticking, ...]] = {}
    piles: dict[LayerKey, list[int]] = {}
    found: list[Root] = []
    treads, steps = set(stack.treads), stack.steps
    hanging = _Hanging(stack, plan, load, base)
    for k in range(1, len(stack.layers)):
        if k not in treads:
            continue
        if k >= len(grounds):
            found += hanging.all_the_way(k)
            continue
        above = plan.key(k, k + 1) if k + 1 < len(stack.layers) else None
        key: LayerKey = (above, k in steps, *_shape_of(plan, grounds[k], k))
        if key not in sticking:
            sticking[key] = tuple(_sticking(plan, grounds[k], k, base, spans=k in steps))
        out = sticking[key]
        if not out:
            continue
        if max(one.width for one in out) < LEAST_CORE.foam * max(1.0, stack.layers[k].thickness / THICKNESS):
            found += hanging.all_the_way(k)
            continue
        near = range(max(0, k - DEEP), min(len(stack.layers), k + DEEP + 1))
        loose = tuple(j - k for j in near if j in stack.loose)
        pile: LayerKey = (*key, k - near[0], *(plan.key(k, j) for j in near), loose)
        if pile not in piles:
            piles[pile] = [_plies(stack, plan, plan.to_assembly(one.root, k), k) for one in out]
        board = stack.layers[k].thickness
        each = [
            (6 * load * one.arm / (one.width * (n * board) ** 2), n, one)
            for n, one in zip(piles[pile], out, strict=True)
        ]
        stress, plies, worst = max(each, key=lambda one: one[0])
        deck = k not in steps and _bends_as_deck(plan, grounds[k], k, worst.arm)
        root = Root(k, worst.arm, worst.width, plies, plies * board, stress, False, deck)
        others = [(s, n, one) for s, n, one in each if one is not worst]
        if others:
            stress, plies, other = max(others, key=lambda one: one[0])
            beside = replace(root, arm=other.arm, width=other.width, plies=plies, thick=plies * board, stress=stress)
            root = replace(root, beside=beside)
        lip = hanging.over_the_next(k) if k in steps else None
        found.append(replace(lip, beside=root.beside) if lip is not None and lip.stress > root.stress else root)
    return tuple(found)


class _Hanging:
    """Roots of layers over lower ones; layers that lie alike on each other hang alike."""

    def __init__(self, stack: LaidStack, plan: PlanGeometry, load: float, base: float) -> None:
        """Take what ``roots_of`` takes."""
        self.stack, self.plan, self.load, self.base = stack, plan, load, base
        self._lips: dict[LayerKey, Root | None] = {}

    def all_the_way(self, k: int) -> tuple[Root, ...]:
        """Return the root of a layer of which nothing worth the name stands on the ground: where it bends most of all that it hangs on,
        if anywhere. Over the next lower layer it is judged as a deck, where it is no step."""
        root = self._worst(k, 1 if k in self.stack.steps else 2, 0)
        return () if root is None else (root,)

    def over_the_next(self, k: int) -> Root | None:
        """Return the root of a step over the next lower layer; None where it does not reach beyond it."""
        above = range(k + 1, min(len(self.stack.layers), k + DEEP))
        loose = tuple(j - k for j in above if j in self.stack.loose)
        key: LayerKey = (self.plan.key(k - 1, k), *(self.plan.key(k, j) for j in above), loose)
        if key not in self._lips:
            self._lips[key] = self._worst(k, 1, k - 1)
        root = self._lips[key]
        return None if root is None else replace(root, layer=k)

    def _worst(self, k: int, nearest: int, lowest: int) -> Root | None:
        each = hangings_of(self.stack, self.plan, k, self.base, nearest, lowest)
        worst = max(each, key=lambda one: one.stress(self.load), default=None)
        if worst is None:
            return None
        boards = round(worst.thick / self.stack.layers[k].thickness)
        return Root(k, worst.arm, worst.width, boards, worst.thick, worst.stress(self.load), False)


def propped(roots: tuple[Root, ...], braced: Collection[int], brace: BracePlan | None, base: float) -> tuple[Root, ...]:
    """Return the roots with the shorter arms of the layers that are braced; ``base``: that of a figure (mm)."""
    if brace is None:
        return roots
    return tuple(_propped(root, brace, base) if root.layer in braced else root for root in roots)


def _propped(root: Root, brace: BracePlan, base: float) -> Root:
    """Return a root at its brace, where the load has spread less; or that of another side, which the brace does not reach."""
    arm = max(root.arm - brace.run, 0.0)
    width = min(root.width, base + arm)
    stress = root.stress * arm / root.arm * root.width / width
    near = replace(root, arm=arm, width=width, stress=stress, braced=True, beside=None)
    return near if root.beside is None or root.beside.stress <= stress else replace(root.beside, braced=True)


@record
class _Sticking:
    """What sticks out of the ground: arm and width of the root (mm), and the root as lines in the layer's own frame."""

    arm: float
    width: float
    root: shapely.Geometry


def _shape_of(plan: PlanGeometry, ground: shapely.Geometry, k: int) -> tuple[float, ...]:
    """Return what tells grounds apart in the layer's own frame: the steps of a regular stair have the same one."""
    local = plan.to_local(ground, k)
    centre = shapely.get_coordinates(shapely.centroid(local))[0]
    return (*np.round([local.area / 10.0, *centre, *shapely.bounds(local)], 1).tolist(),)


def _bends_as_deck(plan: PlanGeometry, ground: shapely.Geometry, k: int, arm: float) -> bool:
    """Tell whether a layer leaves what stands on the ground just where it, or a lower one that reaches as far (mm), leaves the next
    lower one: there that bends as a deck, as thick as all that is glued on it."""
    area = float(ground.area)
    below = (plan.contact(j) for j in range(k))
    return any(abs(contact.area - area) < LEAST_TREAD and contact.reach >= arm - FREE for contact in below)


def _sticking(plan: PlanGeometry, ground: shapely.Geometry, k: int, base: float, *, spans: bool) -> Iterator[_Sticking]:
    """Yield what of layer ``k`` sticks out over the ground where one can stand, each piece by itself; nothing when it stands.

    What lies between parts of the ground is carried from several sides: it bends as a deck does, and counts here only for steps,
    which no deck is made of (``spans``).
    """
    free = without_hairs(shapely.difference(plan.placed[k], ground))
    bare, hull = plan.bare(k), shapely.convex_hull(ground)
    rim = shapely.boundary(shapely.buffer(ground, BESIDE_BRACE))
    for piece in shapely.get_parts(free):
        tread = pieces(shapely.intersection(bare, piece if spans else shapely.difference(piece, hull)))
        if tread.is_empty:
            continue
        arm = farthest(tread, ground)
        if arm < FREE:
            continue
        root = shapely.intersection(rim, piece)
        width = min(max(float(shapely.length(root)), LEAST_ROOT), base + arm)
        yield _Sticking(arm, width, plan.to_local(root, k))
        corners = shapely.points(shapely.get_coordinates(tread))
        far = corners[int(shapely.distance(corners, ground).argmax())]
        foot, end = shapely.get_coordinates(shapely.shortest_line(ground, far))
        neck = neck_out(piece, foot, end, base)
        if neck is not None and neck.length / neck.width(base) > (1.0 + SAME_BEND) * arm / width:
            cut = shapely.intersection(piece, _across(foot, end, neck.length))
            yield _Sticking(neck.length, neck.width(base), plan.to_local(cut, k))


def _across(foot: Array, end: Array, length: float) -> shapely.Geometry:
    """Return a long line square to the way from foot to end, ``length`` mm before the end."""
    way = (end - foot) / max(float(np.hypot(*(end - foot))), 1e-12)
    at, side = end - length * way, LONG * np.array([-way[1], way[0]])
    return shapely.LineString([at - side, at + side])


def _plies(stack: LaidStack, plan: PlanGeometry, root: shapely.Geometry, k: int) -> int:
    """Return how many boards are glued together over the whole root: the least pile that holds layer ``k``."""
    whole = shapely.length(root)
    piles = [(root, 1)]
    for way in (-1, 1):
        above = []
        for line, count in piles:
            rest, deep, at = line, count, k
            while shapely.length(rest) > 0.0:
                glued = (at if way < 0 else at + 1) not in stack.loose
                at += way
                if not (glued and 0 <= at < len(stack.layers)):
                    above.append((rest, deep))
                    break
                above.append((shapely.difference(rest, plan.placed[at]), deep))
                rest, deep = shapely.intersection(rest, plan.placed[at]), deep + 1
        piles = [(line, count) for line, count in above if shapely.length(line) > 0.0]
    wide = [count for line, count in piles if shapely.length(line) >= LEAST_BRACED * whole]
    return min(wide, default=1)


def braced_layers(
    stack: LaidStack, roots: tuple[Root, ...], parts: dict[str, Part], boards: dict[str, Board]
) -> tuple[int, ...]:
    """Return the layers that get a knee brace: those that are asked for, or all steps, that lie high enough for the knee.

    ``roots`` are those without braces: they tell which steps are weak.
    """
    brace, steps = stack.brace, stack.treads
    if brace is None or not steps:
        return ()
    asked = [steps[number - 1] for number in brace.under if number <= len(steps)] if brace.under else list(steps)
    if brace.weak:
        breaking = {r.layer for r in roots if r.stress > strength_of(boards[parts[stack.layers[r.layer].part].board])}
        asked = [k for k in asked if k in breaking]
    foot = stack.layers[0].bottom
    return tuple(k for k in asked if stack.layers[lowest_ply(stack, k)].bottom - foot >= brace.drop - BRACE_CLOSE)


def brace_length(brace: BracePlan) -> float:
    """Return the length (mm) of a knee of horizontal run a and vertical drop b: √(a² + b²)."""
    return hypot(brace.run, brace.drop)


def judged(roots: tuple[Root, ...]) -> tuple[Root, ...]:
    """Return the roots that are judged as such: where a layer bends as a deck does, that is judged as one."""
    return tuple(root for root in roots if not root.deck)


def weakest(roots: tuple[Root, ...]) -> Root | None:
    """Return the root with the greatest stress; of equal ones the highest, whose fall is the farthest."""
    return max(roots, key=lambda r: (round(r.stress, 9), r.layer), default=None)


def strength_factor(
    roots: tuple[Root, ...], stack: LaidStack, parts: dict[str, Part], boards: dict[str, Board]
) -> float:
    """Return the least quotient of a board's bending strength and the stress at a root; inf when nothing sticks out."""
    return min((strength_of(boards[parts[stack.layers[r.layer].part].board]) / r.stress for r in roots if r.stress > 0),
               default=inf)  # fmt: skip
