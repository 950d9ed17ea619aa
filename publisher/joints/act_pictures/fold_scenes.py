"""Panels that were taped along an edge, lying flat, and then were turned over and folded, before they go on as one. Mm."""

from collections.abc import Iterator
from dataclasses import replace
from math import hypot

import numpy as np

from publisher.basics import polyline
from publisher.design import Join
from publisher.geometry import Part, Region
from publisher.joints.act_pictures.scene import ActLabel, ActScene, CurvedArrow, Solid
from publisher.joints.acts_of_steps import UP
from publisher.joints.assembled import Assembled
from publisher.joints.building import Mover
from publisher.joints.model import Addition
from publisher.joints.outlines import Array
from publisher.joints.panels import PanelFrame

TAPE_DRAWN, TAPE_THICK = 18.0, 0.4
"""mm of a strip of tape as it is drawn."""

TAPE = "masking_tape"
SWEPT = (0.08, 0.9)
"""From which share of a fold to which its arrow runs."""

OVER = np.diag([1.0, -1.0, -1.0])
"""Turned over about the hinge, which lies along x."""


def fold_scenes(subject: Assembled, act: Addition, bodies: dict[str, Mover]) -> Iterator[ActScene]:
    """Yield how two panels that go on as one are taped and folded, where they meet in a mitre and the step takes tape; nothing for
    others."""
    join = _hinge(subject, act)
    if join is None:
        return
    one, other = bodies[join.a.panel].panels[0], bodies[join.b.panel].panels[0]
    edge, mate = one.part.edge(join.a.edge), other.part.edge(join.b.edge)
    if edge is None or mate is None or edge.nominal_length < 1e-6 or mate.nominal_length < 1e-6:
        return
    flat = (
        Solid(one.name, one.part, _laid(edge.start, edge.end)),
        Solid(other.name, other.part, _laid(mate.end, mate.start)),
    )
    tape = Solid("tape", _tape(one.part, edge.nominal_length), PanelFrame(np.eye(3), np.array([0.0, 0.0, TAPE_THICK])))
    labels = _counted(flat)
    group = f"{act.assembly}:{'+'.join(act.added)}"
    yield ActScene(
        "",
        group,
        flat,
        (tape,),
        np.array([0.0, 0.0, -1.0]),
        (*labels, ActLabel("tape", "tape"), ActLabel(UP, other.name, new=False)),
        f"{' and '.join(label.text for label in labels)} flat, outside up, and tape along the edge where they meet",
        goal=np.array([[-0.5 * edge.nominal_length, 0.0, 0.0], [0.5 * edge.nominal_length, 0.0, 0.0]]),
    )
    folded = _folded(flat, one.frame, other.frame)
    turned = tuple(Solid(s.name, s.part, PanelFrame(OVER @ s.frame.axes, OVER @ s.frame.origin)) for s in flat)
    angle = 180.0 - join.corner
    far = _far(turned[1])
    way = 1.0 if _rotated(far, angle)[2] > 0.0 else -1.0
    path = np.array([_rotated(far, way * angle * share) for share in np.linspace(*SWEPT, 24)])
    yield ActScene(
        "",
        group,
        (turned[0],),
        (replace(folded, frame=PanelFrame(OVER @ folded.frame.axes, OVER @ folded.frame.origin)),),
        np.array([0.0, 0.0, -1.0]),
        (),
        f"The same turned over, and folded until there are {join.corner:g}° between them",
        moves=False,
        goal=np.zeros((0, 3)),
        turn=OVER,
        sweep=CurvedArrow(path, f"{join.corner:g}°"),
        ghost=(turned[1],),
    )


def _counted(flat: tuple[Solid, Solid]) -> tuple[ActLabel, ...]:
    """Return how many of which part lie there: of one that is there twice once."""
    letters = [solid.part.letter for solid in flat]
    return tuple(
        ActLabel(f"{letters.count(solid.part.letter)} × {solid.part.letter}", solid.name, new=False)
        for at, solid in enumerate(flat)
        if letters.index(solid.part.letter) == at
    )


def _hinge(subject: Assembled, act: Addition) -> Join | None:
    """Return the mitre along which all that is added was taped; None where it was joined otherwise."""
    if not act.together or len(act.added) != 2 or TAPE not in subject.design.steps[act.step - 1].uses:
        return None
    plan = next((m.assembly.plan for m in subject.panels if m.assembly.plan.name == act.assembly), None)
    joins = plan.joins if plan is not None else ()
    return next((j for j in joins if j.joint == "mitre" and {j.a.panel, j.b.panel} == {*act.added}), None)


def _laid(start: tuple[float, float], end: tuple[float, float]) -> PanelFrame:
    """Return the frame in which a part lies flat with its outside up and an edge along x, its middle at the origin."""
    long = hypot(end[0] - start[0], end[1] - start[1])
    c, s = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    axes = np.array([[c, s, 0.0], [-s, c, 0.0], [0.0, 0.0, 1.0]])
    middle = np.array([(start[0] + end[0]) / 2, (start[1] + end[1]) / 2, 0.0])
    return PanelFrame(axes, -axes @ middle)


def _folded(flat: tuple[Solid, Solid], one: PanelFrame, other: PanelFrame) -> Solid:
    """Return the second panel as it stands to the first, which lies flat."""
    home = flat[0].frame.axes @ one.axes.T  # from the assembly to where the first lies
    origin = home @ (other.origin - one.origin) + flat[0].frame.origin
    return Solid(flat[1].name, flat[1].part, PanelFrame(home @ other.axes, origin))


def _far(solid: Solid) -> Array:
    """Return the point of a panel that is farthest from the hinge, in the middle of its upper face."""
    points = np.array([(x, y, -solid.part.thickness) for x, y in solid.part.outline.outer.points])
    placed = solid.frame.carry(points)
    best = placed[int(np.abs(placed[:, 1]).argmax())]
    return np.array([0.0, best[1], best[2]])


def _rotated(point: Array, degrees: float) -> Array:
    """Return a point turned about x."""
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return np.array([point[0], c * point[1] - s * point[2], s * point[1] + c * point[2]])


def _tape(part: Part, length: float) -> Part:
    """Return a strip of tape as a board of next to no thickness, its middle at (0, 0)."""
    x, y = length / 2, TAPE_DRAWN / 2
    strip = Region(polyline(((-x, -y), (x, -y), (x, y), (-x, y)), True))
    return replace(
        part, id="tape", letter="", outline=strip, template=strip, openings=(), marks=(), edges=(), thickness=TAPE_THICK, seams=()
    )  # fmt: skip
