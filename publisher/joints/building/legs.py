"""The way by which something goes in among what stands: one straight move, or two where one does not do. Mm."""

from collections.abc import Sequence

import numpy as np

from publisher.basics import record
from publisher.joints.building.movers import is_brace
from publisher.joints.building.ways import CONTACT, UP, Ways, moved
from publisher.joints.outlines import Array

STEPS = (0.5, 1.0)
"""Shares of the way that is free at first, after which another way is tried."""

LEAST_STEP = 1.0  # mm: nothing is got out of a joint by less
ALONG_BOARD = 1e-5  # of a unit vector: what lies along an axis up to this does
MOST_STEP = 60.0  # mm: farther than any tab reaches


@record
class Way:
    """How something goes out, by unit vectors one after another (it comes in by their opposites, the last one first); none where it does
    not, and then what stands (names) in the way in which least does."""

    legs: tuple[Array, ...]
    by: tuple[str, ...]


def way_in(ways: Ways, group: Sequence[str], there: Sequence[str]) -> Way:
    """Return the way of a group among what stands there: of those that are free the one that puts it against most, from above
    before from aside, and from below last; of a brace one of its own, not one of another brace that leads there aslant."""
    own, left = [ways.names[name] for name in group], [ways.names[name] for name in there]
    if not left:
        return Way((np.array(UP),), ())
    each = [ways.in_the_way(way, own, left) for way in range(len(ways.out))]
    free = [way for way, hit in enumerate(each) if not hit]
    if free:
        straight = _along_its_board(ways, own) if is_brace(group[0]) else range(0)
        best = max(
            free,
            key=lambda way: (
                ways.touched(way ^ 1, own, left),
                round(float(ways.out[way] @ UP), 6),
                way in straight,
                -way,
            ),
        )
        return Way((ways.out[best],), ())
    if legs := _two_legs(ways, own, left):
        return Way(legs, ())
    least = min(range(len(each)), key=lambda way: (len(each[way]), way))
    return Way((), tuple(ways.movers[index].name for index in each[least]))


def _along_its_board(ways: Ways, own: list[int]) -> Sequence[int]:
    """Return the ways out that lead along an axis of a board."""
    axes = ways.movers[own[0]].panels[0].frame.axes
    return [way for way, out in enumerate(ways.out) if float(np.abs(axes.T @ out).max()) > 1.0 - ALONG_BOARD]


def _two_legs(ways: Ways, own: list[int], left: list[int]) -> tuple[Array, ...]:
    """Return two moves by which a group goes out one after another; () where none are found."""
    for way, out in enumerate(ways.out):
        room = min(float(ways.room(way, own, left).min()), MOST_STEP)
        if room < LEAST_STEP + CONTACT:
            continue
        for share in STEPS:
            aside = [moved(ways.movers[index], share * (room - CONTACT) * out) for index in own]
            then = Ways((*aside, *(ways.movers[index] for index in left)), ways.out)
            mine, others = range(len(own)), range(len(own), len(own) + len(left))
            for second in range(len(ways.out)):
                if second // 2 != way // 2 and not then.in_the_way(second, mine, others):
                    return (out, ways.out[second])
    return ()
