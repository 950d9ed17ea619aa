"""Every panel on a face of another one, measured where it stands, and drawn on the template of the other."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np
import shapely

from publisher.basics import LineKind, Path, Point, Purpose, polyline
from publisher.design import FaceSeat
from publisher.geometry import Mark, Part, polygon
from publisher.joints.panels.interference import section_of
from publisher.joints.panels.linings import LiningFound, measured_lining
from publisher.joints.panels.place import Panel, PanelAssembly
from publisher.joints.panels.posts import PostFound, measured_post
from publisher.joints.panels.seats import Seating, measured, middle_of_ring, opening_of
from publisher.joints.panels.touching import PANEL_TOUCH

LONG_SEAT = 150.0  # mm: a longer seat may run over several pages
LETTER_OVER = 5.0  # mm from an opening to the letter of the post that it takes
LETTER_ASIDE = 0.17  # of its length
POST_OUTSIDE = "outside of the post"
LINE_FROM_HOLE, LINE_BESIDE = 1.6, 4.0  # mm from a round hole to the lines beside it, and how long they are
ONE_OUTSIDE = 0.05  # mm within which two lines are one
LEAST_SEAT = 1.0  # mm²: what covers less is no place to glue anything


def seatings_of(assembly: PanelAssembly) -> tuple[Seating, ...]:
    """Return the panels that are put on faces, as far as both stand somewhere."""
    found = []
    for seat in assembly.plan.seats:
        own, host = assembly.panel(seat.panel), assembly.panel(seat.host)
        if own is not None and host is not None and not seat.opening:
            made = measured(seat, own.part, own.frame, host.part, host.frame, _flush_with(seat, host, assembly))
            found += [made] if made is not None else []
    return tuple(found)


def _flush_with(seat: FaceSeat, host: Panel, assembly: PanelAssembly) -> shapely.Geometry:
    """Return what other panels have in the plane of a face, and nothing over it, in the host's own coordinates."""
    depth, over = (host.part.thickness, -PANEL_TOUCH) if seat.face == "inside" else (0.0, PANEL_TOUCH)
    others = [panel for panel in assembly.boards if panel.name not in (seat.panel, seat.host)]
    behind, before = (
        shapely.union_all([section_of(panel, host.frame, depth + side) for panel in others]) for side in (over, -over)
    )
    return shapely.difference(behind, before)


def posts_of(assembly: PanelAssembly) -> tuple[PostFound, ...]:
    """Return the posts in openings, as far as both stand somewhere and the opening is there."""
    found = []
    for seat in assembly.plan.seats:
        own, host = assembly.panel(seat.panel), assembly.panel(seat.host)
        if own is not None and host is not None and seat.opening:
            made = measured_post(seat, own.part, own.frame, host.part, host.frame)
            found += [made] if made is not None else []
    return tuple(found)


def linings_of(assembly: PanelAssembly) -> tuple[LiningFound, ...]:
    """Return the bent parts along each of their edges, as far as they stand somewhere."""
    part_at = {panel.name: panel.part for panel in assembly.panels}
    frames = {panel.name: panel.frame for panel in assembly.panels}
    return tuple(
        found
        for lining in assembly.plan.linings
        if lining.panel in part_at
        for found in measured_lining(lining, part_at[lining.panel], frames[lining.panel], part_at, frames)
    )


def seat_marks(assembly: PanelAssembly, seatings: Sequence[Seating]) -> dict[str, tuple[Mark, ...]]:
    """Return, by part, where others are glued on its faces: outline and letter of each, in the part's own coordinates.

    A part may stand in several places of which not all carry something: then the place is named.
    """
    places: dict[str, list[str]] = defaultdict(list)
    for panel in assembly.panels:
        places[panel.part.id].append(panel.name)
    marks: dict[str, list[Mark]] = defaultdict(list)
    letters = {panel.name: panel.part.letter for panel in assembly.panels}
    for part, names in places.items():
        marks[part] += _on_one_part({name: [s for s in seatings if s.seat.host == name] for name in names}, letters)
    for part, mark in (*_post_letters(assembly), *_post_outsides(assembly)):
        marks[part].append(mark)
    return {part: tuple(own) for part, own in marks.items() if own}


def _on_one_part(by_place: dict[str, list[Seating]], letters: dict[str, str]) -> Iterator[Mark]:
    """Yield the marks of all that is glued on a part, by the places in which the part stands; what lies alike in several once."""
    drawn: set[tuple[object, ...]] = set()
    for name, own in by_place.items():
        for seating in own:
            letter = letters[seating.seat.panel]
            alike = all(any(_same(seating, other) for other in others) for others in by_place.values())
            key = (letter, *(round(v, 2) for v in seating.touches.bounds), "" if alike else name)
            if key in drawn:
                continue
            drawn.add(key)
            behind = ", inside" if seating.seat.face == "inside" else ""
            where = "" if alike else f" on {name.replace('_', ' ')}"
            yield from _marks(seating, f"{letter}{where}{behind}")


def _post_letters(assembly: PanelAssembly) -> Iterator[tuple[str, Mark]]:
    """Yield the letter of each post beside the opening that takes it; with the place where not all of its part carry one."""
    part_at = {panel.name: panel.part for panel in assembly.panels}
    posts = [seat for seat in assembly.plan.seats if seat.opening and {seat.panel, seat.host} <= part_at.keys()]
    drawn: set[tuple[str, str, str]] = set()
    for seat in posts:
        host, letter = part_at[seat.host], part_at[seat.panel].letter
        ring = opening_of(host, seat.opening)
        carry = {s.host for s in posts if s.opening == seat.opening and part_at[s.panel].letter == letter}
        every = {name for name, part in part_at.items() if part.id == host.id} <= carry
        text = letter if every else f"{letter} on {seat.host.replace('_', ' ')}"
        if ring is None or (host.id, seat.opening, text) in drawn:
            continue
        drawn.add((host.id, seat.opening, text))
        at = _beside(ring, host)
        yield host.id, Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((at,)), name=f"seat of {seat.panel}", text=text)


def _post_outsides(assembly: PanelAssembly) -> Iterator[tuple[str, Mark]]:
    """Yield two short lines beside each round opening that takes a post, in line with its outside face: it could be turned any way."""
    hosts = {panel.name: panel.part.id for panel in assembly.panels}
    drawn: dict[tuple[str, str], None] = {}
    for seat in assembly.plan.seats:
        lines = outside_lines(assembly, seat)
        if lines and (hosts[seat.host], seat.opening) not in drawn:
            drawn[hosts[seat.host], seat.opening] = None
            for line in lines:
                yield hosts[seat.host], Mark(LineKind.DRAW, Purpose.LAP, polyline(line), name=POST_OUTSIDE)


def outside_lines(assembly: PanelAssembly, seat: FaceSeat) -> tuple[tuple[Point, Point], ...]:
    """Return both lines in line with the outside face of a post in a round opening, in the host's own coordinates; () where the opening
    is not round, where there is no room for both, and where another piece of the host carries its post otherwise."""
    own = _outside_lines(assembly, seat)
    host = assembly.panel(seat.host)
    others = (s for s in assembly.plan.seats if s.opening == seat.opening and s is not seat)
    alike = [
        s
        for s in others
        if (one := assembly.panel(s.host)) is not None and host is not None and one.part.id == host.part.id
    ]
    every = sum(panel.part.id == host.part.id for panel in assembly.panels) if host is not None else 0
    same = (
        all(np.allclose(_outside_lines(assembly, s) or np.inf, own, atol=ONE_OUTSIDE) for s in alike) if own else True
    )
    return own if same and len(alike) + 1 == every else ()


def _outside_lines(assembly: PanelAssembly, seat: FaceSeat) -> tuple[tuple[Point, Point], ...]:
    post, host = assembly.panel(seat.panel), assembly.panel(seat.host)
    if post is None or host is None or not seat.opening:
        return ()
    found = measured_post(seat, post.part, post.frame, host.part, host.frame)
    ring, edge = opening_of(host.part, seat.opening), post.part.edge(seat.edge)
    if found is None or not found.round or ring is None or edge is None:
        return ()
    ends = host.frame.back(post.frame.carry(np.array([[*edge.start, 0.0], [*edge.end, 0.0]])))[:, :2]
    way = (ends[1] - ends[0]) / max(float(np.hypot(*(ends[1] - ends[0]))), 1e-9)
    middle = np.array(middle_of_ring(ring))
    foot = ends.mean(axis=0) - float((ends.mean(axis=0) - middle) @ way) * way
    off = float(np.hypot(*(foot - middle)))
    if off >= found.across / 2.0:
        return ()
    near = (found.across**2 / 4.0 - off**2) ** 0.5 + LINE_FROM_HOLE
    lines = [(foot + side * near * way, foot + side * (near + LINE_BESIDE) * way) for side in (1.0, -1.0)]
    room = polygon(host.part.template).buffer(-LINE_FROM_HOLE / 2.0)
    if not all(room.contains(shapely.LineString(line)) for line in lines):
        return ()
    return tuple(((float(a[0]), float(a[1])), (float(b[0]), float(b[1]))) for a, b in lines)


def _beside(ring: Path, host: Part) -> Point:
    """Return the place beside an opening that is farthest from all that is cut: over it, under it or at its sides."""
    (x, y), box, body = middle_of_ring(ring), ring.box, polygon(host.outline)
    spots = [
        (x, box.top + LETTER_OVER),
        (x, box.bottom - LETTER_OVER),
        (box.right + LETTER_OVER, y),
        (box.left - LETTER_OVER, y),
    ]
    inside = [spot for spot in spots if body.contains(shapely.Point(spot))] or spots
    return max(inside, key=lambda spot: float(body.boundary.distance(shapely.Point(spot))))


def _same(a: Seating, b: Seating) -> bool:
    same = (a.seat.face, a.seat.edge) == (b.seat.face, b.seat.edge)
    return same and bool(shapely.equals_exact(a.touches, b.touches, 0.01, normalize=True))


def _marks(seating: Seating, text: str) -> Iterator[Mark]:
    """Yield the outline of a seat and, in its middle, the letter of what is glued there."""
    name = f"seat of {seating.seat.panel}"
    pieces = [piece for piece in shapely.get_parts(seating.touches) if piece.area > LEAST_SEAT]
    for piece in pieces:
        for ring in (piece.exterior, *piece.interiors):
            points = [(float(x), float(y)) for x, y in ring.coords[:-1]]
            yield Mark(LineKind.GLUE, Purpose.LAP, polyline(points, True), name=name)
    if pieces:
        largest = max(pieces, key=lambda piece: float(piece.area))
        yield Mark(LineKind.REFERENCE, Purpose.MATCH, polyline((_letter_at(largest),)), name=name, text=text)


def _letter_at(seat: shapely.Polygon) -> Point:
    """Return where in a seat its letter stands: in the middle, or aside on a long one, which may be cut into tiles at halves and
    thirds."""
    box = shapely.get_coordinates(shapely.oriented_envelope(seat))
    a, b = box[1] - box[0], box[3] - box[0]
    long, across = (a, b) if float(np.hypot(*a)) >= float(np.hypot(*b)) else (b, a)
    aside = box[0] + LETTER_ASIDE * long + across / 2.0
    if float(np.hypot(*long)) > LONG_SEAT and shapely.contains_xy(seat, *aside):
        return float(aside[0]), float(aside[1])
    x, y = shapely.get_coordinates(shapely.maximum_inscribed_circle(seat, 0.5))[0]
    return float(x), float(y)
