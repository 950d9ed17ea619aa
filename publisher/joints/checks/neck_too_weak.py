"""Narrow places of stacks and posts that break under what stands off them."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from math import ceil

import numpy as np

from publisher.basics import Check, Findings, Place, checked, record
from publisher.basics.wording import figures_apart, say_length, say_size, series
from publisher.joints.assembled import Assembled, MatedPanels
from publisher.joints.bending import BENDING_STRENGTH, strength_of
from publisher.joints.checks.tips_over import weight
from publisher.joints.footing import GRAVITY, mass_of
from publisher.joints.necks import Neck
from publisher.joints.panels import (
    CarriedOver,
    Panel,
    PostNeck,
    bears_figures,
    board_mass,
    boards_of,
    corners_of,
    necks_under,
    weight_of,
)
from publisher.joints.stacks import StackReport, necks_of
from publisher.joints.wholes import PlacedWhole


@record
class _Judged:
    """A neck: of what it is, in words where it is and where the figure stands, where the spec has it, and its board's strength."""

    name: str
    where: str
    edge: str
    place: Place
    strength: float
    neck: Neck

    @property
    def share(self) -> float:
        """How much of its strength it needs."""
        return self.neck.stress / self.strength


@checked(
    "joints/neck-too-weak",
    "What is narrow bears a figure at the edge of what it carries",
    "a slim column or post under a wide top, or layers that hardly lie on each other, break there when a figure stands at the edge "
    "(elementary bending of the level section, which glue is taken to hold as the board does; "
    f"board whose strength nobody states bears {BENDING_STRENGTH:g} MPa, an assumption)",
    may_be_empty=True,
)
def neck_too_weak(subject: Assembled, check: Check[Assembled]) -> Findings:
    """Compare the stress of what glues every layer of a stack to the one below, and of every post that carries a deck alone, under a
    figure at the worst edge over it, with the bending strength of its board; say the worst of each assembly."""
    groups = [
        *([*_of_stack(subject, report)] for report in subject.wholes),
        *([*_of_panels(subject, mated)] for mated in subject.panels),
        *([*_of_things(subject, whole)] for whole in subject.things),
    ]
    for necks in groups:
        worst = max(necks, key=lambda one: one.share, default=None)
        if worst is not None and worst.share > 1.0:
            bends, bears = figures_apart(worst.neck.stress, worst.strength, 3)
            assumed = f" ({BENDING_STRENGTH:g} MPa assumed)" if worst.strength == BENDING_STRENGTH else ""
            yield check.found(
                f"{worst.name} breaks {worst.where}: with a figure of {weight(subject.design.figure)} at the edge of {worst.edge}, "
                f"{say_length(worst.neck.arm)} beside the middle of this neck, it bends at {bends} MPa, and the board bears {bears} "
                f"MPa{assumed}; the neck is {say_size(*worst.neck.size)}",
                subject=worst.name,
                hint=f"make it {say_length(float(ceil(worst.neck.wider(worst.strength))))} or more each way there, let what it carries "
                "reach out less, or let more columns carry that",
                place=worst.place,
                value=worst.neck.stress,
                limit=worst.strength,
            )
    return sum(map(len, groups))


def _of_stack(subject: Assembled, report: StackReport) -> Iterator[_Judged]:
    boards = {board.id: board for board in subject.design.boards}
    parts = {part.id: part for part in subject.parts}
    layers, name = report.stack.layers, report.stack.name
    strengths = [strength_of(boards[parts[layer.part].board]) for layer in layers]
    for one in necks_of(report, parts, boards, subject.design.figure):
        lower, upper = layers[one.layer - 1], layers[one.layer]
        where = f"between layer {lower.number} ({lower.part}) and layer {upper.number} ({upper.part})"
        strength = min(strengths[one.layer - 1 : one.layer + 1])
        yield _Judged(name, where, f"layer {layers[one.tread].number}", report.place, strength, one.neck)


def _of_panels(subject: Assembled, mated: MatedPanels) -> Iterator[_Judged]:
    plan = mated.assembly.plan
    for deck in mated.decks:
        over = _borne(subject, (deck.panel,))
        necks = necks_under(deck.panel, over, mated.assembly.boards, lambda panel: _borne(subject, (panel,)))
        yield from _judged(subject, plan.name, deck.panel.name, plan.place, deck.panel, necks)


def _of_things(subject: Assembled, whole: PlacedWhole) -> Iterator[_Judged]:
    """Look under the undermost board of every thing that others carry, where that lies level."""
    for one in whole.things:
        lowest = min(one.panels, key=lambda panel: float(panel.frame.carry(corners_of(panel.part))[:, 2].min()))
        if not one.thing.on or not bears_figures(lowest, subject.design.figure):
            continue
        carried = whole.bears(one.thing.name)
        over = _borne(subject, tuple(panel for other in carried for panel in other.panels))
        own = {f"{other.thing.name}.{panel.name}" for other in carried for panel in other.panels}
        necks = necks_under(
            lowest,
            replace(over, glued=not one.thing.lifts_off),
            [panel for panel in whole.panels if panel.name not in own],
            lambda panel: _borne(subject, (panel,)),
        )
        yield from _judged(subject, whole.plan.name, one.thing.name, one.thing.place, lowest, necks)


def _borne(subject: Assembled, panels: tuple[Panel, ...]) -> CarriedOver:
    """Return what boards that lie on each other bear on what is under them: figures on those that they can stand on."""
    boards = {board.id: board for board in subject.design.boards}
    figure, mass = subject.design.figure, partial(mass_of, boards=boards)
    treads = [panel for panel in panels if bears_figures(panel, figure)]
    places = np.vstack([np.zeros((0, 2)), *(panel.frame.carry(corners_of(panel.part))[:, :2] for panel in treads)])
    weight = GRAVITY * sum(board_mass(panel.part, mass) for panel in panels)
    return CarriedOver(places, GRAVITY * figure.mass, weight, weight_of(boards_of(panels), mass))


def _judged(
    subject: Assembled, name: str, carried: str, place: Place, deck: Panel, necks: Iterator[PostNeck]
) -> Iterator[_Judged]:
    for one in necks:
        strength = min(strength_of(subject.design.board(panel.part.board)) for panel in (deck, *one.boards))
        yield _Judged(name, f"at {series(one.carriers)}, under {carried}", carried, place, strength, one.neck)
