"""Which template stands on which page, and how it lies there: few pages, packed by real outlines.

Everything is mm on the page. A template that has no room for what it must not lose is packed together with its flag as one piece.
"""

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from itertools import accumulate
from math import ceil, hypot

import shapely

from publisher.basics import Pose
from publisher.geometry import Part, polygon
from publisher.material import Piece, pack
from publisher.pages.sheet import A4, LEAST_SQUARE, MOST_ON_A4, PAGE_SQUARE, Context, Frame
from publisher.pages.templates.page_words import Lying, Shown, with_words
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.template_forms import (
    PART_GAP,
    Form,
    centring,
    fits_turned,
    holds,
    least_rectangle,
    reach,
    sides,
)
from publisher.pages.templates.template_frames import frames, free_area
from publisher.pages.templates.template_labels import UPRIGHT, Labels, Sample, first_sample

FINE_TURNS = tuple(float(a) for a in range(0, 180, 5))
PLAN_STEPS = 3  # kinds of turns that are tried: see Planner.turns
FEW_PARTS = 8  # different parts; of more, fewer ways are tried on each page
ORDERS, ORDERS_OF_MANY = 4, 2  # the third and the fourth seldom fill a page of many parts better, and each takes longer
OFFERED = 1.5  # pages' worth, by area, of many parts that a page chooses from: time grows with the parts, not with their square
FEWER_AT_BEST = 0.9  # of the pages that a first one foretells: later ones are never so much fuller
MOST_LINES = MOST_ON_A4 - 400  # path operators of the parts on a page; frame, rulers, code and words take the others
FILLERS = 0.25  # as much of it again, of the smallest parts


def _lines(part: Part) -> int:
    """Return about how many path operators a template takes."""
    paths = (*part.template.paths, *(mark.path for mark in part.marks))
    return sum(len(path.edges) + 2 for path in paths)


@lru_cache(maxsize=2)
def planner_of(context: Context) -> "Planner":
    """Return the planner of a context: templates and tiles share what it has worked out."""
    return Planner(context)


class Planner:
    """Places samples for one context; keeps what it has worked out about each part."""

    def __init__(self, context: Context) -> None:
        """Start with nothing known."""
        self.context = context
        self.labels = Labels(context)
        self._fits: dict[str, bool] = {}
        self._turns: dict[tuple[str, int], tuple[float, ...]] = {}
        self._areas: dict[str, float] = {}
        self._gapped: dict[tuple[str, bool], float] = {}

    def fits(self, part: Part) -> bool:
        """Say whether a template of the part, with its flag if it needs one, fits one page of the paper at any angle."""
        if part.id not in self._fits:
            self._fits[part.id] = self._fits_page(part)
        return self._fits[part.id]

    def plan(self, wanted: tuple[Sample, ...]) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
        """Place the samples on as few pages as can be found; return the pages, and the samples that fit none.

        A template whose face is named nowhere, since its page has no room left for words, is packed anew with a flag.
        """
        pages, left = self._worded(wanted)
        while nameless := tuple(y.sample for page in pages for y in page.lying if self._nameless(y)):
            self.labels.flag(nameless)
            self._gapped.clear()
            again, left_again = self._worded(wanted)
            if len(left_again) > len(left):
                break
            pages, left = again, left_again
        return pages, left

    def _worded(self, wanted: tuple[Sample, ...]) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
        """Return filled pages with their words, and the samples that fit none."""
        pages, left = self.filled(wanted)
        return tuple(with_words(self.context, self.labels, self._straightened(page)) for page in pages), left

    def _nameless(self, lying: Lying) -> bool:
        """Say whether a face that must be named is named neither in the piece nor beside it."""
        bare = lying.flag is None and lying.beside is None and bool(self.labels.said(lying.sample).face)
        return bare and not self.labels.inside(lying.sample, lying.pose.turn).all

    def filled(self, wanted: tuple[Sample, ...]) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
        """Return the pages of ``plan`` before words stand beside parts and parts are laid straight: enough to count them."""
        pages, left = self._pages(wanted, PAGE_SQUARE)
        if left or len(pages) > max(self.bound(wanted), self._least_pages(wanted)):
            tight, left_tight = self._pages(wanted, LEAST_SQUARE, None if left else len(pages) - 1)
            if (len(left_tight), len(tight)) < (len(left), len(pages)):
                pages, left = tight, left_tight
        return pages, left

    def foreseen(self, wanted: tuple[Sample, ...]) -> int:
        """Return how many pages these samples will fill about, and hardly fewer: as many as a first page, the fullest, goes into
        them by area, less what a smaller square may save."""
        page = self._page(wanted, PAGE_SQUARE, 0)
        on_it = self._area(tuple(lying.sample for lying in page.lying)) if page else 0.0
        return int(FEWER_AT_BEST * self._area(wanted) / on_it) if on_it else 0

    def bound(self, wanted: tuple[Sample, ...]) -> int:
        """Return the least number of pages by area."""
        room = max(free_area(f).area for f in frames(self.context.paper, PAGE_SQUARE))
        return ceil(self._area(wanted) / float(room))

    def _least_pages(self, wanted: tuple[Sample, ...]) -> int:
        """Return a number of pages by area with which even the least square cannot do: parts take half the gap along, pages too."""
        room = max(float(free_area(f).buffer(PART_GAP / 2).area) for f in frames(self.context.paper, LEAST_SQUARE))
        return ceil(sum(self._area_with_gap(s) for s in wanted) / room)

    def _area_with_gap(self, sample: Sample) -> float:
        """Return the least area (mm²) that a sample takes with half the gap round it, its flag included."""
        key = (sample.part.id, sample.mirrored)
        if key not in self._gapped:
            forms = self.labels.forms(sample, self.turns(sample.part, 0)[:2])
            least = shapely.area(shapely.buffer([shapely.Polygon(f.ring) for f in forms], PART_GAP / 2 - 0.3)).min()
            self._gapped[key] = float(least)
        return self._gapped[key]

    def turns(self, part: Part, step: int) -> tuple[float, ...]:
        """Return turns to try: upright first, then the part's least rectangle along the page, last every 5 degrees."""
        key = (part.id, step)
        if key not in self._turns:
            quarters = (*UPRIGHT, 180.0, 270.0)
            first = UPRIGHT if self.context.design.use == "trace" else quarters  # many alike lie closer head to tail
            around = (first, (*quarters, *least_rectangle(part)), FINE_TURNS)[step]
            self._turns[key] = tuple(dict.fromkeys(around))
        return self._turns[key]

    def _area(self, wanted: Iterable[Sample]) -> float:
        total = 0.0
        for s in wanted:
            if s.part.id not in self._areas:
                self._areas[s.part.id] = float(polygon(s.part.template).area)
            total += self._areas[s.part.id]
        return total

    def _fits_page(self, part: Part) -> bool:
        sample = first_sample(self.context, part)
        shape = polygon(part.template.outer)
        lives = [f.live for f in frames(self.context.paper, LEAST_SQUARE)]
        narrow = min(sides(shapely.oriented_envelope(shape)))
        far = max(hypot(v.width, v.height) for v in lives)
        if narrow > max(min(v.width, v.height) for v in lives) or reach(shape) > far:
            return False
        turns = {turn for step in range(PLAN_STEPS) for turn in self.turns(part, step)}
        if not any(fits_turned(shape, turns, v.width, v.height) for v in lives):
            return False
        if self.labels.enough(sample) and self._lies_free(shape):
            return True
        return any(
            self._page((sample,), square, s) for square in (PAGE_SQUARE, LEAST_SQUARE) for s in range(PLAN_STEPS)
        )

    def _lies_free(self, shape: shapely.Polygon) -> bool:
        """Tell whether a part's rectangle, upright or on its side, fits what the furniture leaves free of a page."""
        left, bottom, right, top = shape.bounds
        wide, tall = right - left, top - bottom
        free = [free_area(frame) for frame in frames(self.context.paper, PAGE_SQUARE)]
        return any(holds(area, *size) for area in free for size in ((wide, tall), (tall, wide)))

    def _pages(
        self, wanted: tuple[Sample, ...], square: float, most: int | None = None
    ) -> tuple[tuple[Shown, ...], tuple[Sample, ...]]:
        """Fill page after page, each with the frame that takes most of what is left; give up when ``most`` will not do."""
        left = wanted
        pages: list[Shown] = []
        while left:
            if most is not None and len(pages) + self._least_pages(left) > most:
                break
            some = self._digestible(left)
            page = next((p for step in range(PLAN_STEPS) if (p := self._page(some, square, step))), None)
            if page is None:
                break
            pages.append(page)
            here = {(y.sample.part.id, y.sample.copy) for y in page.lying}
            left = tuple(s for s in left if (s.part.id, s.copy) not in here)
        return tuple(pages), left

    def _digestible(self, left: tuple[Sample, ...]) -> tuple[Sample, ...]:
        """Return the first samples, at least one, whose lines a page can hold together: all of them but for very fine parts."""
        room = MOST_LINES * max(1.0, self.context.paper.width * self.context.paper.height / A4)
        sums = accumulate(_lines(sample.part) for sample in left)
        return left[: max(1, sum(reached <= room for reached in sums))]

    def _page(self, wanted: tuple[Sample, ...], square: float, step: int) -> Shown | None:
        """Return the fullest page that the frames of this square give; None when not one sample fits."""
        choices = frames(self.context.paper, square)
        if len(wanted) > 1:  # a lone part may need any corner; for several, the lower and upper right tell nearly all
            choices = choices[::2] if square == PAGE_SQUARE else choices[::4]
        if len({(s.part.id, s.mirrored) for s in wanted}) <= FEW_PARTS:
            return self._fullest(wanted, choices, step, ORDERS)
        offered = self._offered(wanted, OFFERED * max(free_area(f).area for f in choices))
        for some in dict.fromkeys((offered, wanted)):  # all of them where none of the offered fits
            if some and (page := self._fullest(some, choices, step, ORDERS_OF_MANY)):
                return page
        return None

    def _fullest(self, wanted: tuple[Sample, ...], choices: tuple[Frame, ...], step: int, orders: int) -> Shown | None:
        """Return the fullest page of one of these frames; None when not one sample fits."""
        best: tuple[float, Shown] | None = None
        area = self._area(wanted)
        tries = max(len(self.labels.forms(s, self.turns(s.part, step))) for s in wanted)
        for frame in choices:
            free = free_area(frame)
            if best and area > free.area and frame.landscape == best[1].frame.landscape:
                continue  # they will not all go on one page: the corner matters little
            for choice in range(tries):
                lying = self._try(wanted, free, step, choice, orders)
                if not lying:
                    continue
                filled = self._area(y.sample for y in lying)
                if best is None or filled > best[0] + 1e-6:
                    best = (filled, Shown(frame, lying))
                if len(lying) == len(wanted):
                    return Shown(frame, lying)
        return best[1] if best else None

    def _offered(self, wanted: tuple[Sample, ...], most: float) -> tuple[Sample, ...]:
        """Return the largest of the samples that have ``most`` mm² together, and the smallest, which fill gaps, that have
        ``FILLERS`` of it; in their order."""
        largest = sorted(range(len(wanted)), key=lambda n: -self._area((wanted[n],)))
        taken: set[int] = set()
        for row, room in ((largest, most), (largest[::-1], most * FILLERS)):
            sums = accumulate(self._area((wanted[n],)) for n in row)
            taken.update(n for n, reached in zip(row, sums, strict=True) if reached <= room)
        return tuple(s for n, s in enumerate(wanted) if n in taken)

    def _straightened(self, page: Shown) -> Shown:
        """Return the page with every part as its designer drew it, unturned, when they fit so; the square in the usual corner first."""
        if all(y.pose.turn == 0.0 for y in page.lying):
            return page
        here = tuple(y.sample for y in page.lying)
        square = page.frame.calibration.width if page.frame.calibration else 0.0
        for frame in dict.fromkeys((*frames(self.context.paper, square)[:4:2], page.frame)):
            lying = self._try(here, free_area(frame), None, 0)
            if len(lying) == len(here):
                return Shown(frame, lying)
        return page

    def _try(
        self, wanted: tuple[Sample, ...], free: shapely.Polygon, step: int | None, choice: int, orders: int = ORDERS
    ) -> tuple[Lying, ...]:
        """Pack the samples on one page. ``step`` None: unturned. ``choice``: which form of those that carry a flag."""
        left, bottom, right, top = free.bounds
        groups: dict[tuple[str, bool], tuple[Form, list[Sample]]] = {}
        pieces: list[Piece] = []
        for sample in wanted:
            groups.setdefault((sample.part.id, sample.mirrored), (self._form(sample, step, choice), []))[1].append(
                sample
            )
        for (part, mirrored), (form, alike) in groups.items():
            bare = (0.0,) if step is None else self.turns(alike[0].part, step)
            a, b, c, d = shapely.Polygon(form.ring).bounds
            if form.label and (c - a > right - left or d - b > top - bottom):
                continue
            pieces.append(Piece(f"{part}/{mirrored:d}", (form.ring,), (0.0,) if form.label else bare, len(alike)))
        if not pieces:
            return ()
        ring = tuple((float(x), float(y)) for x, y in free.exterior.coords[:-1])
        laid = pack(tuple(pieces), (ring,), PART_GAP, 1, orders)
        found = []
        for item in laid[0] if laid else ():
            part_id, flag = item.part.rsplit("/", 1)
            form, alike = groups[part_id, flag == "1"]
            found.append((alike[item.copy - 1], form, item.pose))
        dx, dy = centring([shapely.Polygon(pose.apply_all(form.ring)) for _, form, pose in found], free)
        return tuple(self._lying(s, form, replace(pose, x=pose.x + dx, y=pose.y + dy)) for s, form, pose in found)

    def _form(self, sample: Sample, step: int | None, choice: int) -> Form:
        forms = self.labels.forms(sample, (0.0,) if step is None else self.turns(sample.part, step))
        return forms[min(choice, len(forms) - 1)]

    def _lying(self, sample: Sample, form: Form, pose: Pose) -> Lying:
        """Return the part's own pose from its piece's, and its flag's place; the other words wait until the page is full."""
        own = Pose(pose.x, pose.y, (pose.turn + form.turn) % 360.0, sample.mirrored)
        flag = self.labels.flag_of(form, sample)
        return Lying(sample, own, Spot(flag, Pose(pose.x, pose.y).apply(form.label_at)) if flag else None)
