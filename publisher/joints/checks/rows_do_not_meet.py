"""Rows of masonry that jump at the corner where two walls meet."""

from publisher.basics import Check, Findings, Severity, checked, record
from publisher.basics.wording import lengths_apart, say_length
from publisher.design import EdgeRef
from publisher.joints.assembled import Assembled
from publisher.joints.panels import PanelAssembly

OFF_VERTICAL = 1e-6
"""An edge's direction may lie this far off the vertical to count as upright."""

SEEN = 0.3
"""mm: a smaller jump of a pressed-in line round a corner is not seen. Common practice, no source."""


@record
class _Rows:
    """Rows on a wall: the pattern, the height of a row and where the lowest begins above the table (mm)."""

    pattern: str
    height: float
    foot: float


@checked(
    "joints/rows-do-not-meet",
    "Rows of masonry go round corners at one height",
    f"a wall whose courses jump at the corner by more than {SEEN:g} mm looks like two walls (common practice, no source)",
    Severity.WARNING,
    may_be_empty=True,
)
def rows_do_not_meet(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the rows on both sides of every upright joint between walls that are drawn with the same pattern of level rows."""
    heights = {
        plan.id: (plan.surface.pattern, float(parameter.value))
        for plan in subject.design.parts
        if plan.surface is not None
        for parameter in plan.surface.parameters
        if parameter.name == "height" and isinstance(parameter.value, int | float)
    }
    looked_at = 0
    for mated in subject.panels:
        for join in mated.assembly.plan.joins:
            a, b = (_rows(mated.assembly, ref, heights) for ref in (join.a, join.b))
            if a is None or b is None or a.pattern != b.pattern:
                continue
            looked_at += 1
            jump = (a.foot - b.foot) % a.height
            jump = min(jump, a.height - jump)
            if abs(a.height - b.height) > 1e-6:
                one, other = lengths_apart(a.height, b.height)
                what = f"rows of {a.pattern} are {one} high on {join.a.panel} and {other} on {join.b.panel}"
                hint, value = "give both walls the same height of a row: one size for both", abs(a.height - b.height)
            elif jump > SEEN:
                what = f"rows of {a.pattern} on {join.a.panel} and {join.b.panel} jump by {say_length(jump)}"
                hint, value = "let one wall begin a whole number of rows above the other", jump
            else:
                continue
            yield check.found(
                f"{what}: they do not meet where {join.a} meets {join.b}",
                subject=mated.assembly.plan.name,
                hint=hint,
                place=join.place,
                value=value,
                limit=SEEN if jump == value else 0.0,
            )
    return looked_at


def _rows(assembly: PanelAssembly, ref: EdgeRef, heights: dict[str, tuple[str, float]]) -> _Rows | None:
    """Return the rows of the wall at an upright edge; None for what is not placed, has no rows, or leans."""
    panel = assembly.panel(ref.panel)
    edge = panel.part.edge(ref.edge) if panel else None
    bottom = panel.part.edge("bottom") if panel else None
    if panel is None or edge is None or bottom is None or edge.centre is not None or panel.part.id not in heights:
        return None
    ends = [panel.frame.point(at, 0.0) for at in (edge.nominal_start, edge.nominal_end)]
    if max(abs(float(ends[1][i] - ends[0][i])) for i in (0, 1)) > OFF_VERTICAL * edge.nominal_length:
        return None
    pattern, height = heights[panel.part.id]
    return _Rows(pattern, height, float(panel.frame.point(bottom.nominal_start, 0.0)[2]))
