"""Which panels hang together: who is joined to whom, and all that can be reached from one."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence


def neighbours(pairs: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    """Return the panels that each panel is paired with, as often as it is."""
    near: dict[str, list[str]] = defaultdict(list)
    for a, b in pairs:
        near[a].append(b)
        near[b].append(a)
    return dict(near)


def reached(start: str, near: Mapping[str, Sequence[str]]) -> set[str]:
    """Return a panel and all that hang on it, however far."""
    found, waiting = {start}, [start]
    while waiting:
        more = set(near.get(waiting.pop(), ())) - found
        found |= more
        waiting.extend(more)
    return found
