"""What holds each mover of an assembly when it is put in its place: what must be there before it, and what it may hang on."""

from publisher.basics import record
from publisher.joints.assembled import Assembled
from publisher.joints.building.movers import Mover, faces_of
from publisher.joints.panels import ON_TABLE


@record
class Holds:
    """What a mover needs: ``all_of`` must stand before it; of ``any_of``, where there are any, one must, or the table holds it
    (``table``). ``folds``: those that it is of one piece with."""

    all_of: frozenset[str]
    any_of: frozenset[str]
    folds: frozenset[str]
    table: bool

    def held_by(self, there: frozenset[str]) -> bool:
        """Tell whether something of what is there, or the table, holds it."""
        return self.table or bool((self.all_of | self.any_of) & there)


def holds_of(subject: Assembled, assembly: str, movers: tuple[Mover, ...]) -> dict[str, Holds]:
    """Return what holds each mover of an assembly."""
    for mated in subject.panels:
        if mated.assembly.plan.name == assembly:
            return _of_panels(subject, assembly, movers)
    for whole in subject.things:
        if whole.plan.name == assembly:
            empty: frozenset[str] = frozenset()
            return {
                one.thing.name: Holds(frozenset(one.thing.on), empty, empty, not one.thing.on) for one in whole.things
            }
    return _of_stack(movers)


def _of_stack(movers: tuple[Mover, ...]) -> dict[str, Holds]:
    """A layer lies on the one below it, and a brace stands against the layers beside it, whether its own lies over it by then or not."""
    none: frozenset[str] = frozenset()
    layers = [mover for mover in movers if mover.name.startswith("layer_")]
    found = {
        mover.name: Holds(frozenset(below.name for below in layers[at - 1 : at]), none, none, at == 0)
        for at, mover in enumerate(layers)
    }
    for mover in movers:
        if mover.name not in found:
            low, high = (float(height) for height in (faces_of(mover).low[2], faces_of(mover).high[2]))
            beside = [
                layer.name
                for layer in layers
                if float(faces_of(layer).high[2]) > low + ON_TABLE and float(faces_of(layer).low[2]) < high - ON_TABLE
            ]
            found[mover.name] = Holds(frozenset(beside), none, none, False)
    return found


def _of_panels(subject: Assembled, assembly: str, movers: tuple[Mover, ...]) -> dict[str, Holds]:
    plan = next(m.assembly.plan for m in subject.panels if m.assembly.plan.name == assembly)
    needs: dict[str, set[str]] = {mover.name: set() for mover in movers}
    joined: dict[str, set[str]] = {mover.name: set() for mover in movers}
    folds: dict[str, set[str]] = {mover.name: set() for mover in movers}
    for join in plan.joins:
        for one, other in ((join.a.panel, join.b.panel), (join.b.panel, join.a.panel)):
            joined[one].add(other)
            if join.joint == "fold":
                folds[one].add(other)
    carried = (
        *((rest.panel, ref.panel) for rest in plan.rests for ref in rest.on),
        *((lining.panel, ref.panel) for lining in plan.linings for ref in lining.along),
        *((seat.panel, seat.host) for seat in plan.seats),
    )
    held_elsewhere = {seat.panel for seat in plan.seats if not seat.placed}
    for panel, host in carried:
        joined[panel].add(host)
        joined[host].add(panel)
        if panel not in held_elsewhere:
            needs[panel].add(host)
    ground = min(float(faces_of(mover).low[2]) for mover in movers) + ON_TABLE
    return {
        mover.name: Holds(
            frozenset(needs[mover.name]),
            frozenset(joined[mover.name]),
            frozenset(folds[mover.name]),
            float(faces_of(mover).low[2]) < ground,
        )
        for mover in movers
    }
