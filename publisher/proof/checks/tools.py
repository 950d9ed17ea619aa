"""Where tools stand in the sketches of acts: at the work, as what cuts beside its line or draws off its part shows something else."""

import shapely

from publisher.basics import Carried, Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case, carried_lines

AT_WORK = {"cut_outlines": ("knife", 0.6), "cut_openings": ("knife", 0.6), "trace": ("pencil", 2.2)}
"""Tools of acts that follow an outline, and how far (mm on the page) their tips may be from it: a pencil runs beside a card."""


@judged(
    "proof/tool",
    "Tools stand where they work",
    "a buyer leads the knife where the sketch shows it: its tip stands on the outline of a part or of an opening of it, and a pencil's "
    "beside it",
    may_be_empty=True,
)
def tools_at_work(case: Case, check: Check[Case]) -> Findings:
    """Look at the tip of each tool of an act that follows an outline."""
    acts = {promise.key.rpartition(":")[0]: promise.act for promise in case.promises.done}
    for key, act in acts.items():
        tool, near = AT_WORK.get(act, ("", 0.0))
        for where in case.carried(f"{key}:scene:{tool}") if tool else ():
            tip = shapely.Point(where.pose.x, where.pose.y)
            away = min((shapely.distance(line, tip) for line in _outlines(case, key, where)), default=near)
            if away > near:
                what = f"{page_name(where.page)}: the {tool} in the sketch of “{act.replace('_', ' ')}” (step {key.split(':')[1]})"
                yield about(
                    check, what, f"stands {away:.1f} mm off all outlines", "draw the tool at the part that it works on"
                )
    return len(acts)


def _outlines(case: Case, key: str, where: Carried) -> list[shapely.LinearRing]:
    """Return the outlines of the parts of an act that stand in one sketch with a tool."""
    return [
        shapely.LinearRing(ring)
        for promise in case.promises.done
        if promise.key.startswith(f"{key}:")
        for other in case.carried(promise.key)
        if (other.page, other.box) == (where.page, where.box)
        for ring in carried_lines(other, promise.rings)
    ]
