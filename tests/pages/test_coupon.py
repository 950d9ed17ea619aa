"""The fit coupon is drawn as the design's own slot and tab are."""

from collections.abc import Callable

import pytest

from publisher.design import Design
from publisher.pages.coupon import coupon, fit_of
from publisher.pages.draft import Context
from publisher.pages.model import Stroke

Make = Callable[..., Context]


def size(points: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return max(xs) - min(xs), max(ys) - min(ys)


def test_slot_and_tab_follow_board_play_and_pencil(make_context: Make) -> None:
    context = make_context()
    fit = fit_of(context)
    assert fit is not None
    assert (fit.thickness, fit.slot, fit.allowance) == (5.0, 5.3, 0.4)
    body = coupon(context, fit, 2, (10.0, 20.0))
    outlines = next(t for t in body.drawn if isinstance(t, Stroke))
    tab, _plate, slot = (path.points for path in outlines.paths)
    # a pencil of 0.4 mm runs outside the tab and inside the slot: 14 - 0.8 wide, 5.3 + 0.8 across
    assert size(slot) == pytest.approx((14.3 + 0.8, 5.3 + 0.8))
    assert tab[3][0] - tab[6][0] == pytest.approx(14.0 - 0.8)
    assert tab[4][1] - tab[3][1] == pytest.approx(5.0)
    assert body.lengths[0].length == pytest.approx(6.1)


def test_a_design_without_slots_gets_a_step_of_its_board(
    make_context: Make, make_design: Callable[..., Design]
) -> None:
    context = make_context(design=make_design(slots=False))
    fit = fit_of(context)
    assert fit is not None
    assert fit.slot == 0.0
    body = coupon(context, fit, 2, (10.0, 20.0))
    assert body.lengths[0].length == 5.0


def test_a_design_without_parts_has_no_coupon(make_context: Make, make_design: Callable[..., Design]) -> None:
    assert fit_of(make_context(design=make_design(parts=()))) is None
