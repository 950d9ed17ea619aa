"""Stacks and panels that fall over as soon as they are let go."""

from math import isfinite

from publisher.basics import Check, Findings, checked
from publisher.basics.wording import say_length
from publisher.design import PanelPlan
from publisher.joints.assembled import Assembled
from publisher.joints.checks import tips_over
from publisher.joints.footing import hull_sides
from publisher.joints.wholes import PlacedWhole


@checked(
    "joints/falls-over",
    "What is built stands by itself",
    "a piece whose weight falls outside what it stands on cannot be put down, with or without figures",
    may_be_empty=True,
)
def falls_over(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look whether the weight of every assembly, with nothing on it, falls inside the hull of what it stands on."""
    looked_at = len(subject.wholes)
    carried = subject.only_carried
    for report in subject.wholes:
        if report.balance.worst == 0 and report.stack.name in carried:
            continue
        if report.stack.loose and report.balance.empty < 0:
            said = tips_over.standing(report)
            yield check.found(
                f"{said.what} falls over: its weight falls {say_length(-report.balance.empty)} outside what it stands on",
                subject=said.subject,
                hint=tips_over.cure(subject, report),
                place=report.place,
                value=report.balance.empty,
                limit=0.0,
            )
    for mated in subject.panels:
        if mated.balance is None or mated.assembly.plan.name in carried:
            continue
        looked_at += 1
        plan, margin = mated.assembly.plan, mated.balance.empty
        if margin < 0:
            what = f": its weight falls {say_length(-margin)} outside what it stands on" if isfinite(margin) else ""
            yield check.found(
                f"{plan.name} falls over{what}",
                subject=plan.name,
                hint=_plate(plan) + tips_over.cure_of_panels(subject, mated.balance),
                place=plan.place,
                value=margin if isfinite(margin) else None,
                limit=0.0,
            )
    for whole in subject.things:
        looked_at += yield from _of_things(whole, check)
    return looked_at


def _of_things(whole: PlacedWhole, check: Check[Assembled]) -> Findings:
    """Look at every thing that stands on the table, with all that stands on it alone."""
    standing = [one for one in whole.things if not one.thing.on]
    for one in standing:
        normals, limits = hull_sides(one.foot)
        margin = float((limits - normals @ whole.load(one.thing.name)[1]).min())
        if margin < 0:
            what = f": its weight falls {say_length(-margin)} outside what it stands on" if isfinite(margin) else ""
            yield check.found(
                f"{one.thing.name} of {whole.plan.name} falls over, with what stands on it alone{what}",
                subject=whole.plan.name,
                hint="move what stands on it by at: [across, deep], make its foot wider, or let more things carry that",
                place=one.thing.place,
                value=margin if isfinite(margin) else None,
                limit=0.0,
            )
    return len(standing)


def _plate(plan: PanelPlan) -> str:
    """Say what lays a plate on the table that is said to stand on its rim, though others stand on its face."""
    on_edge, name = plan.stands_on.edge, plan.stands_on.panel
    if on_edge and any(seat.edge and seat.host == name for seat in plan.seats):
        return f"{name} stands upright on its {on_edge}: if it is a plate that lies on the table, say lies_on_table: {name}; else "
    return ""
