"""Words find room inside a piece, or are left to the list."""

from collections.abc import Callable

import pytest
import shapely

from publisher.basics import LayoutPromise, MeasurePromise, PlacePromise
from publisher.geometry import Part
from publisher.pages.front.layout_labels import PieceLabel, Places
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
