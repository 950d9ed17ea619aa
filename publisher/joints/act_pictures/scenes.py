"""The scenes of the acts of a building: what of what stands is shown, how it lies on the bench, what is named. Mm."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby, pairwise
from math import hypot, pi

import numpy as np
import shapely

from publisher.basics.wording import series
from publisher.design import Join
from publisher.geometry import polygon
from publisher.joints.act_pictures.fold_scenes import fold_scenes
from publisher.joints.act_pictures.scene import ActLabel, ActScene, CurvedArrow, MatchLetter, Solid, contacts
from publisher.joints.acts_of_steps import BOTTLE
from publisher.joints.assembled import Assembled
from publisher.joints.building import Mover, is_brace, movers_of
from publisher.joints.mirrors import alike_parts
from publisher.joints.model import Addition
from publisher.joints.outlines import Array
from publisher.joints.panels import PanelFrame, foot_of, stands, weight_of

LAYERS_BELOW = 2
"""Layers of a stack that are shown under a new one."""

MOST_PILED = 3
"""Different layers that are shown one over another in one picture."""

PILE_APART = 0.16
"""How far such layers are lifted off each other, as a share of the longest side of the lowest."""

MOSTLY_LEVEL = 0.5
"""A way in whose rise is less than this share is level: the work is laid down, so that it becomes the way down."""

LEAST_TURN = 0.5
"""Degrees: a layer that is turned less is not turned."""

LEAST_OUT = 1.0
"""mm from the axis of a turned layer to its middle: one that is nearer is turned about its middle."""

OFF_CIRCLE = 0.005
"""By which the form of a disc differs from a circle's, as its outline is drawn."""

SPIN_OUT = 1.1
"""How far out the arrow of a turned layer lies, as a share of the way from its axis to its farthest point."""

PAPER_BETWEEN, LIFTS_OFF = "paper between", "lifts off"
"""What is said at a thing that is not glued to what it rests on: where glue in it is wet, paper keeps it off."""


DOWN = np.array([0.0, 0.0, -1.0])


def scenes_of(subject: Assembled, acts: Sequence[Addition]) -> tuple[ActScene, ...]:
    """Return the scenes of acts, in their order. What only lies or stands there first belongs to the act that puts something to it."""
    bodies = {name: {body.name: body for body in movers_of(subject, name)} for name in {act.assembly for act in acts}}
    braces = {body.part for own in bodies.values() for body in own.values() if is_brace(body.name)}
    alike = alike_parts(subject.design, subject.parts) | braces  # of a brace either face may be the left one
    made: list[ActScene] = []
    for step, own in groupby(_told_once(acts), lambda act: act.step):
        scenes = list(_of_step(subject, list(own), bodies))
        made += (replace(scene, key=f"act:{step}:{number}", alike=alike) for number, scene in enumerate(scenes, 1))
    return tuple(made)


def _told_once(acts: Iterable[Addition]) -> Iterator[Addition]:
    """Yield the acts but for those that are done again, with glue, just as they were done dry."""
    tried: set[tuple[object, ...]] = set()
    for act in acts:
        how = (act.assembly, act.before, act.added, act.ways)
        if act.trial:
            tried.add(how)
        elif how in tried:
            continue
        yield act


def _of_step(subject: Assembled, acts: list[Addition], bodies: dict[str, dict[str, Mover]]) -> Iterator[ActScene]:
    """Yield the scenes of one step."""
    for assembly, run in groupby(acts, lambda act: act.assembly):
        own = bodies[assembly]
        laid: list[str] = []
        for group in _together(list(run)):
            first = group[0]
            scene = _scene(subject, group, own, tuple(laid))
            if first.how == "laid" or (not first.together and not len(scene.goal)):
                laid += [name for act in group for name in act.added]
                continue
            yield from fold_scenes(subject, first, own)
            yield _on_the_bench(scene) if not first.one_on_another else scene
            laid = []
        if laid:  # nothing was put to it: it is shown as it lies
            yield _lying(assembly, own, tuple(laid))


def _together(acts: list[Addition]) -> Iterator[tuple[Addition, ...]]:
    """Yield acts that are shown in one picture: different layers one upon another, as many as are still seen. One that is turned against
    the same part below it is shown alone, with its angle, which no mark on the parts says."""
    waiting: list[Addition] = []
    last = ""
    for act in acts:
        piles = act.one_on_another and act.how == "put" and not is_brace(act.added[0])
        spun = piles and bool(last) and act.part == last and abs(act.turn) >= LEAST_TURN
        room = piles and not spun and len(waiting) < MOST_PILED
        if waiting and not (room and len(act.added) == 1 == len(waiting[-1].added)):
            yield tuple(waiting)
            waiting = []
        waiting.append(act)
        last = act.part
        if not piles or spun:
            yield tuple(waiting)
            waiting = []
    if waiting:
        yield tuple(waiting)


def _scene(subject: Assembled, acts: tuple[Addition, ...], bodies: dict[str, Mover], laid: tuple[str, ...]) -> ActScene:
    act = acts[0]
    under = is_brace(act.added[0])  # all that stands is shown: nothing else tells which step they go under
    piled = act.one_on_another and not under
    there = act.before[-LAYERS_BELOW:] if piled else (*act.before, *act.added[:-1]) if under else act.before
    shown = tuple(one.added[0] for one in acts) if piled else act.added[-1:] if under else act.added
    before = tuple(solid for name in there for solid in _solids(bodies[name]))
    added = tuple(solid for name in shown for solid in _solids(bodies[name]))
    if piled:
        added = _apart(added)
    labels = [*_labels(bodies, (name for name in laid if name in there), new=False)]
    counted = [name for one in acts for name in one.added] if not under else [*reversed(act.added)]
    labels += _labels(bodies, counted, new=True)
    said = series(label.text for label in labels if label.new) or _words(act.added)
    loose = _loose(subject, act)
    alt = f"{said} put onto what stands of the {_words((act.assembly,))}{', not glued to it' if loose else ''}"
    way = _way(act, bodies)
    goal = contacts(tuple(solid for solid in added if solid.name == shown[0]) if piled else added, before)
    bent = next((bodies[name] for name in act.added if act.how == "bent" and bodies[name].bent), None)
    return ActScene(
        "",
        act.assembly,
        before,
        added,
        way,
        tuple(labels),
        alt,
        _letters(subject, act, bodies),
        moves=act.way is not None,
        goal=goal,
        pile=piled,
        under=under,
        strip=_strip(subject, bent) if bent is not None and not _rolled(subject, act) else None,
        sweep=_spin(subject, acts, bodies),
        times=act.times,
        tops=_tops(subject, bodies, (*(name for name in laid if name in there), *shown)),
        note="" if not loose else PAPER_BETWEEN if _wet(subject, act) else LIFTS_OFF,
    )


def _way(act: Addition, bodies: dict[str, Mover]) -> Array:
    """Return the way of what is shown of an act: of braces, each of which has its own, that of the last."""
    way = np.array(act.way if act.way is not None else DOWN)
    if act.way is None or not is_brace(act.added[0]):
        return way
    first, last = (bodies[name].panels[0].frame.axes for name in (act.added[0], act.added[-1]))
    return np.asarray(last @ first.T @ way)


def _tops(subject: Assembled, bodies: dict[str, Mover], names: Iterable[str]) -> tuple[str, ...]:
    """Return which of some bodies say on their templates which end is up: those whose parts stand wherever they are used."""
    boards = [panel for mated in subject.panels for panel in mated.assembly.panels]
    lying = {panel.part.id for panel in boards if not stands(panel.frame.axes[2, 1])}
    upright = {panel.part.id for panel in boards} - lying
    flat = (name for name in names if bodies[name].part and not bodies[name].bent and len(bodies[name].panels) == 1)
    return tuple(name for name in flat if bodies[name].panels[0].part.id in upright)


def _loose(subject: Assembled, act: Addition) -> bool:
    """Tell whether all that is added lifts off what it rests on."""
    plan = next((m.assembly.plan for m in subject.panels if m.assembly.plan.name == act.assembly), None)
    loose = {rest.panel for rest in plan.rests if rest.loose} if plan is not None else set()
    return bool(act.before) and {*act.added} <= loose


def _wet(subject: Assembled, act: Addition) -> bool:
    """Tell whether what is added was glued in this step and dries in its place."""
    return act.together and bool(subject.design.steps[act.step - 1].wait)


def _spin(subject: Assembled, acts: tuple[Addition, ...], bodies: dict[str, Mover]) -> CurvedArrow | None:
    """Return how a layer is turned against the one below, of the same part; crossed out where it is not, in a stack of which others
    are. None where nothing is turned."""
    act = acts[0]
    report = next((one for one in subject.wholes if one.stack.name == act.assembly), None)
    if len(acts) > 1 or not act.one_on_another or is_brace(act.added[0]) or not act.before or report is None:
        return None
    below, new = bodies[act.before[-1]], bodies[act.added[0]]
    turned = [abs((up.pose.turn - low.pose.turn + 180.0) % 360.0 - 180.0) for low, up in pairwise(report.stack.layers)]
    if below.part != new.part or max(turned, default=0.0) < LEAST_TURN:
        return None
    part, frame = new.panels[0].part, new.panels[0].frame
    spread = act.turn if abs(act.turn) >= LEAST_TURN else float(max(turned))
    out = max(part.outline.outer.points, key=lambda point: hypot(*point))
    far = hypot(*out)
    middle = np.append(shapely.get_coordinates(shapely.centroid(polygon(part.outline)))[0], 0.0)
    if (
        hypot(middle[0], middle[1]) < LEAST_OUT
    ):  # turned about its middle: the arrow lies over a corner, of what has any
        if _round(polygon(part.outline)):
            return None
        middle = np.array((*out, 0.0))
    reach = SPIN_OUT * far / hypot(middle[0], middle[1]) * middle
    angles = np.radians(np.linspace(-spread, 0.0, 16))
    local = [
        (reach[0] * np.cos(a) - reach[1] * np.sin(a), reach[0] * np.sin(a) + reach[1] * np.cos(a), 0.0) for a in angles
    ]
    still = abs(act.turn) < LEAST_TURN
    return CurvedArrow(frame.carry(np.array(local)), f"{abs(act.turn):.4g}°", wrong=still, held=True)


def _round(outline: shapely.Polygon) -> bool:
    """Say whether an outline is that of a disc, which lies alike however it is turned."""
    return (
        abs(4.0 * pi * float(shapely.Polygon(outline.exterior).area) / float(outline.exterior.length) ** 2 - 1.0)
        < OFF_CIRCLE
    )


def _apart(layers: tuple[Solid, ...]) -> tuple[Solid, ...]:
    """Return layers lifted off each other, so that the face of each is seen over the next."""
    if len(layers) < 2:
        return layers
    left, low, right, high = shapely.bounds(polygon(layers[0].part.outline))
    gap = PILE_APART * float(max(right - left, high - low))
    return tuple(
        Solid(one.name, one.part, PanelFrame(one.frame.axes, one.frame.origin + np.array([0.0, 0.0, at * gap])))
        for at, one in enumerate(layers)
    )


def _lying(assembly: str, bodies: dict[str, Mover], names: tuple[str, ...]) -> ActScene:
    added = tuple(solid for name in names for solid in _solids(bodies[name]))
    alt = f"{_words(names)} of the {_words((assembly,))} lies there"
    return ActScene(
        "", assembly, (), added, DOWN, tuple(_labels(bodies, names, new=True)), alt, moves=False, goal=np.zeros((0, 3))
    )


def _solids(body: Mover) -> Iterator[Solid]:
    return (Solid(body.name, panel.part, panel.frame) for panel in body.panels)


def _labels(bodies: dict[str, Mover], names: Iterable[str], *, new: bool) -> Iterator[ActLabel]:
    """Yield how many of each part there are among bodies, at the first of them; things made of several parts have no letter."""
    counts: dict[str, list[str]] = {}
    for name in names:
        if bodies[name].part:
            counts.setdefault(bodies[name].panels[0].part.letter, []).append(name)
    for letter, own in counts.items():
        yield ActLabel(f"{len(own)} × {letter}", own[0], new)


def _words(names: Iterable[str]) -> str:
    return series(name.replace("_", " ") for name in names)


def _letters(subject: Assembled, act: Addition, bodies: dict[str, Mover]) -> tuple[MatchLetter, ...]:
    """Return the match letters of the joins that an act closes, each once."""
    plan = next((m.assembly.plan for m in subject.panels if m.assembly.plan.name == act.assembly), None)
    found: dict[str, MatchLetter] = {}
    for join in plan.joins if plan is not None else ():
        sides = {join.a.panel: join.a.edge, join.b.panel: join.b.edge}
        new = [name for name in sides if name in act.added]
        there = [name for name in sides if name in act.before]
        if join.match and len(new) == 1 == len(there) and join.match not in found:
            alike = alike_parts(subject.design, subject.parts)
            ends = [_middle(bodies[name], sides[name], join, alike) for name in (there[0], new[0])]
            if ends[0] is not None and ends[1] is not None:
                (at, looks), (goes, its) = ends[0], ends[1]
                found[join.match] = MatchLetter(join.match, at, goes, looks, its)
    return tuple(found.values())


def _middle(body: Mover, edge: str, join: Join, alike: frozenset[str]) -> tuple[Array, Array] | None:
    """Return the middle of an edge on the face of a body that carries its letter, and which way that looks; of one beside which the
    joint lies, as far into the board: what is glued there, its lines and their letter, stands on the inside."""
    panel = body.panels[0]
    found = panel.part.edge(edge)
    if found is None or found.nominal_length < 1e-9:
        return None
    start, end = np.asarray(found.nominal_start), np.asarray(found.nominal_end)
    way = (end - start) / found.nominal_length
    own = join.a.panel == body.name or (join.b.panel == body.name and join.tabs_on != body.name)
    inset = join.inset if own and join.tabs_on != body.name else 0.0
    at = (start + end) / 2 + inset * np.array([-way[1], way[0]])
    behind = inset > 0.0 and join.joint == "butt"
    deep = panel.part.thickness if behind else 0.0
    looks = (-1.0 if behind else 1.0) * panel.frame.outward
    either = panel.part.id in alike and not behind
    return panel.frame.carry(np.array([[at[0], at[1], -deep]]))[0], np.zeros(3) if either else looks


def _rolled(subject: Assembled, act: Addition) -> bool:
    """Tell whether a step up to this one shows how what is added was rolled: a strip that is still flat, its slits up, would unsay it."""
    steps = (step for step in subject.design.steps[: act.step] if not step.parts or act.part in step.parts)
    return any("roll" in step.acts if step.acts is not None else BOTTLE in step.uses for step in steps)


def _strip(subject: Assembled, body: Mover) -> Solid | None:
    """Return a bent part as the flat strip that it is before."""
    part = next((part for part in subject.parts if part.id == body.part), None)
    return None if part is None else Solid(body.name, part, PanelFrame(np.eye(3), np.zeros(3)))


def _on_the_bench(scene: ActScene) -> ActScene:
    """Return the scene as it lies on the bench: where the way in is level and what stands also lies on that side, turned so that
    the way leads down."""
    way = scene.way
    if not scene.moves or abs(way[2]) > MOSTLY_LEVEL or not scene.before:
        return scene
    axis = np.cross(way, DOWN)
    axis = axis / np.linalg.norm(axis)
    turn = _turn_about(axis, float(np.arccos(np.clip(way @ DOWN, -1.0, 1.0))))
    turned = scene.turned(turn)
    return turned if _lies(turned.before) else scene


def _lies(solids: tuple[Solid, ...]) -> bool:
    """Tell whether solids stay as they lie: what they weigh falls within what touches the table."""
    boards = [(solid.part, solid.frame) for solid in solids]
    foot = foot_of(boards)
    weight = weight_of(boards, lambda part: float(polygon(part.outline).area) * part.thickness)
    return bool(foot.area > 1.0 and shapely.contains_xy(foot, *weight))


def _turn_about(axis: Array, angle: float) -> Array:
    """Return the turn (3, 3) about a unit vector (Rodrigues)."""
    x, y, z = axis
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    return np.asarray(np.eye(3) + np.sin(angle) * cross + (1.0 - np.cos(angle)) * cross @ cross)
