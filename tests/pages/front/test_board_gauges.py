"""Each board that is measured has a gauge where the page has room and the board is thick enough for one."""

from collections.abc import Callable

import pytest

from publisher.pages.front import board_gauges
from publisher.pages.front.board_gauges import boards_to_go_on, gauged_boards
from publisher.pages.front.check_squares import CheckForm
from publisher.pages.front.coupon import Fit
from publisher.pages.sheet.draft import Context


@pytest.mark.parametrize(("thin", "gauges", "gauged"), [(3.0, True, 2), (3.0, False, 1), (0.5, True, 1)])
def test_a_second_board_has_a_gauge_where_there_is_room_and_it_is_no_paper(
    thin: float, gauges: bool, gauged: int, make_context: Callable[..., Context], monkeypatch: pytest.MonkeyPatch
) -> None:
    fits = (Fit("foam", 5.0, 0.2, 5.3), Fit("thin_board", thin, 0.1, 0.0))
    monkeypatch.setattr(board_gauges, "tried_boards", lambda _: fits)
    context = make_context()
    assert gauged_boards(context, CheckForm(False, gauges=gauges)) == fits[:gauged]
    assert [name for name, _ in boards_to_go_on(context)] == ["foam", "thin board"]
