"""Panels that reach below what their assembly is said to stand on."""

import numpy as np

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.panels import ON_TABLE, Panel, PanelAssembly, corners_of, corners_of_edge


@checked(
    "joints/reaches-below",
    "An assembly stands on what it is said to stand on",
    f"a keel that reaches more than {ON_TABLE:g} mm below the edge that is said to stand holds that edge in the air: the piece leans on "
    "the keel, and its height is another",
    Severity.WARNING,
    may_be_empty=True,
)
def reaches_below(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look how low each panel of an assembly reaches; of what only ever stands on other things a part may hang into them."""
    looked_at = 0
    for mated in subject.panels:
        assembly, plan = mated.assembly, mated.assembly.plan
        level = _level(assembly)
        if level is None or plan.name in subject.only_carried:
            continue
        lows: dict[str, float] = {}
        for board in assembly.solid:
            low = _low(board)
            lows[board.name] = min(low, lows.get(board.name, low))
        for panel in assembly.panels:
            looked_at += 1
            below = level - lows.get(panel.name, level)
            if below > ON_TABLE:
                on = plan.stands_on
                yield check.found(
                    f"{panel.name} of {plan.name} (part {panel.part.letter} “{panel.part.name}”) reaches {say_length(below)} below "
                    f"{on}, {'on which' if on.edge else 'which lies on the table and on which'} {plan.name} is said to stand",
                    subject=plan.name,
                    hint=f"let {panel.name} end at that level, say which edge of it stands_on the table, or set {plan.name} on a thing "
                    "that leaves it room below",
                    place=panel.place,
                    value=below,
                    limit=ON_TABLE,
                )
    return looked_at


def _low(panel: Panel) -> float:
    return float(panel.frame.carry(corners_of(panel.part))[:, 2].min())


def _level(assembly: PanelAssembly) -> float | None:
    """Return how high (mm) the edge lies that is said to stand, where its size puts it or where it is cut, or the lowest of what lies
    on the table; None where that is not placed."""
    on = assembly.plan.stands_on
    panel = assembly.panel(on.panel)
    if panel is None:
        return None
    edge = panel.part.edge(on.edge) if on.edge else None
    corners = None if edge is None else corners_of_edge(panel.part, edge)
    if edge is None or corners is None:
        return _low(panel)
    deep = panel.part.thickness if edge.face == "inside" else 0.0
    nominal = np.array([[*at, -deep] for at in (edge.nominal_start, edge.nominal_end)])
    return float(panel.frame.carry(np.vstack([corners, nominal]))[:, 2].min())
