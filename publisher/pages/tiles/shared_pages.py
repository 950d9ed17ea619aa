"""Tiles that share pages with templates and with each other: how they are cut and packed so that fewer pages do.

A tile goes to the packer by what it really fills: the part inside its window, and along its seams the strips that are glued and
trimmed. Every tile keeps its marks, trim lines, label and, close by or on it, what to do with it; where one has no room for that,
the page is no page.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import shapely

from publisher.basics import record
from publisher.pages.sheet import LEAST_SQUARE, Context, Numbers
from publisher.pages.templates import Chunk, Load, Planner, Sample, Shown, Spot, cover, frames
from publisher.pages.tiles.mark_names import NAME_FARTHEST
from publisher.pages.tiles.seam_drawing import Seamed, seam_bodies
from publisher.pages.tiles.seams import TILE_EDGE, Cell
from publisher.pages.tiles.tile_labels import labelled, tile_label
from publisher.pages.tiles.tile_notes import TileNote, tile_notes
from publisher.pages.tiles.tile_plan import TURNS, TilePlace, Tiling, lay
from publisher.pages.type import as_polygon

MOST_SHARED = 16  # tiles of a design: of more, all have pages of their own
FULLEST_SHARED = 0.8  # of a page with tiles is covered at most: a search for more takes long and seldom finds it
MORE_WAYS = 2  # that are tried when one has saved pages
MOST_WAYS = 6  # of cutting all parts that are tried
AROUND_MARK = NAME_FARTHEST + 1.0  # mm of a tile's own side of a seam that match marks and their names take


@record
class SharedTile:
    """A tile on a page that others share: what its seams draw, its label, whether that is the whole one, and its note."""

    plan: Tiling
    cell: Cell
    seamed: Seamed
    label: Spot | None
    whole: bool
    note: TileNote

    def numbered(self, context: Context, numbers: Numbers) -> Seamed:
        """Return what its seams draw, their promises with the pages that these numbers say."""
        return seam_bodies(context.type, self.plan, self.cell, numbers)


@record
class SharedPage:
    """A page with tiles and, it may be, templates."""

    shown: Shown
    tiles: tuple[SharedTile, ...]


@record
class Together:
    """Pages of templates alone, pages that tiles share, the copies whose tiles stand on these, and those whose tiles stand alone."""

    templates: tuple[Shown, ...]
    shared: tuple[SharedPage, ...]
    tilings: tuple[Tiling, ...]
    alone: tuple[Tiling, ...] = ()

    @property
    def count(self) -> int:
        """How many pages these are."""
        return len(self.templates) + len(self.shared) + sum(len(plan.cutting.cells) for plan in self.alone)


def together(
    context: Context, planner: Planner, wanted: tuple[Load, ...], tiled: tuple[Sample, ...], most: int, cells: int
) -> Together | None:
    """Return templates and tiles packed together on at most ``most`` pages, the fewest that are found; None where there is no such way.

    ``tiled``: the copies that fit no page. ``cells``: as many tiles do when each has a page of its own; more are never cut.
    """
    best: Together | None = None
    more = MORE_WAYS
    for way in _ways(context, tiled, cells):
        chunks = {
            chunk.key: (plan, cell) for plan in way for cell in plan.cutting.cells for chunk in (_chunk(plan, cell),)
        }
        loads = (*wanted, *(_chunk(plan, cell) for plan, cell in chunks.values()))
        if best is not None and more == 0:
            break
        more -= best is not None
        at_most = most if best is None else best.count - 1
        if planner.least_pages(loads, FULLEST_SHARED) > at_most:
            continue
        pages, left = planner.plan(loads, at_most)
        if left or len(pages) > at_most:
            continue
        best = _placed(context, pages, chunks) or best
    return best


def _ways(context: Context, tiled: tuple[Sample, ...], cells: int) -> Iterator[tuple[Tiling, ...]]:
    """Yield ways to cut all the copies into as few tiles as pages of their own take, or fewer."""
    each = [tuple(_cuttings(context, sample)) for sample in tiled]
    least = [min((len(plan.cutting.cells) for plan in plans), default=0) for plans in each]
    if not all(least) or sum(least) > min(cells, MOST_SHARED):
        return
    few = [[p for p in plans if len(p.cutting.cells) == count] for plans, count in zip(each, least, strict=True)]
    alike = [way for way in product(*few) if len({plan.turn for plan in way}) == 1]
    mixed = [way for way in product(*few) if len({plan.turn for plan in way}) > 1] if len(few) <= 3 else []
    yield from (*alike, *mixed)[:MOST_WAYS]


def _cuttings(context: Context, sample: Sample) -> Iterator[Tiling]:
    """Yield the cuttings of a copy for windows as large as upright and lying pages show, at both turns, all different ones."""
    seen = set()
    for turn in TURNS:
        laid = lay(context, sample, turn)
        for frame in frames(context.paper, LEAST_SQUARE)[::4]:
            # what is inked ends 3 mm short of header and footer, and the windows' own paper reaches over that
            live = frame.live
            found = laid.cut(live.width + 2 * TILE_EDGE, live.height, TILE_EDGE)
            if found and (found.turn, found.cutting.across, found.cutting.down) not in seen:
                seen.add((found.turn, found.cutting.across, found.cutting.down))
                yield laid.with_seams(found)


def _chunk(plan: Tiling, cell: Cell) -> Chunk:
    """Return what a tile fills: the part in its window, and its seams' strips from one side of the window to the other."""
    window = as_polygon(cell.window)
    shown = plan.laid.intersection(window)
    strips = []
    for seam in plan.seams:
        if cell in (seam.first, seam.second):
            to, near = cell.window, seam.at - AROUND_MARK if cell is seam.first else seam.at + AROUND_MARK
            a, b, c, d = to.sides
            if seam.upright:
                strips.append(shapely.box(near, b, c, d) if cell is seam.first else shapely.box(a, b, near, d))
            else:
                near = seam.at + AROUND_MARK if cell is seam.first else seam.at - AROUND_MARK
                strips.append(shapely.box(a, b, c, near) if cell is seam.first else shapely.box(a, near, c, d))
    whole = shapely.union_all([shown, *strips]).intersection(window)
    if not isinstance(whole, shapely.Polygon):
        whole = whole.convex_hull
    sample = plan.sample
    key = f"#{sample.part.id}:{sample.copy}:{cell.row}:{cell.column}"
    return Chunk(key, cover(whole), float(plan.laid.intersection(as_polygon(cell.area)).area))


def _placed(context: Context, pages: tuple[Shown, ...], chunks: dict[str, tuple[Tiling, Cell]]) -> Together | None:
    """Return packed pages with every tile in its place and all its words; None where one of them has no room for these."""
    order = {key: number for number, key in enumerate(chunks)}
    tiled = {n: [c.key for c, _ in page.chunks if c.key in chunks] for n, page in enumerate(pages)}
    shared = sorted((n for n, keys in tiled.items() if keys), key=lambda n: min(order[key] for key in tiled[n]))
    where: dict[tuple[int, Cell], TilePlace] = {}
    for number, n in enumerate(shared, 1):
        for chunk, pose in pages[n].chunks:
            if chunk.key in chunks:
                plan, cell = chunks[chunk.key]
                where[id(plan), cell] = TilePlace(pages[n].frame, (pose.x, pose.y), f"shared:{number}")
    plans = {id(plan): plan for plan, _ in chunks.values()}
    placed = {
        key: replace(plan, places=tuple(where[key, cell] for cell in plan.cutting.cells)) for key, plan in plans.items()
    }
    bearers = {id(plan): labelled(context, plan) for plan in placed.values()}
    found: list[SharedPage] = []
    for n in shared:
        here = [(placed[id(plan)], cell) for plan, cell in (chunks[key] for key in tiled[n])]
        tiles = _worded(context, pages[n], here, bearers)
        if tiles is None:
            return None
        found.append(SharedPage(pages[n], tiles))
    alone = tuple(page for n, page in enumerate(pages) if not tiled[n])
    return Together(alone, tuple(found), tuple(placed.values()))


NOWHERE = Numbers(0, 0, (), (), ())  # of what does not depend on numbers of pages


def _worded(
    context: Context, page: Shown, here: list[tuple[Tiling, Cell]], bearers: dict[int, Cell]
) -> tuple[SharedTile, ...] | None:
    """Return the tiles of a page with their labels and notes; None where a note finds no room. ``bearers``: which tile of each plan
    bears the whole label."""
    drawn = []
    for plan, cell in here:
        whole = cell is bearers[id(plan)]
        seamed = seam_bodies(context.type, plan, cell, NOWHERE)
        drawn.append((plan, cell, seamed, tile_label(context, plan, cell, seamed.boxes, whole), whole))
    notes = tile_notes(
        context, page, tuple((plan, cell, seamed.boxes, label, whole) for plan, cell, seamed, label, whole in drawn)
    )
    if notes is None:
        return None
    return tuple(SharedTile(*one, note) for one, note in zip(drawn, notes, strict=True))
