"""How layers of a stack lie on each other in plan, each distinct pair computed once.

Turned layers of a regular stair lie on each other alike, so results are kept by the pair of parts and their relative
pose. All areas are in the frame of the assembly (mm) or, where said, of the lower layer.
"""

import numpy as np
import shapely

from publisher.basics import Pose, record
from publisher.geometry import Part, mitred
from publisher.joints.model import StackLayer
from publisher.joints.outlines import Array, move, pieces, sound, whole_polygon, widest_strip
from publisher.joints.stacks.circles import farthest

LayerKey = tuple[object, ...]

PLAN_SLIVER = 0.02
"""Two flattenings of one arc differ by 0.005 mm: areas thinner than this (mm) do not count as covered."""


@record
class Contact:
    """A layer on the one below: contact area (mm²) and share of the smaller, the bare rest of the lower, the overhang's reach."""

    area: float
    share: float
    bare: shapely.Geometry  # in the frame of the lower layer
    reach: float  # greatest distance from a point of the overhang to the contact
    touch: shapely.Geometry  # where they lie on each other, in the frame of the lower layer


class PlanGeometry:
    """The layers of one stack in plan, with what was computed about their pairs."""

    def __init__(self, layers: tuple[StackLayer, ...], parts: dict[str, Part]) -> None:
        """Take the layers from the table up, and the parts by id."""
        self.layers = layers
        used = dict.fromkeys(layer.part for layer in layers)
        self.outlines = {part_id: whole_polygon(parts[part_id]) for part_id in used}
        self.areas = {name: float(outline.area) for name, outline in self.outlines.items()}
        self.placed = np.array([move(self.outlines[layer.part], layer.pose) for layer in layers])
        self._matrices: Array = np.array([_matrix(layer.pose) for layer in layers]).reshape(-1, 3, 3)
        self._inverses = np.linalg.inv(self._matrices) if layers else self._matrices
        self._contacts: dict[LayerKey, Contact] = {}
        self._bare: dict[LayerKey, shapely.Geometry] = {}
        self._strips: dict[LayerKey, float] = {}
        self._covers: dict[LayerKey, bool] = {}

    def key(self, lower: int, upper: int) -> LayerKey:
        """Return what is equal for pairs of layers that lie on each other alike."""
        relative = self._inverses[lower] @ self._matrices[upper]
        return (self.layers[lower].part, self.layers[upper].part, *np.round(relative[:2].ravel(), 7).tolist())

    def contact(self, lower: int) -> Contact:
        """Return how the next layer lies on this one."""
        key = self.key(lower, lower + 1)
        if key not in self._contacts:
            a, b = self.placed[lower], self.placed[lower + 1]
            both = pieces(shapely.intersection(a, b), 1e-6)
            smaller = min(self.areas[self.layers[lower].part], self.areas[self.layers[lower + 1].part])
            bare = pieces(shapely.difference(a, b))
            over = pieces(shapely.difference(b, a))
            reach = farthest(over, both) if not both.is_empty else np.inf
            touch = self.to_local(both, lower)
            self._contacts[key] = Contact(both.area, both.area / smaller, self.to_local(bare, lower), reach, touch)
        return self._contacts[key]

    def touch(self, lower: int) -> shapely.Geometry:
        """Return where the next layer lies on this one, in the frame of the assembly."""
        return self.to_assembly(self.contact(lower).touch, lower)

    def strip(self, lower: int) -> float:
        """Return the width (mm) of the widest strip in which the next layer lies on this one: of the largest circle there."""
        key = self.key(lower, lower + 1)
        if key not in self._strips:
            self._strips[key] = widest_strip(self.contact(lower).touch)
        return self._strips[key]

    def bare(self, lower: int) -> shapely.Geometry:
        """Return what the next layer leaves bare of this one, in the frame of the assembly; the whole top layer."""
        if lower + 1 == len(self.layers):
            return self.placed[lower]
        return self.to_assembly(self.contact(lower).bare, lower)

    def covering(self, lower: int) -> list[int]:
        """Return the layers, from the next but one up, that lie over what the next layer leaves bare of this one."""
        higher = range(lower + 2, len(self.layers))
        if not higher:
            return []
        pair = self.key(lower, lower + 1)
        keys = [(pair, self.key(lower, j)) for j in higher]
        unknown = [(j, key) for j, key in zip(higher, keys, strict=True) if key not in self._covers]
        if unknown:
            if pair not in self._bare:
                self._bare[pair] = mitred(self.contact(lower).bare, -PLAN_SLIVER)
            thinner = self.to_assembly(self._bare[pair], lower)
            shapely.prepare(thinner)
            over = shapely.intersects(thinner, self.placed[[j for j, _ in unknown]])
            self._covers.update((key, bool(hit)) for (_, key), hit in zip(unknown, over, strict=True))
        return [j for j, key in zip(higher, keys, strict=True) if self._covers[key]]

    def to_assembly(self, area: shapely.Geometry, layer: int) -> shapely.Geometry:
        """Carry an area from the layer's own frame to the assembly's."""
        return move(area, self.layers[layer].pose)

    def to_local(self, area: shapely.Geometry, layer: int) -> shapely.Geometry:
        """Carry an area from the assembly's frame to the layer's own."""
        matrix = self._inverses[layer]
        return sound(shapely.transform(area, lambda xy: xy @ matrix[:2, :2].T + matrix[:2, 2]))


def _matrix(pose: Pose) -> list[list[float]]:
    a, b, c, d, e, f = pose.matrix()
    return [[a, c, e], [b, d, f], [0.0, 0.0, 1.0]]
