"""What stands when a step must wait, or was put up dry: as far as an assembly is built by then."""

from collections.abc import Iterator, Sequence

from publisher.joints.assembled import Assembled
from publisher.joints.building import movers_of
from publisher.joints.drawings import PANEL_VIEW, STACK_VIEW, Sketch, draw_solids, finish, solids_of
from publisher.joints.model import Addition, Drawing


def draw_states(subject: Assembled, acts: Sequence[Addition]) -> tuple[Drawing, ...]:
    """Return ``state:STEP`` for each step that says how long to wait and after which an assembly stands in part: of one that stands
    whole there is a drawing already; and ``trial:STEP`` for each that puts something up dry."""
    return (*_states(subject, acts), *_trials(subject, acts))


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


def _drawn(subject: Assembled, last: Addition, name: str, alt: str) -> Drawing:
    """Return the drawing of what stands of an assembly after an act, under a name."""
    stands = {*last.before, *last.added}
    boards = [(p.part, p.frame) for m in movers_of(subject, last.assembly) if m.name in stands for p in m.panels]
    sketch = Sketch()
    view = STACK_VIEW if last.one_on_another else PANEL_VIEW
    draw_solids(solids_of(boards, view, slots=False, surface=False), sketch)
    return finish(sketch, name, alt.format(last.assembly.replace("_", " ")))
