"""Which template stands on which page, and how it lies there: few pages, packed by real outlines.

Everything is mm on the page. A template whose label does not fit inside it is packed together with its label as one piece.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from math import atan2, ceil, degrees, hypot

import numpy as np
import shapely

from publisher.basics import Box, Point, Pose
from publisher.geometry import Part
from publisher.material import Piece, pack
from publisher.pages.draft import Context
from publisher.pages.frame import LEAST_SQUARE, SQUARE, Corner, Frame, make_frame
from publisher.pages.label_room import Room
from publisher.pages.labels import Label, blocks, says
from publisher.pages.model import Paper
from publisher.pages.part_strokes import mark_notes, quiet_lines, region_polygon
from publisher.pages.styles import NOTE

GAP = 3.0  # least paper between two parts
AWAY = 4.0  # least paper between a part and words or furniture that are not its own
CORNERS: tuple[Corner, ...] = ("lower_right", "lower_left", "upper_right", "upper_left")
UPRIGHT = (0.0, 90.0)
FINE = tuple(float(a) for a in range(0, 180, 5))


@dataclass(frozen=True, slots=True)
class Sample:
    """One drawn copy to be placed: a part, which copy (0: the template that is traced), whether it is mirrored."""

    part: Part
    copy: int
    mirrored: bool


@dataclass(frozen=True, slots=True)
class Lying:
    """A copy on a page. ``label_at``: where the label's lower left corner goes; ``label_turn`` is 0 unless it fits only so."""

    sample: Sample
    pose: Pose
    label: Label
    label_at: Point
    label_turn: float


@dataclass(frozen=True, slots=True)
class Shown:
    """One page of templates."""

    frame: Frame
    lying: tuple[Lying, ...]


@dataclass(frozen=True, slots=True)
class Form:
    """How a sample goes to the packer: its piece at a first turn, and a label that lies beside the part in that piece."""

    turn: float
    ring: tuple[Point, ...]
    label: Label | None = None
    label_at: Point = (0.0, 0.0)


def samples(context: Context, part: Part) -> tuple[Sample, ...]:
    """Return what is printed of a part: one template to trace, or every copy to paste; mirrored ones after the others."""
    if context.design.use == "trace":
        return (Sample(part, 0, False),)
    plain = part.count - part.mirrored
    return tuple(Sample(part, n, plain < n <= part.count) for n in range(1, context.copies(part) + 1))


def frames(paper: Paper, square: float) -> tuple[Frame, ...]:
    """Return the page frames to try, the usual one first."""
    return tuple(page_frame(paper, landscape, square, corner) for landscape in (False, True) for corner in CORNERS)


@cache
def page_frame(paper: Paper, landscape: bool, square: float, corner: Corner) -> Frame:
    """Return a frame; made once for each set of arguments."""
    return make_frame(paper, landscape, square, corner)


def free_area(frame: Frame) -> shapely.Polygon:
    """Return where templates may lie: the live area less what is blocked, with paper between."""
    live = frame.live
    area = shapely.box(live.left, live.bottom + AWAY - 1.0, live.right, live.top - AWAY + 1.0)
    for box in frame.blocked:
        grown = box.grown(AWAY / 2)
        area = area.difference(shapely.box(grown.left, grown.bottom, grown.right, grown.top))
    return area


def fits_page(planner: "Planner", part: Part) -> bool:
    """Say whether a template of the part, with its label, fits one page of the paper at any angle."""
    context = planner.context
    sample = samples(context, part)[0]
    shape = shapely.Polygon(part.template.outer.points)
    lives = [f.live for f in frames(context.paper, LEAST_SQUARE)]
    narrow = min(_sides(shapely.oriented_envelope(shape)))
    far = max(hypot(v.width, v.height) for v in lives)
    if narrow > max(min(v.width, v.height) for v in lives) or _reach(shape) > far:
        return False
    if all(form.label is None for form in planner.forms(sample)):
        left, bottom, right, top = shape.bounds
        wide, tall = right - left, top - bottom
        for free in (free_area(f) for f in frames(context.paper, SQUARE)):
            if any(_holds(free, *size) for size in ((wide, tall), (tall, wide))):
                return True
    return any(
        planner.page((sample,), square, angles)
        for square in (SQUARE, LEAST_SQUARE)
        for angles in planner.angle_sets(part)
    )


def _sides(rectangle: shapely.Geometry) -> tuple[float, float]:
    a, b, c = shapely.get_coordinates(rectangle)[:3]
    return (float(hypot(*(b - a))), float(hypot(*(c - b))))


def _reach(shape: shapely.Polygon) -> float:
    """Return the greatest distance between two points of a shape."""
    corners = shapely.get_coordinates(shape.convex_hull.simplify(0.1))
    apart = corners[:, None] - corners[None]
    return float(np.hypot(apart[..., 0], apart[..., 1]).max())


def _holds(free: shapely.Polygon, wide: float, tall: float) -> bool:
    """Say whether an upright rectangle fits into one of the four corners of an area."""
    left, bottom, right, top = free.bounds
    return any(
        free.covers(shapely.box(x, y, x + wide, y + tall)) for x in (left, right - wide) for y in (bottom, top - tall)
    )


def plan(planner: "Planner", wanted: tuple[Sample, ...]) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
    """Place the samples on as few pages as can be found; return the pages, and the samples that fit none."""
    pages, left = planner.pages(wanted, SQUARE)
    if left or len(pages) > planner.bound(wanted):
        tight, left_tight = planner.pages(wanted, LEAST_SQUARE)
        if (len(left_tight), len(tight)) < (len(left), len(pages)):
            pages, left = tight, left_tight
    return tuple(planner.straightened(page) for page in pages), left


@lru_cache(maxsize=2)
def planner_of(context: Context) -> "Planner":
    """Return the planner of a context: templates and tiles share what it has worked out."""
    return Planner(context)


class Planner:
    """Places samples for one context; keeps what it has worked out about each part."""

    def __init__(self, context: Context) -> None:
        """Start with nothing known."""
        self.context = context
        self._rooms: dict[tuple[str, float, bool, int], tuple[Label, Point] | None] = {}
        self._forms: dict[tuple[str, bool], tuple[Form, ...]] = {}
        self._fits: dict[str, bool] = {}

    def fits(self, part: Part) -> bool:
        """Say whether a template of the part, with its label, fits one page of the paper at any angle."""
        if part.id not in self._fits:
            self._fits[part.id] = fits_page(self, part)
        return self._fits[part.id]

    def bound(self, wanted: tuple[Sample, ...]) -> int:
        """Return the least number of pages by area."""
        room = max(free_area(f).area for f in frames(self.context.paper, SQUARE))
        area = sum(region_polygon(s.part.template).area for s in wanted)
        return ceil(float(area) / float(room))

    def angle_sets(self, part: Part) -> Iterator[tuple[float, ...]]:
        """Yield turns to try: upright, then the part's least rectangle along the page, then every 5 degrees."""
        yield UPRIGHT
        yield tuple(dict.fromkeys((*UPRIGHT, 180.0, 270.0, *_least_rectangle(part))))
        yield FINE

    def pages(self, wanted: tuple[Sample, ...], square: float) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
        """Fill page after page, each with the frame that takes most of what is left."""
        left = wanted
        pages: list[Shown] = []
        while left:
            page = next((p for step in range(3) if (p := self._fullest(left, square, step))), None)
            if page is None:
                break
            pages.append(page)
            here = {(y.sample.part.id, y.sample.copy) for y in page.lying}
            left = tuple(s for s in left if (s.part.id, s.copy) not in here)
        return tuple(pages), left

    def _fullest(self, left: tuple[Sample, ...], square: float, step: int) -> Shown | None:
        angles = {s.part.id: list(self.angle_sets(s.part))[step] for s in left}
        return self.page(left, square, angles)

    def page(
        self, wanted: tuple[Sample, ...], square: float, angles: dict[str, tuple[float, ...]] | tuple[float, ...]
    ) -> Shown | None:
        """Return the fullest page that the frames of this square give; None when not one sample fits."""
        best: tuple[float, Shown] | None = None
        area = sum(region_polygon(s.part.template).area for s in wanted)
        choices = frames(self.context.paper, square)
        if square < SQUARE:
            choices = choices[::2]  # the second round: fewer corners
        for frame in choices:
            free = free_area(frame)
            if best and area > free.area and frame.calibration and frame.landscape == best[1].frame.landscape:
                continue  # they will not all go on one page: the corner matters little
            for first in range(self._choices(wanted)):
                lying = self._try(wanted, free, angles, first)
                if not lying:
                    continue
                filled = sum(region_polygon(y.sample.part.template).area for y in lying)
                if best is None or filled > best[0] + 1e-6:
                    best = (filled, Shown(frame, lying))
                if len(lying) == len(wanted):
                    return Shown(frame, lying)
        return best[1] if best else None

    def straightened(self, page: Shown) -> Shown:
        """Return the page with every part as its designer drew it, unturned, when they fit so; the square in the usual corner first."""
        if all(y.pose.turn == 0.0 for y in page.lying):
            return page
        here = tuple(y.sample for y in page.lying)
        square = page.frame.calibration.width if page.frame.calibration else 0.0
        for frame in dict.fromkeys((*frames(self.context.paper, square)[:4:2], page.frame)):
            lying = self._try(here, free_area(frame), (0.0,), 0)
            if len(lying) == len(here):
                return Shown(frame, lying)
        return page

    def _choices(self, wanted: tuple[Sample, ...]) -> int:
        return max(len(self.forms(s)) for s in wanted)

    def _try(
        self,
        wanted: tuple[Sample, ...],
        free: shapely.Polygon,
        angles: dict[str, tuple[float, ...]] | tuple[float, ...],
        choice: int,
    ) -> tuple[Lying, ...]:
        pieces = []
        chosen: dict[str, tuple[Sample, Form]] = {}
        for sample in wanted:
            forms = self.forms(sample)
            form = forms[min(choice, len(forms) - 1)]
            key = f"{sample.part.id}/{sample.copy}"
            chosen[key] = (sample, form)
            turns = (0.0,) if form.label else angles[sample.part.id] if isinstance(angles, dict) else angles
            pieces.append(Piece(key, (form.ring,), turns))
        ring = tuple((float(x), float(y)) for x, y in free.exterior.coords[:-1])
        laid = pack(tuple(pieces), (ring,), GAP, 1)
        items = laid[0] if laid else ()
        rings = [shapely.Polygon(i.pose.apply_all(chosen[i.part][1].ring)) for i in items]
        dx, dy = centring(rings, free)
        return tuple(self._lying(*chosen[i.part], replace(i.pose, x=i.pose.x + dx, y=i.pose.y + dy)) for i in items)

    def _lying(self, sample: Sample, form: Form, pose: Pose) -> Lying:
        """Return the part's own pose from its piece's, and its label's place."""
        turn = (pose.turn + form.turn) % 360.0
        own = Pose(pose.x, pose.y, turn, sample.mirrored)
        if form.label:
            at = (form.label_at[0] + pose.x, form.label_at[1] + pose.y)
            return Lying(sample, own, form.label, at, 0.0)
        found = self.inside(sample, turn)
        lean = 0.0
        if found is None:  # upright words do not fit at this angle: they lie along the part
            lean = (turn + 90.0) % 180.0 - 90.0
            found = self.inside(sample, turn, lean)
        if found is None:
            raise AssertionError(f"the label of part {sample.part.id} lost its place")
        label, (x, y) = found
        return Lying(sample, own, label, (x + pose.x, y + pose.y), lean)

    def inside(self, sample: Sample, turn: float, lean: float = 0.0) -> tuple[Label, Point] | None:
        """Return the label and its place (from the part's origin) inside a part turned so; None when it does not fit.

        ``lean`` turns the words with the part.
        """
        key = (sample.part.id, turn - 1000.0 * lean, sample.mirrored, sample.copy)
        if key not in self._rooms:
            self._rooms[key] = self._search(sample, turn, lean)
        return self._rooms[key]

    def _search(self, sample: Sample, turn: float, lean: float) -> tuple[Label, Point] | None:
        pose = Pose(turn=(turn - lean) % 360.0, mirrored=sample.mirrored)
        room = part_room(self.context, sample.part, pose)
        said = says(self.context, sample.part, sample.copy, sample.mirrored)
        for labels in blocks(self.context.type, said):
            found = room.best(labels)
            if found:
                return found[0], Pose(turn=lean).apply(found[1])
        return None

    def forms(self, sample: Sample) -> tuple[Form, ...]:
        """Return how the sample may go to the packer: bare when its label fits inside, else with the label beside it."""
        key = (f"{sample.part.id}/{sample.copy}", sample.mirrored)
        if key not in self._forms:
            self._forms[key] = self._make_forms(sample)
        return self._forms[key]

    def _make_forms(self, sample: Sample) -> tuple[Form, ...]:
        if any(self.inside(sample, turn) for turn in UPRIGHT):
            shape = shapely.Polygon(Pose(mirrored=sample.mirrored).apply_all(sample.part.template.outer.points))
            return (Form(0.0, cover(shape)),)
        said = says(self.context, sample.part, sample.copy, sample.mirrored)
        labels = tuple(b for group in blocks(self.context.type, said, (NOTE,)) for b in group)
        return tuple(beside(sample, turn, labels) for turn in UPRIGHT)


def part_room(context: Context, part: Part, pose: Pose, within: Box | None = None) -> Room:
    """Return the free places inside a part for words: clear of its edges, its marks and the words of its marks."""
    area = region_polygon(part.template, pose)
    if within:
        area = area.intersection(shapely.box(within.left, within.bottom, within.right, within.top))
    notes = [
        shapely.box(n.box.left, n.box.bottom, n.box.right, n.box.top) for n in mark_notes(part, pose, context.type)
    ]
    return Room(area, shapely.union_all([quiet_lines(part, pose), *notes]))


def centring(laid: list[shapely.Polygon], free: shapely.Polygon) -> Point:
    """Return the shift (mm) that brings a group of laid pieces nearest to the middle of the free area's rectangle, within it."""
    if not laid:
        return (0.0, 0.0)
    group = shapely.union_all(laid)
    left, bottom, right, top = group.bounds
    a, b, c, d = free.bounds
    x, y = round((a + c - left - right) / 2, 2), round((b + d - bottom - top) / 2, 2)
    ground = free.buffer(0.01, join_style="mitre")
    shapely.prepare(ground)
    parts = (1.0, 0.8, 0.6, 0.4, 0.2, 0.0)
    for share_x, share_y in sorted(((i, j) for i in parts for j in parts), key=lambda s: -(s[0] + s[1])):
        moved = (x * share_x, y * share_y)
        if ground.covers(shapely.transform(group, lambda p, m=moved: p + m)):
            return moved
    return (0.0, 0.0)


def cover(shape: shapely.Polygon) -> tuple[Point, ...]:
    """Return a ring with few points that covers a shape and is nowhere more than 0.25 mm outside it: quick to pack."""
    rough = shapely.Polygon(shape.exterior).simplify(0.1)
    short = float(shapely.distance(rough, shapely.points(shapely.get_coordinates(shape.exterior))).max())
    if short > 1e-9:
        rough = rough.buffer(short + 1e-3, join_style="mitre", mitre_limit=1.5)
    return tuple((float(x), float(y)) for x, y in rough.exterior.coords[:-1])


def beside(sample: Sample, turn: float, labels: tuple[Label, ...]) -> Form:
    """Return the part with its label close beside it, as one piece: the pair with the least rectangle of all that were tried."""
    pose = Pose(turn=turn, mirrored=sample.mirrored)
    shape = shapely.Polygon(pose.apply_all(sample.part.template.outer.points))
    left, bottom, right, top = shape.bounds
    best: tuple[float, Label, Box] | None = None
    for label in labels:
        wide, tall = label.width, label.height
        for x, y, dx, dy in (
            (right, top - tall, -1, 0),
            (right, bottom, -1, 0),
            (left, bottom - tall, 0, 1),
            (right - wide, bottom - tall, 0, 1),
        ):
            box = _slid(shape, Box(x, y, x + wide, y + tall), dx, dy)
            size = (max(right, box.right) - min(left, box.left)) * (max(top, box.top) - min(bottom, box.bottom))
            if best is None or size < best[0] - 1e-6:
                best = (size, label, box)
    if best is None:
        raise ValueError("a label needs at least one block")
    _, label, box = best
    own = shapely.box(box.left, box.bottom, box.right, box.top)
    bridge = shapely.shortest_line(own, shape).buffer(1.0, quad_segs=2)
    joined = shapely.union_all([shape, own.buffer(AWAY - GAP, join_style="mitre"), bridge])
    return Form(turn, cover(joined), label, (box.left, box.bottom))


def _slid(shape: shapely.Polygon, box: Box, dx: int, dy: int) -> Box:
    """Move a box that stands beside a shape's rectangle towards the shape until it is ``GAP`` mm from it."""
    box = Box(box.left - dx * GAP, box.bottom - dy * GAP, box.right - dx * GAP, box.top - dy * GAP)
    for _ in range(100):
        moved = Box(box.left + dx, box.bottom + dy, box.right + dx, box.top + dy)
        if shape.distance(shapely.box(moved.left, moved.bottom, moved.right, moved.top)) < GAP:
            break
        box = moved
    return box


def _least_rectangle(part: Part) -> tuple[float, ...]:
    """Return the turns (degrees) that lay the part's least surrounding rectangle along the page's sides."""
    corners = shapely.get_coordinates(shapely.oriented_envelope(region_polygon(part.template)))
    dx, dy = corners[1] - corners[0]
    turn = -degrees(atan2(dy, dx))
    return tuple(round((turn + quarter) % 360.0, 6) for quarter in (0.0, 90.0, 180.0, 270.0))
