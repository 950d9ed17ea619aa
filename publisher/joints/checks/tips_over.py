"""Stacks and panels that tip over when figures stand on them."""

from functools import partial
from math import ceil, isfinite

from publisher.basics import Check, Finding, Findings, Place, checked, record
from publisher.basics.wording import say_length, say_mm
from publisher.design import Figure
from publisher.joints.assembled import Assembled
from publisher.joints.footing import mass_of, narrowest
from publisher.joints.panels import PanelBalance, balance_of
from publisher.joints.stacks import StackReport
from publisher.joints.wholes import PlacedThing, PlacedWhole

WASHERS = 5.0
"""g: ballast is said in steps of this, rounded up."""


@record
class Standing:
    """What of a stack stands worst: its name, in words and for the subject of a finding."""

    what: str
    subject: str


@checked(
    "joints/tips-over",
    "What is built stands with figures on it",
    "a light piece balances empty and tips with the first figure at its edge (the masses of figures are "
    "assumptions by the width of their bases)",
    may_be_empty=True,
)
def tips_over(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Look at the balance of every assembly with one figure at the edge of the worst tread, of a pile of layers with two as well; so of
    things on things, together, and each that lifts off alone.

    A section that is glued to the one below stands or falls with it; what falls without figures has a finding of its own, and what
    only ever stands on other things is judged there.
    """
    carried = subject.only_carried
    for report in subject.wholes:
        if report.balance.worst == 0 and report.stack.name in carried:
            continue
        if report.stack.loose and report.balance.empty >= 0 > report.balance.with_figures:
            yield _stack_tips(subject, check, report)
    looked_at = len(subject.wholes)
    for mated in subject.panels:
        balance, plan = mated.balance, mated.assembly.plan
        looked_at += balance is not None and balance.with_figure is not None
        if balance is not None and _tips(balance) and plan.name not in carried:
            yield _panels_tip(subject, check, plan.name, plan.place, balance)
    for whole in subject.things:
        looked_at += yield from _of_things(subject, check, whole)
    return looked_at


def _of_things(subject: Assembled, check: Check[Assembled], whole: PlacedWhole) -> Findings:
    """Look at things on things together, and at each that lifts off alone, with what stands on it."""
    boards = {board.id: board for board in subject.design.boards}
    balance = partial(balance_of, mass=lambda part: mass_of(part, boards), figure=subject.design.figure)
    together = balance(whole.panels)
    looked_at = int(together.with_figure is not None)
    if _tips(together):
        yield _panels_tip(subject, check, whole.plan.name, whole.plan.place, together)
    for one in whole.things:
        if not one.thing.lifts_off or narrowest(one.foot) == 0.0:
            continue
        alone = balance(tuple(panel for other in whole.bears(one.thing.name) for panel in other.panels), foot=one.foot)
        looked_at += alone.with_figure is not None
        if _tips(alone):
            yield _loose_tips(subject, check, whole.plan.name, one, alone)
    return looked_at


def _tips(balance: PanelBalance) -> bool:
    """Tell whether something stands empty, and not with a figure; what falls empty has a finding of its own."""
    return balance.with_figure is not None and balance.empty >= 0 > balance.with_figure


def _stack_tips(subject: Assembled, check: Check[Assembled], report: StackReport) -> Finding:
    said, margin = standing(report), report.balance.with_figures
    return check.found(
        f"{said.what} tips over with {_figures(report.balance.figures, subject.design.figure)}: its weight "
        f"falls {say_length(-margin)} outside what it stands on",
        subject=said.subject,
        hint=cure(subject, report),
        place=report.place,
        value=margin,
        limit=0.0,
    )


def _loose_tips(
    subject: Assembled, check: Check[Assembled], whole: str, one: PlacedThing, balance: PanelBalance
) -> Finding:
    name, carries, margin = one.thing.name, " and ".join(one.thing.on), balance.margin
    return check.found(
        f"{name} of {whole}, loose on {carries}, tips over with {_figures(balance.figures, subject.design.figure, balance.worst)}: "
        f"its weight falls {say_length(-margin)} outside what it touches",
        subject=whole,
        hint=f"let it be glued (leave out lifts_off), or let {carries} reach {say_length(ceil(-margin))} farther on that "
        f"side{_assumed(subject)}",
        place=one.thing.place,
        value=margin,
        limit=0.0,
    )


def _panels_tip(subject: Assembled, check: Check[Assembled], name: str, place: Place, balance: PanelBalance) -> Finding:
    margin = balance.margin
    return check.found(
        f"{name} tips over with {_figures(balance.figures, subject.design.figure, balance.worst)}: its weight falls "
        f"{say_length(-margin)} outside what it stands on",
        subject=name,
        hint=cure_of_panels(subject, balance),
        place=place,
        value=margin,
        limit=0.0,
    )


def _figures(count: int, figure: Figure, worst: str = "") -> str:
    """Say which figures tip something, the worst of them at the edge of ``worst``."""
    if count == 1:
        return f"a figure of {weight(figure)} at the edge of {worst or 'its worst tread'}"
    at = f", one of them at the edge of {worst}" if worst else ""
    return f"{count} figures of {weight(figure)} where they tip it most{at}"


def weight(figure: Figure) -> str:
    """Return a figure's mass in words: ``80 g`` where it is said, ``80 g (assumed, by its base of 40.0 mm)`` where it is not."""
    return f"{figure.mass:g} g" + (f" (assumed, by its base of {say_mm(figure.base)})" if figure.assumed else "")


def standing(report: StackReport) -> Standing:
    """Return what stands worst: the whole stack, or a section that lies loose on it."""
    at = report.balance.worst
    layer = report.stack.layers[at]
    if at == 0:
        return Standing(report.stack.name, report.stack.name)
    return Standing(f"section {layer.section}, loose on layer {layer.number - 1},", layer.section)


def cure(subject: Assembled, report: StackReport) -> str:
    """Say what makes a stack stand, and which weights were assumed for boards that nobody has weighed."""
    if report.balance.worst > 0:
        return f"glue it to the section below, or let it begin with a layer that carries more of it{_assumed(subject)}"
    radius = say_length(ceil(report.balance.plinth_radius - 1e-6))
    return (
        f"give it a round plinth of radius {radius} or more about its axis, glue it to a base board, "
        f"or glue {_washers(report.balance.ballast)} under the middle of its foot{_assumed(subject)}"
    )


def cure_of_panels(subject: Assembled, balance: PanelBalance) -> str:
    """Say what makes an assembly of panels stand."""
    if not isfinite(balance.margin):
        return f"let it stand on more of its edges, make its foot wider, or glue it to a base{_assumed(subject)}"
    wider = say_length(ceil(-balance.margin))
    return (
        f"let its foot reach {wider} farther on that side, glue it to a base plate that does, or glue "
        f"{_washers(balance.ballast)} on the middle of its foot{_assumed(subject)}"
    )


def _washers(grams: float) -> str:
    return f"{ceil(grams / WASHERS - 1e-9) * WASHERS:.0f} g of washers" if isfinite(grams) else "a weight"


def _assumed(subject: Assembled) -> str:
    weighed = all(board.areal_mass is not None for board in subject.design.boards)
    return "" if weighed else " (weights of board assumed: bare foam 30 kg/m³, paper 75 g/m² a face)"
