"""An order in which an assembly can be built: found backwards, by what can be taken out of the finished thing.

What is taken out makes room and never takes any: so whatever goes out first goes out of each later state as well, and the search need
never turn back. Where nothing goes out alone, several go out as one: along a way, a part takes with it all that stands in its way,
and those in theirs (the least such group of each part, as in the blocking graphs of Wilson and Latombe, Geometric reasoning about
mechanical assembly, Artificial Intelligence 71, 1994).
"""

from collections.abc import Iterator, Sequence

import numpy as np
import numpy.typing as npt

from publisher.basics import record
from publisher.joints.building.legs import way_in
from publisher.joints.building.sites import Site

MOST_SEARCHED = 80
"""Movers: of more no order is searched for but that of layers from below."""


@record
class Group:
    """What goes in as one, by its names: several were joined before."""

    names: tuple[str, ...]

    @property
    def together(self) -> bool:
        """Whether there are several."""
        return len(self.names) > 1


def order_of(site: Site, among: Sequence[str] = ()) -> tuple[Group, ...] | None:
    """Return an order in which an assembly, or some of it (``among``), can be put together; None where straight moves do not do."""
    left, groups = _taken_apart(site, tuple(among) or tuple(site.movers))
    return None if len(left) > 1 else (*(Group((name,)) for name in left), *reversed(groups))


def locked_in(site: Site, among: Sequence[str] = ()) -> tuple[str, ...]:
    """Return what of an assembly, or of some of it (``among``), no straight moves take apart; () where an order builds it."""
    left, _ = _taken_apart(site, tuple(among) or tuple(site.movers))
    return tuple(left) if len(left) > 1 else ()


def woven_in(site: Site, laps: Sequence[tuple[str, str]]) -> tuple[str, ...]:
    """Return panels that half laps (pairs of names) weave into each other, so that no straight moves put them together; () where an
    order does, or where no laps run in a ring."""
    crossed = {
        name: {other for pair in laps if name in pair for other in pair if other != name}
        for pair in laps
        for name in pair
    }
    while ends := [
        name for name, others in crossed.items() if len(others) < 2
    ]:  # what crosses one alone is put on last
        for name in ends:
            for other in crossed.pop(name):
                crossed.get(other, set()).discard(name)
    names = tuple(name for name in site.movers if name in crossed)
    if not names or any(site.movers[name].bent for name in names):
        return ()
    left, _ = _taken_apart(site, names)
    return tuple(left) if len(left) > 1 else ()


def _taken_apart(site: Site, names: tuple[str, ...]) -> tuple[list[str], list[Group]]:
    """Return what is left of some movers when nothing more can be taken out, and what was, first to last."""
    left, groups = list(names), list[Group]()
    if site.stack or len(names) > MOST_SEARCHED:
        return left[:1], [Group((name,)) for name in reversed(left[1:])]
    while len(left) > 1 and (group := _taken_out(site, left)) is not None:
        groups.append(Group(group))
        left = [name for name in left if name not in group]
    return left, groups


def _taken_out(site: Site, left: list[str]) -> tuple[str, ...] | None:
    """Return what to take out next: one alone before several, what lifts off before what is glued, what leaves the others held before
    what does not, and joined to each other before what leaves them in two, what does not meet the first, on which the rest can stand,
    and last by the order of the spec."""
    rank = {name: at for at, name in enumerate(site.movers)}
    alone: list[tuple[str, ...]] = [
        (name,) for name in left if not _carries(site, (name,), left) and _goes_out(site, name, left)
    ]
    found = alone or [group for group in _in_groups(site, left) if not _carries(site, group, left)]

    base = min(left, key=rank.__getitem__)

    def worth(group: tuple[str, ...]) -> tuple[int, bool, bool, bool, float, bool, int]:
        rest = frozenset(left) - set(group)
        off = base in rest and not any(base in _near(site, name) for name in group)
        held = site.lies_first(tuple(rest)) if len(rest) == 1 else all(site.holds[n].held_by(rest - {n}) for n in rest)
        last = max(rank[name] for name in group)
        lifts = not site.lifted.isdisjoint(group)
        return (-len(group), lifts, held, _hangs_together(site, rest), _low(site, group), off, last)

    return max(found, key=worth, default=None)


def _hangs_together(site: Site, names: frozenset[str]) -> bool:
    """Tell whether each of some movers is joined to the others, by way of others: glue holds none that meets nothing yet. Things are set
    down one by one."""
    if site.made_of:
        return True
    found = set[str]()
    near = set(tuple(names)[:1])
    while near:
        found |= near
        near = {
            one for name in near for one in site.holds[name].all_of | site.holds[name].any_of if one in names
        } - found
    return found == names


def _near(site: Site, name: str) -> frozenset[str]:
    """Return what a mover is joined to."""
    return site.holds[name].all_of | site.holds[name].any_of


def _low(site: Site, group: tuple[str, ...]) -> float:
    """Return 0 for what stands on the table, 1 for all else."""
    return float(not any(site.holds[name].table for name in group))


def _carries(site: Site, group: tuple[str, ...], left: list[str]) -> bool:
    """Tell whether something that would be left lies on what is taken out."""
    return any(site.holds[name].all_of & set(group) for name in left if name not in group)


def _goes_out(site: Site, name: str, left: list[str]) -> bool:
    others = [other for other in left if other != name]
    if site.movers[name].bent or site.holds[name].folds & set(others):
        return True
    own, rest = [site.ways.names[name]], [site.ways.names[other] for other in others]
    return any(not site.ways.in_the_way(way, own, rest) for way in range(len(site.ways.out)))


def _in_groups(site: Site, left: list[str]) -> Iterator[tuple[str, ...]]:
    """Yield what goes out by two moves, or else the least groups that go out as one and can themselves be put together."""
    by_two = [(name,) for name in left if way_in(site.ways, [name], [one for one in left if one != name]).legs]
    if by_two:
        yield from by_two
        return
    own = [site.ways.names[name] for name in left]
    groups = {
        frozenset(np.flatnonzero(row).tolist())
        for way in range(len(site.ways.out))
        for row in _reached(np.isfinite(site.ways.room(way, own, own)))
    }
    for group in sorted(groups, key=lambda one: (len(one), sorted(one))):
        names = tuple(left[at] for at in sorted(group))
        if 1 < len(names) < len(left) and order_of(site, names) is not None:
            yield names


def _reached(hit: npt.NDArray[np.bool_]) -> npt.NDArray[np.bool_]:
    """Return what each takes with it: all that it meets, and all that those meet."""
    reached = hit | np.eye(len(hit), dtype=np.bool_)
    while True:
        further = reached @ reached
        if (further == reached).all():
            return reached
        reached = further
