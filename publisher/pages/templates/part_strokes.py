"""A part on a page: its template's outline with true arcs, waste to remove, marks by kind of line, words of the marks.

Everything is placed by a ``Pose`` and keeps its size. What a page shows only in part (a tile) is drawn whole behind a clip.
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import atan2, cos

import numpy as np
import shapely

from publisher.basics import (
    Box,
    Layer,
    LineKind,
    MarkPromise,
    OutlinePromise,
    Path,
    Pose,
    Purpose,
    polar,
    polyline,
    remembered_few,
)
from publisher.geometry import Mark, Part, line_string, polygon, rabbet_strip
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.type import CUT, HATCH, LEAST, NOTE, Setter, as_polygon, line_style, word_in

LAYERS = {
    Purpose.JOINT_TICK: Layer.SURFACE,
    Purpose.SURFACE: Layer.SURFACE,
    Purpose.LINE_UP: Layer.OUTLINES,
    Purpose.POCKET: Layer.OUTLINES,
    Purpose.BEND: Layer.OUTLINES,
    Purpose.CENTRE: Layer.DIMENSIONS,
    Purpose.BASE: Layer.NOTES,
    Purpose.CLIMB: Layer.NOTES,
    Purpose.MATCH: Layer.NOTES,
    Purpose.BEVEL: Layer.NOTES,
    Purpose.RABBET: Layer.NOTES,
    Purpose.GRAIN: Layer.NOTES,
    Purpose.LAP: Layer.NOTES,
    Purpose.NAME: Layer.NOTES,
    Purpose.TOP: Layer.NOTES,
}
ARROWS = (Purpose.CLIMB, Purpose.GRAIN, Purpose.TOP)
MARKED = tuple(line_style(k) for k in (LineKind.SCORE, LineKind.DRAW, LineKind.FOLD, LineKind.GLUE))
HATCH_GAP = 4.0
HATCH_LEAST = 4.0  # in openings narrower than this no hatching could be seen
ALONG_DRAWN = 0.3  # mm from a drawn line within which neither is
LEAST_DOTTED = 1.5  # mm: less of a dotted line is a stray dot
ALONG_CUT = 1.0  # mm from the cut line within which no glue line is drawn
HEAD = 3.2  # length of an arrow head


def outline_strokes(part: Part, pose: Pose, clip: Box | None = None) -> tuple[Drawn, ...]:
    """Return the cut lines of the template: outside with its notches, and every opening and slot."""
    return (Stroke(CUT, tuple(path.placed(pose) for path in part.template.paths), Layer.OUTLINES, clip, "figure"),)


def template_marks(part: Part) -> Iterator[Mark]:
    """Yield the marks that a template shows: all, but for the outline of the next layer where a line already says where its
    front edge lies. The two run close beside each other, and one dotted line would be taken for the other."""
    lined_up = any(m.purpose is Purpose.LINE_UP and m.name == "next front edge" for m in part.marks)
    for mark in part.marks:
        next_layer = mark.purpose is Purpose.LAP and mark.path.closed and mark.kind is not LineKind.GLUE
        if not (lined_up and next_layer):
            yield mark


def mark_strokes(part: Part, pose: Pose, clip: Box | None = None, quiet: Iterable[Box] = ()) -> tuple[Drawn, ...]:
    """Return the marks, one stroke for each kind of line and layer, arrow heads as small fills.

    Surface marks are interrupted in the ``quiet`` boxes, where words stand; marks outside the clip are left out.
    """
    groups: dict[tuple[LineKind, Layer], list[Path]] = {}
    heads: list[Path] = []
    boxes = [as_polygon(box) for box in quiet]
    silence = shapely.union_all(boxes) if boxes else None
    surface: dict[LineKind, list[Path]] = {}
    for mark in template_marks(part):
        if len(mark.path.points) < 2:
            continue
        path = mark.path.placed(pose)
        if clip and (path.box.overlap(clip) < 0.0 or (mark.kind is LineKind.REFERENCE and _only_a_dot(path, clip))):
            continue
        if mark.purpose is Purpose.SURFACE and silence is not None:
            surface.setdefault(mark.kind, []).append(path)
            continue
        if mark.purpose in ARROWS:
            path = _shaft(path)
            heads.append(_head(path))
        groups.setdefault((mark.kind, LAYERS[mark.purpose]), []).append(path)
    glued = [key for key in groups if key[0] is LineKind.GLUE]
    if glued:  # along a line that is cut or drawn it would be taken for that, and says no more than that
        beside_cut = polygon(part.template.outer, pose).exterior.buffer(ALONG_CUT)
        lines = shapely.union_all([*map(line_string, _named_surface(part, pose))])
        silent = shapely.union_all([beside_cut, lines.buffer(ALONG_DRAWN)])
        for key in glued:
            groups[key] = _without(groups[key], silent)
    for kind, lines in surface.items():
        groups.setdefault((kind, Layer.SURFACE), []).extend(_without(lines, silence))
    drawn: list[Drawn] = [
        Stroke(line_style(kind), tuple(paths), layer, clip, "figure") for (kind, layer), paths in groups.items()
    ]
    if heads:
        drawn.append(Fill(0.0, tuple(heads), Layer.NOTES, clip, "figure"))
    return tuple(drawn)


def _only_a_dot(path: Path, window: Box) -> bool:
    """Tell whether so little of a dotted line lies in a window that it is no line there; the tile beside it shows it."""
    inside = line_string(path).intersection(as_polygon(window)).length
    return bool(path.length > inside and inside < LEAST_DOTTED)


def _named_surface(part: Part, pose: Pose) -> Iterator[Path]:
    """Yield the lines of a part's surface that have a name, such as those of kerbs."""
    for mark in part.marks:
        if mark.purpose is Purpose.SURFACE and mark.name and mark.kind is LineKind.DRAW and len(mark.path.points) > 1:
            yield mark.path.placed(pose)


def waste_strokes(
    part: Part,
    pose: Pose,
    type_: Setter,
    clip: Box | None = None,
    quiet: Iterable[Box] = (),
    taken: shapely.Geometry | None = None,
) -> tuple[Drawn, ...]:
    """Return the hatching of what is cut out and thrown away, with the word “remove” where it fits; none in ``quiet`` boxes, nor
    where the area is ``taken`` by something else.

    The strips of rabbets, of which only the foam goes, are hatched without the word.
    """
    silence = shapely.union_all([*(as_polygon(b) for b in quiet), *((taken,) if taken is not None else ())])
    hatch: list[Path] = []
    words: list[Drawn] = []
    for hole in part.template.holes:
        waste = polygon(hole, pose)
        if waste.buffer(-HATCH_LEAST / 2).is_empty:
            continue
        inner = waste.buffer(-0.8).difference(silence)
        if clip:
            inner = inner.intersection(as_polygon(clip.grown(-0.5)))
        word = next((b for b in (word_in("remove", s, inner, type_) for s in (NOTE, LEAST)) if b), None)
        if word:
            inner = inner.difference(word.area(0.8))
            words += word.drawn(type_)
        hatch += _hatching(inner, min(9.0, max(HATCH_GAP, waste.area**0.5 / 12)), waste.centroid)
    for edge in part.edges:
        if edge.rabbet is not None:
            strip = shapely.Polygon(pose.apply_all(tuple(rabbet_strip(edge, polygon(part.outline)).exterior.coords)))
            foam = strip.intersection(polygon(part.template, pose)).buffer(-0.5).difference(silence)
            if clip:
                foam = foam.intersection(as_polygon(clip.grown(-0.5)))
            hatch += _hatching(foam, HATCH_GAP, strip.centroid)
    drawn: list[Drawn] = [Stroke(HATCH, tuple(hatch), Layer.NOTES, clip, "artifact")] if hatch else []
    return (*drawn, *words)


def is_texture(mark: Mark) -> bool:
    """Say whether a mark is one of many like lines of a surface, none of which matters alone."""
    return mark.purpose is Purpose.SURFACE and not mark.name


def quiet_lines(part: Part, pose: Pose, surface: bool = True) -> shapely.Geometry:
    """Return, on the page, every line of the part's marks that words must keep off: all but a texture, which yields. Lines of the
    surface that have a name, copied one by one, are among them unless ``surface`` is False."""
    return _quiet_lines(part, pose=pose, surface=surface)


@remembered_few
def _quiet_lines(part: Part, *, pose: Pose, surface: bool) -> shapely.Geometry:
    lines = []
    for mark in template_marks(part):
        if is_texture(mark) or len(mark.path.points) < 2 or (mark.purpose is Purpose.SURFACE and not surface):
            continue
        path = mark.path.placed(pose)
        lines.append(line_string(path))
        if mark.purpose in ARROWS:
            lines.append(line_string(_head(_shaft(path))))
    return shapely.union_all(lines) if lines else shapely.GeometryCollection()


def outline_promise(
    page: int, part: Part, copy: int, pose: Pose, window: Box | None = None, row: int = 0, column: int = 0
) -> OutlinePromise:
    """Return the promise for one drawn copy: the template's rings in the part's own coordinates."""
    rings = tuple(path.points for path in part.template.paths)
    return OutlinePromise(page, part.id, part.letter, copy, pose, rings, window, row, column, CUT.width)


def mark_promises(
    page: int, part: Part, copy: int, drawn: tuple[Drawn, ...], window: Box | None = None
) -> tuple[MarkPromise, ...]:
    """Return the promise for the marks of one drawn copy: what ``mark_strokes`` drew along which a hand scores, folds, draws or glues."""
    return tuple(
        MarkPromise(
            page,
            part.id,
            copy,
            stroke.style.name,
            tuple(path.travelled for path in stroke.paths),
            stroke.style.width,
            stroke.style.dash,
            window,
        )
        for stroke in drawn
        if isinstance(stroke, Stroke) and stroke.style in MARKED
    )


def _shaft(path: Path) -> Path:
    """Return an arrow without its barbs: up to where the line first turns back on itself."""
    for count, (one, other) in enumerate(pairwise(path.edges), 1):
        (ax, ay), (bx, by) = one.direction(one.end), other.direction(other.start)
        if ax * bx + ay * by < -0.5:
            return Path(path.edges[:count], closed=False)
    return path


def _head(path: Path) -> Path:
    """Return an arrow head at the end of a line: 3.2 mm long, a third as wide on each side."""
    last = path.edges[-1]
    (x, y), (dx, dy) = last.end, last.direction(last.end)
    back = atan2(-dy, -dx)
    return polyline((last.end, *(polar(HEAD / cos(0.3), back + side, (x, y)) for side in (0.3, -0.3))), closed=True)


def _without(paths: list[Path], silence: shapely.Geometry) -> list[Path]:
    """Return the lines with what lies in the silent area cut out of them."""
    lines = [path.travelled for path in paths]
    shapes = shapely.linestrings(
        np.concatenate([np.asarray(line) for line in lines]),
        indices=np.repeat(range(len(lines)), [len(x) for x in lines]),
    )
    touched = shapely.intersects(shapes, silence)
    left = [path for path, hit in zip(paths, touched, strict=True) if not hit]
    for rest in shapely.get_parts(shapely.difference(shapes[touched], silence)):
        if rest.length > 0.2:
            left.append(polyline(tuple(map(tuple, shapely.get_coordinates(rest).tolist()))))
    return left


def _hatching(area: shapely.Geometry, gap: float, through: shapely.Point) -> list[Path]:
    """Return lines at 45 degrees, ``gap`` apart, inside the area; they meet across seams, for one of them aims at ``through``."""
    if area.is_empty:
        return []
    left, bottom, right, top = area.bounds
    tall = top - bottom
    step = gap * 2**0.5
    first = left - tall + (through.x - through.y + bottom - left + tall) % step
    starts = np.arange(first, right, step)
    ends = np.stack(
        [
            np.stack([starts, np.full_like(starts, bottom)], -1),
            np.stack([starts + tall, np.full_like(starts, top)], -1),
        ],
        1,
    )
    pieces = shapely.get_parts(shapely.intersection(shapely.linestrings(ends), area))
    pieces = pieces[(shapely.get_type_id(pieces) == 1) & (shapely.length(pieces) > 1.0)]
    return [polyline(tuple(map(tuple, shapely.get_coordinates(p).tolist()))) for p in pieces]
