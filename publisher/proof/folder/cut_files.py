"""Checks of cut files and of whole sheets: read as SVG by a reader of our own, held against pieces and layouts."""

from collections import Counter
from collections.abc import Iterator
from math import dist

import numpy as np
import shapely

from publisher.basics import Box, Check, CutFilePromise, Findings, LineKind, Point, Pose
from publisher.proof.folder.case import FolderCase, few, judged_files
from publisher.proof.folder.cut_lines import CUT_TOLERANCE, LENGTHS, DrawnCopy, carried, length_of, off_by
from publisher.proof.folder.svg import CutFile
from publisher.proof.reading import Array

SAME_UNIT = 1e-4  # mm between a stated size and its viewBox
ROOM = (0.2, 5.0)  # mm left round a single piece, at least and at most
SHORTEST = 0.001  # mm: a line shorter than this is none
GAP_READ = 0.02  # mm by which a gap between two pieces, each flattened, may be read too small
WORD_AWAY = 0.02  # mm that words may stand off
WIDEST_LINE = 1.0  # mm: a wider stroke is no line
REMAKE = "build the design again, and take its cut files"
KINDS = {*LineKind}
BROKEN = {
    LineKind.SCORE,
    LineKind.FOLD,
    LineKind.GLUE,
    LineKind.REFERENCE,
}  # drawn in dashes, that nobody takes them for cuts


@judged_files(
    "proof/cut-file-read",
    "Cut files hold lines and words only, in mm",
    "a machine goes by the file's units and by every element in it: width, height and viewBox must say the same mm, and what is no line, "
    "no word and no sheet's edge may be cut by one program and passed over by another",
)
def cut_file_read(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Judge units, elements, and how each kind of line is painted."""
    for promise in folder.expected.cut_files:
        if promise.path in folder.files:
            file = folder.cut_file(promise.path)
            yield from few(check, promise.path, list(_unreadable(promise, file)), REMAKE)
    return sum(one.path in folder.files for one in folder.expected.cut_files)


def _unreadable(promise: CutFilePromise, file: CutFile) -> Iterator[str]:
    if file.trouble:
        yield f"cannot be read: {file.trouble}"
        return
    wanted = (0.0, 0.0, file.width, file.height)
    if len(file.view) != 4 or any(abs(a - b) > SAME_UNIT for a, b in zip(file.view, wanted, strict=True)):
        said = " ".join(f"{side:g}" for side in file.view) or "missing"
        yield f"is {file.width:g} × {file.height:g} mm, and its viewBox is {said}: a unit of it is no mm"
    if promise.width and max(abs(promise.width - file.width), abs(promise.height - file.height)) > SAME_UNIT:
        yield f"is {file.width:g} × {file.height:g} mm; the sheet is {promise.width:g} × {promise.height:g} mm"
    for what in file.strange:
        yield f"holds {what}, which no cut file has"
    for name, times in Counter(group.name for group in file.groups).items():
        if times > 1:
            yield f"has {times} groups called {name}"
    for group in file.groups:
        if group.name == "words":
            if (group.fill, group.stroke) != ("black", "none"):
                yield "paints its words otherwise than filled in black"
        elif group.name not in {*KINDS, "sheet"}:
            yield f"has a group called “{group.name}”, which is no kind of line"
        elif (group.fill, group.stroke) != ("none", "black") or not 0.0 < group.width <= WIDEST_LINE:
            yield f"does not draw its {group.name} lines as thin black lines"
        elif (group.name in BROKEN or group.name == "sheet") != bool(group.dashes):
            yield f"draws its {group.name} lines {'broken' if group.dashes else 'unbroken'}, as another kind is drawn"


@judged_files(
    "proof/cut-file-lines",
    "Cut files show every piece as it was worked out",
    f"a machine cuts what the file says: each outline, opening and mark lies within {CUT_TOLERANCE:g} mm of the piece, is there once, "
    "and has a length",
)
def cut_file_lines(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Hold outlines copy by copy, and all other lines kind by kind, against what was promised."""
    looked = 0
    for promise, file, drawn in folder.cut_files:
        said = [*_outlines_off(drawn.copies), *(["a cut line belongs to no piece"] * len(drawn.others))]
        said += [*_marks_off(drawn.copies, file), *_frame_off(promise, file)]
        said += ["a line has no length" for path in file.paths if path.shortest < SHORTEST]
        yield from few(check, promise.path, said, REMAKE)
        looked += len(file.paths)
    return looked


def _outlines_off(copies: tuple[DrawnCopy, ...]) -> Iterator[str]:
    for copy in copies:
        letter = copy.piece.letter
        if copy.path is None:
            yield f"part {letter} is not where it was laid"
            continue
        wanted = [carried(copy.pose, ring, True) for ring in copy.piece.rings]
        drawn = list(copy.path.lines)
        far, (x, y) = off_by(wanted, drawn)
        if len(drawn) != len(wanted) or not all(copy.path.closed):
            yield f"part {letter} has {len(drawn)} outlines and openings, closed or not; it should have {len(wanted)}, all closed"
        elif far > CUT_TOLERANCE:
            yield f"part {letter} is off by {min(far, 999.0):.3f} mm at {x:.1f}, {y:.1f} mm"
        elif abs(length_of(drawn) / length_of(wanted) - 1.0) > LENGTHS:
            yield f"part {letter} has a line that is drawn twice"


def _marks_off(copies: tuple[DrawnCopy, ...], file: CutFile) -> Iterator[str]:
    if any(copy.piece.lines is None for copy in copies):
        return
    for kind in sorted(KINDS - {LineKind.CUT}):
        drawn = [line for path in file.paths if path.group == kind for line in path.lines]
        wanted: list[Array] = [
            carried(copy.pose, line.points, False)
            for copy in copies
            for line in copy.piece.lines or ()
            if line.kind == kind
        ]
        if len(drawn) != len(wanted):
            yield f"has {len(drawn)} {kind} lines; it should have {len(wanted)}"
            continue
        far, (x, y) = off_by(wanted, drawn)
        if far > CUT_TOLERANCE:
            yield f"a {kind} line is off by {min(far, 999.0):.3f} mm at {x:.1f}, {y:.1f} mm"
        elif wanted and abs(length_of(drawn) / length_of(wanted) - 1.0) > LENGTHS:
            yield f"has {length_of(drawn):.1f} mm of {kind} lines; it should have {length_of(wanted):.1f} mm"


def _frame_off(promise: CutFilePromise, file: CutFile) -> Iterator[str]:
    """Judge the edge of a sheet, or the room round a piece."""
    if promise.width:
        edge = (0.0, 0.0, promise.width, promise.height)
        if len(file.edges) != 1 or dist(file.edges[0], edge) > SAME_UNIT:
            yield "does not show the edge of its sheet, once"
        return
    if file.edges:
        yield "holds a rectangle, which no piece has"
    lines = [line for path in file.paths for line in path.lines]
    if not lines:
        return
    points = np.vstack(lines)
    drawn = Box(*points.min(axis=0).tolist(), *points.max(axis=0).tolist())
    left = (drawn.left, drawn.bottom, file.width - drawn.right, file.height - drawn.top)
    if min(left) < ROOM[0] or max(left) > ROOM[1]:
        yield f"leaves {min(left):.2f} to {max(left):.2f} mm round its piece; viewers would cut it short, or lay it out too large"


@judged_files(
    "proof/cut-file-words",
    "Cut files name their pieces",
    "a heap of cut pieces without letters is a puzzle: each piece bears its letter inside its outline, and each mark its words, where they "
    "belong",
)
def cut_file_words(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Hold the words of each file against those promised, and letters against outlines."""
    looked = 0
    for promise, file, drawn in folder.cut_files:
        copies = drawn.copies
        looked += len(file.words)
        if (
            len(copies) == 1
            and promise.width == 0.0
            and file.title != f"{copies[0].piece.letter} {copies[0].piece.name}"
        ):
            said = [f"is called “{file.title[:60]}”; it is of part {copies[0].piece.letter} {copies[0].piece.name}"]
        else:
            said = []
        yield from few(check, promise.path, [*said, *_words_off(copies, file)], REMAKE)
    return looked


def _words_off(copies: tuple[DrawnCopy, ...], file: CutFile) -> Iterator[str]:
    for copy in copies:
        if copy.path is not None and not _letter_inside(copy, file):
            yield f"part {copy.piece.letter} does not bear its letter inside its outline"
    if any(copy.piece.words is None for copy in copies):
        return
    left = [word for word in file.words if word.group == "words"]
    if len(left) < len(file.words):
        yield "has words outside of their group"
    for copy in copies:
        for wanted in copy.piece.words or ():
            at = copy.pose.apply(wanted.at)
            own = [w for w in left if w.text == wanted.text and dist(w.at, at) <= WORD_AWAY]
            if not own:
                yield f"“{wanted.text}” of part {copy.piece.letter} does not stand at {at[0]:.1f}, {at[1]:.1f} mm"
            elif abs(own[0].height - wanted.height) > WORD_AWAY:
                yield f"“{wanted.text}” of part {copy.piece.letter} is {own[0].height:g} mm high, not {wanted.height:.2f} mm"
            left = [w for w in left if not own or w is not own[0]]
    for word in left:
        yield f"“{word.text[:30]}” belongs to no piece"


def _letter_inside(copy: DrawnCopy, file: CutFile) -> bool:
    ground = _ground(copy.piece.rings, copy.pose)
    return any(w.text == copy.piece.letter and ground.contains(shapely.Point(w.at)) for w in file.words)


def _ground(rings: tuple[tuple[Point, ...], ...], pose: Pose) -> shapely.Polygon:
    outer, *holes = (pose.apply_all(ring) for ring in rings)
    return shapely.Polygon(outer, holes)


@judged_files(
    "proof/sheet-file",
    "Whole sheets keep the knife's gap and the sheet's margin",
    f"two pieces that share a cut, or one over the edge, are lost: as drawn, they keep the board's gap and margin to {CUT_TOLERANCE:g} mm",
)
def sheet_file(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Measure, between the outlines as drawn, every two that are near, and each to the sheet's edge."""
    looked = 0
    for promise, file, _ in folder.cut_files:
        if promise.width:
            grounds = _drawn_grounds(file)
            looked += len(grounds)
            yield from few(check, promise.path, list(_too_near(promise, grounds)), "lay the sheet out again, and build")
    return looked


def _drawn_grounds(file: CutFile) -> list[shapely.Polygon]:
    """Return what each path of cut lines encloses, its openings taken out."""
    rings = ([line for line in path.lines if len(line) > 3] for path in file.paths if path.group == "cut")
    return [shapely.Polygon(lines[0], lines[1:]) for lines in rings if lines]


def _too_near(promise: CutFilePromise, grounds: list[shapely.Polygon]) -> Iterator[str]:
    if not grounds:
        return
    tree = shapely.STRtree(grounds)
    near = tree.query(grounds, predicate="dwithin", distance=max(promise.gap, 1e-3))
    for one, other in near.T:
        if one < other:
            gap = float(grounds[one].distance(grounds[other]))
            if gap < promise.gap - GAP_READ or (gap == 0.0 and _overlap(grounds[one], grounds[other])):
                yield f"two pieces lie {gap:.2f} mm apart; the knife needs {promise.gap:g} mm"
    for ground in grounds:
        left, bottom, right, top = ground.bounds
        keeps = min(left, bottom, promise.width - right, promise.height - top)
        if keeps < promise.margin - CUT_TOLERANCE:
            yield f"a piece lies {keeps:.2f} mm from the sheet's edge; its margin is {promise.margin:g} mm"


def _overlap(one: shapely.Polygon, other: shapely.Polygon) -> bool:
    return float(one.buffer(-CUT_TOLERANCE).intersection(other.buffer(-CUT_TOLERANCE)).area) > 0.0
