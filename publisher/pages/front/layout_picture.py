"""A laid-out sheet to scale, with a measure along two sides, so that a person can copy it with a ruler."""

from collections.abc import Callable

import shapely
from shapely import affinity

from publisher.basics import Box, Carried, Layer, Path, Point, Pose, polyline, record
from publisher.basics.units import inches
from publisher.basics.wording import fixed
from publisher.geometry import Part, polygon
from publisher.material import Alike, Layout, Yield, layout_key
from publisher.pages.front.layout_guides import row_lines
from publisher.pages.model import Drawn, LineStyle, Stroke
from publisher.pages.sheet import Context
from publisher.pages.type import LEAST, LINE_GREY, NOTE, SMALL, TICK, Setter, TypeStyle

SHEET = LineStyle("sheet", 0.35)
PIECE = LineStyle("piece", 0.25)
GRID = LineStyle("sheet_grid", 0.18, (0.4, 1.2), LINE_GREY)
ROW = LineStyle("row", 0.25, (1.6, 0.8), LINE_GREY)
OFFCUT = LineStyle("offcut", 0.35, (0.35, 0.9))
MEASURE = 7.0  # for the numbers along the left and bottom side
BESIDE_PICTURE = 8.0  # for the distances of rows along the right side
ABOVE_PICTURE = 3.2  # and along the top
UNDER_CAPTION = 1.5
NO_LETTER = "too small for a letter:"
ROOMIEST = 0.1  # mm on the page within which the roomiest place for a letter is found
MANY_IN_PICTURE = 200  # lines and arcs of one piece: sheets of pieces with more would be too much for a page
COARSE_PICTURE = 0.04  # mm on the page, a sixth of the width of the line
GRID_STEP = 100.0  # mm on the sheet between two numbers


@record
class SheetPicture:
    """A sheet's picture before it stands on a page: its scale, whether it is shown ``turned`` so that its long side runs across,
    the lines of its caption, and how and where in its own coordinates (mm) each part has its letter."""

    need: Yield
    alike: Alike
    scale: float
    turned: bool
    caption: tuple[str, ...]
    letters: tuple[tuple[str, TypeStyle, Point], ...]

    @property
    def size(self) -> tuple[float, float]:
        """The sheet's size in mm as it is shown: across, up."""
        wide, high = self.need.sheet.width, self.need.sheet.height
        return (high, wide) if self.turned else (wide, high)

    @property
    def above(self) -> float:
        """Height in mm of what stands over the sheet: its caption, and the distances of rows."""
        return len(self.caption) * SMALL.leading + UNDER_CAPTION + ABOVE_PICTURE

    @property
    def height(self) -> float:
        """Height in mm of the picture with its caption and measure."""
        return self.size[1] * self.scale + MEASURE + self.above


def sheet_picture(context: Context, need: Yield, alike: Alike, width: float, tallest: float) -> SheetPicture:
    """Return the picture of a sheet for a column of this width (mm), its sheet and measures no higher than ``tallest``."""
    setter = context.type
    scale, turned = _scale(need, width, tallest)
    total = len(need.sheets)
    which = f"sheet {alike.number} of {total}"
    if alike.count > 1:
        which = f"{alike.count} sheets of {total} are laid out like this"
    caption = f"{need.board.replace('_', ' ')}, {need.sheet.label}: {which}"
    parts = {item.part: part for item in alike.layout.items if (part := context.part(item.part))}
    letters = {part.id: _letter_of(setter, part, alike.layout, scale, turned) for part in parts.values()}
    small = sorted(part.letter for part in parts.values() if letters[part.id] is None)
    lines = list(setter.lines(caption, SMALL.bold(), width))
    if small:
        lines += setter.lines(f"{NO_LETTER} {', '.join(small)}", SMALL.bold(), width)
    shown = tuple((part, *found) for part, found in letters.items() if found)
    return SheetPicture(need, alike, scale, turned, tuple(lines), shown)


def _scale(need: Yield, width: float, tallest: float) -> tuple[float, bool]:
    """Return the scale, and whether the sheet is shown turned so that its long side runs across."""
    wide, high = need.sheet.width, need.sheet.height
    turned = (
        high > wide * 1.2 and (width - MEASURE - BESIDE_PICTURE) / high < (tallest - MEASURE - ABOVE_PICTURE) / wide
    )
    across, up = (high, wide) if turned else (wide, high)
    return min((width - MEASURE - BESIDE_PICTURE) / across, (tallest - MEASURE - ABOVE_PICTURE) / up), turned


def _letter_of(
    setter: Setter, part: Part, layout: Layout, scale: float, turned: bool
) -> tuple[TypeStyle, Point] | None:
    """Return the largest type in which the letter stands inside every copy of a part on the sheet, and its place on the part:
    in the roomiest circle. None when the copies are too small for any."""
    shape = polygon(part.outline)
    at = shapely.get_coordinates(shapely.maximum_inscribed_circle(shape, ROOMIEST / scale))[0]
    poses = [item.pose for item in layout.items if item.part == part.id]
    turns = {round((1.0 if p.mirrored else -1.0) * (p.turn + (90.0 if turned else 0.0)), 6) for p in poses}
    for style in (NOTE.bold(), LEAST.bold()):
        half = setter.width(part.letter, style) / 2 / scale, setter.cap(style) / 2 / scale
        box = shapely.box(at[0] - half[0], at[1] - half[1], at[0] + half[0], at[1] + half[1])
        if all(shape.covers(affinity.rotate(box, turn, (at[0], at[1]))) for turn in turns):
            return style.tagged("figure"), (float(at[0]), float(at[1]))
    return None


def layout_picture(context: Context, shown: SheetPicture, box: Box, page: int) -> tuple[tuple[Drawn, ...], Carried]:
    """Draw one sheet at the top of ``box``, with the lines to draw first and the offcut to keep; return where it stands too."""
    setter, need, scale = context.type, shown.need, shown.scale
    drawn: list[Drawn] = []
    for number, text in enumerate(shown.caption):
        drawn += setter.line(text, SMALL.bold(), box.left, box.top - number * SMALL.leading - setter.drop(SMALL))
    across, up = shown.size
    left, bottom = box.left + MEASURE, box.top - shown.above - up * scale
    pose = Pose(left + across * scale, bottom, 90.0) if shown.turned else Pose(left, bottom)

    def carried(point: Point) -> Point:
        return pose.apply((point[0] * scale, point[1] * scale))

    wide, high = need.sheet.width, need.sheet.height
    corners = tuple(carried(p) for p in ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)))
    drawn += _measure(context, (left, bottom), (across, up), scale)
    drawn.append(Stroke(SHEET, (polyline(corners, True),), Layer.PAGE, tag="figure"))
    paths: list[Path] = []
    letters = {part: (style, at) for part, style, at in shown.letters}
    for item in shown.alike.layout.items:
        part = context.part(item.part)
        if part is None:
            continue
        for ring in part.outline.paths:
            paths.append(_coarse(ring.placed(item.pose).carried(carried, scale=scale)))
        if part.id in letters:
            style, at = letters[part.id]
            x, y = carried(item.pose.apply(at))
            drawn += setter.line(part.letter, style, x, y - setter.cap(style) / 2, align="centre")
    drawn.append(Stroke(PIECE, tuple(paths), Layer.PAGE, tag="figure"))
    drawn += _rows(context, shown.alike.layout, scale, (left, bottom), (across, up), shown.turned)
    drawn += _offcut(context, need.offcuts[shown.alike.number - 1] if need.offcuts else None, carried)
    stands = Box(left, bottom, left + across * scale, bottom + up * scale)
    return tuple(drawn), Carried(layout_key(need, shown.alike.number), page, stands, pose, scale)


def _coarse(ring: Path) -> Path:
    """Return the ring as it stands in a picture; one of very many short lines with as few as the eye needs."""
    if len(ring.edges) <= MANY_IN_PICTURE:
        return ring
    points = shapely.get_coordinates(shapely.simplify(shapely.LinearRing(ring.points), COARSE_PICTURE))[:-1]
    return polyline([(float(x), float(y)) for x, y in points], True)


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
    metric = f"{offcut.width:.0f} × {offcut.height:.0f} mm"
    imperial = f"{fixed(inches(offcut.width), 1)} × {fixed(inches(offcut.height), 1)} in"
    sizes = (metric, imperial) if context.paper.first == "mm" else (imperial, metric)
    lines = [line for line in ("offcut to keep", *sizes) if setter.width(line, style) <= right - left - 1.0]
    up = len(lines) * LEAST.leading / 2
    for line in lines if 2 * up <= max(y for _, y in corners) - min(y for _, y in corners) else []:
        drawn += setter.line(line, style, (left + right) / 2, middle + up - setter.drop(LEAST), align="centre")
        up -= LEAST.leading
    return drawn


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
