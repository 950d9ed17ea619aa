"""Mitres between boards of unlike thickness."""

from math import cos, radians

from publisher.basics import Check, Findings, Severity, checked
from publisher.basics.wording import lengths_apart, say_length
from publisher.joints.assembled import Assembled

BEVEL_OPEN = 0.5
"""mm of a bevel that lie open: what the eye sees as a step, and a fillet of filler no longer hides (common practice, no source)."""


@checked(
    "joints/mitre-of-two-boards",
    "Boards that are mitred are equally thick",
    f"each bevel is cut for half the corner; where one board is thicker, more than {BEVEL_OPEN:g} mm of its bevel lie open on the inside "
    "and nothing is glued to them",
    Severity.WARNING,
    may_be_empty=True,
)
def mitre_of_two_boards(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at every mitre: both bevels are cut for half the corner, and the thicker board's goes on where the thinner one ends."""
    looked_at = 0
    for mated in subject.panels:
        name, cases = mated.assembly.plan.name, []
        for join in mated.assembly.plan.joins:
            a, b = (mated.assembly.panel(ref.panel) for ref in (join.a, join.b))
            if join.joint != "mitre" or a is None or b is None:
                continue
            looked_at += 1
            thick, thin = sorted((a.part.thickness, b.part.thickness), reverse=True)
            bare = (thick - thin) / cos(radians((180.0 - join.corner) / 2.0))
            if bare > BEVEL_OPEN:
                boards = " and ".join(lengths_apart(thin, thick))
                where = f"{join.a} and {join.b} are mitred, of boards of {boards}"
                thicker = join.a if a.part.thickness > b.part.thickness else join.b
                cases.append((bare, join.place, f"{where}: {say_length(bare)} of the bevel of {thicker} stay open"))
        if cases:  # one slip, such as a side from another board, shows at all of its mitres
            bare, place, what = max(cases, key=lambda case: case[0])
            more = f", and of {len(cases) - 1} more here" if len(cases) > 1 else ""
            yield check.found(
                what + more,
                subject=name,
                hint="cut them from one board, or say joint: butt with runs_through: the panel whose face shows",
                place=place,
                value=bare,
                limit=BEVEL_OPEN,
            )
    return looked_at
