"""Line drawings of the piece and photographs, placed in a box of a page."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import product
from math import ceil
from types import MappingProxyType

import shapely

from publisher.basics import Box, Finding, Layer, Path, Point, Pose, Rule, Severity, changed, polyline, remembered_few
from publisher.basics.units import INCH_MM
from publisher.basics.wording import say_length
from publisher.design import Design, PicturePlan
from publisher.joints import Drawing, DrawnLine
from publisher.pages.model import Drawn, Fill, LineStyle, Picture, Stroke, Words
from publisher.pages.type import (
    LEADER,
    LEAST,
    NOTE,
    PICTURE_ADDED,
    PICTURE_ADDED_CONTOUR,
    PICTURE_BEHIND,
    PICTURE_CONTOUR,
    PICTURE_CUE,
    PICTURE_DETAIL,
    PICTURE_GHOST,
    PICTURE_GUIDE,
    PICTURE_HATCH,
    PICTURE_OUTLINE,
    PICTURE_RING,
    PICTURE_THERE,
    PICTURE_THERE_CONTOUR,
    Setter,
    TypeStyle,
    tidy,
)

FIGURE = "figure"  # tag of a figure; what it shows may follow after a colon
LABEL_CLEAR = 0.3  # round a label
LABEL_OUT = 1.0  # mm that a label may reach out of the box of its picture
REACH = 20  # steps of its own size that a label may move
FINER = 5  # steps that its own size has where it only gives way to a line
LEAST_PHOTO_DOTS = 150.0  # to the inch
FINEST_DOT = INCH_MM / LEAST_PHOTO_DOTS  # mm of a photograph's pixel at most
FITS = 1e-9  # share by which a photograph that fills its box may fall short of it
FLOATING = 2.5  # mm: a label farther than this from every outline gets a line to it

COARSE_PHOTO = Rule(
    "pages/photo-too-coarse",
    "A photograph has the pixels that its place needs",
    f"below {LEAST_PHOTO_DOTS:g} dots to the inch a builder cannot see how parts meet: a coarser one is placed smaller",
    Severity.WARNING,
)

WEIGHTS: Mapping[str, LineStyle] = MappingProxyType(
    {
        "outline": PICTURE_OUTLINE,
        "contour": PICTURE_CONTOUR,
        "detail": PICTURE_DETAIL,
        "ghost": PICTURE_GHOST,
        "hatch": PICTURE_HATCH,
        "guide": PICTURE_GUIDE,
        "there": PICTURE_THERE,
        "there_contour": PICTURE_THERE_CONTOUR,
        "added": PICTURE_ADDED,
        "added_contour": PICTURE_ADDED_CONTOUR,
        "ring": PICTURE_RING,
        "behind": PICTURE_BEHIND,
        "leader": LEADER,
        "cue": PICTURE_CUE,
        "head": LEADER,
    }
)  # read only: lines are drawn in its order, and equal bytes need that order in every process
OUTLINES = {"outline": PICTURE_OUTLINE, "contour": PICTURE_CONTOUR}  # weights of what a silhouette is drawn with
SMALL_OUTLINES = {"outline": PICTURE_DETAIL, "contour": PICTURE_OUTLINE}  # where slots and arms of it would close up
SMALL_SILHOUETTE = 20.0  # mm
HEAD = "head"  # weight of a line that is the border of a black area: the head of an arrow


def drawn_size(drawing: Drawing, width: float, height: float, largest: float = 1.0) -> tuple[float, float, float]:
    """Return (scale, width, height) in which a drawing fits into a box of this size (mm), never above scale ``largest``."""
    scale = min(width / max(drawing.width, 1e-6), height / max(drawing.height, 1e-6), largest)
    return scale, drawing.width * scale, drawing.height * scale


def drawing_pose(drawing: Drawing, box: Box, largest: float = 1.0) -> tuple[Pose, float]:
    """Return how ``place_drawing`` carries a drawing to the page: the pose of its points times the scale."""
    scale, width, height = drawn_size(drawing, box.width, box.height, largest)
    return Pose((box.left + box.right - width) / 2, (box.bottom + box.top - height) / 2), scale


def described(drawn: Iterable[Drawn], shows: str, *, figures_only: bool = False) -> tuple[Drawn, ...]:
    """Return what is drawn, words too, as one figure that ``shows`` stands for; as an ornament where that is "": then words beside it
    say as much. ``figures_only``: headings, captions and lists among it stay what they are."""
    tag = f"{FIGURE}:{tidy(shows)}" if shows else "artifact"
    return tuple(
        changed(thing, tag=tag)
        if isinstance(thing, Stroke | Fill | Words) and (thing.tag == FIGURE or not figures_only)
        else thing
        for thing in drawn
    )


def place_drawing(
    setter: Setter,
    drawing: Drawing,
    box: Box,
    *,
    largest: float = 1.0,
    labels: bool = True,
    details: bool = True,
    layer: Layer = Layer.PAGE,
    style: TypeStyle | None = None,
) -> tuple[Drawn, ...]:
    """Draw a line drawing in the middle of a box, as large as fits. Not at true size: it is a picture, nothing is measured on it.

    ``details`` False leaves texture and marks out, as for a silhouette of a few millimetres. ``style``: of its words.
    """
    return _placed(setter, drawing, box=box, largest=largest, labels=labels, details=details, layer=layer, style=style)


@remembered_few  # a page is set to know its height, with its numbers, and without those of other pages
def _placed(
    setter: Setter,
    drawing: Drawing,
    *,
    box: Box,
    largest: float,
    labels: bool,
    details: bool,
    layer: Layer,
    style: TypeStyle | None,
) -> tuple[Drawn, ...]:
    pose, scale = drawing_pose(drawing, box, largest)
    x, y, width, height = pose.x, pose.y, drawing.width * scale, drawing.height * scale
    drawn: list[Drawn] = []
    tag = f"{FIGURE}:{drawing.alt}"
    outlines: tuple[Path, ...] = ()
    every: list[Path] = []
    silhouette = SMALL_OUTLINES if max(width, height) < SMALL_SILHOUETTE else OUTLINES
    of_weight: dict[str, list[DrawnLine]] = {}
    for line in drawing.lines:
        of_weight.setdefault(line.weight, []).append(line)
    for weight, line_style in (WEIGHTS if details else silhouette).items():
        paths = tuple(
            polyline(tuple((x + px * scale, y + py * scale) for px, py in line.points))
            for line in of_weight.get(weight, ())
        )
        every += paths
        if weight in OUTLINES:
            outlines += paths
        if paths:
            drawn.append(Stroke(line_style, paths, layer, tag=tag))
    heads = tuple(
        polyline(tuple((x + px * scale, y + py * scale) for px, py in line.points[:-1]), closed=True)
        for line in of_weight.get(HEAD, ())
    )
    if heads:
        drawn.append(Fill(0.0, heads, layer, tag=tag))
    if labels and drawing.labels:
        style = (style or (NOTE if min(width, height) > 40 else LEAST).bold()).tagged(tag)
        taken: list[Box] = []
        lines = shapely.MultiLineString([path.points for path in outlines])
        crossed = shapely.STRtree([shapely.LineString(path.points) for path in (*every, *heads)])
        for label in drawing.labels:
            spot = _free_spot(setter, label.text, style, (x + label.at[0] * scale, y + label.at[1] * scale), taken)
            spot = _kept_in(spot, box.grown(LABEL_OUT))
            rooms = (box.grown(LABEL_OUT), box.grown(LABEL_OUT + spot.height))
            spot = _uncrossed(spot, setter.tail(label.text, style), crossed, taken, rooms)
            taken.append(spot)
            drawn += (replace(one, tag=tag) for one in _leader(spot, lines, layer))
            middle = (spot.left + spot.right) / 2
            drawn += setter.line(label.text, style, middle, spot.bottom + LABEL_CLEAR, align="centre", layer=layer)
    return tuple(drawn)


def _kept_in(spot: Box, room: Box) -> Box:
    """Return a label's box moved into a room by as little as it takes."""
    right = max(room.left - spot.left, 0.0) - max(spot.right - room.right, 0.0)
    up = max(room.bottom - spot.bottom, 0.0) - max(spot.top - room.top, 0.0)
    return spot.moved(right, up)


def _uncrossed(spot: Box, tail: float, lines: shapely.STRtree, taken: list[Box], rooms: Iterable[Box]) -> Box:
    """Return a label's box, whose letters hang ``tail`` mm lower, moved by less than its own size to where no line runs through it, in the
    first of some rooms that has such a place: words are larger on a screen than those that the picture has room for. Else it stays."""
    for room in rooms:
        for right, up in FINE_STEPS:
            box = spot.moved(right * spot.width, up * spot.height)
            letters = replace(box, bottom=box.bottom - tail).grown(-LABEL_CLEAR / 2)
            if ((right or up) and box.beyond(room) > 0.0) or any(box.overlap(other) > 0.0 for other in taken):
                continue
            if not len(lines.query(shapely.box(*letters.sides), predicate="intersects")):
                return box
    return spot


def _leader(spot: Box, lines: shapely.MultiLineString, layer: Layer) -> tuple[Stroke, ...]:
    """Return a line from a label that stands off by itself to the nearest line of the drawing; none for one on its part, which
    has outlines on all four sides, nor for one close beside it."""
    if lines.is_empty:
        return ()
    x, y = (spot.left + spot.right) / 2, (spot.bottom + spot.top) / 2
    left, bottom, right, top = lines.bounds
    ends = ((min(left, x) - 1, y), (max(right, x) + 1, y), (x, min(bottom, y) - 1), (x, max(top, y) + 1))
    rays = shapely.linestrings([((x, y), end) for end in ends])
    away, start = (
        float(shapely.distance(shapely.Point(x, y), lines)),
        max(spot.right - spot.left, spot.top - spot.bottom) / 2,
    )
    if away < FLOATING + start or shapely.intersects(lines, rays).all():
        return ()
    (_, near) = shapely.shortest_line(shapely.Point(x, y), lines).coords
    share = start / away
    begin = (x + (near[0] - x) * share, y + (near[1] - y) * share)
    return (Stroke(LEADER, (polyline((begin, (float(near[0]), float(near[1])))),), layer, tag=FIGURE),)


def _free_spot(setter: Setter, text: str, style: TypeStyle, at: Point, taken: list[Box]) -> Box:
    """Return the box of a label at its point, moved by its own size as often as others stand there.

    Raises ValueError when thousands of labels share a point: steps of its own size always find room among fewer.
    """
    wide, high = setter.width(text, style) + 2 * LABEL_CLEAR, setter.cap(style) + 2 * LABEL_CLEAR
    here = Box(at[0] - wide / 2, at[1] - high / 2, at[0] + wide / 2, at[1] + high / 2)
    for right, up in STEPS:
        box = here.moved(right * wide, up * high)
        if all(box.overlap(other) <= 0.0 for other in taken):
            return box
    raise ValueError(f"{len(taken)} labels stand round the point of “{text}”")


def _nearness(step: tuple[int, ...]) -> tuple[int, ...]:
    """Rank a step by how near it is; of equal ones first to the right, then down, to the left, up."""
    x, y = step
    way = 0 if x > abs(y) else 1 if -y >= abs(x) else 2 if -x > abs(y) else 3
    return max(abs(x), abs(y)), abs(x) + abs(y), way, x, y


STEPS = tuple(sorted(product(range(-REACH, REACH + 1), repeat=2), key=_nearness))
FINE_STEPS = tuple(
    (right / FINER, up / FINER)
    for right, up in sorted(product(range(-FINER, FINER + 1), repeat=2), key=lambda step: _nearness(step)[1:])
)


def photo_size(design: Design, name: str, width: float, height: float) -> tuple[float, float] | None:
    """Return the size in mm at which a photograph fits into a box of this size, never so large that it is too coarse; None when
    the folder has no such picture."""
    file = design.file(name)
    if file is None or not file.width_px or not file.height_px:
        return None
    scale = min(width / file.width_px, height / file.height_px, FINEST_DOT)
    return file.width_px * scale, file.height_px * scale


def coarse_photo(design: Design, plan: PicturePlan, width: float, height: float, subject: str) -> tuple[Finding, ...]:
    """Return the finding for a photograph that fills no box of this size (mm) finely enough; () when it does."""
    size, file = photo_size(design, plan.target, width, height), design.file(plan.target)
    if size is None or file is None or max(size[0] / width, size[1] / height) > 1.0 - FITS:
        return ()
    message = f"the photograph “{plan.target}” has {file.width_px} × {file.height_px} pixels: it is placed only "
    message += f"{say_length(size[0])} wide, at {LEAST_PHOTO_DOTS:g} dots to the inch"
    hint = f"save it with {ceil(height / FINEST_DOT)} pixels or more from top to bottom, and it fills its place on the page"
    return (COARSE_PHOTO.found(message, subject=subject, hint=hint, place=plan.place),)


def place_photo(design: Design, name: str, box: Box, alt: str) -> tuple[Drawn, ...]:
    """Place a photograph in the middle of a box, as large as fits."""
    size = photo_size(design, name, box.width, box.height)
    if size is None:
        return ()
    x, y = (box.left + box.right - size[0]) / 2, (box.bottom + box.top - size[1]) / 2
    return (Picture(name, Box(x, y, x + size[0], y + size[1]), alt, Layer.PAGE),)
