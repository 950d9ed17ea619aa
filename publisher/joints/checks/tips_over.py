"""Stacks that tip over when figures stand on them."""

from math import ceil

from publisher.basics import Check, Outcome, Severity, record
from publisher.basics.wording import say_length
from publisher.joints.assembled import Assembled
from publisher.joints.stacks import FIGURE_MASS, StackReport


@record
class Standing:
    """What of a stack stands worst: its name, in words and for the subject of a finding."""

    what: str
    subject: str


def run(subject: Assembled, check: Check[Assembled]) -> Outcome:
    """Look at the balance of every assembly of layers with two figures on the two worst treads.

    A section that is glued to the one below stands or falls with it; what falls without figures has a finding of its own.
    """
    found = []
    for report in subject.wholes:
        margin = report.balance.with_figures
        if not report.stack.loose or report.balance.empty < 0 or margin >= 0:
            continue
        said = standing(report)
        found.append(
            check.found(
                f"{said.what} tips over with two figures of {FIGURE_MASS:.0f} g on its two worst treads: its weight falls "
                f"{say_length(-margin)} outside what it stands on",
                subject=said.subject,
                hint=cure(subject, report),
                place=report.place,
                value=margin,
                limit=0.0,
            )
        )
    return Outcome(len(subject.wholes), tuple(found))


def standing(report: StackReport) -> Standing:
    """Return what stands worst: the whole stack, or a section that lies loose on it."""
    at = report.balance.worst
    layer = report.stack.layers[at]
    if at == 0:
        return Standing(report.stack.name, report.stack.name)
    return Standing(f"section {layer.section}, loose on layer {layer.number - 1},", layer.section)


def cure(subject: Assembled, report: StackReport) -> str:
    """Say what makes it stand, and which weights were assumed for boards that nobody has weighed."""
    weighed = all(board.areal_mass is not None for board in subject.design.boards)
    assumed = "" if weighed else " (weights assumed: bare foam 30 kg/m³, paper 75 g/m² a face)"
    if report.balance.worst > 0:
        return f"glue it to the section below, or let it begin with a layer that carries more of it{assumed}"
    radius = say_length(ceil(report.balance.plinth_radius - 1e-6))
    return f"give it a round plinth of radius {radius} or more about its axis, or glue it to a base board{assumed}"


CHECK = Check(
    "joints/tips-over",
    "Stacks stand with figures on them",
    "a light stair balances empty and tips with the first figure on an outer step (trade notes, section 2)",
    Severity.WARNING,
    run=run,
    may_be_empty=True,
)
