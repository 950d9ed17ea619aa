"""What stands when a step must wait, or was put up dry: as far as an assembly is built by then."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from publisher.geometry import polygon
from publisher.joints.assembled import Assembled
from publisher.joints.building import movers_of
from publisher.joints.drawings import PANEL_VIEW, STACK_VIEW, Sketch, draw_solids, finish, solids_of
from publisher.joints.model import Addition, Drawing
from publisher.joints.panels import Panel

SEEN_OFF = 0.7
"""Of the way to where nothing of it stands beside what it came off: it is seen to come off, and stays large."""

AIR_UNDER = 8.0  # mm of air, beside


def draw_states(subject: Assembled, acts: Sequence[Addition]) -> tuple[Drawing, ...]:
    """Return ``state:STEP`` for each step that says how long to wait and after which an assembly stands in part: of one that stands
    whole there is a drawing already; ``trial:STEP`` for each that puts something up dry; and ``off:STEP`` for each that coats what has
    something on it that is not glued to it: that is held off, as it would be stuck, and bare below."""
    return (*_states(subject, acts), *_trials(subject, acts), *_off(subject, acts))


def _trials(subject: Assembled, acts: Sequence[Addition]) -> Iterator[Drawing]:
    for number in dict.fromkeys(act.step for act in acts if act.trial):
        last = [act for act in acts if act.trial and act.step == number][-1]
        yield _drawn(subject, last, f"trial:{number}", "what stands dry of the {} in this step")


def _states(subject: Assembled, acts: Sequence[Addition]) -> Iterator[Drawing]:
    for number, step in enumerate(subject.design.steps, 1):
        done = [act for act in acts if act.step <= number and not act.trial]
        if not step.wait or not done:
            continue
        last = done[-1]
        stands = {*last.before, *last.added}
        if all(mover.name in stands for mover in movers_of(subject, last.assembly)):
            continue
        yield _drawn(subject, last, f"state:{number}", "what stands of the {} after this step")


def _off(subject: Assembled, acts: Sequence[Addition]) -> Iterator[Drawing]:
    for number, step in enumerate(subject.design.steps, 1):
        done = [act for act in acts if act.step <= number and not act.trial]
        if not done or not {"seal", "paint"} & {*(step.acts or ()), step.stage}:
            continue
        last = done[-1]
        loose = loose_in(subject, last.assembly)
        if loose & {*last.before, *last.added}:
            yield _drawn(subject, last, f"off:{number}", "the {} with what lifts off it held off", loose)


def loose_in(subject: Assembled, assembly: str) -> frozenset[str]:
    """Return the movers of an assembly that lift off what they rest on."""
    panels = (m.assembly.plan.rests for m in subject.panels if m.assembly.plan.name == assembly)
    things = (whole.plan.things for whole in subject.things if whole.plan.name == assembly)
    return frozenset(
        (
            *(rest.panel for rests in panels for rest in rests if rest.loose),
            *(thing.name for own in things for thing in own if thing.lifts_off),
        )
    )


def _drawn(subject: Assembled, last: Addition, name: str, alt: str, off: frozenset[str] = frozenset()) -> Drawing:
    """Return the drawing of what stands of an assembly after an act, under a name; what is ``off`` is held off, straight above."""
    stands = {*last.before, *last.added}
    bodies = [(m.name in off, p) for m in movers_of(subject, last.assembly) if m.name in stands for p in m.panels]
    rise = np.array((0.0, 0.0, _clear(bodies) if off else 0.0))
    boards = [(p.part, replace(p.frame, origin=p.frame.origin + rise) if held else p.frame) for held, p in bodies]
    sketch = Sketch()
    view = STACK_VIEW if last.one_on_another else PANEL_VIEW
    draw_solids(solids_of(boards, view, slots=False, surface=False), sketch)
    return finish(sketch, name, alt.format(last.assembly.replace("_", " ")))


def _clear(bodies: Sequence[tuple[bool, Panel]]) -> float:
    """Return how far to lift what is held off, so that it is clear of what stays: over all that it reaches down beside."""
    high = max((_heights(panel)[1] for held, panel in bodies if not held), default=0.0)
    low = min((_heights(panel)[0] for held, panel in bodies if held), default=0.0)
    return max(0.0, high - low) * SEEN_OFF + AIR_UNDER


def _heights(panel: Panel) -> tuple[float, float]:
    """Return from where to where a board stands, in mm above the table."""
    left, low, right, high = polygon(panel.part.outline).bounds
    corners = [
        panel.frame.point(at, deep)
        for at in ((left, low), (right, low), (left, high), (right, high))
        for deep in (0.0, panel.part.thickness)
    ]
    levels = [float(corner[2]) for corner in corners]
    return min(levels), max(levels)
