"""Stacks that fall over."""

from math import ceil

from publisher.basics import Check, Outcome, Severity
from publisher.design import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import FIGURE_MASS, StackReport


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look at the balance of every assembly of layers, empty and with two figures on the two worst treads.

    A section that is glued to the one below stands or falls with it.
    """
    found = []
    for report in subject.wholes:
        if not report.stack.loose:
            continue
        balance = report.balance
        margin = balance.empty if balance.empty < 0 else balance.with_figures
        if margin >= 0:
            continue
        layer = report.stack.layers[balance.worst]
        loose = balance.worst > 0
        what = f"section {layer.section}, loose on layer {layer.number - 1}," if loose else report.stack.name
        when = "on its own" if balance.empty < 0 else f"with two figures of {FIGURE_MASS:.0f} g on its two worst treads"
        found.append(
            check.found(
                f"{what} tips over {when}: its weight falls {say_length(-margin)} outside what it stands on",
                subject=layer.section if loose else report.stack.name,
                hint=_cure(subject, report, loose),
                place=report.place,
                value=margin,
                limit=0.0,
            )
        )
    return Outcome(len(subject.wholes), tuple(found))


def _cure(subject: Assembled, report: StackReport, loose: bool) -> str:
    """Say what makes it stand, and which weights were assumed for boards that nobody has weighed."""
    weighed = all(board.areal_mass is not None for board in subject.design.boards)
    assumed = "" if weighed else " (weights assumed: bare foam 30 kg/m³, paper 75 g/m² a face)"
    if loose:
        return f"glue it to the section below, or let it begin with a layer that carries more of it{assumed}"
    radius = say_length(ceil(report.balance.plinth_radius - 1e-6))
    return f"give it a round plinth of radius {radius} or more about its axis, or glue it to a base board{assumed}"


CHECK = Check(
    "joints/tips-over",
    "Stacks stand, also with figures on them",
    "a light stair balances empty and tips with the first figure on an outer step (trade notes, section 2)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
