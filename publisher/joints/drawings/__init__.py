"""Line drawings of the whole, of exploded views, of layers in plan and of parts: hidden lines removed by geometry."""

from collections.abc import Sequence

from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import panel_views, stack_views
from publisher.joints.drawings.lines import finish
from publisher.joints.drawings.part_views import part_view
from publisher.joints.model import Drawing


def draw(subject: Assembled) -> tuple[Drawing, ...]:
    """Return the whole of every assembly, every part, and what else the design's steps ask for.

    A picture of an assembly that is not there is left out: pages says so.
    """
    parts = {part.id: part for part in subject.parts}
    stacks = {report.stack.name: report.stack for report in subject.stacks}
    panels = {m.assembly.plan.name: m.assembly for m in subject.panels if m.assembly.panels}
    made: dict[str, Drawing] = {}
    wishes = [("whole", name, 0) for name in (*stacks, *panels)]
    wishes += [(s.picture.kind, s.picture.target, s.picture.layer) for s in subject.design.steps if s.picture]
    for kind, target, layer in wishes:
        name = f"{kind}:{target}:{layer}" if kind == "plan" else f"{kind}:{target}"
        if name in made:
            continue
        if kind == "plan" and target in stacks:
            sketch = stack_views.plan_view(stacks[target], parts, layer)
            if sketch is not None:
                made[name] = finish(sketch, name, f"layer {layer} of {target} seen from above, on the layer below")
        elif kind in ("whole", "exploded"):
            alt = f"{target} put together" if kind == "whole" else f"{target} with its parts drawn apart"
            if target in stacks:
                view = stack_views.whole_view if kind == "whole" else stack_views.exploded_view
                made[name] = finish(view(stacks[target], parts), name, alt)
            elif target in panels:
                look = panel_views.whole_view if kind == "whole" else panel_views.exploded_view
                made[name] = finish(look(panels[target]), name, alt)
    return (*made.values(), *draw_parts(subject.parts))


def draw_parts(parts: Sequence[Part]) -> tuple[Drawing, ...]:
    """Return a drawing of each part by itself, called ``part:ID``."""
    return tuple(finish(part_view(part), f"part:{part.id}", f"part {part.letter}, {part.name}") for part in parts)
