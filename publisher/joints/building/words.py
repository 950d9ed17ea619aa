"""How a spec says what is added, for messages and proposals."""

import re
from collections.abc import Sequence

from publisher.basics.wording import listed, series
from publisher.design import BRACES
from publisher.joints.building.movers import is_brace
from publisher.joints.building.orders import Group
from publisher.joints.building.sites import Site


def item_of(site: Site, names: Sequence[str]) -> str:
    """Return one item of ``adds``: what goes in as one; layers that lie on one another."""
    if not site.stack:
        return " with ".join(f"{site.name}.{name}" for name in names)
    numbers = [name.removeprefix("layer_") for name in names]
    run = numbers[0] if len(numbers) == 1 else f"{numbers[0]} to {numbers[-1]}"
    return f"{site.name}.{BRACES}" if is_brace(names[0]) else f"{site.name} {run}"


def items_of(site: Site, groups: Sequence[Group]) -> tuple[str, ...]:
    """Return the items of ``adds`` for an order of all that an assembly has; its name alone where that says the same."""
    if site.stack or [name for group in groups for name in group.names] == list(site.movers) == [
        group.names[0] for group in groups
    ]:
        return (site.name,)
    return tuple(item_of(site, group.names) for group in groups)


def items_from_below(site: Site, layers: Sequence[str]) -> tuple[str, ...]:
    """Return items of ``adds`` for layers of a stack, given from below: ``stair 1 to 4``, ``stair 7``."""
    return tuple(item_of(site, run) for run in _runs(layers))


def called_from_below(site: Site, layers: Sequence[str]) -> str:
    """Return how a message calls layers of a stack: ``layers 1 to 4 and layer 7``."""
    said = [item_of(site, run).removeprefix(f"{site.name} ") for run in _runs(layers)]
    return series(f"layer{'s' if ' to ' in run else ''} {run}" for run in said)


def _runs(layers: Sequence[str]) -> list[list[str]]:
    """Return layers that lie on one another together."""
    runs: list[list[str]] = []
    for name in layers:
        number = int(name.rpartition("_")[2])
        if runs and number == int(runs[-1][-1].rpartition("_")[2]) + 1:
            runs[-1].append(name)
        else:
            runs.append([name])
    return runs


def called(names: Sequence[str]) -> str:
    """Return how a message calls movers of an assembly: front, layer 3."""
    return listed(re.sub(r"^(layer|brace)_(?=\d+$)", r"\1 ", name) for name in names)
