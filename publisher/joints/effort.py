"""What a builder does, counted."""

from collections import Counter
from collections.abc import Iterable

from publisher.basics import Purpose
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints.model import Joined, Labour, StackLayer

BRACE_JOINTS = 2
"""A knee brace is glued to the core and to the step over it."""


def effort_of(design: Design, pieces: Iterable[Part], joined: Joined) -> Labour:
    """Count what is done to build a design of these ``pieces``."""
    parts = tuple(pieces)
    copies = {part.id: part.count + part.spare for part in parts}

    def over_all(counts: Iterable[tuple[str, int]]) -> int:
        return sum(copies[part] * count for part, count in counts)

    return Labour(
        kinds=len(parts),
        pieces=sum(copies.values()),
        openings=over_all((part.id, len(part.outline.holes)) for part in parts),
        bevels=over_all((part.id, sum(1 for edge in part.edges if edge.bevel)) for part in parts),
        bends=over_all((part.id, 1) for part in parts if part.bending is not None),
        slits=over_all((part.id, part.bending.slits) for part in parts if part.bending is not None),
        strokes=over_all((part.id, sum(1 for mark in part.marks if mark.purpose is Purpose.SURFACE)) for part in parts),
        joints=_joints(design, joined) + BRACE_JOINTS * _braces(design, parts),
    )


def _joints(design: Design, joined: Joined) -> int:
    """Return how many times two pieces are glued to each other, of every assembly as often as it is built; things to those that carry
    them; and what a split part is cut in, of every copy but the spare ones."""
    things = [thing for whole in design.wholes for thing in whole.things]
    times = Counter(thing.assembly for thing in things)
    glued = {name: _glued_layers(design, layers) for name, layers in joined.layers} | dict(joined.glued)
    carried = sum(len(thing.on) for thing in things if not thing.lifts_off)
    counts = {plan.id: plan.count for plan in design.parts}
    seams = sum(count * counts.get(part, 0) for part, count in joined.seamed)
    return carried + seams + sum(count * (times[name] or 1) for name, count in glued.items())


def _glued_layers(design: Design, layers: tuple[StackLayer, ...]) -> int:
    """Return how many layers are glued to the one below: of a section that is lifted off, or stands on the table, all but its lowest."""
    glued = {plan.name for plan in design.stacks if plan.on and not plan.loose}
    return len(layers) - len({layer.section for layer in layers} - glued)


def _braces(design: Design, parts: Iterable[Part]) -> int:
    """Return how many knee braces are glued in: each stack has its own part, counted for every time that it is built."""
    braces = {plan.brace.part for plan in design.stacks if plan.brace is not None}
    return sum(part.count for part in parts if part.id in braces)
