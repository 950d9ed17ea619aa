"""Two edges of a panel exchanged in its joins, as a slip of the pen exchanges left and right, tried out."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, islice

from publisher.design import EdgeRef, Join
from publisher.joints.panels.place import PanelAssembly, place_panels

MOST_EXCHANGES = 30
"""Exchanges that are tried of one assembly: each places all of its panels."""


def exchanged_edges(assembly: PanelAssembly, names: tuple[str, ...]) -> Iterator[tuple[str, str, PanelAssembly]]:
    """Yield for each of some panels, and for each two of its joins, what the exchange of its edges makes of the assembly, with its name
    and how the joins read then: ``[floor.right, left.bottom] and [floor.left, right.bottom]``."""
    yield from islice(_every(assembly, names), MOST_EXCHANGES)


def _every(assembly: PanelAssembly, names: tuple[str, ...]) -> Iterator[tuple[str, str, PanelAssembly]]:
    parts = {panel.part.id: panel.part for panel in assembly.panels}
    for name in names:
        own = [join for join in assembly.plan.joins if name in (join.a.panel, join.b.panel)]
        for pair in combinations([join for join in own if join.at is None and join.joint != "fold"], 2):
            one, other = (_edge_of(join, name) for join in pair)
            if one.edge == other.edge:
                continue
            made = {id(pair[0]): _with_edge(pair[0], name, other), id(pair[1]): _with_edge(pair[1], name, one)}
            joins = tuple(made.get(id(join), join) for join in assembly.plan.joins)
            tried = place_panels(replace(assembly.plan, joins=joins), parts)
            if not tried.unplaced:
                yield name, " and ".join(f"[{join.a}, {join.b}]" for join in made.values()), tried


def _edge_of(join: Join, panel: str) -> EdgeRef:
    return join.a if join.a.panel == panel else join.b


def _with_edge(join: Join, panel: str, edge: EdgeRef) -> Join:
    return replace(join, a=edge) if join.a.panel == panel else replace(join, b=edge)
