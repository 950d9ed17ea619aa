"""Stacks that fall over."""

from math import ceil

from publisher.basics import Check, Outcome, Severity
from publisher.design import say_length
from publisher.joints.stacks.balance import FIGURE_MASS
from publisher.joints.subject import Assembled


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look at the balance of every assembly of layers, empty and with two figures on the two worst treads.

    A section that is glued to the one below stands or falls with it.
    """
    found = []
    for report in subject.stacks:
        if not report.stack.loose:
            continue
        balance = report.balance
        margin = balance.empty if balance.empty < 0 else balance.with_figures
        if margin >= 0:
            continue
        when = "on its own" if balance.empty < 0 else f"with two figures of {FIGURE_MASS:.0f} g on its two worst treads"
        radius = ceil(balance.plinth_radius - 1e-6)
        found.append(
            check.found(
                f"{report.stack.name} tips over {when}: its weight falls {say_length(-margin)} outside what it stands on",
                subject=report.stack.name,
                hint=f"give it a round plinth of radius {say_length(radius)} or more about its axis, or glue it to a base board "
                "(weights assumed: bare foam 30 kg/m³, paper 75 g/m² a face)",
                place=report.place,
                value=margin,
                limit=0.0,
            )
        )
    return Outcome(len(subject.stacks), tuple(found))


CHECK = Check(
    "joints/tips-over",
    "Stacks stand, also with figures on them",
    "a light stair balances empty and tips with the first figure on an outer step (trade notes, section 2)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
