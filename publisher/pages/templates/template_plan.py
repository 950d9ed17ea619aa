"""Which template stands on which page, and how it lies there: few pages, packed by real outlines.

Everything is mm on the page. A template that has no room for what it must not lose is packed together with its flag as one piece.
"""

from dataclasses import replace
from functools import cached_property
from math import ceil, hypot

import shapely

from publisher.basics import Pose, remembered_lately
from publisher.geometry import Part, polygon
from publisher.pages.sheet import LEAST_SQUARE, PAGE_SQUARE, Context
from publisher.pages.templates.nests import Nest
from publisher.pages.templates.page_filling import PLAN_STEPS, Filler, Load, alike_key, load_key, loads_of
from publisher.pages.templates.page_words import Lying, Shown, with_words
from publisher.pages.templates.spreading import spread
from publisher.pages.templates.template_forms import (
    PART_GAP,
    Chunk,
    Form,
    fits_turned,
    holds,
    reach,
    sides,
)
from publisher.pages.templates.template_frames import frames, free_area
from publisher.pages.templates.template_labels import Labels, first_sample

FEWER_AT_BEST = 0.9  # of the pages that a first one foretells: later ones are never so much fuller
TILE_KEY = "#"  # begins the key of a chunk that is a tile


@remembered_lately
def planner_of(context: Context) -> "Planner":
    """Return the planner of a context: templates and tiles share what it has worked out."""
    return Planner(context)


class Planner:
    """Places samples for one context; keeps what it has worked out about each part."""

    def __init__(
        self,
        context: Context,
        in_holes: bool = False,
        like: "Planner | None" = None,
        nests: tuple[Nest, ...] = (),
        kept: tuple[tuple[float, float], ...] = (),
    ) -> None:
        """Start with nothing known, or with the places of labels that another planner found. ``in_holes``: small parts may lie in
        the openings of large ones. ``nests``: of each the outermost template is packed, and the others lie inside it. ``kept``: sizes
        (width and height in mm) of room for words, one of which each page keeps free."""
        self.context = context
        self.in_holes = in_holes
        self.nests = nests
        self.kept = kept
        self.labels: Labels = Labels(context, like.labels if like else None)
        self.filler = Filler(context, self.labels, in_holes, kept)
        self._fits: dict[str, bool] = {}
        self._gapped: dict[tuple[str, bool], float] = {}

    def fits(self, part: Part) -> bool:
        """Say whether a template of the part, with its flag if it needs one, fits one page of the paper at any angle."""
        if part.id not in self._fits:
            self._fits[part.id] = self._fits_page(part)
        return self._fits[part.id]

    def plan(self, wanted: tuple[Load, ...], most: int | None = None) -> tuple[tuple[Shown, ...], tuple[Load, ...]]:
        """Place the loads on as few pages as can be found; return the pages, and what fits none.

        A template whose face is named nowhere, since its page has no room left for words, is packed anew with a flag. With ``most``
        pages given, something is left over where they are not enough.
        """
        pages, left = self._worded(wanted, most)
        if left and most is not None:
            return pages, left
        while nameless := tuple(y.sample for page in pages for y in page.lying if self._nameless(y)):
            if not self.labels.flag(nameless):
                return pages, (*left, *nameless)  # inside a nest no flag finds room
            self._gapped.clear()
            again, left_again = self._worded(wanted, most)
            if len(left_again) > len(left):
                if most is not None:
                    return again, left_again
                break
            pages, left = again, left_again
        return pages, left

    def _worded(self, wanted: tuple[Load, ...], most: int | None) -> tuple[tuple[Shown, ...], tuple[Load, ...]]:
        """Return filled pages with their words, and what fits none."""
        pages, left = self.filled(wanted, most)
        if left and most is not None:
            return pages, left
        return tuple(self.worded(self._straightened(page)) for page in pages), left

    def worded(self, page: Shown) -> Shown:
        """Return a page with its words; its parts stand apart where it has room, and no words are lost by that. Tiles stay where they
        are, since their notes need the room."""
        close = with_words(self.context, self.labels, self._nested(page))
        tiled = any(chunk.key.startswith(TILE_KEY) for chunk, _ in page.chunks)
        return close if tiled else self.apart(close)

    def apart(self, close: Shown) -> Shown:
        """Return a page with its parts moved apart and its words placed anew; the page itself where words would be lost by that, or
        where parts lie in openings of others."""
        if self.in_holes:
            return close
        nested = {sample.part.id for nest, _ in close.nests for sample in nest.samples[1:]}
        lying = tuple(replace(y, inside=(), beside=None) for y in close.lying if y.sample.part.id not in nested)
        bare = Shown(close.frame, lying, close.chunks)
        moved = spread(bare)
        if moved == bare:
            return close
        apart = with_words(self.context, self.labels, self._nested(moved))
        return apart if apart.said >= close.said else close

    def _nested(self, page: Shown) -> Shown:
        """Return the page with all templates of its nests."""
        found: list[Lying] = []
        here: list[tuple[Nest, Pose]] = []
        for lying in page.lying:
            found.append(lying)
            for nest in self.nests:
                if nest.samples[0] == lying.sample:
                    here.append((nest, lying.pose))
                    found += [Lying(sample, lying.pose) for sample in nest.samples[1:]]
        return replace(page, lying=tuple(found), nests=tuple(here))

    def _nameless(self, lying: Lying) -> bool:
        """Say whether a face that must be named is named neither in the piece nor beside it."""
        bare = lying.flag is None and lying.beside is None and bool(self.labels.said(lying.sample).face)
        return bare and not self.labels.inside(lying.sample, lying.pose.turn).all

    def filled(self, wanted: tuple[Load, ...], most: int | None = None) -> tuple[tuple[Shown, ...], tuple[Load, ...]]:
        """Return the pages of ``plan`` before words stand beside parts and parts are laid straight: enough to count them.

        With ``most`` pages given, something is left over where they are not enough.
        """
        pages, left = self._pages(wanted, PAGE_SQUARE, most)
        if left or len(pages) > max(self.bound(wanted), self.least_pages(wanted)):
            tight, left_tight = self._pages(wanted, LEAST_SQUARE, most if left else len(pages) - 1)
            if (len(left_tight), len(tight)) < (len(left), len(pages)):
                pages, left = tight, left_tight
        return pages, left

    def foreseen(self, wanted: tuple[Load, ...]) -> int:
        """Return how many pages these loads will fill about, and hardly fewer: as many as a first page, the fullest, goes into
        them by area, less what a smaller square may save."""
        page = self.filler.page(wanted, PAGE_SQUARE, 0)
        on_it = self.filler.area(loads_of(page)) if page else 0.0
        return int(FEWER_AT_BEST * self.filler.area(wanted) / on_it) if on_it else 0

    def bound(self, wanted: tuple[Load, ...]) -> int:
        """Return the least number of pages by area."""
        room = max(free_area(f).area for f in frames(self.context.paper, PAGE_SQUARE))
        return ceil(self.filler.area(wanted) / float(room))

    def least_pages(self, wanted: tuple[Load, ...], filled: float = 1.0) -> int:
        """Return a number of pages by area with which even the least square cannot do: parts take half the gap along, pages too.

        ``filled``: the share of a page that they cover at most.
        """
        return ceil(sum(self._area_with_gap(s) for s in wanted) / (filled * self._most_room))

    @cached_property
    def _most_room(self) -> float:
        """The most that a page holds, in mm², half the gap all round included."""
        return max(float(free_area(f).buffer(PART_GAP / 2).area) for f in frames(self.context.paper, LEAST_SQUARE))

    def _area_with_gap(self, sample: Load) -> float:
        """Return the least area (mm²) that a load takes with half the gap round it, its flag included."""
        key = alike_key(sample)
        if isinstance(sample, Chunk):
            return float(shapely.Polygon(sample.ring).buffer(PART_GAP / 2 - 0.3).area)
        if key not in self._gapped:
            forms = self.labels.forms(sample, self.filler.turns(sample.part, 0)[:2])
            least = shapely.area(shapely.buffer([self._form_shape(f) for f in forms], PART_GAP / 2 - 0.3)).min()
            self._gapped[key] = float(least)
        return self._gapped[key]

    def _form_shape(self, form: Form) -> shapely.Polygon:
        return form.shape if self.in_holes else shapely.Polygon(form.ring)

    def _fits_page(self, part: Part) -> bool:
        sample = first_sample(self.context, part)
        shape = polygon(part.template.outer)
        lives = [f.live for f in frames(self.context.paper, LEAST_SQUARE)]
        narrow = min(sides(shapely.oriented_envelope(shape)))
        far = max(hypot(v.width, v.height) for v in lives)
        if narrow > max(min(v.width, v.height) for v in lives) or reach(shape) > far:
            return False
        turns = {turn for step in range(PLAN_STEPS) for turn in self.filler.turns(part, step)}
        if not any(fits_turned(shape, turns, v.width, v.height) for v in lives):
            return False
        if self.labels.enough(sample) and self._lies_free(shape):
            return True
        return any(
            self.filler.page((sample,), square, s) for square in (PAGE_SQUARE, LEAST_SQUARE) for s in range(PLAN_STEPS)
        )

    def _pages(
        self, wanted: tuple[Load, ...], square: float, most: int | None = None
    ) -> tuple[tuple[Shown, ...], tuple[Load, ...]]:
        """Fill page after page, each with the frame that takes most of what is left; give up when ``most`` will not do."""
        left = wanted
        pages: list[Shown] = []
        while left:
            if most is not None and len(pages) + self.least_pages(left) > most:
                break
            some = self.filler.digestible(left)
            page = next((p for step in range(PLAN_STEPS) if (p := self.filler.page(some, square, step))), None)
            if page is None:
                break
            pages.append(page)
            here = {load_key(load) for load in loads_of(page)}
            left = tuple(load for load in left if load_key(load) not in here)
        return tuple(pages), left

    def _lies_free(self, shape: shapely.Polygon) -> bool:
        """Tell whether a part's rectangle, upright or on its side, fits what the furniture leaves free of a page."""
        left, bottom, right, top = shape.bounds
        wide, tall = right - left, top - bottom
        free = [free_area(frame) for frame in frames(self.context.paper, PAGE_SQUARE)]
        return any(holds(area, *size) for area in free for size in ((wide, tall), (tall, wide)))

    def _straightened(self, page: Shown) -> Shown:
        """Return the page with every part as its designer drew it, unturned, when they fit so; the square in the usual corner first."""
        if all(y.pose.turn == 0.0 for y in page.lying):
            return page
        if page.chunks or self.in_holes:  # these pages are full: nothing would fit so
            return page
        here = tuple(y.sample for y in page.lying)
        square = page.frame.calibration.width if page.frame.calibration else 0.0
        for frame in dict.fromkeys((*frames(self.context.paper, square)[:4:2], page.frame)):
            lying, _ = self.filler.tried(here, free_area(frame), None, 0)
            if len(lying) == len(here):
                return Shown(frame, lying)
        return page
