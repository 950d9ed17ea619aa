"""The pages that must print true: their numbers as a print dialogue takes them, and small pictures of them."""

from collections.abc import Iterable
from itertools import groupby

import numpy as np
import shapely

from publisher.basics import Box, Carried, Layer, OutlinePromise, Path, Point, polyline, record, remembered_few
from publisher.basics.wording import counted
from publisher.pages.model import Drawn, Link, Stroke
from publisher.pages.sheet import Context, TruePage, described, set_apart
from publisher.pages.type import CELL_GAP, DIMENSION, HEADING, NOTE, PICTURE_DETAIL, RULE, SMALL, SPACE, Block

TALLEST_PREVIEW, LEAST_PREVIEW = 27.0, 10.0  # mm of height of a small picture of a page
PREVIEW_OFF = 0.05  # mm that a line of them may be off
PREVIEW_ARM = 6.0  # mm on the page itself: arms of the crosses of a compass strip
CAPTION_MOST = 1.6  # of a small picture's width that the words under it may take
MOST_PREVIEWS = 40  # more pages stand in the print list alone
KEY_PLAN = "Pages that must print true, with their parts"


@record
class KeyPlan:
    """Small pictures of pages under their title: what is drawn, the height in mm, and the box of the words under each, by its number."""

    drawn: tuple[Drawn, ...] = ()
    height: float = 0.0
    captions: tuple[tuple[int, Box], ...] = ()

    def carried(self, page: int) -> tuple[Carried, ...]:
        """Return where its page says which parts each page shows."""
        return tuple(Carried(f"key_plan:{number}", page, box) for number, box in self.captions)


def ranges(pages: Iterable[int]) -> str:
    """Return page numbers as print dialogues take them: ``2, 4-8``."""
    runs = ([page for _, page in run] for _, run in groupby(enumerate(pages), key=lambda pair: pair[1] - pair[0]))
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs)


def sheets_of(count: int, paper: str) -> str:
    """Return ``1 sheet of A4 paper``."""
    return f"{counted(count, 'sheet')} of {paper}"


def print_list(
    context: Context, pages: tuple[int, ...], check: tuple[int, int] | None, place: tuple[float, float, float]
) -> Block:
    """Set the list of pages to print, large: those of the print ``check`` (first, last) now, the others when it is true; under it how
    many sheets they are and what to do with the other pages. ``place``: left side, top and width."""
    setter, (x, top, width) = context.type, place
    now = tuple(page for page in pages if check is not None and check[0] <= page <= check[1])
    then = tuple(page for page in pages if page not in now)
    said = f"now {ranges(now)}, then {ranges(then)}" if now and then else ranges(pages)
    figures = setter.paragraph(f"Print list: {said}", HEADING, x, top, width)
    rest = "" if context.read_on == context.paper else f", or print it on {context.read_on.title}"
    words = setter.paragraph(
        f"on paper: {sheets_of(len(pages), context.paper.title)}; read the rest on a screen{rest}. Copy the numbers into the print "
        "dialogue, choose 100 % and one side only.",
        SMALL, x, top - figures.height, width,
    )  # fmt: skip
    return Block((*figures.drawn, *words.drawn), figures.height + words.height)


def key_plan(context: Context, shown: tuple[TruePage, ...], box: Box) -> KeyPlan:
    """Draw the pages in rows, as large as the box allows, each over its number and the letters of its parts; nothing where they
    would be too small to know them by, or too many."""
    head = SMALL.leading + SPACE / 2
    if not shown or len(shown) > MOST_PREVIEWS:
        return KeyPlan()
    tall = TALLEST_PREVIEW
    while tall >= LEAST_PREVIEW:
        rows = _rows(context, shown, Box(box.left, box.bottom, box.right, box.top - head), tall)
        if rows.height + head <= box.height:
            title = context.type.line(KEY_PLAN, SMALL.bold().tagged("h2"), box.left, box.top - context.type.drop(SMALL))
            drawn: list[Drawn] = [*title]
            for one in rows.previews:
                at = (one.place.left, one.place.bottom)
                drawn += (*_small(one.page, at, rows.scale), Link(one.place, one.page.page), *one.words)
            captions = tuple((one.page.page, one.caption) for one in rows.previews)
            return KeyPlan(tuple(drawn), head + rows.height, captions)
        tall -= 1.0
    return KeyPlan()


@record
class _Preview:
    """A small picture of a page, not drawn yet: where it stands (mm), the words under it and their box."""

    page: TruePage
    place: Box
    words: tuple[Drawn, ...]
    caption: Box


@record
class _Previews:
    """Small pictures in rows: how small they are, and how high all stand (mm)."""

    previews: tuple[_Preview, ...]
    scale: float
    height: float


def _rows(context: Context, shown: tuple[TruePage, ...], box: Box, tall: float) -> _Previews:
    """Set the pages at one scale, the tallest ``tall`` mm high."""
    scale = tall / max(page.height for page in shown)
    found: list[_Preview] = []
    x, y, low = box.left, box.top, box.top
    for page in shown:
        width, height = page.width * scale, page.height * scale
        across = max(width, min(context.type.width(_called(page), NOTE) + 0.1, CAPTION_MOST * width))
        if x > box.left and x + width > box.right:
            x, y = box.left, low - SPACE
        under = y - tall - 0.8
        words = context.type.paragraph(_called(page), NOTE, x, under, across)
        caption = Box(x, under - words.height, x + across, under)
        found.append(_Preview(page, Box(x, y - height, x + width, y), words.drawn, caption))
        low = min(low, under - words.height)
        x += across + CELL_GAP
    return _Previews(tuple(found), scale, box.top - low)


def _called(page: TruePage) -> str:
    """Return the page's number and the letters of its parts, each once."""
    return f"{page.page}: {', '.join(dict.fromkeys(page.letters)) or 'check'}"


def _coarse(ring: tuple[Point, ...]) -> Path:
    """Return a ring with as many points as a small picture shows."""
    points = shapely.get_coordinates(shapely.simplify(shapely.linearrings(np.array(ring)), PREVIEW_OFF)).tolist()
    return polyline(tuple((x, y) for x, y in points[:-1]), True)


def _cross(at: Point) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    (x, y), arm = at, PREVIEW_ARM
    return ((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))


@remembered_few
def _apart(outlines: tuple[OutlinePromise, ...], *, scale: float) -> tuple[shapely.Polygon, ...]:
    """Return the outlines of a page in its small picture (mm from its corner), set apart where two lie close beside one another; those of
    tiles, which their windows cut off, as they are. The cover is set with its numbers and without: they are the same."""
    shapes = []
    for outline in outlines:
        first, *holes = ([(x * scale, y * scale) for x, y in outline.pose.apply_all(ring)] for ring in outline.rings)
        shapes.append(shapely.Polygon(first, holes))
    windows = [None if one.window is None else [v * scale for v in one.window.sides] for one in outlines]
    shown = [one if w is None else one.intersection(shapely.box(*w)) for one, w in zip(shapes, windows, strict=True)]
    moved = set_apart(shown, PICTURE_DETAIL.width)
    return tuple(own if w else to for own, to, w in zip(shapes, moved, windows, strict=True))


def _small(page: TruePage, at: tuple[float, float], scale: float) -> tuple[Drawn, ...]:
    """Draw the frame of a page and what stands on it that must be true: outlines, cut off where their page ends, squares, and of compass
    strips the line from pin to pencil with a cross at every hole."""

    def carried(points: Iterable[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
        return tuple((at[0] + x * scale, at[1] + y * scale) for x, y in points)

    whole = Box(0.0, 0.0, page.width, page.height)
    drawn: list[Drawn] = [
        Stroke(RULE, (polyline(carried(whole.corners()), True),), Layer.PAGE, tag="figure"),
        Stroke(DIMENSION, tuple(polyline(carried((s.start, s.end))) for s in page.squares), Layer.PAGE, tag="figure"),
    ]
    for strip in page.compasses:
        lines = [(strip.pin, strip.pencils[0])] + [cross for at in (strip.pin, *strip.pencils) for cross in _cross(at)]
        drawn.append(Stroke(DIMENSION, tuple(polyline(carried(line)) for line in lines), Layer.PAGE, tag="figure"))
    by_window: dict[Box | None, list[Path]] = {}
    for outline, shape in zip(page.outlines, _apart(page.outlines, scale=scale), strict=True):
        rings = [ring.coords[:-1] for ring in (shape.exterior, *shape.interiors)]
        small = (_coarse(tuple((at[0] + x, at[1] + y) for x, y in ring)) for ring in rings)
        by_window.setdefault(outline.window, []).extend(small)
    for window, paths in by_window.items():
        left, bottom, right, top = (window or whole).sides
        (low, high) = carried(((left, bottom), (right, top)))
        drawn.append(Stroke(PICTURE_DETAIL, tuple(paths), Layer.PAGE, Box(*low, *high), "figure"))
    return described(drawn, f"Small picture of page {_called(page)}")
