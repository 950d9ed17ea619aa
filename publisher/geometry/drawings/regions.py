"""A region of exact lines and arcs from the closed loops of a drawing."""

from collections.abc import Sequence
from math import isclose

import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import polyline
from publisher.geometry.drawings import areas
from publisher.geometry.drawings.chains import Loop, at, crossings, loops_of, open_trouble
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.drawings.styles import painted, rule
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.model import Region
from publisher.geometry.paths import oriented, recover, signed_area
from publisher.geometry.rules.drawings import CROSSED_OUTLINE, Trouble

_CLIP = "clip"


def region_of(
    scene: Scene, drawn: Sequence[DrawnShape], cuts: Sequence[DrawnShape], wanted: str
) -> tuple[Region | None, list[Trouble]]:
    """Return the region (mm) that shapes enclose, less what ``cuts`` enclose, and what is wrong or was mended.

    A filled shape covers what its fill rule says, and filled shapes are united; loops of lines that fill nothing are an outside
    with holes in it, holes with islands, and so on.
    """
    loops, opens, troubles = loops_of(drawn)
    voids, open_voids, more = loops_of(cuts)
    bad = [*map(open_trouble, (*opens, *open_voids)), *crossings(loops), *crossings(voids)]
    troubles = [*troubles, *more, *bad]
    if bad:
        return None, troubles
    if not loops:
        return None, [*troubles, Trouble(CROSSED_OUTLINE, f"“{wanted}” encloses nothing", "draw a closed outline")]
    body, crossed = covered(scene, loops)
    if cuts:
        hollow, further = covered(scene, voids)
        body, crossed = shapely.difference(body, hollow), [*crossed, *further]
    if crossed:
        return None, [*troubles, *crossed]
    return _exact(body, [*loops, *voids], wanted, troubles)


def _exact(
    body: BaseGeometry, loops: list[Loop], wanted: str, troubles: list[Trouble]
) -> tuple[Region | None, list[Trouble]]:
    """Return the body with the lines and arcs of the loops: as they are where no loop was cut, else found again."""
    pieces = [piece for piece in shapely.get_parts(body) if piece.geom_type == "Polygon"]
    uncut = len(pieces) == 1 and 1 + len(pieces[0].interiors) == len(loops)
    around = sum(shapely.LinearRing(loop.points).length for loop in loops)
    if uncut and isclose(pieces[0].length, around, rel_tol=1e-7, abs_tol=1e-3):
        by_size = sorted(loops, key=lambda loop: -abs(signed_area(loop.path)))
        outer, *holes = [loop.path for loop in by_size]
        return Region(oriented(outer), tuple(oriented(hole, hole=True) for hole in holes)), troubles
    sources = [Region(oriented(loop.path)) for loop in loops]
    sources += [
        Region(polyline(ring.coords[:-1], True, _CLIP))
        for loop in loops
        for one in loop.drawn
        for clip in one.clips
        for ring in _rings(clip)
    ]
    region, why = recover(body, sources)
    if region is None:
        hint = "draw one outside line, with holes inside it; give each piece a part of its own"
        troubles = [*troubles, Trouble(CROSSED_OUTLINE, f"the outline “{wanted}”: {why}", hint)]
    return region, troubles


def covered(scene: Scene, loops: Sequence[Loop]) -> tuple[BaseGeometry, list[Trouble]]:
    """Return what loops cover: filled shapes by their rule, united; lines by inside and outside."""
    full: dict[DrawnShape, list[Loop]] = {}
    lines: list[Loop] = []
    for loop in loops:
        one = loop.drawn[0]
        if len(loop.drawn) == 1 and painted(one.style, "fill", scene.ids):
            full.setdefault(one, []).append(loop)
        else:
            lines.append(loop)
    regions = [_clipped(areas.filled([loop.points for loop in own], rule(one.style)), own) for one, own in full.items()]
    regions.append(_clipped(areas.filled([loop.points for loop in lines], "evenodd"), lines))
    return areas.united(regions), _crossed(lines)


def _clipped(region: BaseGeometry, loops: Sequence[Loop]) -> BaseGeometry:
    clips = {id(clip): clip for loop in loops for one in loop.drawn for clip in one.clips}
    return areas.clipped(region, list(clips.values()))


def _crossed(loops: Sequence[Loop]) -> list[Trouble]:
    """Find loops of lines that cross each other: nobody can say which side is board."""
    rings = [shapely.LinearRing(loop.points) for loop in loops]
    if len(rings) < 2:
        return []
    pairs = shapely.STRtree(rings).query(rings, predicate="crosses").T.tolist()
    troubles = []
    for a, b in pairs[:20]:
        if a < b:
            place = shapely.get_parts(shapely.intersection(rings[a], rings[b]))[0].coords[0]
            troubles.append(
                Trouble(
                    CROSSED_OUTLINE,
                    f"the outlines “{loops[a].name}” and “{loops[b].name}” cross at {at((place[0], place[1]))}",
                    "unite them in the drawing program, or fill them: filled shapes are united",
                    loops[b].drawn[0].element.line,
                )
            )
    return troubles


def _rings(clip: BaseGeometry) -> list[shapely.LinearRing]:
    polygons = [piece for piece in shapely.get_parts(clip) if piece.geom_type == "Polygon"]
    return [ring for polygon in polygons for ring in (polygon.exterior, *polygon.interiors)]
