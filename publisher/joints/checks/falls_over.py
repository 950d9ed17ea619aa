"""Stacks and panels that fall over as soon as they are let go."""

from collections.abc import Iterator

from publisher.basics import Check, Finding, Outcome, Severity
from publisher.basics.wording import say_length
from publisher.design import Board
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.checks import tips_over
from publisher.joints.footprint import mass_of
from publisher.joints.panels import PANEL_TOUCH, foot_of, weight_of
from publisher.joints.stacks import hull_sides


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look whether the weight of every assembly, with nothing on it, falls inside the hull of what it stands on."""
    boards = {board.id: board for board in subject.design.boards}
    found: list[Finding] = []
    looked_at = len(subject.wholes)
    for report in subject.wholes:
        if report.stack.loose and report.balance.empty < 0:
            said = tips_over.standing(report)
            found.append(
                check.found(
                    f"{said.what} falls over: its weight falls {say_length(-report.balance.empty)} outside what it stands on",
                    subject=said.subject,
                    hint=tips_over.cure(subject, report),
                    place=report.place,
                    value=report.balance.empty,
                    limit=0.0,
                )
            )
    for mated in subject.panels:
        fits = all(m.gap <= PANEL_TOUCH and abs(m.length_a - m.length_b) <= PANEL_TOUCH for m in mated.matings)
        if fits and mated.assembly.panels and not mated.assembly.unplaced:  # else a panel is not where it will stand
            looked_at += 1
            found += _panels(mated, boards, check)
    return Outcome(looked_at, tuple(found))


def _panels(mated: MatedPanels, boards: dict[str, Board], check: Check[Assembled]) -> Iterator[Finding]:
    plan = mated.assembly.plan
    at = weight_of(mated.assembly, lambda part: mass_of(part, boards))
    normals, limits = hull_sides(foot_of(mated.assembly))
    margin = float((limits - normals @ at).min())
    if margin < 0:
        what = "" if margin == float("-inf") else f": its weight falls {say_length(-margin)} outside what it stands on"
        yield check.found(
            f"{plan.name} falls over{what}",
            subject=plan.name,
            hint="let it stand on more of its edges, make its foot wider, or glue it to a base",
            place=plan.place,
            value=None if margin == float("-inf") else margin,
            limit=0.0,
        )


CHECK = Check(
    "joints/falls-over",
    "What is built stands by itself",
    "a piece whose weight falls outside what it stands on cannot be put down, with or without figures",
    Severity.ERROR,
    run=run,
    may_be_empty=True,
)
