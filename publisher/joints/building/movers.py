"""What moves as one when an assembly is built: panels with the plates behind their seams, layers, braces, whole things. Mm."""

from collections.abc import Iterable
from dataclasses import replace

import numpy as np

from publisher.basics import Place, record, remembered
from publisher.geometry import behind_paper, next_of
from publisher.joints.assembled import Assembled
from publisher.joints.outlines import Array, coarse
from publisher.joints.panels import Panel, PanelFrame, crossed, face_pair
from publisher.joints.wholes import panels_of_stack

COARSE_TURN = 8.0  # degrees from one point of a flattened arc to the next
COARSE = 0.08
"""mm by which a flattened arc leaves the true one: less than half of what two movers may be in each other's way."""

LIES_ON = 0.5
"""mm by which others may reach beyond a face on which the whole lies: foam gives, and a table is that even."""

OF_PLATE = "'s plate"
OF_BRACES = "brace_"  # with the number of the layer under which it stands


@record
class Mover:
    """What moves as one: its name, its part ('' for a thing of several), its flat boards where they stand, and whether it is bent."""

    name: str
    part: str
    panels: tuple[Panel, ...]
    bent: bool = False


@record
class MoverFaces:
    """The faces of a mover: the broad ones as rings of corners, the outer one first, the narrow ones as (n, 4, 3) corners; their
    outward normals (n, 3); the box round all."""

    broad: tuple[tuple[Array, ...], ...]
    broad_normals: Array
    narrow: Array
    narrow_normals: Array
    low: Array
    high: Array


def movers_of(subject: Assembled, assembly: str) -> tuple[Mover, ...]:
    """Return what an assembly is built of, in the order of the spec, layers from the table up; () for one that is not put together."""
    for mated in subject.panels:
        if mated.assembly.plan.name == assembly and not mated.assembly.unplaced:
            bent = {panel.name for panel in mated.assembly.panels if panel.part.bending is not None}
            return _gathered(mated.assembly.solid, bent)
    parts = {part.id: part for part in subject.parts}
    for report in subject.wholes:
        if report.stack.name == assembly:
            return _gathered(panels_of_stack(report.stack, parts, report.place, report.knees))
    for whole in subject.things:
        if whole.plan.name == assembly:
            return tuple(Mover(one.thing.name, "", one.panels) for one in whole.things)
    return ()


def _gathered(panels: Iterable[Panel], bent: Iterable[str] = ()) -> tuple[Mover, ...]:
    """Return boards by their names: facets of a bent one and the plates behind seams belong to their panel."""
    boards: dict[str, list[Panel]] = {}
    for panel in panels:
        boards.setdefault(panel.name.removesuffix(OF_PLATE), []).append(panel)
    return tuple(Mover(name, own[0].part.id, tuple(own), name in bent) for name, own in boards.items())


def is_brace(name: str) -> bool:
    """Tell whether a mover of this name is a knee brace of a stack."""
    return name.startswith(OF_BRACES)


def place_of(mover: Mover) -> Place:
    """Return where the spec puts a mover in its place."""
    return mover.panels[0].place


@remembered
def faces_of(mover: Mover) -> MoverFaces:
    """Return the faces of a mover where it stands."""
    broad: list[tuple[Array, ...]] = []
    broad_normals: list[Array] = []
    narrow: list[Array] = []
    for panel in (layer for one in mover.panels for layer in _layers(one)):
        rings = [
            face_pair(panel.part, coarse(path, most_turn=COARSE_TURN, sagitta=COARSE)[0])
            for path in panel.part.outline.paths
        ]
        near = [panel.frame.carry(_at(ring.outside, 0.0)) for ring in rings]
        far = [panel.frame.carry(_at(ring.inside, -panel.part.thickness)) for ring in rings]
        broad += [tuple(near), tuple(far)]
        broad_normals += [panel.frame.outward, -panel.frame.outward]
        for front, back in zip(near, far, strict=True):
            narrow.append(np.stack([front, next_of(front), next_of(back), back], axis=1))
    quads = np.concatenate(narrow)
    normals = crossed(quads[:, 1] - quads[:, 0], quads[:, 0] - quads[:, 3])
    size = np.linalg.norm(normals, axis=1)
    sound = size > 1e-9
    corners = np.vstack([ring for rings in broad for ring in rings])
    return MoverFaces(
        tuple(broad),
        np.array(broad_normals),
        quads[sound],
        normals[sound] / size[sound, None],
        corners.min(axis=0),
        corners.max(axis=0),
    )


def is_outermost(mover: Mover, every: tuple[Mover, ...]) -> bool:
    """Tell whether all movers lie on one side of a face of one: whether some pose of the whole lies or stands on it."""
    own = faces_of(mover)
    corners = np.vstack([ring for one in every for rings in faces_of(one).broad for ring in rings])
    on = np.vstack([np.array([rings[0][0] for rings in own.broad]), own.narrow[:, 0]])
    normals = np.vstack([own.broad_normals, own.narrow_normals])
    beyond = (corners @ normals.T).max(axis=0) - (on * normals).sum(axis=1)
    return bool((beyond < LIES_ON).any())


def _layers(panel: Panel) -> tuple[Panel, ...]:
    """Return a board as layers that are the same right through: two where a rabbet leaves only paper."""
    papers = [edge.rabbet.paper for edge in panel.part.edges if edge.rabbet is not None]
    if not papers:
        return (panel,)
    paper = min(papers)
    foam = replace(panel.part, outline=behind_paper(panel.part), thickness=panel.part.thickness - paper)
    behind = PanelFrame(panel.frame.axes, panel.frame.origin - paper * panel.frame.outward)
    return (replace(panel, part=replace(panel.part, thickness=paper)), replace(panel, part=foam, frame=behind))


def _at(ring: Array, z: float) -> Array:
    return np.column_stack([ring, np.full(len(ring), z)])
