"""Layers of a stack from its plan, and the stacks that stand on each other."""

from collections.abc import Collection
from dataclasses import replace

from publisher.basics import Point, Pose, record
from publisher.design import BracePlan, StackPlan
from publisher.geometry import Part, middle_of
from publisher.joints.model import StackLayer
from publisher.joints.stacks.climbs import LIES_OVER, alike, climbs_of, moved_on, thickened


@record
class LaidRow:
    """The layers of one row of the plan: indices into the stack's layers, turn and shift from one to the next."""

    part: str
    first: int
    count: int
    turn: float
    shift: tuple[float, float]


@record
class LaidStack:
    """One stack, or an assembly of stacks on each other. ``loose``: indices of layers that are not glued to the one below."""

    name: str
    layers: tuple[StackLayer, ...]
    rows: tuple[LaidRow, ...]
    loose: tuple[int, ...]
    brace: BracePlan | None = None
    seat: Point = (0.0, 0.0)  # of the highest layer, in its own coordinates: over it lies what comes next
    sheets: int = 0  # of different batches, from which its layers come in turn; 0: all from one

    @property
    def treads(self) -> tuple[int, ...]:
        """Indices of the layers that one stands on: the steps, where layers wind or climb, or else all.

        On a doubled step one stands on the layer that doubles it.
        """
        steps = tuple(k for climb in climbs_of(self.layers) for k in climb)
        thicker = {k: top for k, *_, top in thickened(self.layers)}
        return tuple(dict.fromkeys(thicker.get(k, k) for k in steps)) if steps else tuple(range(len(self.layers)))

    @property
    def steps(self) -> frozenset[int]:
        """Indices of the layers that wind or climb, and of those that double them; none where none do."""
        return frozenset(k for run in (*climbs_of(self.layers), *thickened(self.layers)) for k in run)

    @property
    def doubled(self) -> tuple[int, ...]:
        """Indices of layers that lie just over a step of the same part, and make it twice as thick, or more."""
        return tuple(k for _, *over in thickened(self.layers) for k in over)

    @property
    def main(self) -> LaidRow | None:
        """The most layers that wind or climb by one turn and shift: their number, and both as the spec has them, where it has."""
        runs = [run for climb in climbs_of(self.layers) for run in alike(self.layers, climb)]
        return max((self._row(run) for run in runs), key=lambda row: row.count, default=None)

    def _row(self, run: range) -> LaidRow:
        """Return layers that lie alike on each other as a row."""
        last = run[-1]
        turn, shift = moved_on(self.layers[last - 1], self.layers[last])
        said = next((row.turn for row in self.rows if row.first <= last < row.first + row.count), turn)
        turn = said if abs((said - turn + 180.0) % 360.0 - 180.0) < LIES_OVER else turn
        return LaidRow(self.layers[last].part, run[0], len(run), turn, shift)


def laid_on(below: Pose, seat: Point, own: Point, turn: float) -> Pose:
    """Return the pose of a thing whose point ``own`` lies over the point ``seat`` of one that lies at ``below``, turned by
    ``turn`` degrees against it. Both points are in their things' own coordinates."""
    x, y = below.apply(seat)
    turned = below.turn + (-turn if below.mirrored else turn)
    dx, dy = Pose(turn=turned, mirrored=below.mirrored).apply(own)
    return Pose(x - dx, y - dy, turned, below.mirrored)


def lay(plan: StackPlan, parts: dict[str, Part], below: LaidStack | None) -> LaidStack:
    """Lay out one stack. ``below`` is the stack that it stands on; its turn is against that stack's top layer.

    Every copy is turned and shifted against the layer under it; only the lowest layer of all has none.
    Rows whose part is not there are left out (design and geometry have said so).
    """
    pose, seat, more = Pose(), (0.0, 0.0), 0.0
    bottom, number = 0.0, 1
    under: Part | None = None
    if below is not None and below.layers:
        top = below.layers[-1]
        pose, seat, more, under = top.pose, below.seat, plan.turn, parts[top.part]
        bottom, number = top.bottom + top.thickness, top.number + 1
    layers: list[StackLayer] = []
    rows: list[LaidRow] = []
    for row in plan.rows:
        part = parts.get(row.part)
        if part is None:
            continue
        rows.append(LaidRow(row.part, len(layers), row.count, row.turn, row.shift))
        own = middle_of(part) if row.centred else (0.0, 0.0)
        for _ in range(row.count):
            if under is None:
                pose = laid_on(pose, seat, own, 0.0)
            else:
                on = middle_of(under) if row.centred else seat
                pose = laid_on(pose, (on[0] + row.shift[0], on[1] + row.shift[1]), own, row.turn + more)
            seat, more, under = own, 0.0, part
            layers.append(StackLayer(row.part, pose, bottom, part.thickness, plan.name, number))
            bottom, number = bottom + part.thickness, number + 1
    loose = (0,) if layers and (plan.loose or not plan.on) else ()
    return LaidStack(plan.name, tuple(layers), tuple(rows), loose, plan.brace, seat, plan.sheets)


def lay_all(
    plans: tuple[StackPlan, ...], parts: dict[str, Part]
) -> tuple[tuple[LaidStack, ...], tuple[LaidStack, ...]]:
    """Lay out all stacks, lower ones first. Return (every stack of the plan, every assembly with its sections joined)."""
    done: dict[str, LaidStack] = {}
    groups: dict[str, list[str]] = {}  # by what stands at the bottom: the sections from the table up
    group_of: dict[str, list[str]] = {}
    waiting = list(plans)
    # what stands on each other in a ring is never ready; design has refused that
    while ready := [p for p in waiting if not p.on or find(p.on, done) is not None]:
        for plan in ready:
            under = find(plan.on, done) if plan.on else None
            done[plan.name] = lay(plan, parts, done[under] if under else None)
            group_of[plan.name] = group_of[under] if under else groups.setdefault(plan.name, [])
            group_of[plan.name].append(plan.name)
        waiting = [p for p in waiting if p.name not in done]
    whole = tuple(joined([done[name] for name in names]) for names in groups.values())
    return tuple(_section(done[p.name], group_of[p.name]) for p in plans if p.name in done), whole


def _section(stack: LaidStack, group: list[str]) -> LaidStack:
    """Return a stack of an assembly. The steps of a braced one are counted from the table up: a section alone does not know which are
    its own."""
    return stack if len(group) == 1 else replace(stack, brace=None)


def find(name: str, done: Collection[str]) -> str | None:
    """Return the full name of the stack that the spec calls ``name`` (a section may be named without its assembly)."""
    if name in done:
        return name
    return next((full for full in done if full.endswith(f"_{name}")), None)


def joined(stacks: list[LaidStack]) -> LaidStack:
    """Return the sections of one assembly as one stack, named by what their names share."""
    if len(stacks) == 1:
        return stacks[0]
    rows: list[LaidRow] = []
    loose: list[int] = []
    layers: list[StackLayer] = []
    for stack in stacks:
        at = len(layers)
        rows += [LaidRow(r.part, r.first + at, r.count, r.turn, r.shift) for r in stack.rows]
        loose += [i + at for i in stack.loose]
        layers += stack.layers
    brace = next((stack.brace for stack in stacks if stack.brace), None)
    return LaidStack(
        shared_name([s.name for s in stacks]), tuple(layers), tuple(rows), tuple(loose), brace, sheets=stacks[0].sheets
    )


def shared_name(names: list[str]) -> str:
    """Return what ``stair_lower`` and ``stair_upper`` share: ``stair``. The first name when they share nothing."""
    words = [name.split("_") for name in names]
    same = 0
    while all(len(w) > same + 1 for w in words) and len({w[same] for w in words}) == 1:
        same += 1
    return "_".join(words[0][:same]) or names[0]
