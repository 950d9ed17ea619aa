"""The board gauge: from 4 to 6 mm over 100 mm, a line every 0.2 mm, and a mark at the design's board."""

import pytest

from publisher.pages.front.gauge import gauge, gauge_from
from publisher.pages.model import Fill
from publisher.pages.type.text import Setter


def test_graduations(setter: Setter) -> None:
    body = gauge(setter, 2, (10.0, 20.0), 5.0)
    assert [p.label for p in body.lengths] == [
        "4.0",
        "4.2",
        "4.4",
        "4.6",
        "4.8",
        "5.0",
        "5.2",
        "5.4",
        "5.6",
        "5.8",
        "6.0",
    ]
    for number, line in enumerate(body.lengths):
        assert line.start == pytest.approx((10.0 + 10.0 * number, 20.0))
        assert line.end[1] - line.start[1] == pytest.approx(line.length) == pytest.approx(float(line.label))


@pytest.mark.parametrize(("thickness", "share"), [(5.0, 0.5), (4.7625, 0.38125), (5.4, 0.7)])
def test_the_mark_stands_where_the_gap_is_the_board(setter: Setter, thickness: float, share: float) -> None:
    body = gauge(setter, 2, (10.0, 20.0), thickness)
    mark = next(t for t in body.drawn if isinstance(t, Fill))
    assert mark.paths[0].points[0][0] == pytest.approx(10.0 + 100.0 * share)


def test_other_boards_have_a_gauge_of_their_own() -> None:
    assert [gauge_from(t) for t in (3.0, 4.7625, 5.0, 10.0, 0.8)] == [2.0, 4.0, 4.0, 9.0, 1.0]
