"""Drawn lines of a cut file held against promised ones: which copy is which, and how far anything lies off. Millimetres."""

import numpy as np
import shapely

from publisher.basics import Box, CutFilePromise, PiecePromise, Point, Pose, record
from publisher.proof.folder.svg import CutFile, CutPath
from publisher.proof.reading import Array, TooMuch

CUT_TOLERANCE = 0.01  # mm, both ways, between promised lines and those of a cut file
CUT_STEP = 2.0  # mm between the points that are tried
SAME_PLACE_ON_SHEET = 0.5  # mm: a path whose box is farther off than this is not the copy that is looked for
MOST_PAIRS = 50_000_000  # of copies and paths that are compared; a sheet of 3,000 pieces has 9 million
LENGTHS = 0.002  # share by which the length of a line may differ: promised arcs are chords of it


@record
class CopiesRead:
    """The promised copies of a cut file as they are drawn in it, and the paths of cut lines that belong to none."""

    copies: tuple["DrawnCopy", ...]
    others: tuple[CutPath, ...]


@record
class DrawnCopy:
    """A promised copy, where it should lie, and the path that draws its outline; None: there is none in its place."""

    piece: PiecePromise
    pose: Pose
    path: CutPath | None


def copies_of(promise: CutFilePromise, file: CutFile) -> CopiesRead:
    """Return every promised copy with its path: the one whose box is nearest to where it should be.

    Raises TooMuch when there are more of both than on any sheet.
    """
    left = {number: _box(path) for number, path in enumerate(file.paths) if path.group == "cut"}
    if len(promise.copies) * len(left) > MOST_PAIRS:
        raise TooMuch("a cut file holds many thousands of pieces")
    found = []
    alone = promise.width == 0.0  # a file of one piece, whose place in the file is free
    for piece, laid in promise.copies:
        pose = _shifted(piece, next(iter(left.values()))) if alone and left else laid
        wanted = Box.round(pose.apply_all(piece.rings[0]))
        best = min(left, key=lambda number: _apart(wanted, left[number]), default=-1)
        if best < 0 or _apart(wanted, left[best]) > SAME_PLACE_ON_SHEET:
            found.append(DrawnCopy(piece, pose, None))
        else:
            found.append(DrawnCopy(piece, pose, file.paths[best]))
            del left[best]
    return CopiesRead(tuple(found), tuple(file.paths[number] for number in left))


def _box(path: CutPath) -> Box:
    points = np.vstack(path.lines)
    return Box(*points.min(axis=0).tolist(), *points.max(axis=0).tolist())


def _shifted(piece: PiecePromise, there: Box) -> Pose:
    own = Box.round(piece.rings[0])
    return Pose(there.left - own.left, there.bottom - own.bottom)


def _apart(wanted: Box, box: Box) -> float:
    return max(abs(a - b) for a, b in zip(wanted.sides, box.sides, strict=True))


def carried(pose: Pose, points: tuple[Point, ...], closed: bool) -> Array:
    """Return points carried by a pose, the first one repeated where they are closed."""
    placed = pose.apply_all(points)
    return np.array((*placed, placed[0]) if closed else placed, dtype=float)


def off_by(wanted: list[Array], drawn: list[Array]) -> tuple[float, Point]:
    """Return the greatest distance between promised lines and drawn ones, both ways, and where that is.

    A line drawn through the promised points is settled at once; all others are measured against each other.
    """
    if len(wanted) == len(drawn):
        settled = _through_the_points(wanted, drawn)
        wanted = [line for line, good in zip(wanted, settled, strict=True) if not good]
        drawn = [line for line, good in zip(drawn, settled, strict=True) if not good]
    if not wanted or not drawn:
        line = next(iter(wanted or drawn), None)
        return (0.0, (0.0, 0.0)) if line is None else (float("inf"), (float(line[0][0]), float(line[0][1])))
    return max(_farthest(wanted, drawn), _farthest(drawn, wanted), key=lambda one: one[0])


def _through_the_points(wanted: list[Array], drawn: list[Array]) -> list[bool]:
    """Say of each pair of lines whether both have as many points, each within the tolerance of its fellow."""
    alike = [len(a) == len(b) for a, b in zip(wanted, drawn, strict=True)]
    if not any(alike):
        return alike
    pairs = [(a, b) for a, b, same in zip(wanted, drawn, alike, strict=True) if same]
    away = np.hypot(*(np.concatenate([a for a, _ in pairs]) - np.concatenate([b for _, b in pairs])).T)
    starts = np.concatenate(([0], np.cumsum([len(a) for a, _ in pairs])[:-1]))
    near = iter((np.maximum.reduceat(away, starts) <= CUT_TOLERANCE).tolist())
    return [same and next(near) for same in alike]


def _farthest(these: list[Array], others: list[Array]) -> tuple[float, Point]:
    points = _dense(these)
    tree = shapely.STRtree(_segments(others))
    far = np.ones(
        len(points), dtype=bool
    )  # asked whether they are near, most points are settled in a fraction of the time
    far[tree.query(shapely.points(points), predicate="dwithin", distance=CUT_TOLERANCE)[0]] = False
    if not far.any():
        return 0.0, (0.0, 0.0)
    beyond = points[far]
    (which, _), away = tree.query_nearest(shapely.points(beyond), return_distance=True, all_matches=False)
    worst = int(np.argmax(away))
    x, y = beyond[which[worst]]
    return float(away[worst]), (float(x), float(y))


def _dense(lines: list[Array]) -> Array:
    """Return the points of lines, and points on them no farther apart than a step."""
    whole = shapely.linestrings(
        np.concatenate(lines), indices=np.repeat(np.arange(len(lines)), [len(x) for x in lines])
    )
    return np.asarray(shapely.get_coordinates(shapely.segmentize(whole, CUT_STEP)))


def _segments(lines: list[Array]) -> Array:
    pairs = [np.stack((line[:-1], line[1:]), axis=1) for line in lines]
    return np.asarray(shapely.linestrings(np.concatenate(pairs)))


def length_of(lines: list[Array]) -> float:
    """Return the length in mm of all lines together."""
    if not lines:
        return 0.0
    steps = np.hypot(*np.diff(np.concatenate(lines), axis=0).T)
    steps[np.cumsum([len(line) for line in lines])[:-1] - 1] = 0.0  # from one line to the next
    return float(steps.sum())
