"""A laid-out sheet to scale with its straight cuts and the measures of its copies, so that a person can copy it with a rule."""

from collections.abc import Callable
from dataclasses import replace
from math import cos, radians, sin

import shapely

from publisher.basics import Box, Carried, Layer, LayoutPromise, Path, PlacePromise, Point, Pose, polyline, record
from publisher.material import Layout
from publisher.pages.front.layout_edges import cut_lines, edge_scale, offcut_box
from publisher.pages.front.layout_labels import LINES_APART, PieceLabel, Places
from publisher.pages.front.layout_notes import (
    LIST_AWAY,
    Columns,
    SheetNote,
    column_height,
    columns_in,
    entries,
    filled,
    in_columns,
    on_pages,
    set_column,
    set_columns,
)
from publisher.pages.front.layout_words import POINTS, SheetWords
from publisher.pages.model import Drawn, Fill, LineStyle, Stroke
from publisher.pages.sheet import Context, described
from publisher.pages.type import NOTE, SMALL, SPACE, Setter, TypeStyle

SHEET = LineStyle("sheet", 0.35)
PIECE = LineStyle("piece", 0.25)
MEASURE = 7.0  # mm: for the numbers of the measure beside the sheet, and over or under it
CUT_NAMES_BESIDE = 8.0  # for the names of cuts on the other side
CUT_NAMES_BEYOND = 4.0  # and for those on the fourth
POINT_RADIUS = 0.65  # radius of a point to measure out
RING_HOLE = 0.4  # and of the hole in one that is a ring
MANY_IN_PICTURE = 200  # lines and arcs of one piece: sheets of pieces with more would be too much for a page
COARSE_PICTURE = 0.04  # mm on the page, a sixth of the width of the line


@record
class PictureForm:
    """How a picture is set: the greatest height of the sheet in it, the width of a column of its list (mm), whether the first one
    stands ``beside`` the picture, and the type of the list."""

    tallest: float
    notes: float
    beside: bool
    style: TypeStyle = NOTE


@record
class SheetPicture:
    """A sheet's picture before it stands on a page: its scale and words, what stands in its pieces, and the list beside or under it.

    ``width``: of the whole block (mm). ``caption``: lines. ``columns``: those of the list; the first of them stands beside the picture
    if ``form`` says so.
    """

    promise: LayoutPromise
    layout: Layout
    words: SheetWords
    width: float
    form: PictureForm
    scale: float
    caption: tuple[str, ...]
    labels: tuple[PieceLabel, ...]
    columns: tuple[tuple[SheetNote, ...], ...]

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the sheet on the page."""
        long, short = _sides(self.promise)
        return long * self.scale, short * self.scale

    @property
    def high(self) -> float:
        """Height of the sheet on the page with its measure and the names of cuts, the caption not included."""
        return self.size[1] + MEASURE + (CUT_NAMES_BEYOND if self.promise.cuts else 0.0)

    @property
    def under(self) -> tuple[tuple[SheetNote, ...], ...]:
        """The columns that stand under the picture."""
        return self.columns[1:] if self.form.beside else self.columns

    @property
    def caption_height(self) -> float:
        """Height in mm of the words over the picture."""
        return len(self.caption) * SMALL.leading + SPACE / 2

    def set_caption(self, setter: Setter, left: float, top: float) -> tuple[Drawn, ...]:
        """Set the words over the picture, or over what the next page has of its list."""
        lines = ((line, top - number * SMALL.leading - setter.drop(SMALL)) for number, line in enumerate(self.caption))
        return tuple(one for line, y in lines for one in setter.line(line, SMALL.bold(), left, y))

    @property
    def height(self) -> float:
        """Height in mm of the whole block."""
        listed = max(map(column_height, self.under), default=0.0)
        return self.caption_height + self.high + (listed + SPACE / 2 if listed else 0.0)

    def on_pages(self, room: float, page: float) -> "tuple[SheetPicture, tuple[Columns, ...]]":
        """Return the picture with as much of the list under it as ``room`` (mm of height) holds, and the columns of the rest on each
        page of height ``page`` that it takes."""
        if self.height <= room + 1e-9:
            return self, ()
        listed = tuple(entry for column in self.under for entry in column)
        bare = replace(self, columns=self.columns[: len(self.columns) - len(self.under)])
        count, left = columns_in(self.width, self.form.notes), room - bare.height - SPACE / 2
        here = filled(listed, left)[:count]
        if any(column_height(column) > left + 1e-9 for column in here):
            here = ()
        rest = on_pages(listed[sum(map(len, here)) :], count, page)
        return replace(bare, columns=(*bare.columns, *here)), rest


def sheet_picture(
    context: Context, promise: LayoutPromise, layout: Layout, width: float, form: PictureForm
) -> SheetPicture:
    """Return the picture of a sheet as large as its block allows."""
    bare = bare_picture(context, promise, layout, width, form)
    words, scale = bare.words, bare.scale
    finder = Places(context.type, scale, _turn(promise))
    carry = _pose(promise, 0.0, 0.0, scale)
    labels = []
    for place, item in zip(promise.places, layout.items, strict=True):
        part = context.part(item.part)
        origin = carry.apply((item.pose.x * scale, item.pose.y * scale))
        label = finder.label(words, place, part, origin) if part is not None else None
        labels += [label] if label is not None else []
    whole = {label.place.order for label in labels if label.whole}
    left_out = sorted((p for p in promise.places if p.order not in whole), key=lambda p: p.order)
    listed = entries(context.type, words, left_out, form.notes, form.style)
    return replace(bare, labels=tuple(labels), columns=_columns(listed, width, form, bare.high))


def bare_picture(
    context: Context, promise: LayoutPromise, layout: Layout, width: float, form: PictureForm
) -> SheetPicture:
    """Return the picture of a sheet without words in its pieces and without its list: it is as high with them, or higher."""
    words = SheetWords(promise, context.paper.first)
    long, short = _sides(promise)
    taken = MEASURE + (CUT_NAMES_BESIDE if promise.cuts else 1.0) + (form.notes + LIST_AWAY if form.beside else 0.0)
    scale = min((width - taken) / long, form.tallest / short)
    caption = context.type.lines(words.caption(), SMALL.bold(), width)
    return SheetPicture(promise, layout, words, width, form, scale, caption, (), ())


def _columns(
    listed: tuple[SheetNote, ...], width: float, form: PictureForm, high: float
) -> tuple[tuple[SheetNote, ...], ...]:
    """Share the list out: one column beside the picture and the rest under it, or all under it."""
    count = columns_in(width, form.notes)
    if not form.beside:
        return in_columns(listed, count) if listed else ()
    first = filled(listed, high)[0] if listed else ()
    rest = listed[len(first) :]
    return (first, *(in_columns(rest, count) if rest else ()))


def _sides(promise: LayoutPromise) -> tuple[float, float]:
    return max(promise.width, promise.height), min(promise.width, promise.height)


def _turn(promise: LayoutPromise) -> float:
    return 270.0 if promise.height > promise.width else 0.0


def _pose(promise: LayoutPromise, left: float, bottom: float, scale: float) -> Pose:
    """Return the pose of a sheet, its points times ``scale``, whose picture has its lower left corner there."""
    turn = _turn(promise)
    return Pose(left, bottom + promise.width * scale, turn) if turn else Pose(left, bottom)


def layout_picture(
    context: Context, shown: SheetPicture, left: float, top: float, page: int
) -> tuple[tuple[Drawn, ...], tuple[Carried, ...]]:
    """Draw one sheet under ``top`` with all that is measured and cut on it; return where the page carries it and its words too."""
    setter, promise = context.type, shown.promise
    drawn: list[Drawn] = [*shown.set_caption(setter, left, top)]
    y = top - shown.caption_height
    caption = Carried(promise.key_of("caption"), page, Box(left, y + SPACE / 2, left + shown.width, top))
    wide, high = shown.size
    up = MEASURE if shown.words.turned else (CUT_NAMES_BEYOND if promise.cuts else 0.0)
    sheet = Box(left + MEASURE, y - up - high, left + MEASURE + wide, y - up)
    pose = _pose(promise, sheet.left, sheet.bottom, shown.scale)
    drawn += edge_scale(setter, shown.words, sheet, shown.scale)
    drawn += _pieces(context, shown, pose)
    drawn.append(Stroke(SHEET, (polyline(sheet.corners(), True),), Layer.PAGE, tag="figure"))
    labels, places = _labels(setter, shown, sheet, page)
    named, taken = cut_lines(setter, shown.words, sheet, pose, shown.scale)
    kept, offcut = offcut_box(setter, shown.words, pose, shown.scale, taken, page)
    drawn += (*named, *labels, *kept)
    carried = [caption, Carried(promise.key, page, sheet, pose, shown.scale), *places, *offcut]
    first = y - shown.high - SPACE / 2
    if shown.form.beside and shown.columns:
        words, where = set_column(
            setter, shown.columns[0], left + shown.width - shown.form.notes, y, page, shown.form.notes
        )
        drawn += words
        carried += where
    words, where = set_columns(setter, shown.under, left, first, page, shown.form.notes)
    picture = described(drawn, shown.words.caption(), figures_only=True)
    return (*picture, *words), (*carried, *where)


def _pieces(context: Context, shown: SheetPicture, pose: Pose) -> list[Drawn]:
    """Draw every piece as it lies, and the points by which those that lie askew are laid."""
    scale = shown.scale

    def carry(point: Point) -> Point:
        return pose.apply((point[0] * scale, point[1] * scale))

    paths: list[Path] = []
    points: list[Drawn] = []
    for item, place in zip(shown.layout.items, shown.promise.places, strict=True):
        part = context.part(item.part)
        if part is None:
            continue
        paths += [_coarse(ring.placed(item.pose).carried(carry, scale=scale)) for ring in part.outline.paths]
        points += _points(place, carry) if len(place.measures) > 1 else ()
    return [Stroke(PIECE, tuple(paths), Layer.PAGE, tag="figure"), *points]


def _points(place: PlacePromise, carry: Callable[[Point], Point]) -> tuple[Fill, ...]:
    """Draw the two points of a copy that lies askew: a dot and a ring."""
    first, second = (carry(measure.at) for measure in place.measures)
    return (
        Fill(0.0, (_round(first, POINT_RADIUS),), Layer.PAGE, tag="figure"),
        Fill(0.0, (_round(second, POINT_RADIUS), _round(second, RING_HOLE)), Layer.PAGE, tag="figure"),
    )


def _round(middle: Point, radius: float) -> Path:
    turns = (radians(15.0 * k) for k in range(24))
    return polyline([(middle[0] + radius * cos(a), middle[1] + radius * sin(a)) for a in turns], True)


def _coarse(ring: Path) -> Path:
    """Return the ring as it stands in a picture; one of very many short lines with as few as the eye needs."""
    if len(ring.edges) <= MANY_IN_PICTURE:
        return ring
    points = shapely.get_coordinates(shapely.simplify(shapely.LinearRing(ring.points), COARSE_PICTURE))[:-1]
    return polyline([(float(x), float(y)) for x, y in points], True)


def _labels(
    setter: Setter, shown: SheetPicture, sheet: Box, page: int
) -> tuple[tuple[Drawn, ...], tuple[Carried, ...]]:
    """Draw the words in the pieces; return where those with measures stand too."""
    drawn: list[Drawn] = []
    carried: list[Carried] = []
    for label in shown.labels:
        (wide, high), x, y = label.size, sheet.left + label.at[0], sheet.bottom + label.at[1]
        top = y + high / 2
        for text, style in label.lines:
            top -= setter.cap(style)
            if text.startswith(POINTS):  # two points stand under each other
                drawn += setter.line(text, style, x - wide / 2, top)
            else:
                drawn += setter.line(text, style, x, top, align="centre")
            top -= LINES_APART
        if label.whole:
            box = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            carried.append(Carried(shown.promise.key_of("piece", label.place.order), page, box))
    return tuple(drawn), tuple(carried)
