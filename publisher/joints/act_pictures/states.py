"""What stands when a step must wait: as far as an assembly is built by then."""

from collections.abc import Iterator, Sequence

from publisher.joints.assembled import Assembled
from publisher.joints.building import movers_of
from publisher.joints.drawings import PANEL_VIEW, STACK_VIEW, Sketch, draw_solids, finish, solids_of
from publisher.joints.model import Addition, Drawing


def draw_states(subject: Assembled, acts: Sequence[Addition]) -> tuple[Drawing, ...]:
    """Return ``state:STEP`` for each step that says how long to wait and after which an assembly stands in part: of one that stands
    whole there is a drawing already."""
    return tuple(_states(subject, acts))


def _states(subject: Assembled, acts: Sequence[Addition]) -> Iterator[Drawing]:
    for number, step in enumerate(subject.design.steps, 1):
        done = [act for act in acts if act.step <= number and not act.trial]
        if not step.wait or not done:
            continue
        last = done[-1]
        stands = {*last.before, *last.added}
        movers = movers_of(subject, last.assembly)
        if all(mover.name in stands for mover in movers):
            continue
        boards = [(p.part, p.frame) for mover in movers if mover.name in stands for p in mover.panels]
        sketch = Sketch()
        view = STACK_VIEW if last.one_on_another else PANEL_VIEW
        draw_solids(solids_of(boards, view, slots=False, surface=False), sketch)
        name = last.assembly.replace("_", " ")
        yield finish(sketch, f"state:{number}", f"what stands of the {name} after this step")
