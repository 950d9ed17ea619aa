"""The map of a tiled part: where each page lies in the whole. Small on every tile page, large on an overview page."""

from collections.abc import Callable

import shapely

from publisher.basics import Box, Layer, Pose, TextPromise, polyline
from publisher.basics.wording import say_size
from publisher.geometry import polygon
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.sheet import Body, Context, Numbers, PageDraft, make_frame
from publisher.pages.tiles.seams import Cell
from publisher.pages.tiles.tile_plan import Tiling
from publisher.pages.type import (
    BODY,
    HEADING,
    LEAST,
    PALE,
    PICTURE_DETAIL,
    PICTURE_OUTLINE,
    RULE,
    SMALL,
    STRONG_RULE,
    Setter,
    TypeStyle,
    as_polygon,
)

MAP_ROOM = 1.0  # mm of paper round the map inside its place


def map_drawn(
    setter: Setter, plan: Tiling, pages: dict[Cell, int], place: Box, here: Cell | None
) -> tuple[tuple[Drawn, ...], Box]:
    """Draw the whole part small, upper left in ``place``, each tile with its page number; ``here`` is set off by a grey ground
    and a strong frame. Return it with the box that it fills."""
    left, bottom, right, top = plan.laid.bounds
    scale = min((place.width - 2 * MAP_ROOM) / (right - left), (place.height - 2 * MAP_ROOM) / (top - bottom))
    x, y = place.left + MAP_ROOM, place.top - MAP_ROOM

    def on(box: Box) -> Box:
        return Box(
            x + (box.left - left) * scale,
            y + (box.bottom - top) * scale,
            x + (box.right - left) * scale,
            y + (box.top - top) * scale,
        )

    used = on(Box(left, bottom, right, top)).grown(MAP_ROOM)
    large = here is None
    styles: tuple[TypeStyle, ...] = (HEADING, SMALL.bold(), LEAST) if large else (SMALL.bold(), LEAST)
    drawn: list[Drawn] = []
    words: list[Drawn] = []
    numbers: list[shapely.Polygon] = []
    for cell, page in pages.items():
        box = on(cell.area)
        text = f"page {page}" if large else str(page)
        style = setter.fitting(text, styles, box.width - 1.0) or LEAST
        wide, cap = setter.width(text, style), setter.cap(style)
        spot = _spot(plan, cell, on, wide, cap)
        words += setter.line(text, style, spot[0], spot[1] - cap / 2, align="centre", layer=Layer.NOTES)
        numbers.append(
            shapely.box(
                spot[0] - wide / 2 - 0.6,
                spot[1] - cap / 2 - 0.6 - setter.tail(text, style),
                spot[0] + wide / 2 + 0.6,
                spot[1] + cap / 2 + 0.6,
            )
        )
        if cell is here:
            drawn.append(Fill(PALE, (polyline(box.corners(), True),), Layer.NOTES, None, "artifact"))
    cells = tuple(polyline(on(c.area).corners(), True) for c in pages)
    drawn.append(Stroke(RULE, cells, Layer.NOTES, None, "figure"))
    if here:
        drawn.append(Stroke(STRONG_RULE, (polyline(on(here.area).corners(), True),), Layer.NOTES, None, "figure"))
    shape = polygon(plan.sample.part.template, Pose(turn=plan.turn, mirrored=plan.sample.mirrored)).simplify(0.05)
    small = shapely.transform(shape, lambda c: (c - (left, top)) * scale + (x, y))
    outline = small.boundary.difference(shapely.union_all(numbers))
    paths = tuple(
        polyline(tuple((float(px), float(py)) for px, py in shapely.get_coordinates(line)))
        for line in shapely.get_parts(shapely.line_merge(outline))
        if line.length > 0.1
    )
    drawn.append(Stroke(PICTURE_OUTLINE if large else PICTURE_DETAIL, paths, Layer.NOTES, None, "figure"))
    return (*drawn, *words), used


def _spot(plan: Tiling, cell: Cell, on: Callable[[Box], Box], wide: float, cap: float) -> tuple[float, float]:
    """Return where a tile's number stands: in the middle of the tile, or of what it shows where the middle is bare."""
    box = on(cell.area)
    middle = ((box.left + box.right) / 2, (box.bottom + box.top) / 2)
    piece = plan.laid.intersection(as_polygon(cell.area))
    if piece.is_empty or piece.covers(
        shapely.Point((cell.area.left + cell.area.right) / 2, (cell.area.bottom + cell.area.top) / 2)
    ):
        return middle
    point = piece.representative_point()
    spot = on(Box(point.x, point.y, point.x, point.y))
    return (
        min(max(spot.left, box.left + wide / 2 + 0.5), box.right - wide / 2 - 0.5),
        min(max(spot.bottom, box.bottom + cap / 2 + 0.5), box.top - cap / 2 - 0.5),
    )


def overview_draft(context: Context, plan: Tiling) -> PageDraft:
    """Return the page that shows how the tiles of a part lie, with their page numbers and the order of taping."""
    part, copy = plan.sample.part, plan.sample.copy
    of = f", copy {copy}" if copy else ""
    left, bottom, right, top = plan.laid.bounds
    frame = make_frame(context.paper, right - left > top - bottom, 0.0)
    sizes = say_size(right - left, top - bottom, context.paper.first)

    def body(numbers: Numbers) -> Body:
        pages = {c: numbers.page_of(plan.key(c)) or 0 for c in plan.cutting.cells}
        area = frame.text
        said = (
            f"Part {part.letter} is larger than the paper and comes on {len(pages)} pages. Start at the upper left. Trim each tile along "
            "its trim line, lay it over the glue area of the tile beside or above it so that match marks of the same name cover each "
            "other, and glue or tape it. Join each row first, then the rows.",
            f"The taped template measures {plan.sizes(context.paper.first)}. Measure it before you cut.",
        )
        drawn: list[Drawn] = []
        y = area.top - 2.0
        for text in said:
            block = context.type.paragraph(text, BODY, area.left, y, min(area.width, 150.0), layer=Layer.NOTES)
            drawn += block.drawn
            y -= block.height + 2.0
        picture, _ = map_drawn(context.type, plan, pages, Box(area.left, area.bottom, area.right, y - 2.0), None)
        texts = tuple(TextPromise(numbers.page, f"page {p}") for p in pages.values())
        return Body((*drawn, *picture), texts=(*texts, TextPromise(numbers.page, sizes)))

    return PageDraft(
        kind="overview",
        key=f"overview:{part.id}:{max(copy, 1)}",
        title=f"Map of {part.letter} {part.name}{of}",
        frame=frame,
        body=body,
        task="map of the tiles",
        bookmarks=((f"{part.letter} {part.name}{of}", 1, ""),),
        parts=(),
    )
