"""Line drawings of the whole, of exploded and square views, of layers in plan and of parts: hidden lines removed by geometry."""

from collections.abc import Sequence

from publisher.basics import SizesPromise
from publisher.geometry import Part
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import panel_views, stack_views, thing_views
from publisher.joints.drawings.hidden import FrontFaces, visible
from publisher.joints.drawings.lines import SPECK, Sketch, finish, merge
from publisher.joints.drawings.panel_solids import Solids, solids_of
from publisher.joints.drawings.panel_views import draw_solids
from publisher.joints.drawings.part_views import SIZES_TALL, SIZES_WIDE, part_view, sizes_view
from publisher.joints.drawings.view import ABOVE, FRONT, PANEL_VIEW, STACK_VIEW, View
from publisher.joints.model import Drawing
from publisher.joints.panels import PanelAssembly
from publisher.joints.stacks import Knee, StackReport
from publisher.joints.wholes import PlacedWhole

SHOWN = {"whole": "put together", "exploded": "with its parts drawn apart"}
OF_STACKS = {"whole": stack_views.whole_view, "exploded": stack_views.exploded_view}
SHOWN_OF_THINGS = {"whole": "put together", "exploded": "with its things lifted off each other"}
OF_THINGS = {"whole": thing_views.whole_view, "exploded": thing_views.exploded_view}
SQUARE = {"front": FRONT, "above": ABOVE}
SEEN = {"front": "seen from the front", "above": "seen from above"}
OF_PANELS = {"whole": panel_views.whole_view, "exploded": panel_views.exploded_view}


def draw(subject: Assembled) -> tuple[Drawing, ...]:
    """Return the whole of every assembly, every part, and what else the design's steps ask for; of a design that is one whole
    also its elevation and plan.

    A picture of an assembly that is not there is left out: pages says so.
    """
    parts = {part.id: part for part in subject.parts}
    stacks = {report.stack.name: report for report in subject.stacks}
    panels = {m.assembly.plan.name: m.assembly for m in subject.panels if m.assembly.panels}
    things = {whole.plan.name: whole for whole in subject.things}
    asked = [(s.picture.kind, s.picture.target, s.picture.layer) for s in subject.design.steps if s.picture]
    wishes = dict.fromkeys(
        [
            *(("whole", name, 0) for name in (*stacks, *panels, *things)),
            *((kind, target, layer if kind == "plan" else 0) for kind, target, layer in asked),
            *((kind, name, 0) for name in _alone(subject, (*stacks, *panels, *things)) for kind in SQUARE),
        ]
    )
    pictures = (
        _plan(target, layer, stacks, parts) if kind == "plan" else _view(kind, target, stacks, panels, things, parts)
        for kind, target, layer in wishes
    )
    return (*(picture for picture in pictures if picture is not None), *draw_parts(subject.parts))


def _view(
    kind: str,
    target: str,
    stacks: dict[str, StackReport],
    panels: dict[str, PanelAssembly],
    things: dict[str, PlacedWhole],
    parts: dict[str, Part],
) -> Drawing | None:
    """Return the picture of a whole assembly, or of one with its parts apart; None when there is none of that name."""
    name = f"{kind}:{target}"
    if kind in SQUARE:
        sketch = _flat(target, SQUARE[kind], stacks, panels, things, parts)
        return None if sketch is None else finish(sketch, name, f"{target} {SEEN[kind]}")
    if kind in OF_STACKS and target in stacks:
        report = stacks[target]
        return finish(OF_STACKS[kind](report.stack, parts, _knees(report, parts)), name, f"{target} {SHOWN[kind]}")
    if kind in OF_PANELS and target in panels:
        return finish(OF_PANELS[kind](panels[target]), name, f"{target} {SHOWN[kind]}")
    if kind in OF_THINGS and target in things:
        return finish(OF_THINGS[kind](things[target]), name, f"{target} {SHOWN_OF_THINGS[kind]}")
    return None


def _alone(subject: Assembled, names: Sequence[str]) -> tuple[str, ...]:
    """Return the assembly that a design is, where it is one and all others are things of it; () where there are several."""
    placed = {thing.assembly for plan in subject.design.wholes for thing in plan.things}
    free = tuple(name for name in names if name not in placed)
    return free if len(free) == 1 else ()


def _knees(report: StackReport, parts: dict[str, Part]) -> list[Knee]:
    """Return the braces of a stack that are drawn."""
    brace = report.stack.brace
    return [knee for knee in report.knees if not knee.blocked and brace and brace.part in parts]


def _flat(
    target: str,
    view: View,
    stacks: dict[str, StackReport],
    panels: dict[str, PanelAssembly],
    things: dict[str, PlacedWhole],
    parts: dict[str, Part],
) -> Sketch | None:
    """Return an assembly as seen square to it; None when there is none of that name."""
    if target in stacks:
        return stack_views.flat_view(stacks[target].stack, parts, view)
    if target in panels:
        return panel_views.flat_view(panels[target], view)
    return thing_views.flat_view(things[target], view) if target in things else None


def _plan(target: str, layer: int, stacks: dict[str, StackReport], parts: dict[str, Part]) -> Drawing | None:
    """Return the picture of a layer on the one below; None when there is no such stack or layer."""
    sketch = stack_views.plan_view(stacks[target].stack, parts, layer) if target in stacks else None
    alt = f"layer {layer} of {target} seen from above, on the layer below"
    return None if sketch is None else finish(sketch, f"plan:{target}:{layer}", alt)


def draw_parts(parts: Sequence[Part]) -> tuple[Drawing, ...]:
    """Return a drawing of each part by itself, called ``part:ID``."""
    return tuple(finish(part_view(part), f"part:{part.id}", f"part {part.letter}, {part.name}") for part in parts)


def draw_sizes(part: Part, sizes: SizesPromise) -> Drawing:
    """Return the drawing of a piece that is measured out, called as its sizes are promised."""
    return finish(
        sizes_view(part, sizes), sizes.key, f"part {part.letter}, {part.name}, with the sides that are measured"
    )
