"""Templates and tiles packed on one page: as many as go on it, by real outlines, at all turns that are worth a try.

Everything is mm on the page. A template that has no room for what it must not lose is packed together with its flag as one piece.
"""

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from itertools import accumulate

import shapely

from publisher.basics import Box, Point, Pose
from publisher.geometry import Part, polygon
from publisher.material import Item, Piece, pack
from publisher.pages.sheet import A4, MOST_ON_A4, PAGE_SQUARE, Context, Frame
from publisher.pages.templates.page_words import Lying, Shown
from publisher.pages.templates.spots import Spot
from publisher.pages.templates.template_forms import PART_GAP, Chunk, Form, centring, least_rectangle
from publisher.pages.templates.template_frames import areas_beside, frames, free_area
from publisher.pages.templates.template_labels import UPRIGHT, Labels, Sample

FINE_TURNS = tuple(float(a) for a in range(0, 180, 5))
PLAN_STEPS = 3  # kinds of turns that are tried: see Planner.turns
FEW_PARTS = 8  # different parts; of more, fewer ways are tried on each page
ORDERS, ORDERS_OF_MANY = 4, 2  # the third and the fourth seldom fill a page of many parts better, and each takes longer
OFFERED = 1.5  # pages' worth, by area, of many parts that a page chooses from: time grows with the parts, not with their square
MOST_LINES = MOST_ON_A4 - 400  # path operators of the parts on a page; frame, rulers, code and words take the others
FILLERS = 0.25  # as much of it again, of the smallest parts

Load = Sample | Chunk  # what a page takes


def _lines(part: Part) -> int:
    """Return about how many path operators a template takes."""
    paths = (*part.template.paths, *(mark.path for mark in part.marks))
    return sum(len(path.edges) + 2 for path in paths)


def load_key(load: Load) -> tuple[str, int]:
    """Return what tells a load from all others."""
    return (load.key, -1) if isinstance(load, Chunk) else (load.part.id, load.copy)


def alike_key(load: Load) -> tuple[str, bool]:
    """Return what copies have in common that are packed as one piece."""
    return (load.key, False) if isinstance(load, Chunk) else (load.part.id, load.mirrored)


def loads_of(page: Shown) -> tuple[Load, ...]:
    """Return all that stands on a page."""
    return (*(lying.sample for lying in page.lying), *(chunk for chunk, _ in page.chunks))


@lru_cache(maxsize=64)
def _packed(pieces: tuple[Piece, ...], ring: tuple[Point, ...], orders: int) -> tuple[tuple[Item, ...], ...]:
    """Return the pieces packed on one page: another way of cutting the tiles often leaves a page as it was."""
    return pack(pieces, (ring,), PART_GAP, 1, orders)


class Filler:
    """Fills one page at a time; keeps what it has worked out about each part."""

    def __init__(self, context: Context, labels: Labels, in_holes: bool, kept: tuple[tuple[float, float], ...]) -> None:
        """Start with nothing known but the places of ``labels``. ``in_holes``: small parts may lie in the openings of large ones.
        ``kept``: sizes (width and height in mm) of room for words, one of which each page keeps free."""
        self.context = context
        self.labels = labels
        self.in_holes = in_holes
        self.kept = kept
        self._turns: dict[tuple[str, int], tuple[float, ...]] = {}
        self._areas: dict[str, float] = {}

    def turns(self, part: Part, step: int) -> tuple[float, ...]:
        """Return turns to try: upright first, then the part's least rectangle along the page, last every 5 degrees."""
        key = (part.id, step)
        if key not in self._turns:
            quarters = (*UPRIGHT, 180.0, 270.0)
            first = UPRIGHT if self.context.design.use == "trace" else quarters  # many alike lie closer head to tail
            around = (first, (*quarters, *least_rectangle(part)), FINE_TURNS)[step]
            self._turns[key] = tuple(dict.fromkeys(around))
        return self._turns[key]

    def area(self, wanted: Iterable[Load]) -> float:
        total = 0.0
        for s in wanted:
            if isinstance(s, Chunk):
                total += s.area
                continue
            if s.part.id not in self._areas:
                self._areas[s.part.id] = float(polygon(s.part.template).area)
            total += self._areas[s.part.id]
        return total

    def digestible(self, left: tuple[Load, ...]) -> tuple[Load, ...]:
        """Return the first loads, at least one, whose lines a page can hold together: all of them but for very fine parts."""
        room = MOST_LINES * max(1.0, self.context.paper.width * self.context.paper.height / A4)
        sums = accumulate(0 if isinstance(load, Chunk) else _lines(load.part) for load in left)
        return left[: max(1, sum(reached <= room for reached in sums))]

    def page(self, wanted: tuple[Load, ...], square: float, step: int) -> Shown | None:
        """Return the fullest page that the frames of this square give; None when not one load fits."""
        choices = frames(self.context.paper, square)
        if len(wanted) > 1:  # a lone part may need any corner; for several, the lower and upper right tell nearly all
            choices = choices[::2] if square == PAGE_SQUARE else choices[::4]
        if len({alike_key(load) for load in wanted}) <= FEW_PARTS:
            return self._fullest(wanted, choices, step, ORDERS)
        offered = self._offered(wanted, OFFERED * max(free_area(f).area for f in choices))
        for some in dict.fromkeys((offered, wanted)):  # all of them where none of the offered fits
            if some and (page := self._fullest(some, choices, step, ORDERS_OF_MANY)):
                return page
        return None

    def _fullest(self, wanted: tuple[Load, ...], choices: tuple[Frame, ...], step: int, orders: int) -> Shown | None:
        """Return the fullest page of one of these frames; None when not one load fits."""
        best: tuple[float, Shown] | None = None
        area = self.area(wanted)
        samples = [load for load in wanted if not isinstance(load, Chunk)]
        tries = max((len(self.labels.forms(s, self.turns(s.part, step))) for s in samples), default=1)
        for frame, free in [(one, free) for one in choices for free in areas_beside(one, self.kept)]:
            if best and area > free.area and frame.landscape == best[1].frame.landscape:
                continue  # they will not all go on one page: the corner matters little
            for choice in range(tries):
                lying, chunks = self.tried(wanted, free, step, choice, orders)
                if not lying and not chunks:
                    continue
                page = Shown(frame, lying, chunks)
                filled = self.area(loads_of(page))
                if best is None or filled > best[0] + 1e-6:
                    best = (filled, page)
                if len(lying) + len(chunks) == len(wanted):
                    return page
        return best[1] if best else None

    def _offered(self, wanted: tuple[Load, ...], most: float) -> tuple[Load, ...]:
        """Return the largest of the loads that have ``most`` mm² together, and the smallest, which fill gaps, that have
        ``FILLERS`` of it; in their order."""
        largest = sorted(range(len(wanted)), key=lambda n: -self.area((wanted[n],)))
        taken: set[int] = set()
        for row, room in ((largest, most), (largest[::-1], most * FILLERS)):
            sums = accumulate(self.area((wanted[n],)) for n in row)
            taken.update(n for n, reached in zip(row, sums, strict=True) if reached <= room)
        return tuple(s for n, s in enumerate(wanted) if n in taken)

    def tried(
        self, wanted: tuple[Load, ...], free: shapely.Polygon, step: int | None, choice: int, orders: int = ORDERS
    ) -> tuple[tuple[Lying, ...], tuple[tuple[Chunk, Pose], ...]]:
        """Pack the loads on one page. ``step`` None: unturned. ``choice``: which form of those that carry a flag."""
        groups: dict[str, tuple[Form, list[Load]]] = {}
        pieces: list[Piece] = []
        for load in wanted:
            name, flag = alike_key(load)
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
