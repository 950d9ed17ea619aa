"""The pictures of a step's acts: one beside the words, or rows of them below, each with its number where there are several."""

from collections.abc import Sequence
from math import floor

from publisher.basics import Box, Carried, record
from publisher.joints import Drawing
from publisher.pages.model import Drawn
from publisher.pages.sheet import Context, described, drawing_pose, drawn_size, place_drawing
from publisher.pages.type import GUTTER, HEADING, SPACE

MOST_ACTS = 4
"""Pictures of acts on one page: with more nobody knows which one is next."""

CELL_WIDE, TALLEST_ACT = 70.0, 52.0
"""mm: the room that such a picture is drawn for."""

NUMBER_ROOM = 4.5
"""mm at the left of a picture, for its number."""


@record
class ActCells:
    """Pictures laid out under a given top: what is drawn, the height (mm) that they take, where each stands."""

    drawn: tuple[Drawn, ...] = ()
    height: float = 0.0
    carried: tuple[Carried, ...] = ()


def acts_of(context: Context, own: int) -> tuple[Drawing, ...]:
    """Return the pictures of the acts of the design's ``own``-th step, in their order."""
    return tuple(d for d in context.joined.drawings if d.name.startswith(f"act:{own}:"))


def act_key(drawing: Drawing) -> str:
    """Return the key under which the picture of an act is promised."""
    _, step, number = drawing.name.split(":")
    return f"step:{step}:act:{number}"


def abreast(width: float) -> int:
    """Return how many pictures stand side by side in a width (mm)."""
    return max(1, floor((width + GUTTER) / (CELL_WIDE + NUMBER_ROOM + GUTTER)))


def act_rows(context: Context, acts: Sequence[Drawing], first: int, of: int, box: Box, page: int) -> ActCells:
    """Set pictures in rows at the top of a box. ``first``: the number of the first, ``of``: how many the step has on all pages."""
    columns = abreast(box.width)
    wide = (box.width - (columns - 1) * GUTTER) / columns
    cells = ActCells()
    y = box.top
    for start in range(0, len(acts), columns):
        row, height = acts[start : start + columns], 0.0
        for at, drawing in enumerate(row):
            left = box.left + at * (wide + GUTTER)
            place = Box(left, box.bottom, left + wide, y)
            number = first + start + at if of > 1 else 0
            cell = act_cell(context, drawing, number, place, page)
            height = max(height, cell.height)
            cells = ActCells((*cells.drawn, *cell.drawn), 0.0, (*cells.carried, *cell.carried))
        y -= height + SPACE
    return ActCells(cells.drawn, box.top - y, cells.carried)


def act_cell(context: Context, drawing: Drawing, number: int, box: Box, page: int) -> ActCells:
    """Set one picture at the top of a box, with its number (0: none) at the left."""
    setter = context.type
    room = NUMBER_ROOM if number else 0.0
    _, _, height = drawn_size(drawing, box.width - room, TALLEST_ACT)
    place = Box(box.left + room, box.top - height, box.right, box.top)
    drawn: list[Drawn] = list(described(place_drawing(setter, drawing, place), drawing.alt))
    if number:
        style = HEADING.tagged("p")
        drawn += setter.line(str(number), style, box.left, box.top - setter.drop(style))
    carried = Carried(act_key(drawing), page, place, *drawing_pose(drawing, place))
    return ActCells(tuple(drawn), height, (carried,))
