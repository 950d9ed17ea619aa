"""Parts in the cells of a sketch: as large as fits, in their own outlines, with lines that stay apart."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import Box, Purpose
from publisher.geometry import polygon
from publisher.pages.instructions.part_art import CLOSEST_LINES, board_round, part_cells
from publisher.pages.instructions.sketch_pen import SketchPen
from publisher.pages.model import Stroke, Words
from publisher.pages.sheet.draft import Context

ROOM = Box(0.0, 0.0, 70.0, 40.0)


@pytest.mark.parametrize("slug", ["toll-house", "bridge", "lock-stair"])
def test_parts_share_a_box_and_keep_their_proportions(slug: str, demo: Callable[..., Context]) -> None:
    parts = [(part, 2) for part in demo(slug).parts]
    arts = part_cells(parts, ROOM)
    assert [art.part.id for art in arts] == [part.id for part, _ in parts]
    for art in arts:
        assert shapely.box(*art.cell.sides).buffer(0.01).contains(art.shape)
        assert art.shape.area == pytest.approx(polygon(art.part.outline).area * art.scale**2, rel=1e-6)
    cells = [shapely.box(*art.cell.sides) for art in arts]
    assert all(a.intersection(b).area < 1e-6 for i, a in enumerate(cells) for b in cells[:i])
    assert part_cells([], ROOM) == ()


def test_a_pattern_is_thinned_so_that_its_lines_do_not_close_up(demo: Callable[..., Context], setter: object) -> None:
    context = demo("toll-house")
    gable = next(part for part in context.parts if part.id == "gable")
    (art,) = part_cells([(gable, 2)], Box(0.0, 0.0, 25.0, 25.0))
    pen = SketchPen(context.type, (0.0, 0.0))
    count = art.marks(pen, (Purpose.SURFACE,))
    lines = [
        shapely.LineString(path.points) for thing in pen.drawn if isinstance(thing, Stroke) for path in thing.paths
    ]
    assert 3 < count == len(lines) < sum(mark.purpose is Purpose.SURFACE for mark in gable.marks)
    middles = [line.interpolate(0.5, normalized=True) for line in lines]
    for number, middle in enumerate(middles[1:], 1):
        assert min(middle.distance(line) for line in lines[:number]) > 0.7 * CLOSEST_LINES


def test_a_letter_stands_on_a_part_where_there_is_room_and_its_count_under_it(demo: Callable[..., Context]) -> None:
    context = demo("bridge")
    kerb = next(part for part in context.parts if part.id == "kerb")
    for part, lettered in ((context.parts[0], 1), (kerb, 0)):
        (art,) = part_cells([(part, 2)], ROOM)
        pen = SketchPen(context.type, (0.0, 0.0))
        board_round(pen, art)
        art.lettered(pen)
        art.counted(pen)
        said = [thing.text for thing in pen.drawn if isinstance(thing, Words)]
        assert said == [part.letter] * lettered + [f"2 × {part.letter}"]
