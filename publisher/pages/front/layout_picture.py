"""A laid-out sheet to scale, with a measure along two sides, so that a person can copy it with a ruler."""

from collections.abc import Callable

from publisher.basics import Box, Layer, Path, Point, Pose, polyline
from publisher.basics.units import inches
from publisher.basics.wording import fixed
from publisher.geometry import Part, polygon
from publisher.material import Layout, Yield
from publisher.pages.front.layout_guides import row_lines
from publisher.pages.model import Drawn, LineStyle, Stroke, Words
from publisher.pages.sheet import Context, words_box
from publisher.pages.type import LEAST, LINE_GREY, NOTE, SMALL, TICK, overlap

SHEET = LineStyle("sheet", 0.35)
PIECE = LineStyle("piece", 0.25)
GRID = LineStyle("sheet_grid", 0.18, (0.4, 1.2), LINE_GREY)
ROW = LineStyle("row", 0.25, (1.6, 0.8), LINE_GREY)
OFFCUT = LineStyle("offcut", 0.35, (0.35, 0.9))
MEASURE = 7.0  # for the numbers along the left and bottom side
BESIDE_PICTURE = 8.0  # for the distances of rows along the right side
ABOVE_PICTURE = 3.2  # and along the top
CAPTION = SMALL.leading + 1.5
GRID_STEP = 100.0  # mm on the sheet between two numbers


def _scale(need: Yield, width: float, tallest: float) -> tuple[float, bool]:
    """Return the scale, and whether the sheet is shown turned so that its long side runs across."""
    wide, high = need.sheet.width, need.sheet.height
    turned = (
        high > wide * 1.2 and (width - MEASURE - BESIDE_PICTURE) / high < (tallest - MEASURE - ABOVE_PICTURE) / wide
    )
    across, up = (high, wide) if turned else (wide, high)
    return min((width - MEASURE - BESIDE_PICTURE) / across, (tallest - MEASURE - ABOVE_PICTURE) / up), turned


def picture_height(need: Yield, width: float, tallest: float) -> float:
    """Return the height in mm of a sheet's picture with its caption and measure."""
    scale, turned = _scale(need, width, tallest)
    return (need.sheet.width if turned else need.sheet.height) * scale + MEASURE + ABOVE_PICTURE + CAPTION


def layout_picture(
    context: Context, need: Yield, layout: Layout, count: tuple[int, int], box: Box
) -> tuple[Drawn, ...]:
    """Draw one sheet at the top of ``box``, with the lines to draw first and the offcut to keep.

    ``count``: how many sheets are laid out like this one, and the number of the first.
    """
    setter = context.type
    scale, turned = _scale(need, box.width, box.height - CAPTION)
    alike, number = count
    total = len(need.sheets)
    which = f"sheet {number} of {total}" if alike == 1 else f"{alike} sheets of {total} are laid out like this"
    caption = f"{need.board.replace('_', ' ')}, {need.sheet.label}: {which}"
    drawn: list[Drawn] = [*setter.line(caption, SMALL.bold(), box.left, box.top - setter.drop(SMALL))]
    wide, high = need.sheet.width, need.sheet.height
    across, up = (high, wide) if turned else (wide, high)
    left, bottom = box.left + MEASURE, box.top - CAPTION - ABOVE_PICTURE - up * scale

    def carried(point: Point) -> Point:
        x, y = (high - point[1], point[0]) if turned else point
        return (left + x * scale, bottom + y * scale)

    corners = tuple(carried(p) for p in ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)))
    drawn += _measure(context, (left, bottom), (across, up), scale)
    drawn.append(Stroke(SHEET, (polyline(corners, True),), Layer.PAGE, tag="figure"))
    paths: list[Path] = []
    taken: list[Box] = []
    for item in layout.items:
        part = context.part(item.part)
        if part is None:
            continue
        for ring in part.outline.paths:
            paths.append(ring.placed(item.pose).carried(carried, scale=scale))
        letter = _letter(context, part, carried(_inside(part, item.pose)), taken)
        taken += (words_box(setter.faces, words) for words in letter)
        drawn += letter
    drawn.append(Stroke(PIECE, tuple(paths), Layer.PAGE, tag="figure"))
    drawn += _rows(context, layout, scale, (left, bottom), (across, up), turned)
    drawn += _offcut(context, need.offcuts[number - 1] if need.offcuts else None, carried)
    return tuple(drawn)


def _rows(
    context: Context, layout: Layout, scale: float, origin: Point, size: tuple[float, float], turned: bool
) -> list[Drawn]:
    """Draw the lines on which rows stand, with their distance in mm from the lower or left edge of the sheet as shown."""
    setter, style = context.type, LEAST.tagged("figure")
    (left, bottom), (across, up) = origin, size
    apart = max(LEAST.leading, setter.width("000.0", style) * 1.2) / scale
    found = row_lines(layout, context.parts, apart, across if turned else None)
    paths: list[Path] = []
    drawn: list[Drawn] = []
    for at in found.at:
        if found.up:
            y = bottom + at * scale
            paths.append(polyline(((left, y), (left + across * scale, y))))
            drawn += setter.line(fixed(at, 1), style, left + across * scale + 0.8, y - setter.cap(style) / 2)
        else:
            x = left + at * scale
            paths.append(polyline(((x, bottom), (x, bottom + up * scale))))
            drawn += setter.line(fixed(at, 1), style, x, bottom + up * scale + 0.8, align="centre")
    return [Stroke(ROW, tuple(paths), Layer.PAGE, tag="figure"), *drawn] if paths else []


def _offcut(context: Context, offcut: Box | None, carried: Callable[[Point], Point]) -> list[Drawn]:
    """Draw the largest offcut with its size."""
    if offcut is None:
        return []
    corners = tuple(carried(corner) for corner in offcut.corners())
    setter, style = context.type, LEAST.tagged("figure")
    drawn: list[Drawn] = [Stroke(OFFCUT, (polyline(corners, True),), Layer.PAGE, tag="figure")]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    middle = sum(y for _, y in corners) / 4
    sizes = [f"{offcut.width:.0f} × {offcut.height:.0f} mm"]
    sizes.append(f"{fixed(inches(offcut.width), 1)} × {fixed(inches(offcut.height), 1)} in")
    lines = [line for line in ("offcut to keep", *sizes) if setter.width(line, style) <= right - left - 1.0]
    up = len(lines) * LEAST.leading / 2
    for line in lines if 2 * up <= max(y for _, y in corners) - min(y for _, y in corners) else []:
        drawn += setter.line(line, style, (left + right) / 2, middle + up - setter.drop(LEAST), align="centre")
        up -= LEAST.leading
    return drawn


def _inside(part: Part, pose: Pose) -> Point:
    inside = polygon(part.outline, pose).representative_point()
    return (inside.x, inside.y)


def _letter(context: Context, part: Part, at: Point, taken: list[Box]) -> list[Words]:
    """Return a piece's letter in the largest size that lies on no other; none for a piece too small for any: those round it tell."""
    setter = context.type
    for style in (NOTE.bold().tagged("figure"), LEAST.bold().tagged("figure")):
        drawn = setter.line(part.letter, style, at[0], at[1] - setter.cap(style) / 2, align="centre")
        words = [thing for thing in drawn if isinstance(thing, Words)]
        if not any(overlap(words_box(setter.faces, one), box) for one in words for box in taken):
            return words
    return []


def _measure(context: Context, origin: Point, size: tuple[float, float], scale: float) -> list[Drawn]:
    """Draw a tick each 50 mm and a number each 100 mm along the left and bottom side, and a faint grid."""
    setter, (left, bottom), (across, up) = context.type, origin, size
    ticks: list[Path] = []
    grid: list[Path] = []
    drawn: list[Drawn] = []
    for way, extent, other in ((0, across, up), (1, up, across)):
        for k in range(int(extent / (GRID_STEP / 2)) + 1):
            at = k * GRID_STEP / 2
            long = k % 2 == 0
            arm = 1.6 if long else 0.9
            if way == 0:
                ticks.append(polyline(((left + at * scale, bottom), (left + at * scale, bottom - arm))))
                if long and 0 < at < extent:
                    grid.append(polyline(((left + at * scale, bottom), (left + at * scale, bottom + other * scale))))
            else:
                ticks.append(polyline(((left, bottom + at * scale), (left - arm, bottom + at * scale))))
                if long and 0 < at < extent:
                    grid.append(polyline(((left, bottom + at * scale), (left + other * scale, bottom + at * scale))))
            if long and way == 0:
                drawn += setter.line(
                    f"{at:.0f}", LEAST.tagged("figure"), left + at * scale, bottom - 4.4, align="centre"
                )
            elif long:
                drawn += setter.line(
                    f"{at:.0f}", LEAST.tagged("figure"), left - 2.1, bottom + at * scale - 0.8, align="right"
                )
    drawn += setter.line("mm", LEAST.tagged("figure"), left - 2.1, bottom - 4.4, align="right")
    return [
        Stroke(GRID, tuple(grid), Layer.PAGE, tag="figure"),
        Stroke(TICK, tuple(ticks), Layer.PAGE, tag="figure"),
        *drawn,
    ]
