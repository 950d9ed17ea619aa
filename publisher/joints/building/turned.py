"""How far in and which way round: a layer on its marks, a post in its opening."""

from collections.abc import Sequence

from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.model import Addition, LaidSo, PutInto
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


def put_into_in_steps(subject: Assembled, additions: Sequence[Addition]) -> tuple[PutInto, ...]:
    """Return, by steps, the posts that go into openings, and those whose outside lies in line with what is drawn beside a round one."""
    found: dict[PutInto, None] = {}
    for made in subject.panels:
        part_at = {panel.name: panel.part.id for panel in made.assembly.panels}
        open_seats = [seat for seat in made.assembly.plan.seats if seat.opening]
        for act in additions:
            if act.assembly == made.assembly.plan.name and not act.trial:
                stands = {*act.before, *act.added}
                own = [
                    seat
                    for seat in open_seats
                    if seat.host in stands and seat.panel in stands and {seat.host, seat.panel} & {*act.added}
                ]
                found |= dict.fromkeys(
                    PutInto(act.step, part_at[seat.panel], part_at[seat.host], bool(outside_lines(made.assembly, seat)))
                    for seat in own
                )
    return tuple(found)
