"""Parts cut for a slope that stand on one of another pitch."""

from math import acos, degrees, dist

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import trimmed
from publisher.joints.assembled import Assembled
from publisher.joints.checks.off_its_face import ASKEW
from publisher.joints.panels import PanelAssembly, Seating

AS_DRAWN = 1e-6  # of its length by which an edge may run askew and be level or upright on its template


@checked(
    "joints/leans-on-its-slope",
    "What is cut for a slope stands upright on it",
    f"a cheek that is cut for another pitch lies on the roof with its whole edge, and leans forward or back; {ASKEW:g}° are not seen",
    Severity.WARNING,
    may_be_empty=True,
)
def leans_on_its_slope(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every upright part that stands on a slope with an edge that is slanted on its template, such as a dormer's cheek:
    what its template shows upright is to stand upright."""
    looked_at = 0
    for mated in subject.panels:
        for seating in mated.seatings:
            lean = _lean(seating, mated.assembly)
            if lean is None:
                continue
            looked_at += 1
            if lean <= ASKEW:
                continue
            seat, right = seating.seat, f"{trimmed(seating.rises, 2)}°"
            yield check.found(
                f"{seat.panel} stands on {seat.host} with its edge {seat.edge} and leans by {trimmed(lean, 2)}°: that face "
                f"rises by {right}",
                subject=mated.assembly.plan.name,
                hint="turn it by 180 deg: its edge rises the other way"
                if lean > seating.rises
                else f"cut its edge for {right}: by its pitch, if its shape has one, or by the size that gives it",
                place=seat.place,
                value=lean,
                limit=ASKEW,
            )
    return looked_at


def _lean(seating: Seating, assembly: PanelAssembly) -> float | None:
    """Return by how many degrees what a part's template shows upright is out of upright; None for a part that is not plumb, that
    stands on a level or upright face, or on an edge that is level or upright on its template."""
    panel = assembly.panel(seating.seat.panel)
    edge = panel.part.edge(seating.seat.edge) if panel is not None and seating.seat.edge else None
    if panel is None or edge is None or seating.seat.slope is not None:
        return None
    across, up = (
        abs(end - start) / dist(edge.start, edge.end) for start, end in zip(edge.start, edge.end, strict=True)
    )
    plumb = abs(float(panel.frame.outward[2])) < AS_DRAWN
    if min(across, up) < AS_DRAWN or not plumb or not ASKEW < seating.rises < 90.0 - ASKEW:
        return None
    return degrees(acos(min(1.0, abs(float(panel.frame.axes[2, 1])))))
