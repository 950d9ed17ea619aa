"""Which template stands on which page, and how it lies there: few pages, packed by real outlines.

Everything is mm on the page. A template whose label does not fit inside it is packed together with its label as one piece.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil, hypot

import shapely

from publisher.basics import Point, Pose
from publisher.geometry import Part
from publisher.material import Piece, pack
from publisher.pages.draft import Context
from publisher.pages.frame import LEAST_SQUARE, SQUARE, Frame
from publisher.pages.label_room import Room
from publisher.pages.labels import Label, blocks, says
from publisher.pages.part_notes import mark_notes
from publisher.pages.part_strokes import quiet_lines, region_polygon
from publisher.pages.rectangles import as_polygon
from publisher.pages.styles import NOTE
from publisher.pages.template_forms import (
    GAP,
    Form,
    beside,
    centring,
    cover,
    holds,
    least_rectangle,
    reach,
    sides,
)
from publisher.pages.template_frames import frames, free_area

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


def samples(context: Context, part: Part) -> tuple[Sample, ...]:
    """Return what is printed of a part: one template to trace, or every copy to paste; mirrored ones after the others."""
    if context.design.use == "trace":
        return (Sample(part, 0, False),)
    plain = part.count - part.mirrored
    return tuple(Sample(part, n, plain < n <= part.count) for n in range(1, context.copies(part) + 1))


def fits_page(planner: "Planner", part: Part) -> bool:
    """Say whether a template of the part, with its label, fits one page of the paper at any angle."""
    context = planner.context
    sample = samples(context, part)[0]
    shape = shapely.Polygon(part.template.outer.points)
    lives = [f.live for f in frames(context.paper, LEAST_SQUARE)]
    narrow = min(sides(shapely.oriented_envelope(shape)))
    far = max(hypot(v.width, v.height) for v in lives)
    if narrow > max(min(v.width, v.height) for v in lives) or reach(shape) > far:
        return False
    if all(form.label is None for form in planner.forms(sample)):
        left, bottom, right, top = shape.bounds
        wide, tall = right - left, top - bottom
        for free in (free_area(f) for f in frames(context.paper, SQUARE)):
            if any(holds(free, *size) for size in ((wide, tall), (tall, wide))):
                return True
    return any(
        planner.page((sample,), square, angles)
        for square in (SQUARE, LEAST_SQUARE)
        for angles in planner.angle_sets(part)
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
        yield tuple(dict.fromkeys((*UPRIGHT, 180.0, 270.0, *least_rectangle(part))))
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
        return tuple(beside(sample.part, turn, sample.mirrored, labels) for turn in UPRIGHT)


def part_room(context: Context, part: Part, pose: Pose) -> Room:
    """Return the free places inside a part for words: clear of its edges, its marks and the words of its marks."""
    notes = [as_polygon(n.box) for n in mark_notes(part, pose, context.type)]
    return Room(region_polygon(part.template, pose), shapely.union_all([quiet_lines(part, pose), *notes]))
