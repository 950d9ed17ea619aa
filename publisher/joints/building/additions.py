"""The acts of a design's steps, one after another, and what is wrong with them."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

import numpy as np

from publisher.basics import Place, record, remembered_few
from publisher.design import BRACES, AddPlan
from publisher.joints.assembled import Assembled
from publisher.joints.building.legs import way_in
from publisher.joints.building.movers import is_brace
from publisher.joints.building.orders import locked_in
from publisher.joints.building.sites import Site, sites_of
from publisher.joints.model import Addition, Manner, Vector

TRIAL = "dry_fit"
"""The stage whose steps take apart again what they add."""


@record
class Blocked:
    """What cannot be put in any more: ``names`` of an assembly, in ``step``, and what stands in the freest of its ways. ``locked``:
    what is said to have been joined before, of which no order of straight moves puts these together."""

    step: int
    assembly: str
    names: tuple[str, ...]
    by: tuple[str, ...]
    there: tuple[str, ...]
    place: Place
    locked: tuple[str, ...] = ()


@record
class Unheld:
    """What would rest on what is not there: ``name`` of an assembly, in ``step``, and what it ``lacks``: ``all_of`` it, or one.
    ``unbuilt``: it is a thing of which nothing has been put together."""

    step: int
    assembly: str
    name: str
    lacks: tuple[str, ...]
    all_of: bool
    unbuilt: bool
    place: Place


@record
class Building:
    """How a design is built by what its steps say: its acts, what is wrong, and how many additions were looked at."""

    additions: tuple[Addition, ...]
    blocked: tuple[Blocked, ...]
    unheld: tuple[Unheld, ...]
    looked_at: int


@remembered_few
def built_by_steps(subject: Assembled) -> Building:
    """Return how the steps of a design build it, as far as they say what they add and that could be put together."""
    works = _Works(subject)
    for number, step in enumerate(subject.design.steps, 1):
        if step.adds:
            works.do(number, step.adds, trial=step.stage == TRIAL)
    return Building(tuple(works.additions), tuple(works.blocked), tuple(works.unheld), works.looked_at)


class _Works:
    """Building in progress: what stands of each assembly so far."""

    def __init__(self, subject: Assembled) -> None:
        self.subject = subject
        self.stands: dict[str, tuple[str, ...]] = {}
        self.sites = sites_of(subject)
        self.additions: list[Addition] = []
        self.blocked: list[Blocked] = []
        self.unheld: list[Unheld] = []
        self.looked_at = 0

    def do(self, step: int, adds: Sequence[AddPlan], *, trial: bool) -> None:
        """Do one step."""
        kept = dict(self.stands)
        singles = [act for plan in adds for act in self._added(step, plan, trial)]
        merged = list(self._merged(singles))
        self.additions += [replace(act, number=number) for number, act in enumerate(merged, 1)]
        if trial:
            self.stands = kept

    def _added(self, step: int, plan: AddPlan, trial: bool) -> Iterator[Addition]:
        site = self.sites.get(plan.assembly)
        if site is None:
            return
        names = tuple(name for said in plan.names for name in _meant(said, site) if name in site.movers)
        for group in (names,) if plan.together else tuple((name,) for name in names):
            if group:
                self.looked_at += 1
                yield self._act(step, site, group, plan, trial)
                self.stands[site.name] = (*self.stands.get(site.name, ()), *group)

    def _act(self, step: int, site: Site, group: tuple[str, ...], plan: AddPlan, trial: bool) -> Addition:
        before = self.stands.get(site.name, ())
        there = tuple(name for name in before if name not in group)
        held = self._held(step, site, group, there, plan)
        folded = any(site.holds[name].folds & {*there} for name in group)
        bent = any(site.movers[name].bent for name in group)
        way = way_in(site.ways, group, there)
        how: Manner = "laid" if not there else "folded" if folded else "bent" if bent else "put"
        if plan.together and (locked := locked_in(site, group)):
            self.blocked.append(Blocked(step, site.name, group, (), there, plan.place, locked))
        elif held and how == "put" and not way.legs:
            self.blocked.append(Blocked(step, site.name, group, way.by, there, plan.place))
        parts = {site.movers[name].part for name in group}
        return Addition(
            step,
            0,
            site.name,
            site.times,
            there,
            group,
            parts.pop() if len(parts) == 1 else "",
            how,
            () if how in ("laid", "folded") else tuple(_vector(-leg) for leg in reversed(way.legs)),
            together=plan.together,
            one_on_another=site.stack,
            turn=self._turn(site, group[0]),
            trial=trial,
        )

    def _held(self, step: int, site: Site, group: tuple[str, ...], there: tuple[str, ...], plan: AddPlan) -> bool:
        """Add what would rest on what is not there; return whether all of a group is held."""
        lost = site.lacking(group, there)
        self.unheld += [Unheld(step, site.name, name, lacks, all_of, False, plan.place) for name, lacks, all_of in lost]
        unbuilt = [
            (name, made_of)
            for name in group
            if (made_of := site.made_of.get(name, "")) in self.sites and not self.stands.get(made_of)
        ]
        self.unheld += [Unheld(step, site.name, name, (made_of,), True, True, plan.place) for name, made_of in unbuilt]
        return not lost and not unbuilt

    def _merged(self, singles: Sequence[Addition]) -> Iterator[Addition]:
        """Yield acts, with those of copies of one part that go in by the same way, one after another, as one."""
        for _, run in groupby(enumerate(singles), lambda item: self._alike(item[1], item[0])):
            own = [act for _, act in run]
            yield replace(own[0], added=tuple(name for act in own for name in act.added))

    def _alike(self, act: Addition, at: int) -> tuple[object, ...]:
        """Return what is the same for acts that are one. The first of layers that wind up is an act of its own: it is laid by a
        line of another part, and those after it by how far each is turned. Braces stand all round, so that each has its own way in
        among what stands, and all the same one in their own frame."""
        if act.together or not act.part or act.how not in ("put", "bent"):
            return (at,)
        ways = tuple(tuple(round(v, 4) + 0.0 for v in way) for way in self._own_ways(act))
        winds = act.turn != 0.0 and self.sites[act.assembly].movers[act.before[-1]].part == act.part
        return (act.assembly, act.part, act.how, ways, act.turn, winds)

    def _own_ways(self, act: Addition) -> tuple[Vector, ...]:
        """Return the ways in of an act: of a brace in the frame of its board."""
        if not is_brace(act.added[0]):
            return act.ways
        frame = self.sites[act.assembly].movers[act.added[0]].panels[0].frame
        return tuple(_vector(frame.axes.T @ np.array(way)) for way in act.ways)

    def _turn(self, site: Site, name: str) -> float:
        """Return by how many degrees a layer is turned against the one below."""
        report = next((one for one in self.subject.wholes if one.stack.name == site.name), None)
        if report is None:
            return 0.0
        layers = {f"layer_{layer.number}": at for at, layer in enumerate(report.stack.layers)}
        at = layers.get(name, 0)
        turned = report.stack.layers[at].pose.turn - report.stack.layers[at - 1].pose.turn if at else 0.0
        return round((turned + 180.0) % 360.0 - 180.0, 9)


def _meant(name: str, site: Site) -> tuple[str, ...]:
    """Return the movers that a name of the spec means: all braces, or one mover."""
    if name == BRACES and site.stack:
        return tuple(mover for mover in site.movers if is_brace(mover))
    return (name,)


def _vector(way: np.ndarray) -> Vector:
    x, y, z = (float(v) + 0.0 for v in np.round(way, 9))
    return (x, y, z)
