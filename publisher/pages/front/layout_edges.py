"""What stands on and round the picture of a sheet beside its pieces: the measure along two edges, straight cuts, the offcut to keep."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import shapely

from publisher.basics import Box, Carried, CutPromise, Layer, Path, Point, Pose, polyline
from publisher.basics.units import INCH_MM
from publisher.pages.front.layout_words import STRAIGHT, SheetWords
from publisher.pages.model import Drawn, LineStyle, Stroke
from publisher.pages.type import LEAST, TICK, Align, Setter

STRAIGHT_CUT = LineStyle("straight_cut", 0.5, (3.0, 1.0))
OFFCUT = LineStyle("offcut", 0.35, (0.35, 0.9))
FIGURE = LEAST.tagged("figure")
NUMBERED_TICK, BARE_TICK = 1.6, 0.9  # mm: ticks with a number, and without
NUMBERS_AWAY = 2.1  # mm from the sheet's edge to the numbers of its measure
CUT_NAME_AWAY = 0.8  # mm between the end of a cut and its name
CUT_NAME_CLEAR = 0.4  # mm round words
CUT_NAME_APART = 1.0  # mm more between two names beside each other
CUT_NAME_ASIDE = (0.0, 0.4, 0.6, 0.8, 1.0)  # of its width by which the middle of a name stands off the line of its cut
SCALES = {
    "mm": (50.0, 2, 50),
    "in": (INCH_MM, 4, 1),
}  # mm between ticks, how many of them have one number, what one tick stands for


def edge_scale(setter: Setter, words: SheetWords, sheet: Box, scale: float) -> tuple[Drawn, ...]:
    """Draw a measure along the two edges from which the sheet is measured."""
    step, numbered, worth = SCALES[words.first]
    edge, way = (sheet.top, 1.0) if words.turned else (sheet.bottom, -1.0)
    foot = edge + NUMBERS_AWAY if words.turned else edge - NUMBERS_AWAY - setter.cap(FIGURE)
    ticks: list[Path] = []
    drawn: list[Drawn] = [*setter.line(words.first, FIGURE, sheet.left - NUMBERS_AWAY, foot, align="right")]
    for k in range(int(sheet.width / scale / step + 1e-6) + 1):
        x, arm = sheet.left + k * step * scale, NUMBERED_TICK if k % numbered == 0 else BARE_TICK
        ticks.append(polyline(((x, edge), (x, edge + way * arm))))
        drawn += setter.line(str(k * worth), FIGURE, x, foot, align="centre") if k % numbered == 0 else ()
    for k in range(int(sheet.height / scale / step + 1e-6) + 1):
        y, arm = edge - way * k * step * scale, NUMBERED_TICK if k % numbered == 0 else BARE_TICK
        ticks.append(polyline(((sheet.left, y), (sheet.left - arm, y))))
        if k and k % numbered == 0:  # the corner's own 0 stands over or under it
            drawn += setter.line(
                str(k * worth), FIGURE, sheet.left - NUMBERS_AWAY, y - setter.cap(FIGURE) / 2, align="right"
            )
    return (Stroke(TICK, tuple(ticks), Layer.PAGE, tag="figure"), *drawn)


def cut_lines(
    setter: Setter, words: SheetWords, sheet: Box, pose: Pose, scale: float
) -> tuple[tuple[Drawn, ...], tuple[Box, ...]]:
    """Draw the straight cuts, each with its name where there is room for it; return the boxes of the names too."""
    promise = words.promise
    grounds = [_carried(pose, scale, place.rings[0]) for place in promise.places]
    offcut = [_carried(pose, scale, promise.offcut.corners())] if promise.offcut is not None else []
    met = shapely.STRtree(
        [
            *(shapely.Polygon(points) for points in grounds),
            *(shapely.LineString(_carried(pose, scale, _ends(cut))) for cut in promise.cuts),
            *(shapely.LinearRing(points) for points in offcut),
        ]
    )
    lines: list[Path] = []
    drawn: list[Drawn] = []
    taken: list[Box] = []
    for number, cut in enumerate(promise.cuts, 1):
        line = _carried(pose, scale, _ends(cut))
        lines.append(polyline(line))
        text = setter.meant(STRAIGHT, f"cut {number}")
        for x, y, align, box in _beyond(setter, text, line):
            if not _clear(box, sheet, words.turned, taken, met):
                continue
            drawn += setter.line(text, FIGURE, x, y, align=align)
            taken.append(box)
            break
    strokes = (Stroke(STRAIGHT_CUT, tuple(lines), Layer.PAGE, tag="figure"),) if lines else ()
    return (*strokes, *drawn), tuple(taken)


def _clear(box: Box, sheet: Box, turned: bool, taken: list[Box], met: shapely.STRtree) -> bool:
    """Say whether a name has room: wholly beside the sheet's two unmeasured edges or wholly on bare board, on no other name and across
    no line (``met``: pieces and lines)."""
    outside = box.overlap(sheet) <= 0.0
    measured = box.left < sheet.left or (box.top > sheet.top if turned else box.bottom < sheet.bottom)
    if (outside and measured) or (not outside and box.beyond(sheet) > 0.0):
        return False
    apart = replace(box, left=box.left - CUT_NAME_APART, right=box.right + CUT_NAME_APART)
    if any(apart.overlap(other) > 0.0 for other in taken):
        return False
    return outside or not len(met.query(shapely.box(*box.sides), predicate="intersects"))


def _ends(cut: CutPromise) -> tuple[Point, ...]:
    """Return where a straight cut begins and ends on its sheet (mm)."""
    return tuple((along, cut.at) if cut.level else (cut.at, along) for along in (cut.start, cut.end))


def _beyond(setter: Setter, text: str, line: tuple[Point, ...]) -> Iterator[tuple[float, float, Align, Box]]:
    """Yield where the name of a cut may stand, beyond its right or lower end, then its upper one: baseline, alignment and box."""
    wide, cap = setter.width(text, FIGURE), setter.cap(FIGURE)
    (left, low), (right, high) = (min(line), max(line))
    if right - left > abs(high - low):
        x, y = right + CUT_NAME_AWAY, low - cap / 2
        yield x, y, "left", Box(x, y, x + wide, y + cap).grown(CUT_NAME_CLEAR)
        return
    low, high = min(low, high), max(low, high)
    for aside in CUT_NAME_ASIDE:  # beside each other, where cuts run close to each other
        for x in dict.fromkeys((left - aside * wide, left + aside * wide)):
            for y in (low - CUT_NAME_AWAY - cap, high + CUT_NAME_AWAY):
                yield x, y, "centre", Box(x - wide / 2, y, x + wide / 2, y + cap).grown(CUT_NAME_CLEAR)


def offcut_box(
    setter: Setter, words: SheetWords, pose: Pose, scale: float, taken: tuple[Box, ...], page: int
) -> tuple[tuple[Drawn, ...], tuple[Carried, ...]]:
    """Draw what is worth keeping of the sheet, with its size; return where its words stand too."""
    promise = words.promise
    if promise.offcut is None:
        return (), ()
    corners = _carried(pose, scale, promise.offcut.corners())
    room = Box.round(corners)
    drawn: list[Drawn] = [Stroke(OFFCUT, (polyline(corners, True),), Layer.PAGE, tag="figure")]
    x, y = (room.left + room.right) / 2, (room.bottom + room.top) / 2
    lines = [line for line in words.offcut(promise.offcut) if setter.width(line, FIGURE) <= room.width - 1.0]
    half = max(setter.width(line, FIGURE) for line in lines) / 2 if lines else 0.0
    lines = lines[: int((room.height - 1.0) // FIGURE.leading)]
    box = Box(x - half, y - len(lines) * FIGURE.leading / 2, x + half, y + len(lines) * FIGURE.leading / 2)
    if not lines or any(box.overlap(other) > 0.0 for other in taken):
        return tuple(drawn), ()
    for number, line in enumerate(lines):
        foot = box.top - number * FIGURE.leading - setter.drop(FIGURE)
        drawn += setter.line(line, FIGURE, x, foot, align="centre")
    return tuple(drawn), (Carried(promise.key_of("offcut"), page, box),)


def _carried(pose: Pose, scale: float, points: Sequence[Point]) -> tuple[Point, ...]:
    return pose.apply_all(tuple((x * scale, y * scale) for x, y in points))
