"""Long thin parts keep two long edges in a small picture."""

import pytest
import shapely

from publisher.joints import Drawing, DrawnLine
from publisher.pages.instructions.broken_views import MOST_LONG, broken


def bar(width: float, height: float) -> Drawing:
    ring = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height), (0.0, 0.0))
    return Drawing("part:kerb", "A kerb", (DrawnLine("outline", ring),), (), width, height)


@pytest.mark.parametrize(("width", "height"), [(280.0, 8.0), (8.0, 280.0)])
def test_a_long_part_is_shortened_and_keeps_its_ends_and_its_width(width: float, height: float) -> None:
    shown = broken(bar(width, height))
    long, wide = max(shown.width, shown.height), min(shown.width, shown.height)
    assert wide == 8.0 and long < MOST_LONG * wide
    lines = shapely.MultiLineString([line.points for line in shown.lines])
    assert lines.bounds == pytest.approx((0.0, 0.0, shown.width, shown.height))
    middle = shapely.box(shown.width / 2 - 0.5, shown.height / 2 - 0.5, shown.width / 2 + 0.5, shown.height / 2 + 0.5)
    assert not lines.intersects(middle), "between the break lines nothing is drawn"
    assert sum(len(line.points) == 2 for line in shown.lines) >= 2, "a break line at each end"


def test_a_part_that_is_not_long_stays() -> None:
    drawing = bar(80.0, 40.0)
    assert broken(drawing) is drawing
