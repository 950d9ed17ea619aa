"""All pages that show parts at true size, planned together: templates on their pages, tiles on theirs, or both on pages that they share.

Fewest seams come first, then fewest pages; between ways with as many pages templates and tiles stay apart.
"""

from collections.abc import Callable
from dataclasses import replace

import shapely

from publisher.basics import record, remembered_lately
from publisher.geometry import Part, polygon
from publisher.pages.sheet import Body, Context, Numbers, PageDraft, title_fits
from publisher.pages.templates import (
    CompassStrip,
    Load,
    Nest,
    Planner,
    Sample,
    Shown,
    most_used_first,
    nests_of,
    pages_title,
    planner_of,
    refusal,
    roomy,
    samples,
    says_enough,
    strip_chunk,
    strip_of,
    strips_of,
    template_drafts,
    templates_body,
)
from publisher.pages.tiles.common_notes import common_drawn
from publisher.pages.tiles.shared_pages import SharedPage, SharedTile, Together, is_narrow, together
from publisher.pages.tiles.tile_drawing import tile_body
from publisher.pages.tiles.tile_map import overview_draft
from publisher.pages.tiles.tile_notes import note_drawn
from publisher.pages.tiles.tile_pages import tile_drafts, tiles_refusal
from publisher.pages.tiles.tile_plan import Tiling, tiling

MOST_WANTED = 60  # templates; of more, tiles have pages of their own: packing all of them anew would take long


@record
class TruePages:
    """How the pages at true size are filled. ``refused``: pages that say why something is not printed."""

    templates: tuple[Shown, ...]
    tilings: tuple[Tiling, ...]
    shared: tuple[SharedPage, ...] = ()
    refused: tuple[PageDraft, ...] = ()
    sharing: tuple[Tiling, ...] = ()  # the copies whose tiles stand on shared pages
    whole: bool = True  # nothing is left over, such as a strip that is longer than the paper

    @property
    def cut(self) -> tuple[Tiling, ...]:
        """All copies that come in tiles."""
        return (*self.tilings, *self.sharing)

    @property
    def order(self) -> tuple[int, int]:
        """What sorts the better one first: seams, then pages, those of maps included."""
        maps = sum(plan.mapped for plan in self.cut)
        own = sum(len(plan.cutting.cells) for plan in self.tilings)
        return sum(len(plan.seams) for plan in self.cut), len(self.templates) + own + len(self.shared) + maps


@remembered_lately
def plan_true_pages(context: Context) -> TruePages:
    """Plan all pages that show parts at true size; compass strips stand for round parts where that saves a seam or a page."""
    best = _planned(context)
    best = _with_nests(context, best)
    strips = [strip for part in context.templates if (strip := strip_of(context, part))]
    if best.refused or not strips or best.order <= (0, 1):
        return best
    large = tuple(strip for strip in strips if not planner_of(context).fits(strip.part))
    for some in dict.fromkeys((large, tuple(strips))):
        other = _planned(context, some) if some else best
        if other.whole and other.order < best.order:
            best = other
    return best


def _with_nests(context: Context, best: TruePages) -> TruePages:
    """Return a plan with layers of a stack nested on one card, where that saves a page and each finds room for its words; else ``best``."""
    if best.refused or len(best.templates) + len(best.shared) < 2:
        return best
    whole = tuple(part for part in context.templates if planner_of(context).fits(part))
    nests = nests_of(context, whole)
    planner = Planner(context, nests=nests)
    nests = tuple(nest for nest in nests if says_enough(planner.labels, nest))
    if not nests:
        return best
    other = _planned(context, nests=nests)
    noted = sum(len(page.notes) for page in (*other.templates, *(page.shown for page in other.shared)))
    return other if other.whole and other.order < best.order and noted == len(nests) else best


@record
class _Wanted:
    """What pages at true size are to show: the loads that go on them whole, the copies that come in tiles, and the pages that say why
    a part is not printed."""

    loads: tuple[Load, ...]
    tiled: tuple[Sample, ...]
    refused: tuple[PageDraft, ...]


def _planned(context: Context, strips: tuple[CompassStrip, ...] = (), nests: tuple[Nest, ...] = ()) -> TruePages:
    """Plan all pages, compass strips among them in place of their parts, and of nests the outermost template."""
    planner = Planner(context, nests=nests) if nests else planner_of(context)
    wanted = _wanted(context, strips, nests)
    templates, left = planner.plan(wanted.loads) if wanted.loads else ((), ())
    tilings = tuple(tiling(context, sample) for sample in wanted.tiled)
    if not wanted.refused:
        found = _fewer(context, planner, wanted.loads, wanted.tiled, templates, tilings)
        if found is not None:
            return TruePages(found.templates, found.alone, found.shared, (), found.tilings)
    return TruePages(templates, tilings, refused=wanted.refused, whole=not left)


def _wanted(context: Context, strips: tuple[CompassStrip, ...], nests: tuple[Nest, ...]) -> _Wanted:
    """Tell templates from tiles, and what can be neither."""
    fits = planner_of(context).fits
    parts = _without(context.templates, strips, nests)
    small = most_used_first(context, filter(fits, parts))
    large = [(part, tiles_refusal(context, part)) for part in parts if not fits(part)]
    refused = [draft for _, draft in large if draft]
    if draft := refusal(context, small):
        refused, small = [draft, *refused], ()
    loads: tuple[Load, ...] = (
        *(sample for part in small for sample in samples(context, part)),
        *(nest.samples[0] for nest in nests),
        *(strip_chunk(context, strip) for strip in strips),
    )
    tiled = tuple(sample for part, draft in large if draft is None for sample in samples(context, part))
    return _Wanted(loads, tiled, tuple(refused))


def _without(parts: tuple[Part, ...], strips: tuple[CompassStrip, ...], nests: tuple[Nest, ...]) -> list[Part]:
    """Return the parts that have templates of their own: neither drawn with a strip nor nested in another."""
    shown = {strip.part.id for strip in strips} | {sample.part.id for nest in nests for sample in nest.samples}
    return [part for part in parts if part.id not in shown]


def _fewer(
    context: Context,
    planner: Planner,
    wanted: tuple[Load, ...],
    tiled: tuple[Sample, ...],
    templates: tuple[Shown, ...],
    tilings: tuple[Tiling, ...],
) -> Together | None:
    """Return a way with fewer pages; None where none is found."""
    cells = sum(len(plan.cutting.cells) for plan in tilings)
    count = len(templates) + cells
    if count < 2 or len(wanted) > MOST_WANTED:
        return None
    best: Together | None = None
    for in_holes in (False, True) if not planner.nests and _holds_another(wanted) else (False,):
        other = Planner(context, in_holes, planner, planner.nests)
        most = count - 1 if best is None else best.count - 1
        if in_holes and wanted and other.least_pages(wanted) < len(templates):
            pages, left = other.plan(wanted, min(len(templates), most - cells + 1) - 1)
            if not left:
                best = Together(pages, (), (), tilings)
                most = best.count - 1
        if tiled:
            best = together(context, other, wanted, tiled, most, cells) or best
    if best is None or not best.shared:
        best = (
            _narrow_together(context, planner, wanted, tilings, count - 1 if best is None else best.count - 1) or best
        )
    return best


def _narrow_together(
    context: Context, planner: Planner, wanted: tuple[Load, ...], tilings: tuple[Tiling, ...], most: int
) -> Together | None:
    """Return a way in which only tiles of narrow parts share pages, those of all others have their own; None where none is found."""
    alone = tuple(plan for plan in tilings if not is_narrow(plan.sample.part))
    narrow = tuple(plan for plan in tilings if is_narrow(plan.sample.part))
    if not alone or not narrow:
        return None
    taken, cells = (sum(len(plan.cutting.cells) for plan in some) for some in (alone, narrow))
    found = together(context, planner, wanted, tuple(plan.sample for plan in narrow), most - taken, cells)
    return replace(found, alone=alone) if found else None


def _holds_another(wanted: tuple[Load, ...]) -> bool:
    """Say whether one of the templates has an opening in which another may lie, by area and box."""
    parts = [load.part for load in wanted if isinstance(load, Sample)]
    shapes = [polygon(part.template) for part in parts]
    least = min((shape.area for shape in map(_filled, shapes)), default=0.0)
    return any(hole.area > least and roomy(hole) for shape in shapes for hole in map(shapely.Polygon, shape.interiors))


def _filled(shape: shapely.Polygon) -> shapely.Polygon:
    return shapely.Polygon(shape.exterior)


def true_page_drafts(context: Context) -> tuple[PageDraft, ...]:
    """Return the drafts of all pages that show parts at true size."""
    plan = plan_true_pages(context)
    shared = tuple(_draft(context, page, number) for number, page in enumerate(plan.shared, 1))
    maps = tuple(overview_draft(context, p) for p in plan.sharing if p.mapped)
    return (
        *plan.refused,
        *template_drafts(context, plan.templates),
        *maps,
        *tile_drafts(context, plan.tilings),
        *shared,
    )


def _draft(context: Context, page: SharedPage, number: int) -> PageDraft:
    whole = _parts(context, [y.sample.part.id for y in page.shown.lying])
    whole += tuple(strip.part for strip, _, _ in strips_of(context, page.shown))
    cut = _parts(context, [tile.plan.sample.part.id for tile in page.tiles])
    named = (*cut, *(part for part in whole if part not in cut))
    what = "Tiles and templates" if whole else "Tiles"
    return PageDraft(
        kind="tiles",
        key=f"shared:{number}",
        title=pages_title([*named], lambda title: title_fits(context.type, page.shown.frame, title), what),
        frame=page.shown.frame,
        body=_body(context, page),
        task="tiles and templates",
        bookmarks=tuple((f"{p.letter} {p.name}", 1, "") for p in named),
        parts=tuple(part.id for part in named),
    )


def _parts(context: Context, ids: list[str]) -> tuple[Part, ...]:
    """Return the parts with these ids, each once, by letter."""
    found = [part for one in dict.fromkeys(ids) if (part := context.part(one))]
    return tuple(sorted(found, key=lambda part: part.letter))


def _body(context: Context, page: SharedPage) -> Callable[[Numbers], Body]:
    templates = templates_body(context, page.shown)

    def body(numbers: Numbers) -> Body:
        own = sum((_tile(context, tile, numbers) for tile in page.tiles), templates(numbers))
        return own + common_drawn(context, page.common, numbers) if page.common else own

    return body


def _tile(context: Context, tile: SharedTile, numbers: Numbers) -> Body:
    """Return a tile with its note; its seams are drawn anew, now that pages have numbers."""
    plan, cell, note = tile.plan, tile.cell, tile.note
    kept = (note.box,) if note and note.on_tile else ()
    seamed = tile.numbered(context, numbers)
    own = tile_body(context, plan, cell, numbers.page, seamed, tile.label, whole=tile.whole, kept=kept)
    return own + note_drawn(context, plan, cell, note, numbers, whole=tile.whole) if note else own
