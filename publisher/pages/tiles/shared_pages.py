"""Tiles that share pages with templates and with each other: how they are cut and packed so that fewer pages do.

A tile goes to the packer by what it really fills: the part inside its window, and along its seams the strips that are glued and
trimmed. Every tile keeps its marks, trim lines, label and, close by or on it, what to do with it; where one has no room for that,
the page is no page.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice, product

import shapely

from publisher.basics import record, remembered_few
from publisher.geometry import Part, polygon
from publisher.pages.sheet import LEAST_SQUARE, Context, Numbers
from publisher.pages.templates import TILE_KEY, Chunk, Load, Planner, Sample, Shown, Spot, cover, frames, sides
from publisher.pages.tiles.common_notes import COMMON_FROM, CommonNote, NotedTile, common_note, room_wanted
from publisher.pages.tiles.mark_names import NAME_FARTHEST
from publisher.pages.tiles.seam_drawing import Seamed, seam_bodies
from publisher.pages.tiles.seams import TILE_EDGE, Cell
from publisher.pages.tiles.tile_labels import labelled, tile_label
from publisher.pages.tiles.tile_notes import NoteFor, TileNote, note_paper, note_sides, tile_notes
from publisher.pages.tiles.tile_plan import TURNS, TilePlace, Tiling, lay
from publisher.pages.type import as_polygon

MOST_SHARED = 16  # tiles of a design: of more, all have pages of their own
MOST_NARROW = 96  # tiles of narrow parts, which are packed quickly
NARROW_WIDTH = 45.0  # mm: a part no wider, which fits no page, is narrow
NOTED_ANEW = (
    2  # times that pages are packed anew with room for their notes: other tiles then come together, and say more
)
MOST_MIXED = 3  # copies that are turned each its own way
FULLEST_SHARED = 0.8  # of a page with tiles is covered at most: a search for more takes long and seldom finds it
MORE_WAYS = 2  # that are tried when one has saved pages
MOST_WAYS = 6  # of cutting all parts that are tried
AROUND_MARK = NAME_FARTHEST + 1.0  # mm of a tile's own side of a seam that match marks and their names take


@record
class SharedTile:
    """A tile on a page that others share: what its seams draw, its label, whether that is the whole one, and its note, if it has one of
    its own."""

    plan: Tiling
    cell: Cell
    seamed: Seamed
    label: Spot | None
    whole: bool
    note: TileNote | None

    def numbered(self, context: Context, numbers: Numbers) -> Seamed:
        """Return what its seams draw, their promises with the pages that these numbers say."""
        return seam_bodies(context.type, self.plan, self.cell, numbers)


@record
class SharedPage:
    """A page with tiles and, it may be, templates; ``common``: the note of all its tiles where they have none of their own."""

    shown: Shown
    tiles: tuple[SharedTile, ...]
    common: CommonNote | None = None


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
        best = _packed_with_notes(context, planner, loads, chunks, at_most) or best
    return best


def _packed_with_notes(
    context: Context, planner: Planner, loads: tuple[Load, ...], chunks: dict[str, tuple[Tiling, Cell]], most: int
) -> Together | None:
    """Return the loads on at most ``most`` pages; where notes of many tiles find no room, packed anew with room kept for these."""
    kept: tuple[tuple[float, float], ...] = ()
    for _ in range(NOTED_ANEW + 1):
        pages, left = (Planner(context, planner.in_holes, planner, planner.nests, kept) if kept else planner).plan(
            loads, most
        )
        if left or len(pages) > most:
            return None
        apart = tuple(map(planner.apart, pages))
        found = _placed(context, apart, chunks) or _placed(context, pages, chunks)
        if found or len(chunks) < COMMON_FROM:
            return found
        kept = _room_for_notes(context, pages, chunks, kept)
    return None


def _room_for_notes(
    context: Context,
    pages: tuple[Shown, ...],
    chunks: dict[str, tuple[Tiling, Cell]],
    kept: tuple[tuple[float, float], ...],
) -> tuple[tuple[float, float], ...]:
    """Return sizes of room in which the notes of each of these pages fit, none smaller than those that are ``kept``."""
    here = [tuple(NotedTile(*chunks[chunk.key]) for chunk, _ in page.chunks if chunk.key in chunks) for page in pages]
    wanted = [kept, *(room_wanted(context, tiles) for tiles in here if tiles)]
    return tuple(max(sizes, key=lambda size: size[1]) for sizes in zip(*filter(None, wanted), strict=True))


def is_narrow(part: Part) -> bool:
    """Say whether a part that fits no page is so narrow that tiles of many like it lie beside each other."""
    return min(sides(shapely.oriented_envelope(polygon(part.template.outer)))) <= NARROW_WIDTH


def _ways(context: Context, tiled: tuple[Sample, ...], cells: int) -> Iterator[tuple[Tiling, ...]]:
    """Yield ways to cut all the copies into as few tiles as pages of their own take, or fewer."""
    if all(is_narrow(sample.part) for sample in tiled):
        for over in (2 * TILE_EDGE, 0.0):
            if few := _fewest(context, tiled, min(cells, MOST_NARROW), over):
                yield from _alike(few)
    elif few := _fewest(context, tiled, min(cells, MOST_SHARED), 2 * TILE_EDGE):
        yield from islice(_turned(few), MOST_WAYS)


def _fewest(context: Context, tiled: tuple[Sample, ...], most: int, over: float) -> list[list[Tiling]]:
    """Return for each copy its cuttings into fewest tiles; [] where these are more than ``most``, or where one cannot be cut."""
    each = [tuple(_cuttings(context, sample, over)) for sample in tiled]
    least = [min((len(plan.cutting.cells) for plan in plans), default=0) for plans in each]
    if not all(least) or sum(least) > most:
        return []
    return [[p for p in plans if len(p.cutting.cells) == count] for plans, count in zip(each, least, strict=True)]


def _turned(few: list[list[Tiling]]) -> Iterator[tuple[Tiling, ...]]:
    """Yield ways in which all copies are laid at one turn, then, of few copies, the others."""
    for turn in TURNS:  # lazily: many copies may be cut in very many ways
        yield from product(*([plan for plan in plans if plan.turn == turn] for plans in few))
    if len(few) <= MOST_MIXED:
        yield from (way for way in product(*few) if len({plan.turn for plan in way}) > 1)


def _alike(few: list[list[Tiling]]) -> Iterator[tuple[Tiling, ...]]:
    """Yield ways in which all copies are cut alike, for upright or for lying pages, laid one way or the other, as far as they can be."""
    seen = set()
    for turn, number in product(TURNS, range(2)):
        turned = [[plan for plan in plans if plan.turn == turn] or plans for plans in few]
        way = tuple(plans[min(number, len(plans) - 1)] for plans in turned)
        if (key := tuple(map(id, way))) not in seen:
            seen.add(key)
            yield way


def _cuttings(context: Context, sample: Sample, over: float) -> Iterator[Tiling]:
    """Yield the cuttings of a copy for windows as large as upright and lying pages show, at both turns, all different ones; ``over``: mm
    by which they may be wider, as long as all that is inked finds room."""
    seen = set()
    for turn in TURNS:
        laid = lay(context, sample, turn)
        for frame in frames(context.paper, LEAST_SQUARE)[::4]:
            # what is inked ends 3 mm short of header and footer, and the windows' own paper reaches over that
            live = frame.live
            found = laid.cut(live.width + over, live.height, TILE_EDGE)
            if found and (found.turn, found.cutting.across, found.cutting.down) not in seen:
                seen.add((found.turn, found.cutting.across, found.cutting.down))
                yield laid.with_seams(context, found)


@remembered_few
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
    key = f"{TILE_KEY}{sample.part.id}:{sample.copy}:{cell.row}:{cell.column}"
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
        page = _worded(context, pages[n], here, bearers)
        if page is None:
            return None
        found.append(page)
    alone = tuple(page for n, page in enumerate(pages) if not tiled[n])
    return Together(alone, tuple(found), tuple(placed.values()))


NOWHERE = Numbers(0, 0, (), (), ())  # of what does not depend on numbers of pages


def _worded(
    context: Context, page: Shown, here: list[tuple[Tiling, Cell]], bearers: dict[int, Cell]
) -> SharedPage | None:
    """Return a page with the labels and notes of its tiles; None where a note finds no room. ``bearers``: which tile of each plan
    bears the whole label. Many tiles have one note together, where there is room for it."""
    drawn = []
    for plan, cell in here:
        whole = cell is bearers[id(plan)]
        seamed = seam_bodies(context.type, plan, cell, NOWHERE)
        drawn.append((plan, cell, seamed, tile_label(context, plan, cell, seamed.boxes, whole), whole))
    noted = tuple((plan, cell, seamed.boxes, label, whole) for plan, cell, seamed, label, whole in drawn)
    common = _common(context, page, noted)
    notes = tile_notes(context, page, noted) if common is None else (None,) * len(drawn)
    if notes is None:
        return None
    return SharedPage(page, tuple(SharedTile(*one, note) for one, note in zip(drawn, notes, strict=True)), common)


def _common(context: Context, page: Shown, tiles: tuple[NoteFor, ...]) -> CommonNote | None:
    """Return the note of all tiles of a page; None where they are few, or where it has no room."""
    if len(tiles) < COMMON_FROM:
        return None
    about = tuple(
        NotedTile(plan, cell, note_sides(context, plan, label, whole)) for plan, cell, _, label, whole in tiles
    )
    return common_note(context, about, note_paper(page, tiles))
