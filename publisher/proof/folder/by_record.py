"""What the files of a folder must show, by the records that its packs carry: for who has the files and not the design.

Names of files are as ``packs.json`` and the manual say: they are restated here, as whoever gets a folder knows them.
"""

import json
from math import acos, atan2, ceil, cos, degrees, hypot, radians, sin
from typing import Any

from publisher.basics import CutFilePromise, FilePromises, PackFiles, PiecePromise, Point, Pose

CHORD = 0.002  # mm: greatest distance between a chord and its arc
STANDARD = "standard"


def promises_by_records(files: dict[str, bytes]) -> FilePromises:
    """Return what the packs of a folder's list say of the files beside them; nothing where list or record cannot be read."""
    packs: list[PackFiles] = []
    cut: dict[str, CutFilePromise] = {}
    for entry in _entries(files.get("packs.json", b"")):
        try:
            record = json.loads(files[str(entry["record"])])
            variant = str(entry["variant"]) or STANDARD
            pictures = tuple(
                f"previews/{variant}-{entry['paper']}/page-{n + 1:02}.png" for n in range(int(entry["pages"]))
            )
            packs.append(PackFiles(str(entry["file"]), str(entry["record"]), pictures))
            cut |= {one.path: one for one in _cut_files(record, f"cut-files/{variant}")}
        except (ValueError, LookupError, TypeError, ArithmeticError, AttributeError, RecursionError):
            continue  # a record that is not the one that its PDF carries is found as such
    return FilePromises(tuple(packs), tuple(cut.values()))


def _entries(text: bytes) -> list[Any]:
    try:
        return list(json.loads(text)["packs"])
    except (ValueError, LookupError, TypeError, RecursionError):
        return []


def _cut_files(record: Any, folder: str) -> list[CutFilePromise]:
    pieces = {one["id"]: _piece(one) for one in record["parts"]}
    found = [CutFilePromise(f"{folder}/part-{p.letter.lower()}-{p.part}.svg", ((p, Pose()),)) for p in pieces.values()]
    for board in record["boards"]:
        sheet = board["sheet"]
        width, height = float(sheet["width"]), float(sheet["height"])
        size = f"{round(width, 1):g}x{round(height, 1):g}mm"
        for number, layout in enumerate(board["sheets"], 1):
            copies = tuple((pieces[item["part"]], _pose(item["pose"])) for item in layout["items"])
            path = f"{folder}/sheet-{board['board']}-{size}-{number}.svg"
            found.append(CutFilePromise(path, copies, width, height, board=board["board"], label=sheet["label"]))
    return found


def _pose(pose: Any) -> Pose:
    return Pose(float(pose["x"]), float(pose["y"]), float(pose["turn"]), bool(pose["mirrored"]))


def _piece(part: Any) -> PiecePromise:
    rings = tuple(_ring(path) for path in part["outline"])
    return PiecePromise(part["id"], part["letter"], part["name"], rings, None, None)


def _ring(path: Any) -> tuple[Point, ...]:
    """Return the points of a closed path of the record: lines, and arcs by centre, radius and sweep in degrees."""
    at = (float(path["start"][0]), float(path["start"][1]))
    points = [at]
    for edge in path["edges"]:
        to = (float(edge["to"][0]), float(edge["to"][1]))
        if "centre" in edge:
            points += _arc(at, edge)
        points.append(to)
        at = to
    return tuple(points[:-1]) if hypot(points[0][0] - at[0], points[0][1] - at[1]) < CHORD else tuple(points)


def _arc(start: Point, edge: Any) -> list[Point]:
    (x, y), radius, sweep = edge["centre"], float(edge["radius"]), radians(float(edge["sweep"]))
    first = atan2(start[1] - y, start[0] - x)
    step = 2.0 * acos(max(-1.0, 1.0 - CHORD / radius))
    count = min(max(1, ceil(abs(sweep) / step)), ceil(degrees(abs(sweep))) * 100 + 1)
    return [
        (x + radius * cos(first + sweep * k / count), y + radius * sin(first + sweep * k / count))
        for k in range(1, count)
    ]
