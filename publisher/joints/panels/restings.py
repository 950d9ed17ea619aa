"""Every rest of a panel assembly, measured where its panels stand."""

from publisher.basics import record
from publisher.design import EdgeRef, Rest
from publisher.joints.panels.place import PanelAssembly
from publisher.joints.panels.touching import Touch, face_behind, touch_of


@record
class Resting:
    """A panel on one of the edges that it is said to rest on, and how both touch."""

    rest: Rest
    on: EdgeRef
    touch: Touch


def restings_of(assembly: PanelAssembly) -> tuple[Resting, ...]:
    """Return the rests whose panels are placed, edge by edge; curved edges are left out."""
    found: list[Resting] = []
    for rest in assembly.plan.rests:
        above = assembly.panel(rest.panel)
        for ref in rest.on:
            below = assembly.panel(ref.panel)
            edge = below.part.edge(ref.edge) if below is not None else None
            if above is None or below is None or edge is None:
                continue
            touch = touch_of(face_behind(above.part, above.frame), below.part, below.frame, edge)
            if touch is not None:
                found.append(Resting(rest, ref, touch))
    return tuple(found)
