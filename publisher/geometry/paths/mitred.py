"""Areas grown or shrunk with their corners kept, sound for whatever is laid over them next."""

import numpy as np
import shapely


def mitred(areas: shapely.Geometry, by: float) -> shapely.Geometry:
    """Return an area, or an array of areas, grown by ``by`` mm (shrunk below zero) with mitred corners.

    Where an outline comes back to within a hair of itself, as unions of areas with common borders do, GEOS lets its offset cross itself;
    the next difference or union with such an area then fails.
    """
    # GEOS divides by nothing at a spike, goes on, and numpy would say so
    with np.errstate(divide="ignore", invalid="ignore"):
        made = np.asarray(shapely.buffer(areas, by, join_style="mitre"), dtype=object)
    crossed = ~shapely.is_valid(made)
    if np.any(crossed):
        made = np.array(
            [_sound(one) if bad else one for one, bad in zip(made.flat, crossed.flat, strict=True)]
        ).reshape(made.shape)
    return made if made.ndim else made.item()


def _sound(area: shapely.Geometry) -> shapely.Geometry:
    """Return an area that crosses itself as areas that do not."""
    parts = shapely.get_parts(shapely.make_valid(area, method="structure", keep_collapsed=False))
    return shapely.union_all([part for part in parts if part.geom_type in ("Polygon", "MultiPolygon")])
