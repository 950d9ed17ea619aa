"""Words find room inside a piece, or are left to the list."""

from collections.abc import Callable

import numpy as np
import pytest
import shapely

from publisher.basics import LayoutPromise, MeasurePromise, PlacePromise
from publisher.geometry import Part
from publisher.pages.front.layout_labels import SPOTS_TRIED, PieceLabel, Places, RoomForWords
from publisher.pages.front.layout_words import SheetWords
from publisher.pages.type import Setter

WORDS = SheetWords(LayoutPromise("k", "foam", "A3", 420.0, 297.0, 1, 1, 1, ()), "mm")


def label(setter: Setter, part: Part, scale: float, turn: float = 0.0) -> PieceLabel | None:
    place = PlacePromise(part.id, "A", 1, (), turn, False, (MeasurePromise((123.4, 56.7), (0.0, 0.0)),), 12)
    return Places(setter, scale, 0.0).label(WORDS, place, part, (10.0, 20.0))


@pytest.mark.parametrize(
    ("scale", "lines"), [(1.0, ("12 A", "→123.4 ↑56.7")), (0.2, ("12 A", "→123.4", "↑56.7")), (0.11, ("12 A",))]
)
def test_as_many_words_as_have_room(
    setter: Setter, make_part: Callable[..., Part], scale: float, lines: tuple[str, ...]
) -> None:
    """Measures on one line, on two, or not at all; the block lies inside its piece."""
    found = label(setter, make_part(width=60.0, height=60.0), scale)
    assert found is not None and tuple(text for text, _ in found.lines) == lines
    assert found.whole == (len(lines) > 1)
    (x, y), (wide, high) = found.at, found.size
    block = shapely.box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
    assert shapely.box(10.0, 20.0, 10.0 + 60.0 * scale, 20.0 + 60.0 * scale).contains(block)


def test_a_flat_piece_has_all_on_one_line_and_a_tiny_one_none(setter: Setter, make_part: Callable[..., Part]) -> None:
    flat = label(setter, make_part(width=300.0, height=14.0), 0.2)
    assert flat is not None and [text for text, _ in flat.lines] == ["12 A →123.4 ↑56.7"]
    assert label(setter, make_part(width=300.0, height=8.0), 0.2) is None
    assert label(setter, make_part(width=300.0, height=14.0), 0.2, turn=90.0) is None


@pytest.mark.parametrize("size", [(4.0, 2.0), (11.0, 3.0), (20.0, 12.0), (26.0, 9.0), (33.0, 20.0)])
def test_the_spot_is_the_nearest_to_the_roomiest_point_of_all_that_are_tried(size: tuple[float, float]) -> None:
    """Of an L, against all places looked at one by one."""
    shape = shapely.Polygon([(0, 0), (40, 0), (40, 10), (14, 10), (14, 30), (0, 30)])
    wide, high = size
    x0, y0 = shapely.get_coordinates(shapely.maximum_inscribed_circle(shape, 0.2))[0]
    xs = [*np.linspace(wide / 2, 40.0 - wide / 2, SPOTS_TRIED), x0]
    ys = [*np.linspace(high / 2, 30.0 - high / 2, SPOTS_TRIED), y0]
    free = [
        (x, y)
        for y in ys
        for x in xs
        if shape.covers(shapely.box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2))
    ]
    wanted = min(free, key=lambda at: np.hypot(at[0] - x0, at[1] - y0), default=None)
    assert RoomForWords(shape).roomiest(wide, high) == (pytest.approx(wanted) if wanted else None)
