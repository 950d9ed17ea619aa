"""What an act of building shows: solids that stand already, solids that are added, and the way these go in. Mm."""

from dataclasses import field, replace

import numpy as np
import shapely

from publisher.basics import record, remembered
from publisher.geometry import Part, polygon
from publisher.joints.outlines import Array, coarse, points_of
from publisher.joints.panels import PanelFrame, corners_of

POINTS_OF_SIDE = 8
"""Points of a side that are tried where no corner touches."""

TOUCHES = 0.8
"""mm: a corner this near to a solid touches it: half a thickness of the thinnest board, more than any play."""


@record
class Solid:
    """A part in its place; ``name``: of its place in the assembly. The facets of a bent part share one."""

    name: str
    part: Part
    frame: PanelFrame


@record
class ActLabel:
    """Words at the solid of this name: of what is added (``new``), or of what stands."""

    text: str
    name: str
    new: bool = True


@record
class MatchLetter:
    """A match letter, and the points (3,) at which it stands on what is there and on what is added, in place; with the way (3,) in which
    the face looks that carries it, 0 where either face may."""

    text: str
    there: Array
    new: Array
    there_looks: Array = field(default_factory=lambda: np.zeros(3))
    new_looks: Array = field(default_factory=lambda: np.zeros(3))

    def turned(self, matrix: Array) -> "MatchLetter":
        """Return the letter on what is turned."""
        return MatchLetter(
            self.text,
            matrix @ self.there,
            matrix @ self.new,
            matrix @ self.there_looks,
            matrix @ self.new_looks,
        )


@record
class CurvedArrow:
    """An arrow along a curve: its points (n, 3) in place, what stands beside it, and whether it is ``wrong``, which crosses it out.
    ``held``: it lies on what is added, where that is held off."""

    path: Array
    text: str
    wrong: bool = False
    held: bool = False


@record
class ActScene:
    """One act: ``before`` stands already, ``added`` comes in along the unit vector ``way`` to where it is given.

    ``labels``: how many of which part. ``letters``: of the joins that this act closes. ``moves``: it comes in by a way; else it only
    lies there. ``goal``: points (n, 3) of the joint, in place. ``pile``: what is added are layers, one upon another. ``under``: it goes
    in under what stands, which is seen from low down. ``strip``: what is
    added as it was before it was bent. ``turn``: by which all is turned against the assembly (3, 3). ``sweep``: how it is folded or
    turned. ``ghost``: where it was before that. ``times``: how often all of it is done. ``tops``: the solids on which an arrow says which
    end is up. ``note``: what is said between what is added and its place. ``alike``: the parts of which either face may be
    outside.
    """

    key: str
    assembly: str
    before: tuple[Solid, ...]
    added: tuple[Solid, ...]
    way: Array
    labels: tuple[ActLabel, ...]
    alt: str
    letters: tuple[MatchLetter, ...] = ()
    moves: bool = True
    goal: Array = field(default_factory=lambda: np.zeros((0, 3)))
    pile: bool = False
    under: bool = False
    strip: Solid | None = None
    turn: Array = field(default_factory=lambda: np.eye(3))
    sweep: CurvedArrow | None = None
    ghost: tuple[Solid, ...] = ()
    times: int = 1
    tops: tuple[str, ...] = ()
    note: str = ""
    alike: frozenset[str] = frozenset()

    def turned(self, matrix: Array) -> "ActScene":
        """Return the scene turned as it lies on the bench."""

        def placed(solids: tuple[Solid, ...]) -> tuple[Solid, ...]:
            return tuple(
                Solid(s.name, s.part, PanelFrame(matrix @ s.frame.axes, matrix @ s.frame.origin)) for s in solids
            )

        sweep = replace(self.sweep, path=self.sweep.path @ matrix.T) if self.sweep is not None else None
        letters = tuple(one.turned(matrix) for one in self.letters)
        return replace(
            self,
            before=placed(self.before),
            added=placed(self.added),
            way=matrix @ self.way,
            letters=letters,
            goal=self.goal @ matrix.T,
            turn=matrix @ self.turn,
            sweep=sweep,
            ghost=placed(self.ghost),
        )


def contacts(added: tuple[Solid, ...], before: tuple[Solid, ...]) -> Array:
    """Return the corners of what is added that touch what stands, in place (n, 3); of a part that touches with no corner, such as a
    lid that reaches over all walls, the corners of what stands that touch it; where no corner of either does, as of two triangles that lie
    crosswise, points of the sides of what is added."""
    found = [touching(_corners(added), before)]
    if len(found[0]) < 3:
        found.append(touching(_corners(before), added))
    if not any(map(len, found)):
        found.append(touching(_sides(added), before))
    return np.vstack(found)


def _sides(solids: tuple[Solid, ...]) -> Array:
    """Return points along all outlines on the underside, the corners left out (n, 3)."""
    shares = np.linspace(0.0, 1.0, POINTS_OF_SIDE + 2)[1:-1, None, None]
    found = [np.zeros((0, 3))]
    for solid in solids:
        for path in solid.part.outline.paths:
            ring = points_of(coarse(path, most_turn=20.0, sagitta=0.5)[0])
            flat = (ring + shares * (np.roll(ring, -1, axis=0) - ring)).reshape(-1, 2)
            found.append(solid.frame.carry(np.hstack([flat, np.full((len(flat), 1), -solid.part.thickness)])))
    return np.vstack(found)


def _corners(solids: tuple[Solid, ...]) -> Array:
    if not solids:
        return np.zeros((0, 3))
    return np.vstack([solid.frame.carry(_corner_points(solid.part)) for solid in solids])


@remembered
def _corner_points(part: Part) -> Array:
    """Return the corners of a part on both faces (n, 3); those of a round one every few degrees."""
    if any(edge.bevel for edge in part.edges):
        return corners_of(part)
    points = np.vstack([points_of(coarse(path, most_turn=20.0, sagitta=0.5)[0]) for path in part.outline.paths])
    deep = np.full((len(points), 1), -part.thickness)
    return np.vstack([np.hstack([points, np.zeros((len(points), 1))]), np.hstack([points, deep])])


@remembered
def _touched(part: Part) -> shapely.Geometry:
    """Return the area of a part and a hair round it."""
    area = shapely.buffer(polygon(part.outline), TOUCHES)
    shapely.prepare(area)
    return area


def touching(points: Array, solids: tuple[Solid, ...]) -> Array:
    """Return the points that lie on or in one of the solids."""
    touch = np.zeros(len(points), dtype=bool)
    for solid in solids:
        own = solid.frame.back(points)
        near = (own[:, 2] < TOUCHES) & (own[:, 2] > -solid.part.thickness - TOUCHES)
        if near.any():
            touch[near] |= shapely.contains_xy(_touched(solid.part), own[near, 0], own[near, 1])
    return points[touch]
