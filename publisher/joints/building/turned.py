"""What looks alike when it is turned: which way round a layer lies, or a post in a round hole stands, as their marks say."""

from collections.abc import Sequence

from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.model import Addition, LaidSo, OutsideAt
from publisher.joints.panels import outside_lines
from publisher.joints.stacks import LAYER_TURN

LAYER = "layer_"


def laid_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[LaidSo, ...]:
    """Return, by steps, the layers that are laid with their letter over that of the layer below."""
    part_at = {part.id: part for part in subject.parts}
    layers_of = {report.stack.name: report.stack.layers for report in subject.wholes}
    found: dict[LaidSo, None] = {}
    for act in additions:
        layers = layers_of.get(act.assembly, ()) if not act.trial else ()
        for name in (name for name in act.added if layers and name.startswith(LAYER)):
            number = int(name.removeprefix(LAYER))  # from 1, from the table up
            if 1 < number <= len(layers):
                on, part = (part_at[layers[n].part] for n in (number - 2, number - 1))
                found |= dict.fromkeys(
                    LaidSo(act.step, part.id, on.id, mark) for mark in sorted(_turns(on) & _turns(part))
                )
    return tuple(found)


def _turns(part: Part) -> set[str]:
    return {mark.text for mark in part.marks if mark.name == LAYER_TURN}


def turned_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[OutsideAt, ...]:
    """Return, by steps, the posts whose outside lies in line with what is drawn beside their round holes."""
    found: dict[OutsideAt, None] = {}
    for made in subject.panels:
        part_at = {panel.name: panel.part.id for panel in made.assembly.panels}
        drawn = [seat for seat in made.assembly.plan.seats if outside_lines(made.assembly, seat)]
        for act in additions:
            if act.assembly == made.assembly.plan.name and not act.trial:
                stands = {*act.before, *act.added}
                own = [
                    seat
                    for seat in drawn
                    if seat.host in stands and seat.panel in stands and {seat.host, seat.panel} & {*act.added}
                ]
                found |= dict.fromkeys(OutsideAt(act.step, part_at[seat.panel], part_at[seat.host]) for seat in own)
    return tuple(found)
