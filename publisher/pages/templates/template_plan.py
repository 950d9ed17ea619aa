"""Which template stands on which page, and how it lies there: few pages, packed by real outlines.

Everything is mm on the page. A template that has no room for what it must not lose is packed together with its flag as one piece.
"""

from collections.abc import Iterable
from dataclasses import replace
from functools import cached_property, lru_cache
from itertools import accumulate
from math import ceil, hypot

import shapely

from publisher.basics import Box, Point, Pose, remembered_lately
from publisher.geometry import Part, polygon
from publisher.material import Item, Piece, pack
from publisher.pages.sheet import A4, LEAST_SQUARE, MOST_ON_A4, PAGE_SQUARE, Context, Frame
from publisher.pages.templates.nests import Nest
from publisher.pages.templates.page_words import Lying, Shown, with_words
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.spreading import spread
from publisher.pages.templates.template_forms import (
    PART_GAP,
    Chunk,
    Form,
    centring,
    fits_turned,
    holds,
    least_rectangle,
    reach,
    sides,
)
from publisher.pages.templates.template_frames import areas_beside, frames, free_area
from publisher.pages.templates.template_labels import UPRIGHT, Labels, Sample, first_sample

FINE_TURNS = tuple(float(a) for a in range(0, 180, 5))
PLAN_STEPS = 3  # kinds of turns that are tried: see Planner.turns
FEW_PARTS = 8  # different parts; of more, fewer ways are tried on each page
ORDERS, ORDERS_OF_MANY = 4, 2  # the third and the fourth seldom fill a page of many parts better, and each takes longer
OFFERED = 1.5  # pages' worth, by area, of many parts that a page chooses from: time grows with the parts, not with their square
FEWER_AT_BEST = 0.9  # of the pages that a first one foretells: later ones are never so much fuller
MOST_LINES = MOST_ON_A4 - 400  # path operators of the parts on a page; frame, rulers, code and words take the others
TILE_KEY = "#"  # begins the key of a chunk that is a tile
FILLERS = 0.25  # as much of it again, of the smallest parts

Load = Sample | Chunk  # what a page takes


def _lines(part: Part) -> int:
    """Return about how many path operators a template takes."""
    paths = (*part.template.paths, *(mark.path for mark in part.marks))
    return sum(len(path.edges) + 2 for path in paths)


def load_key(load: Load) -> tuple[str, int]:
    """Return what tells a load from all others."""
    return (load.key, -1) if isinstance(load, Chunk) else (load.part.id, load.copy)


def _alike(load: Load) -> tuple[str, bool]:
    """Return what copies have in common that are packed as one piece."""
    return (load.key, False) if isinstance(load, Chunk) else (load.part.id, load.mirrored)


def loads_of(page: Shown) -> tuple[Load, ...]:
    """Return all that stands on a page."""
    return (*(lying.sample for lying in page.lying), *(chunk for chunk, _ in page.chunks))


@lru_cache(maxsize=64)
def _packed(pieces: tuple[Piece, ...], ring: tuple[Point, ...], orders: int) -> tuple[tuple[Item, ...], ...]:
    """Return the pieces packed on one page: another way of cutting the tiles often leaves a page as it was."""
    return pack(pieces, (ring,), PART_GAP, 1, orders)


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
        self._fits: dict[str, bool] = {}
        self._turns: dict[tuple[str, int], tuple[float, ...]] = {}
        self._areas: dict[str, float] = {}
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
        page = self._page(wanted, PAGE_SQUARE, 0)
        on_it = self._area(loads_of(page)) if page else 0.0
        return int(FEWER_AT_BEST * self._area(wanted) / on_it) if on_it else 0

    def bound(self, wanted: tuple[Load, ...]) -> int:
        """Return the least number of pages by area."""
        room = max(free_area(f).area for f in frames(self.context.paper, PAGE_SQUARE))
        return ceil(self._area(wanted) / float(room))

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
        key = _alike(sample)
        if isinstance(sample, Chunk):
            return float(shapely.Polygon(sample.ring).buffer(PART_GAP / 2 - 0.3).area)
        if key not in self._gapped:
            forms = self.labels.forms(sample, self.turns(sample.part, 0)[:2])
            least = shapely.area(shapely.buffer([self._form_shape(f) for f in forms], PART_GAP / 2 - 0.3)).min()
            self._gapped[key] = float(least)
        return self._gapped[key]

    def _form_shape(self, form: Form) -> shapely.Polygon:
        return form.shape if self.in_holes else shapely.Polygon(form.ring)

    def turns(self, part: Part, step: int) -> tuple[float, ...]:
        """Return turns to try: upright first, then the part's least rectangle along the page, last every 5 degrees."""
        key = (part.id, step)
        if key not in self._turns:
            quarters = (*UPRIGHT, 180.0, 270.0)
            first = UPRIGHT if self.context.design.use == "trace" else quarters  # many alike lie closer head to tail
            around = (first, (*quarters, *least_rectangle(part)), FINE_TURNS)[step]
            self._turns[key] = tuple(dict.fromkeys(around))
        return self._turns[key]

    def _area(self, wanted: Iterable[Load]) -> float:
        total = 0.0
        for s in wanted:
            if isinstance(s, Chunk):
                total += s.area
                continue
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
        self, wanted: tuple[Load, ...], square: float, most: int | None = None
    ) -> tuple[tuple[Shown, ...], tuple[Load, ...]]:
        """Fill page after page, each with the frame that takes most of what is left; give up when ``most`` will not do."""
        left = wanted
        pages: list[Shown] = []
        while left:
            if most is not None and len(pages) + self.least_pages(left) > most:
                break
            some = self._digestible(left)
            page = next((p for step in range(PLAN_STEPS) if (p := self._page(some, square, step))), None)
            if page is None:
                break
            pages.append(page)
            here = {load_key(load) for load in loads_of(page)}
            left = tuple(load for load in left if load_key(load) not in here)
        return tuple(pages), left

    def _digestible(self, left: tuple[Load, ...]) -> tuple[Load, ...]:
        """Return the first loads, at least one, whose lines a page can hold together: all of them but for very fine parts."""
        room = MOST_LINES * max(1.0, self.context.paper.width * self.context.paper.height / A4)
        sums = accumulate(0 if isinstance(load, Chunk) else _lines(load.part) for load in left)
        return left[: max(1, sum(reached <= room for reached in sums))]

    def _page(self, wanted: tuple[Load, ...], square: float, step: int) -> Shown | None:
        """Return the fullest page that the frames of this square give; None when not one load fits."""
        choices = frames(self.context.paper, square)
        if len(wanted) > 1:  # a lone part may need any corner; for several, the lower and upper right tell nearly all
            choices = choices[::2] if square == PAGE_SQUARE else choices[::4]
        if len({_alike(load) for load in wanted}) <= FEW_PARTS:
            return self._fullest(wanted, choices, step, ORDERS)
        offered = self._offered(wanted, OFFERED * max(free_area(f).area for f in choices))
        for some in dict.fromkeys((offered, wanted)):  # all of them where none of the offered fits
            if some and (page := self._fullest(some, choices, step, ORDERS_OF_MANY)):
                return page
        return None

    def _fullest(self, wanted: tuple[Load, ...], choices: tuple[Frame, ...], step: int, orders: int) -> Shown | None:
        """Return the fullest page of one of these frames; None when not one load fits."""
        best: tuple[float, Shown] | None = None
        area = self._area(wanted)
        samples = [load for load in wanted if not isinstance(load, Chunk)]
        tries = max((len(self.labels.forms(s, self.turns(s.part, step))) for s in samples), default=1)
        for frame, free in [(one, free) for one in choices for free in areas_beside(one, self.kept)]:
            if best and area > free.area and frame.landscape == best[1].frame.landscape:
                continue  # they will not all go on one page: the corner matters little
            for choice in range(tries):
                lying, chunks = self._try(wanted, free, step, choice, orders)
                if not lying and not chunks:
                    continue
                page = Shown(frame, lying, chunks)
                filled = self._area(loads_of(page))
                if best is None or filled > best[0] + 1e-6:
                    best = (filled, page)
                if len(lying) + len(chunks) == len(wanted):
                    return page
        return best[1] if best else None

    def _offered(self, wanted: tuple[Load, ...], most: float) -> tuple[Load, ...]:
        """Return the largest of the loads that have ``most`` mm² together, and the smallest, which fill gaps, that have
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
        if page.chunks or self.in_holes:  # these pages are full: nothing would fit so
            return page
        here = tuple(y.sample for y in page.lying)
        square = page.frame.calibration.width if page.frame.calibration else 0.0
        for frame in dict.fromkeys((*frames(self.context.paper, square)[:4:2], page.frame)):
            lying, _ = self._try(here, free_area(frame), None, 0)
            if len(lying) == len(here):
                return Shown(frame, lying)
        return page

    def _try(
        self, wanted: tuple[Load, ...], free: shapely.Polygon, step: int | None, choice: int, orders: int = ORDERS
    ) -> tuple[tuple[Lying, ...], tuple[tuple[Chunk, Pose], ...]]:
        """Pack the loads on one page. ``step`` None: unturned. ``choice``: which form of those that carry a flag."""
        groups: dict[str, tuple[Form, list[Load]]] = {}
        pieces: list[Piece] = []
        for load in wanted:
            name, flag = _alike(load)
            groups.setdefault(f"{name}/{flag:d}", (self._form(load, step, choice), []))[1].append(load)
        for name, (form, alike) in groups.items():
            if piece := self._piece(name, form, alike, free, step):
                pieces.append(piece)
        if not pieces:
            return (), ()
        ring = tuple((float(x), float(y)) for x, y in free.exterior.coords[:-1])
        laid = _packed(tuple(pieces), ring, orders)
        found = [(*groups[item.part], item.copy - 1, item.pose) for item in laid[0]] if laid else []
        dx, dy = centring([shapely.Polygon(pose.apply_all(form.ring)) for form, _, _, pose in found], free)
        lying: list[Lying] = []
        chunks: list[tuple[Chunk, Pose]] = []
        for form, alike, number, pose in found:
            load, moved = alike[number], replace(pose, x=pose.x + dx, y=pose.y + dy)
            if isinstance(load, Chunk):
                chunks.append((load, Pose(round(moved.x, 3), round(moved.y, 3), moved.turn)))
            else:
                lying.append(self._lying(load, form, moved))
        return tuple(lying), tuple(chunks)

    def _piece(self, name: str, form: Form, alike: list[Load], free: shapely.Polygon, step: int | None) -> Piece | None:
        """Return what the packer gets of loads that are alike; None where they cannot go into the free area's rectangle."""
        load = alike[0]
        if isinstance(load, Chunk):
            turns = load.turns
        elif form.label or step is None:
            turns = (0.0,)
        else:
            turns = self.turns(load.part, step)
        if turns == (0.0,) and (form.label or isinstance(load, Chunk)):
            left, bottom, right, top = free.bounds
            own = Box.round(form.ring)
            if own.width > right - left or own.height > top - bottom:
                return None
        rings = (form.ring, *form.holes) if self.in_holes else (form.ring,)
        return Piece(name, rings, turns, len(alike))

    def _form(self, sample: Load, step: int | None, choice: int) -> Form:
        if isinstance(sample, Chunk):
            return Form(0.0, sample.ring)
        forms = self.labels.forms(sample, (0.0,) if step is None else self.turns(sample.part, step))
        return forms[min(choice, len(forms) - 1)]

    def _lying(self, sample: Sample, form: Form, pose: Pose) -> Lying:
        """Return the part's own pose from its piece's, and its flag's place; the other words wait until the page is full."""
        own = Pose(pose.x, pose.y, (pose.turn + form.turn) % 360.0, sample.mirrored)
        flag = self.labels.flag_of(form, sample)
        return Lying(sample, own, Spot(flag, Pose(pose.x, pose.y).apply(form.label_at)) if flag else None)
