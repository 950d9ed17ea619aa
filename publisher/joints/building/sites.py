"""An assembly as it is built: what moves as one, what holds each, the ways out."""

from collections.abc import Sequence

from publisher.basics import record, remembered_few
from publisher.joints.assembled import Assembled
from publisher.joints.building.held import Holds, holds_of
from publisher.joints.building.movers import Mover, is_outermost, movers_of
from publisher.joints.building.ways import Ways, ways_of


@record
class Site:
    """An assembly that is built: its movers by name, what holds each, the ways out of it, how often it is built, of things the
    assembly that each is, and the panels that lift off again."""

    name: str
    movers: dict[str, Mover]
    holds: dict[str, Holds]
    ways: Ways
    times: int
    stack: bool
    made_of: dict[str, str]
    lifted: frozenset[str]

    def lacking(self, group: Sequence[str], there: Sequence[str]) -> list[tuple[str, tuple[str, ...], bool]]:
        """Return which of a group that goes in as one are not held, each with what must be there first: all of it (True), or one. The
        first panels of an assembly are any that some pose of it lies or stands on, and that nothing else is to carry."""
        standing, own = frozenset(there), frozenset(group)
        missing = [(name, self._in_order(self.holds[name].all_of - standing - own)) for name in group]
        lost = [(name, lacks, True) for name, lacks in missing if lacks]
        if lost or self._held(group, standing):
            return lost
        any_of = frozenset[str]().union(*(self.holds[name].any_of for name in group)) - own
        return [(group[0], self._in_order(any_of), False)]

    def _held(self, group: Sequence[str], standing: frozenset[str]) -> bool:
        if standing or self.stack or self.made_of:
            return not standing or any(self.holds[name].held_by(standing) for name in group)
        return self.lies_first(group)

    def lies_first(self, group: Sequence[str]) -> bool:
        """Tell whether panels may be the first of their assembly: one of them has a face that all of it lies on one side of, so that
        it can be built on that, upright, upside down or lying."""
        return any(
            self.holds[name].table
            or self.movers[name].bent
            or is_outermost(self.movers[name], tuple(self.movers.values()))
            for name in group
        )

    def _in_order(self, names: frozenset[str]) -> tuple[str, ...]:
        """Return movers in the order of the spec, layers from the table up."""
        return tuple(name for name in self.movers if name in names)


@remembered_few
def sites_of(subject: Assembled) -> dict[str, Site]:
    """Return the assemblies of a design that could be put together, by name, in the order of the spec's kinds."""
    names = (
        *(mated.assembly.plan.name for mated in subject.panels),
        *(report.stack.name for report in subject.wholes),
        *(whole.plan.name for whole in subject.things),
    )
    return {name: site for name in names if (site := _site(subject, name)) is not None}


def _site(subject: Assembled, name: str) -> Site | None:
    movers = movers_of(subject, name)
    if not movers:
        return None
    whole = next((whole for whole in subject.things if whole.plan.name == name), None)
    stack = any(report.stack.name == name for report in subject.wholes)
    used = sum(thing.assembly == name for plan in subject.design.wholes for thing in plan.things)
    return Site(
        name,
        {mover.name: mover for mover in movers},
        holds_of(subject, name, movers),
        ways_of(movers, upright=stack or whole is not None),
        max(1, used),
        stack,
        {one.thing.name: one.thing.assembly for one in whole.things} if whole else {},
        frozenset(
            rest.panel for plan in subject.design.panels if plan.name == name for rest in plan.rests if rest.loose
        ),
    )
