"""What a solid meets on a straight way, by sweeping it: the union of the solid and of a prism over each triangle that looks along the
way, as a general boolean library makes it. Nothing of the package's own computing of faces seen along a way is in it."""

from collections.abc import Sequence
from itertools import product

import numpy as np
from manifold3d import Manifold

from tests.random_designs.solids import Array, shared, united

FAR = 2000.0  # mm: farther than any assembly reaches
LOOKS = 1e-3
"""Share of its normal that a triangle must have along the way: the prism over another has no room in it."""

MET = 0.2
"""mm³: what is met by less is the dust of flattened arcs and of play; a tab under the edge of its slot has a hundred times as much."""


def swept(solid: Manifold, way: Array, length: float = FAR) -> Manifold:
    """Return all that a solid passes through when it is moved along a unit vector."""
    mesh = solid.to_mesh64()
    corners = np.asarray(mesh.vert_properties)[:, :3][np.asarray(mesh.tri_verts)]
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    size = np.maximum(np.linalg.norm(normals, axis=1), 1e-12)
    prisms = [
        Manifold.hull_points(np.vstack([triangle, triangle + length * way]))
        for triangle in corners[(normals @ way) / size > LOOKS]
    ]
    return united([solid, *prisms])


def meets(solids: Sequence[Manifold], ways: Array) -> Array:
    """Return the mm³ that each solid meets of each other one on each way: (ways, moved, met); what they share at rest is no meeting."""
    found = np.zeros((len(ways), len(solids), len(solids)))
    for moved, solid in enumerate(solids):
        at_rest = [shared(solid, other) if other is not solid else 0.0 for other in solids]
        for number, way in enumerate(ways):
            path = swept(solid, way)
            for met, other in enumerate(solids):
                if met != moved:
                    found[number, moved, met] = shared(path, other) - at_rest[met]
    return found


def depends_on(solid: Manifold, other: Manifold, way: Array, by: float) -> bool:
    """Tell whether it depends on ``by`` mm if a solid meets another one on a way: what it meets is thinner (twice its volume over its
    surface: the thickness of a slab), or a shift by as much, aside or along the way, spares it or lets it meet."""
    met = swept(solid, way) ^ other
    if 2.0 * met.volume() < by * met.surface_area():
        return True
    aside = np.eye(3)[int(np.argmin(np.abs(way)))]
    across = np.cross(aside, way) / np.linalg.norm(np.cross(aside, way))
    up = np.cross(way, across)
    said = set()
    for x, y, z in product((-by, 0.0, by), repeat=3):
        shifted = solid.translate(list(x * across + y * up + z * way))
        said.add(shared(swept(shifted, way), other) - shared(shifted, other) > MET)
    return len(said) == 2
