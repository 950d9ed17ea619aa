"""Boards on the faces of others: lying or standing in the outline that is drawn for them there, or standing as a post in an opening.

A seat is what glue lines, with the board's own rim, close round the letter of what is glued there. What stands is as long at its foot as
the seat, and square to the face or as its bevel has it; a post goes in until its end lies level with the other face.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import combinations
from math import cos, radians, sin

import numpy as np
import numpy.typing as npt
import shapely

from tests.rehearsal.laid_on import ways
from tests.rehearsal.notes import Note
from tests.rehearsal.parts import ReadPart, clearest
from tests.rehearsal.sites import Site
from tests.rehearsal.standing import Board, Stood
from tests.rehearsal.thin_lines import Thin

Matrix = npt.NDArray[np.float64]  # 4 × 4
Vector = npt.NDArray[np.float64]

ON_LINE = 0.35  # mm by which an outline may be off its seat
FOOT_OFF = 0.6  # mm by which a foot may be longer or shorter than its seat
OPEN_WIDER = (-0.4, 1.3)  # mm by which an opening may be wider than the post in it
BEYOND = (2.5, 4.2)  # mm that glue lines are drawn on to meet the rim and one another
KINDS = (("glue", "dots", "line"), ("glue",), ("dots", "line"))  # of lines that part off a seat together
LETTER_FAR = 12.0  # mm from a narrow seat to the letter that found no room in it
AT_RIM = 0.3  # mm
STRAIGHT = 0.01  # of a straight line's length: what it is across
ROUND = 0.01  # by which the form of a round opening may be off
TICK_FAR, IN_LINE_OFF = (
    6.0,
    0.25,
)  # mm from a round opening to the lines beside it, and by which these may be off one another
OPEN_FAR = 9.0  # mm from an opening to the letter of its post


def with_seated(
    assemblies: Sequence[tuple[Stood, ...]], boards: Sequence[Board], parts: Sequence[ReadPart]
) -> tuple[tuple[Stood, ...], ...]:
    """Return the assemblies, with all that faces carry put on as often as it is cut."""
    board_of = {board.letter: board for board in boards}
    part_of = clearest(parts)
    found = [list(one) for one in assemblies]
    placed = Counter(one.board.letter for own in found for one in own)
    for own in found:
        for one in own:  # grows as it goes: a board may carry others on top of what it stands on
            host = part_of.get(one.board.letter)
            for note in host.notes if host is not None else ():
                letter, inside = _named(note)
                board = board_of.get(letter)
                if host is None or board is None or placed[letter] >= board.count or note.kind != "seat":
                    continue
                seated = _seated(one, host, board, note, inside, _vertical(own))
                if seated is not None:
                    own.append(seated)
                    placed[letter] += 1
    return tuple(map(tuple, found))


def _named(note: Note) -> tuple[str, bool]:
    """Return the letter that a seat bears, and whether it lies on the inside face."""
    return note.text.split()[0].rstrip(",") if note.text else "", ", inside" in note.text


def _vertical(stood: Sequence[Stood]) -> Vector | None:
    """Return what the tops of all boards point to."""
    ups = [one.matrix[:3, :3] @ np.append(one.board.up, 0.0) for one in stood if one.board.up is not None]
    if not ups:
        return None
    up = np.mean(ups, axis=0)
    long = float(np.linalg.norm(up))
    return up / long if long > 0.1 else None


def _seated(
    one: Stood, host: ReadPart, board: Board, note: Note, inside: bool, vertical: Vector | None
) -> Stood | None:
    """Return a board on its seat; None where the letter stands in no seat that it fits."""
    at = np.array((note.x, note.y))
    level = -one.board.thickness if inside else 0.0
    for seat in (seat for by in BEYOND for seat in seats_on(one.board.area, host, at, by)):  # nearest first
        if (flat := _lying(seat, board, inside)) is not None:
            return Stood(board, one.matrix @ _at_level(flat, level))
        stands = _best_upright(_standing(seat, board, inside, level, rim=one.board.area.exterior), one, board, vertical)
        if stands is not None:
            return stands
    ring = min(
        (ring for ring in map(shapely.Polygon, one.board.area.interiors)),
        key=lambda ring: float(ring.distance(shapely.Point(at))),
        default=None,
    )
    if ring is None or ring.distance(shapely.Point(at)) > OPEN_FAR:
        return None
    other = 0.0 if inside else -one.board.thickness
    if _is_round(ring):
        return _best_upright(_in_round(ring, host, board, inside, other), one, board, vertical)
    return _best_upright(_standing(ring, board, inside, other, OPEN_WIDER), one, board, vertical)


def _is_round(ring: shapely.Polygon) -> bool:
    return bool(abs(4.0 * np.pi * ring.area / ring.length**2 - 1.0) < ROUND)


def _in_round(
    ring: shapely.Polygon, host: ReadPart, board: Board, inside: bool, level: float
) -> Iterator[tuple[Matrix, Site]]:
    """Yield how a post may stand in a round opening, its outside in line with two short lines beside it."""
    middle, radius = np.array(ring.centroid.coords[0]), float(np.sqrt(ring.area / np.pi))
    face = np.array((0.0, 0.0, -1.0 if inside else 1.0))
    ticks = [thin.points for thin in host.thin if thin.kind == "tick"]
    near = [tick for tick in ticks if radius < np.hypot(*(tick.mean(axis=0) - middle)) < radius + TICK_FAR]
    for one, other in combinations(near, 2):
        way = other.mean(axis=0) - one.mean(axis=0)
        way = way / np.hypot(*way)
        across = np.array((-way[1], way[0]))
        off = [float((point - middle) @ across) for point in (*one, *other)]
        if np.ptp(off) > IN_LINE_OFF or abs(abs(np.mean(off)) - board.thickness / 2.0) > FOOT_OFF:
            continue
        along = np.append(way, 0.0)
        if float(np.cross(along, face) @ np.append(across, 0.0)) * np.mean(off) < 0.0:
            along = -along
        for site in board.sites:
            if not site.strip and site.bevel is None and site.length < 2.0 * radius:
                yield _foot(site, board, along, face, np.append(middle, level), 0.0), site


def seats_on(area: shapely.Polygon, host: ReadPart, at: Vector, by: float) -> list[shapely.Polygon]:
    """Return the areas that glue lines, drawn on by so many mm, part off on a board round a point or near it, the nearest first."""
    spot = shapely.Point(at)
    found: list[shapely.Polygon] = []
    for kinds in KINDS:  # lines of one kind are no bounds of what those of another part off
        drawn = [ends for thin in host.thin if thin.kind in kinds and (ends := _straight(thin)) is not None]
        faces = _parted(area, [shapely.LineString(_longer(ends, by)) for ends in drawn])
        found += [face for face in faces if face.distance(spot) < LETTER_FAR]
    inside = [face for face in found if area.buffer(0.2).contains(face.representative_point())]
    return sorted(inside, key=lambda face: float(face.distance(spot)))


def _parted(area: shapely.Polygon, lines: Sequence[shapely.LineString]) -> list[shapely.Polygon]:
    """Return the areas into which lines part a board."""
    noded = shapely.node(shapely.union_all([area.boundary, *lines]))
    return list(shapely.get_parts(shapely.polygonize([*shapely.get_parts(noded)])))


def _straight(thin: Thin) -> Vector | None:
    """Return both ends of a glue line, or of a dotted line that is straight; None of any other."""
    if thin.kind == "glue":
        return thin.points
    middle = thin.points.mean(axis=0)
    _, sizes, ways = np.linalg.svd(thin.points - middle)
    if thin.kind == "cross" or sizes[1] > STRAIGHT * sizes[0]:
        return None
    along = (thin.points - middle) @ ways[0]
    return np.array((middle + along.min() * ways[0], middle + along.max() * ways[0]))


def _longer(ends: Vector, by: float) -> Vector:
    way = (ends[1] - ends[0]) / np.hypot(*(ends[1] - ends[0]))
    return np.array((ends[0] - by * way, ends[1] + by * way))


def _lying(seat: shapely.Polygon, board: Board, inside: bool) -> Matrix | None:
    """Return how a board lies in a seat, its inside face on it: the matrix into the host's own coordinates, over its face."""
    if abs(seat.area - board.area.area) > 0.05 * board.area.area:
        return None
    own = shapely.affinity.scale(board.area, -1.0, 1.0, origin=(0, 0)) if inside else board.area
    best = min(ways(own, seat), key=lambda way: way.mean)
    if best.mean > ON_LINE:
        return None
    flip = -1.0 if inside else 1.0
    matrix = np.eye(4)
    matrix[:2, :2], matrix[:2, 3] = best.matrix[:, :2] @ np.diag((flip, 1.0)), best.matrix[:, 2]
    matrix[2, 2], matrix[2, 3] = flip, flip * board.thickness
    return matrix


def _at_level(flat: Matrix, level: float) -> Matrix:
    lift = np.eye(4)
    lift[2, 3] = level
    return lift @ flat


def _standing(
    seat: shapely.Polygon,
    board: Board,
    inside: bool,
    level: float,
    wider: tuple[float, float] = (-FOOT_OFF, FOOT_OFF),
    rim: shapely.Geometry | None = None,
) -> Iterator[tuple[Matrix, Site]]:
    """Yield how a board may stand with one of its edges on a seat as long and as wide as that, looking to either side."""
    box = shapely.get_coordinates(seat.minimum_rotated_rectangle)
    if seat.area < 0.97 * float(seat.minimum_rotated_rectangle.area):
        return
    one, other = box[1] - box[0], box[2] - box[1]
    pairs = ((one, other), (other, one))
    middle = np.append(seat.minimum_rotated_rectangle.centroid.coords[0], level)
    face = -1.0 if inside else 1.0
    for (long_side, short), site in ((pair, site) for pair in pairs for site in board.sites):
        slant = radians(site.bevel or 0.0)
        wide = board.thickness / cos(slant)
        if site.strip or not wider[0] < np.hypot(*short) - wide < wider[1]:
            continue
        if not wider[0] < np.hypot(*long_side) - site.length < wider[1]:
            continue
        way = np.append(long_side / np.hypot(*long_side), 0.0)
        off = (float(np.hypot(*long_side)) - site.length) / 2.0 * _drawn_end(middle, long_side, rim)
        for along in (way, -way):
            yield _foot(site, board, along, np.array((0.0, 0.0, face)), middle + off * way, slant), site


def _drawn_end(middle: Vector, long_side: Vector, rim: shapely.Geometry | None) -> float:
    """Return 1 or -1 for the end of a seat that is drawn, where the rim of the board has to stand for the other one; else 0."""
    if rim is None:
        return 0.0
    ends = [rim.distance(shapely.Point(middle[:2] + side * long_side / 2)) < AT_RIM for side in (1.0, -1.0)]
    return 0.0 if ends[0] == ends[1] else -1.0 if ends[0] else 1.0


def _foot(site: Site, board: Board, along: Vector, out: Vector, middle: Vector, slant: float) -> Matrix:
    """Return the place of a board whose edge runs along a direction, its inward way out of a face, tilted as its bevel is cut."""
    side = np.cross(along, out)
    inward = cos(slant) * out - sin(slant) * side
    face = np.cross(along, inward)
    own = np.column_stack((np.append(site.along, 0.0), np.append(site.inward, 0.0), (0.0, 0.0, 1.0)))
    turn = np.column_stack((along, inward, face)) @ own.T
    back = board.thickness / 2.0
    foot = np.append(site.middle + back * np.tan(slant) * site.inward, -back)
    matrix = np.eye(4)
    matrix[:3, :3], matrix[:3, 3] = turn, middle - turn @ foot
    return matrix


def _best_upright(
    found: Iterator[tuple[Matrix, Site]], one: Stood, board: Board, vertical: Vector | None
) -> Stood | None:
    """Return the place in which a board's top points up most; where nothing says where that is, the one whose top is farthest away."""
    best: tuple[float, Stood] | None = None
    for matrix, site in found:
        placed = one.matrix @ matrix
        up = np.append(board.up if board.up is not None else site.inward, 0.0)
        away = float((placed[:3, :3] @ up) @ vertical) if vertical is not None and board.up is not None else 0.0
        if best is None or away > best[0] + 0.01:
            best = away, Stood(board, placed)
    return best[1] if best else None
