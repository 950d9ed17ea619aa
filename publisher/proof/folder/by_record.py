"""What the files of a folder must show, by the records that its packs carry: for who has the files and not the design.

Names of files are as ``packs.json`` and the manual say: they are restated here, as whoever gets a folder knows them.
"""

import json
from functools import reduce
from itertools import pairwise
from math import acos, atan2, ceil, cos, degrees, dist, radians, sin
from typing import Any

from publisher.basics import CutFilePromise, FilePromises, PackFiles, PiecePromise, Point, Pose
from publisher.proof.folder.svg import MOST_MM, MOST_POINTS
from publisher.proof.reading import MOST_PAGES

CHORD = 0.002  # mm: greatest distance between a chord and its arc
MOST_ROUND = 2_000_000.0  # mm of all outlines of a piece: what is measured every few mm must stay countable
TURN = radians(360.001)  # the record's degrees are rounded
STANDARD = "standard"


def promises_by_records(files: dict[str, bytes]) -> FilePromises:
    """Return what the packs of a folder's list say of the files beside them; nothing of a pack whose entry or record cannot be read.

    Any bytes may come in: nothing is raised.
    """
    packs: list[PackFiles] = []
    cut: dict[str, CutFilePromise] = {}
    for entry in _entries(files.get("packs.json", b"")):
        try:
            record = json.loads(files[str(entry["record"])])
            variant = str(entry["variant"]) or STANDARD
            previews = f"previews/{variant}-{entry['paper']}"
            pictures = tuple(f"{previews}/page-{n + 1:02}.png" for n in range(_pages(entry["pages"])))
            cut |= {one.path: one for one in _cut_files(record, f"cut-files/{variant}")}
            packs.append(PackFiles(str(entry["file"]), str(entry["record"]), pictures))
        except (ValueError, LookupError, TypeError, ArithmeticError, AttributeError, RecursionError, MemoryError):
            continue  # a PDF that no record speaks of is found as such
    packs += _extras(files.get("packs.json", b""))
    return FilePromises(tuple(packs), tuple(cut.values()))


def _entries(text: bytes) -> list[Any]:
    try:
        return list(json.loads(text)["packs"])
    except (ValueError, LookupError, TypeError, RecursionError):
        return []


def _extras(text: bytes) -> list[PackFiles]:
    """Return the files that are given beside the packs; lists of former versions name none."""
    try:
        extras = json.loads(text).get("extras", ())
        return [PackFiles(str(one["file"]), "", tuple(map(str, one.get("pictures", ())))) for one in extras]
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return []


def _pages(value: Any) -> int:
    """Return a number of pages. Raises ValueError for more than a PDF may have."""
    pages = int(value)
    if not 0 <= pages <= MOST_PAGES:
        raise ValueError(f"a pack of {pages} pages")
    return pages


def _mm(value: Any) -> float:
    """Return a number of mm or degrees. Raises ValueError for one that no piece has."""
    number = float(value)
    if not abs(number) <= MOST_MM:  # so that no number at all is caught too
        raise ValueError(f"the number {number} in a record")
    return number


def _cut_files(record: Any, folder: str) -> list[CutFilePromise]:
    pieces, points = dict[str, PiecePromise](), 0
    for one in record["parts"]:
        pieces[one["id"]] = piece = _piece(one)
        points = _counted(points, piece)
    found = [CutFilePromise(f"{folder}/part-{p.letter.lower()}-{p.part}.svg", ((p, Pose()),)) for p in pieces.values()]
    for board in record["boards"]:
        sheet = board["sheet"]
        width, height = _mm(sheet["width"]), _mm(sheet["height"])
        size = f"{round(width, 1):g}x{round(height, 1):g}mm"
        for number, layout in enumerate(board["sheets"], 1):
            copies = tuple((pieces[item["part"]], _pose(item["pose"])) for item in layout["items"])
            reduce(_counted, (piece for piece, _ in copies), 0)
            path = f"{folder}/sheet-{board['board']}-{size}-{number}.svg"
            found.append(CutFilePromise(path, copies, width, height, board=board["board"], label=sheet["label"]))
    return found


def _counted(points: int, piece: PiecePromise) -> int:
    """Return the number of points with those of one more piece. Raises ValueError for more than any board has."""
    points += sum(map(len, piece.rings))
    if points > MOST_POINTS:
        raise ValueError("pieces of very many points")
    return points


def _pose(pose: Any) -> Pose:
    return Pose(_mm(pose["x"]), _mm(pose["y"]), _mm(pose["turn"]), bool(pose["mirrored"]))


def _piece(part: Any) -> PiecePromise:
    rings = tuple(_ring(path) for path in part["outline"])
    if not rings or sum(dist(a, b) for ring in rings for a, b in pairwise(ring)) > MOST_ROUND:
        raise ValueError("a piece without an outline, or with one that is very long")
    return PiecePromise(str(part["id"]), str(part["letter"]), str(part["name"]), rings, None, None)


def _ring(path: Any) -> tuple[Point, ...]:
    """Return the points of a closed path of the record: lines, and arcs by centre, radius and sweep in degrees.

    Raises ValueError for one that encloses nothing, or has more points than any piece.
    """
    at = (_mm(path["start"][0]), _mm(path["start"][1]))
    points = [at]
    for edge in path["edges"]:
        to = (_mm(edge["to"][0]), _mm(edge["to"][1]))
        if "centre" in edge:
            points += _arc(at, edge)
        points.append(to)
        at = to
        if len(points) > MOST_POINTS:
            raise ValueError("an outline of very many points")
    ring = tuple(points[:-1]) if dist(points[0], at) < CHORD else tuple(points)
    if len(set(ring)) < 3:
        raise ValueError("an outline that encloses nothing")
    return ring


def _arc(start: Point, edge: Any) -> list[Point]:
    x, y = map(_mm, edge["centre"])
    radius, sweep = _mm(edge["radius"]), radians(_mm(edge["sweep"]))
    if abs(sweep) > TURN:
        raise ValueError("an arc of more than a turn")
    first = atan2(start[1] - y, start[0] - x)
    step = 2.0 * acos(max(-1.0, 1.0 - CHORD / radius))
    count = min(max(1, ceil(abs(sweep) / step)), ceil(degrees(abs(sweep))) * 100 + 1)
    return [
        (x + radius * cos(first + sweep * k / count), y + radius * sin(first + sweep * k / count))
        for k in range(1, count)
    ]
