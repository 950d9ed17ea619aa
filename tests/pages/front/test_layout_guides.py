"""The lines to draw first: rows of a layout, in the direction in which more pieces stand on them."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Pose
from publisher.material import Item
from publisher.pages.front.layout_guides import row_lines
from publisher.pages.sheet.draft import Context


@pytest.fixture
def ribs(demo: Callable[..., Context]):
    """A layout of the ribs of a demo at given corners, and their size."""
    context = demo("quay")
    part = next(p for p in context.parts if p.letter == "C")
    xs, ys = zip(*part.outline.outer.points, strict=True)

    def make(*corners: tuple[float, float]):
        items = tuple(Item(part.id, k, Pose(x - min(xs), y - min(ys))) for k, (x, y) in enumerate(corners, 1))
        return replace(context.needs.yields[0].sheets[0], items=items), context.parts

    return make, max(xs) - min(xs), max(ys) - min(ys)


def test_rows_and_single_pieces(ribs) -> None:
    """Two rows of three, and one piece that stands alone: two lines, from the lower edge."""
    make, *_ = ribs
    corners = [(x, y) for y in (3.0, 90.0) for x in (3.0, 80.5, 161.0)]
    found = row_lines(*make(*corners[:4], (81.0, 90.1), (163.0, 90.0), (3.0, 200.0)), 5.0)
    assert found.up
    assert found.at == pytest.approx((3.0, 90.0))


def test_columns(ribs) -> None:
    """Pieces above each other stand on upright lines."""
    make, *_ = ribs
    found = row_lines(*make((3.0, 3.0), (3.0, 70.0), (3.0, 141.0)), 5.0)
    assert (found.up, found.at) == (False, (3.0,))


def test_a_turned_sheet_has_the_lines_of_its_picture(ribs) -> None:
    """Shown turned to the left, the left edge lies below: columns are rows, and stay at their distance."""
    make, wide, _ = ribs
    found = row_lines(*make((3.0, 3.0), (3.0, 70.0), (3.0, 141.0)), 5.0, 762.0)
    assert (found.up, found.at) == (True, (3.0,))
    assert wide > 0


def test_lines_too_close_for_their_numbers_are_left_out(ribs) -> None:
    """Of two rows 2 mm apart only the first has a line."""
    make, *_ = ribs
    assert row_lines(*make((3.0, 3.0), (80.0, 3.0), (160.0, 5.0), (240.0, 5.0)), 5.0).at == (3.0,)


def test_no_pieces_no_lines(ribs) -> None:
    """An empty sheet has none."""
    make, *_ = ribs
    assert row_lines(*make(), 5.0).at == ()
