"""All pictures of a building: each act from a view that shows it, one view kept as long as it does."""

from collections.abc import Sequence
from math import atan2, degrees, hypot

import numpy as np

from publisher.joints.act_pictures.picture import act_picture
from publisher.joints.act_pictures.scene import ActScene
from publisher.joints.act_pictures.scenes import scenes_of
from publisher.joints.act_pictures.sight import Sight, look
from publisher.joints.act_pictures.signs import Turning
from publisher.joints.act_pictures.states import draw_states
from publisher.joints.assembled import Assembled
from publisher.joints.drawings import PANEL_VIEW, STACK_VIEW, View, finish
from publisher.joints.model import Addition, Drawing
from publisher.joints.outlines import Array

VIEWS = (
    PANEL_VIEW,
    View(-38.0, 24.0),
    View(38.0, 40.0),
    View(-38.0, 40.0),
    View(142.0, 30.0),
    View(-142.0, 30.0),
    View(38.0, -24.0),
    View(-38.0, -24.0),
)
"""Axonometric views, the likeliest first: from the front right and left, from higher up, from behind, from below."""

OVER_TRACE = -0.5
"""Trace of a turn about a level line: 1 of a quarter, -1 of a half; what is turned by more than 140 degrees lies the other way up."""

OF_LAYERS = (STACK_VIEW, *(View(turned, STACK_VIEW.above) for turned in (-28.0, 118.0, -118.0, 152.0, -152.0)))
"""The same for layers, which lie level."""


BESIDE_BRACE, ABOVE_BRACE = (40.0, -40.0, 65.0, -65.0, 20.0, -20.0, 90.0, -90.0), (14.0, 20.0, 8.0)
"""Degrees to the side of a brace, and above the level, from which it is looked at: its face shows, and no step hides its place."""


def draw_acts(subject: Assembled, acts: Sequence[Addition]) -> tuple[Drawing, ...]:
    """Return the pictures of a building's acts, each called ``act:STEP:NUMBER``, as numbered in its step; in mm of the paper."""
    kept: dict[str, tuple[View, Array]] = {}
    last: dict[str, int] = {}
    made: list[Drawing] = []
    seen_upright = _seen_upright(subject, acts)
    for scene in scenes_of(subject, acts):
        before = kept.get(scene.assembly)
        if before is not None and _between(scene.assembly, last[scene.assembly], _step_of(scene), seen_upright):
            before = (before[0], np.eye(3))
        sight = best_sight(scene, before[0] if before is not None else None)
        turned = _turning(before, (sight.view, scene.turn))
        kept[scene.assembly] = (sight.view, scene.turn)
        last[scene.assembly] = _step_of(scene)
        made.append(finish(act_picture(scene, sight, turned=turned), scene.key, scene.alt))
    return (*made, *draw_states(subject, acts))


def _step_of(scene: ActScene) -> int:
    return int(scene.key.split(":")[1])


def _seen_upright(subject: Assembled, acts: Sequence[Addition]) -> frozenset[tuple[int, str]]:
    """Return after which steps which assembly is shown as it stands: what a step ends with is left to dry, sealed or painted."""
    found: set[tuple[int, str]] = set()
    for number, step in enumerate(subject.design.steps, 1):
        done = [act.assembly for act in acts if act.step <= number and not act.trial]
        if done and (step.wait or {"seal", "paint"} & {*(step.acts or ()), step.stage}):
            found.add((number, done[-1]))
    return frozenset(found)


def _between(assembly: str, first: int, next_one: int, seen: frozenset[tuple[int, str]]) -> bool:
    """Tell whether an assembly was seen as it stands after one step and before another."""
    return any(name == assembly and first <= step < next_one for step, name in seen)


def _turning(before: tuple[View, Array] | None, now: tuple[View, Array]) -> Turning:
    """Return how the work was turned since it was seen before."""
    if before is None:
        return ""
    view, turn = before
    if np.allclose(turn, now[1]):
        return "turn round" if view != now[0] else ""
    tipped = now[1] @ turn.T
    if float(np.trace(tipped)) < OVER_TRACE:
        return "turn over"
    return "stand up" if np.allclose(now[1], np.eye(3)) else "lay down"


def _from_below_steps(scene: ActScene) -> tuple[View, ...]:
    """Return the views from low down, from where a brace comes, and a little to its side."""
    x, y, _ = -scene.way
    towards = degrees(atan2(x, -y)) if hypot(x, y) > 1e-6 else STACK_VIEW.turned
    return tuple(View(round(towards + side, 6), above) for above in ABOVE_BRACE for side in BESIDE_BRACE)


def best_sight(scene: ActScene, kept: View | None) -> Sight:
    """Return the sight of a scene: from the view that is kept, where enough is seen from there, else from the first of all views that
    shows enough, else from the best one."""
    views = _from_below_steps(scene) if scene.under else OF_LAYERS if scene.pile else VIEWS
    best: Sight | None = None
    for view in dict.fromkeys((kept, *views) if kept is not None and not scene.under else views):
        sight = look(scene, view)
        if best is None or sight.score > best.score + 1e-9:
            best = sight
        if sight.good:
            return sight
    assert best is not None
    return best
