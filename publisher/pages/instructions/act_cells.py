"""The pictures of a step's acts: one beside the words, or rows of them below, each with its number where there are several."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from math import floor

import shapely

from publisher.basics import Box, Carried, Pose, changed, record, remembered_few
from publisher.design import PicturePlan, StepPlan
from publisher.geometry import polygon
from publisher.joints import Drawing, drawing_name, glue_said, sign_key
from publisher.pages.front import FIGURE_GAP, figure_beside
from publisher.pages.instructions.part_sketches import FIELD_WIDE
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.instructions.step_acts import ActSketch, acts_after, acts_before
from publisher.pages.model import Drawn, Fill, Stroke, Words
from publisher.pages.sheet import (
    FIGURE,
    Context,
    described,
    drawing_pose,
    drawn_size,
    ink_box,
    photo_size,
    place_drawing,
    place_photo,
)
from publisher.pages.type import GUTTER, HEADING, SMALL, SPACE, Setter, TypeStyle

MOST_ACTS = 4
"""Pictures of what is put together on one page: with more nobody knows which one is next."""

SKETCHES_FOR_ONE = 3
"""So many sketches of simple acts take as much of a page's share as one picture of what is put together."""

FULL_PAGE = MOST_ACTS * SKETCHES_FOR_ONE
"""What a page may show of both, each weighed by ``weight_shown``."""

CELL_WIDE, TALLEST_ACT = 70.0, 50.0
"""mm: the room that such a picture is drawn for."""

SKETCH_SCALE = 0.8
"""How large a sketch of a simple act is drawn, of its field; its words are as large as ever."""

LEAST_SKETCH_WIDE = 58.0
"""mm: the least width of a sketch of a simple act, of which several stand side by side."""

TALLEST_STEP = 47.0
"""mm: the tallest picture that a designer asks for."""

NUMBER_ROOM = 4.5
"""mm at the left of a picture, for its number."""

SIGN_ROOM = 8.0
"""mm at the left of what is put together, for its number and the sign of the glue."""

TICK_ROOM = 8.0
"""mm at the right of a finished piece, for its tick."""

SIGN_BOX = Box(-3.4, -1.0, 3.4, 11.4)
"""mm round the foot of the bottle: what the sign takes."""

SIGN_FOOT = 22.0
"""mm under the top of its picture at which the bottle stands."""

SIGN_TALL = SIGN_FOOT - SIGN_BOX.bottom
"""mm under the top of its picture that the sign takes."""

NOT_MOVED = Pose()


@record
class OwnPicture:
    """The picture that a designer asks for, of the ``own``-th step."""

    plan: PicturePlan
    own: int


ActPicture = Drawing | ActSketch | OwnPicture


@record
class CellLook:
    """How a picture in a cell looks: its largest scale, and the ``style`` of its words (None: as on paper)."""

    largest: float = 1.0
    style: TypeStyle | None = None


ON_PAPER = CellLook()


@record
class ActCells:
    """Pictures laid out under a given top: what is drawn, the height (mm) that they take, where each stands."""

    drawn: tuple[Drawn, ...] = ()
    height: float = 0.0
    carried: tuple[Carried, ...] = ()


def acts_of(context: Context, own: int) -> tuple[Drawing, ...]:
    """Return the pictures of what the design's ``own``-th step puts together, in their order."""
    return tuple(d for d in context.joined.drawings if d.name.startswith(f"act:{own}:"))


@remembered_few
def pictures_of(context: Context, step: StepPlan, own: int) -> tuple[ActPicture, ...]:
    """Return all pictures of a step in the order of the work: what is done to its parts, what is put together, what is done then. The
    designer's own is the last where it shows a whole, else the first."""
    made: tuple[ActPicture, ...] = (
        *acts_before(context, step),
        *acts_of(context, own),
        *acts_after(context, step, own),
    )
    if step.picture is None or not _known(context, step.picture):
        return made
    picture = OwnPicture(step.picture, own)
    return (*made, picture) if step.picture.kind == "whole" else (picture, *made)


def _known(context: Context, plan: PicturePlan) -> bool:
    if plan.kind == "photo":
        return photo_size(context.design, plan.target, CELL_WIDE, TALLEST_STEP) is not None
    return context.joined.drawing(drawing_name(plan)) is not None


def weight_shown(picture: ActPicture) -> int:
    """Return how much of a page's share of pictures one takes, of ``FULL_PAGE``."""
    return 1 if isinstance(picture, ActSketch) else SKETCHES_FOR_ONE


def most_shown(pictures: Sequence[ActPicture]) -> int:
    """Return how many of these pictures, from the first on, one page may show."""
    taken = 0
    for number, picture in enumerate(pictures):
        taken += weight_shown(picture)
        if taken > FULL_PAGE:
            return number
    return len(pictures)


def act_key(drawing: Drawing) -> str:
    """Return the key under which the picture of an act is promised."""
    _, step, number = drawing.name.split(":")
    return f"step:{step}:act:{number}"


def abreast(width: float) -> int:
    """Return how many pictures stand side by side in a width (mm)."""
    return max(1, floor((width + GUTTER) / (CELL_WIDE + NUMBER_ROOM + GUTTER)))


def act_rows(
    context: Context,
    acts: Sequence[ActPicture],
    first: int,
    of: int,
    box: Box,
    page: int,
    larger: float = 1.0,
) -> ActCells:
    """Set pictures in rows at the top of a box. ``first``: the number of the first, ``of``: how many the step has on all pages;
    ``larger``: times as large as they must be."""
    cells = ActCells()
    y, start = box.top, 0
    for row in _rows_of(acts, box.width):
        y -= SPACE if start else 0.0
        columns = max(len(row), abreast(box.width))
        wide, height = (box.width - (columns - 1) * GUTTER) / columns, 0.0
        for at, drawing in enumerate(row):
            left = box.left + at * (wide + GUTTER)
            place = Box(left, box.bottom, left + wide, y)
            number = first + start + at if of > 1 else 0
            cell = act_cell(context, drawing, number, place, page, larger)
            height = max(height, cell.height)
            cells = ActCells((*cells.drawn, *cell.drawn), 0.0, (*cells.carried, *cell.carried))
        y -= height
        start += len(row)
    return ActCells(cells.drawn, box.top - y, cells.carried)


def _rows_of(acts: Sequence[ActPicture], width: float) -> Iterator[Sequence[ActPicture]]:
    """Yield pictures row by row: sketches of simple acts closer together, where that takes fewer rows."""
    plain = abreast(width)
    close = max(plain, floor((width + GUTTER) / (LEAST_SKETCH_WIDE + NUMBER_ROOM + GUTTER)))
    start = 0
    while start < len(acts):
        some = acts[start : start + close]
        simple = all(isinstance(one, ActSketch) for one in some)
        left = len(acts) - start
        count = close if simple and (left - 1) // plain >= (left - 1) // close + 1 else plain
        yield acts[start : start + count]
        start += count


def act_cell(
    context: Context,
    shown: ActPicture,
    number: int,
    box: Box,
    page: int,
    larger: float = 1.0,
    look: CellLook = ON_PAPER,
) -> ActCells:
    """Set one picture at the top of a box, with its number (0: none) at the left; ``larger`` times as large as it must be, as far as the
    box is wide. Sketches look as on paper whatever the ``look``."""
    setter = context.type
    drawn: list[Drawn] = []
    if number:
        style = HEADING.tagged("p")
        drawn += setter.line(str(number), style, box.left, box.top - setter.drop(style))
    if isinstance(shown, ActSketch):
        room = NUMBER_ROOM if number else 0.0
        cell = sketch_cell(context, shown, Box(box.left + room, box.bottom, box.right, box.top), page, larger)
        return ActCells((*drawn, *cell.drawn), cell.height, cell.carried)
    if isinstance(shown, OwnPicture):
        sign = _glue_sign(context, f"step:{shown.own}:picture", box, page)
        room = SIGN_ROOM if sign.drawn else NUMBER_ROOM if number else 0.0
        own = _own(context, shown, Box(box.left + room, box.bottom, box.right, box.top), page, larger, look)
        return ActCells((*drawn, *sign.drawn, *own.drawn), own.height, (*sign.carried, *own.carried))
    sign = _glue_sign(context, act_key(shown), box, page)
    room = SIGN_ROOM if sign.drawn else NUMBER_ROOM if number else 0.0
    _, _, height = drawn_size(shown, box.width - room, TALLEST_ACT * larger, look.largest)
    place = Box(box.left + room, box.top - height, box.right, box.top)
    drawn += described(place_drawing(setter, shown, place, largest=look.largest, style=look.style), shown.alt)
    carried = Carried(act_key(shown), page, place, *drawing_pose(shown, place, look.largest))
    return ActCells((*drawn, *sign.drawn), height, (carried, *sign.carried))


def sketch_cell(context: Context, sketch: ActSketch, box: Box, page: int, larger: float = 1.0) -> ActCells:
    """Set a sketch at the top of a box, in its middle: it takes no more than is drawn of its field."""
    scale = min(SKETCH_SCALE * larger, box.width / FIELD_WIDE)
    left = (box.left + box.right - FIELD_WIDE * scale) / 2
    made = _sketched(context.type, sketch, scale=scale)
    at = Pose(left, box.top - made.high)
    place = Box(left, box.top - made.high + made.low, left + FIELD_WIDE * scale, box.top)
    carried = shown_parts(sketch, made.parts, page, place, at)
    return ActCells(_all_moved(made, to=at), made.high - made.low, carried)


def shown_parts(
    sketch: ActSketch, parts: Iterable[tuple[str, Pose, float]], page: int, place: Box, moved: Pose = NOT_MOVED
) -> tuple[Carried, ...]:
    """Return where a page shows a sketch that stands at a place, and what is done to each of its parts."""
    if not sketch.does:
        return ()
    each = (
        Carried(f"{sketch.does}:{part}", page, place, replace(at, x=at.x + moved.x, y=at.y + moved.y), scale)
        for part, at, scale in parts
    )
    return (Carried(sketch.does, page, place), *each)


@record
class _Sketched:
    """A sketch as it is drawn at the corner of the page, from and up to where it stands (mm up), and the parts that it shows."""

    drawn: tuple[Drawn, ...]
    low: float
    high: float
    parts: tuple[tuple[str, Pose, float], ...]


@remembered_few
def _sketched(setter: Setter, sketch: ActSketch, *, scale: float) -> _Sketched:
    """Return a sketch as it is drawn at the corner of the page: pages are filled, numbered and drawn with the same one."""
    pen = SketchPen(setter, (0.0, 0.0), scale)
    sketch.draw(pen)
    drawn = described(pen.seen(), sketch.shows)
    boxes = [box for thing in drawn if (box := ink_box(setter.faces, thing))]
    low, high = min((box.bottom for box in boxes), default=0.0), max((box.top for box in boxes), default=0.0)
    return _Sketched(drawn, low, high, tuple(pen.parts))


@remembered_few
def _all_moved(made: _Sketched, *, to: Pose) -> tuple[Drawn, ...]:
    """Return a sketch as it stands on its page, where it stands with numbers of pages and without."""
    return tuple(_moved(thing, to) for thing in made.drawn)


def _moved(thing: Drawn, to: Pose) -> Drawn:
    if isinstance(thing, Words):
        return changed(thing, x=thing.x + to.x, y=thing.y + to.y)
    if isinstance(thing, Stroke | Fill):
        return changed(thing, paths=tuple(path.placed(to) for path in thing.paths))
    raise TypeError(f"a sketch has no {type(thing).__name__}")


def _glue_sign(context: Context, picture: str, box: Box, page: int) -> ActCells:
    """Set the sign that glue is taken, or none, at the left of a picture that has one, by the key of the picture."""
    glued = glue_said(context.joined, picture)
    if glued is None:
        return ActCells()
    pen = SketchPen(context.type, (box.left + 2.6, box.top - SIGN_FOOT))
    glue_sign(pen, glued=glued)
    drawn = described(pen.seen(), "With glue" if glued else "Without glue")
    at, (x, y) = SIGN_BOX, pen.origin
    place = Box(x + at.left, y + at.bottom, x + at.right, y + at.top)
    return ActCells(drawn, 0.0, (Carried(sign_key(picture), page, place, Pose(x, y), pen.scale),))


def glue_sign(pen: SketchPen, *, glued: bool) -> None:
    """Draw a bottle of glue; crossed out where none is taken."""
    pen.bottle(0.0, 0.0)
    if not glued:
        pen.wrong(-3.0, -0.6, 3.0, 11.0)


def _own(context: Context, shown: OwnPicture, box: Box, page: int, larger: float, look: CellLook) -> ActCells:
    """Set the picture that a designer asks for; a finished piece with a tick and a figure for its size."""
    plan, key, tallest = shown.plan, f"step:{shown.own}:picture", TALLEST_STEP * larger
    if plan.kind == "photo":
        size = photo_size(context.design, plan.target, box.width, tallest)
        if size is None:
            return ActCells()
        place = Box(box.left, box.top - size[1], box.right, box.top)
        made = place_photo(context.design, plan.target, place, context.say(plan.alt))
        return ActCells(made, size[1], (Carried(key, page, place, Pose(), 1.0),))
    drawing = context.joined.drawing(drawing_name(plan))
    if drawing is None:
        return ActCells()
    whole = plan.kind == "whole"
    base = context.design.figure.base * (1.0 + FIGURE_GAP) if whole else 0.0
    across = (box.width - (TICK_ROOM if whole else 0.0)) / (drawing.width + base)
    scale = min(across, tallest / drawing.height, look.largest)
    wide, height = (drawing.width + base) * scale, drawing.height * scale
    left = (box.left + box.right - wide - (TICK_ROOM if whole else 0.0)) / 2
    place = Box(left + base * scale, box.top - height, left + wide, box.top)
    made = place_drawing(context.type, drawing, place, largest=look.largest, style=look.style)
    drawn = [*described(made, context.say(plan.alt) or drawing.alt)]
    at = drawing_pose(drawing, place, look.largest)
    drawn += part_letter(context, drawing, *at, look.style or SMALL)
    if whole:
        drawn.append(figure_beside((left, place.bottom), context.design.figure.base * scale))
        pen = SketchPen(context.type, (place.right + 2.0, box.top - 7.0))
        pen.right(0.0, 0.0)
        drawn += described(pen.seen(), "This is done")
    return ActCells(tuple(drawn), height, (Carried(key, page, place, *at),))


def part_letter(
    context: Context, drawing: Drawing, pose: Pose, scale: float, style: TypeStyle = SMALL
) -> tuple[Drawn, ...]:
    """Set the letter of a part that is shown by itself, on it where there is most room; nothing on a drawing of anything else."""
    kind, _, name = drawing.name.partition(":")
    part = context.part(name) if kind == "part" else None
    if part is None:
        return ()
    shape = polygon(part.outline)
    spot = shapely.maximum_inscribed_circle(shape, 1.0).coords[0]
    style = style.bold().tagged(FIGURE)
    x, y = pose.x + scale * (spot[0] - shape.bounds[0]), pose.y + scale * (spot[1] - shape.bounds[1])
    return tuple(context.type.line(part.letter, style, x, y - context.type.cap(style) / 2, align="centre"))
