"""The fit coupon is made as the parts are: traced with the same allowance, or cut as it is printed."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from publisher.basics import Place
from publisher.design import Design, EdgeTreatment, LapSlot
from publisher.pages.front.coupon import coupon, fit_of
from publisher.pages.model import Stroke
from publisher.pages.sheet.draft import Context

Make = Callable[..., Context]


def size(points: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return max(xs) - min(xs), max(ys) - min(ys)


def test_slot_and_tab_are_drawn_for_the_pencil_as_the_parts_are(make_context: Make) -> None:
    context = make_context()
    assert all(plan.trace_allowance == 0.4 for plan in context.design.parts)
    fit = fit_of(context)
    assert fit is not None
    assert (fit.board, fit.thickness, fit.slot) == ("foam", 5.0, 5.3)
    body = coupon(context, fit, 2, (10.0, 20.0))
    outlines = next(t for t in body.drawn if isinstance(t, Stroke))
    tab, _plate, slot = (path.points for path in outlines.paths)
    # board 5.0 and play 0.3 mm: the slot is 5.3 wide, and 0.3 longer than the tab of 14
    assert fit.allowance == 0.4  # a pencil runs 0.4 inside the slot and 0.4 outside the tab
    assert size(slot) == pytest.approx((14.3 + 0.8, 5.3 + 0.8))
    assert tab[3][0] - tab[6][0] == pytest.approx(14.0 - 0.8)
    assert tab[4][1] - tab[3][1] == pytest.approx(5.0)


def test_what_decides_the_fit_is_promised(make_context: Make) -> None:
    context = make_context()
    fit = fit_of(context)
    assert fit is not None
    body = coupon(context, replace(fit, allowance=0.0), 2, (10.0, 20.0))
    assert [promise.text for promise in body.texts] == ["slot 5.30 mm"]
    lengths = body.lengths
    assert [p.length for p in lengths] == pytest.approx([5.3, 14.3, 14.0, 5.0])
    for promise in lengths:
        assert size((promise.start, promise.end)) == pytest.approx(
            (promise.length, 0.0) if promise.start[1] == promise.end[1] else (0.0, promise.length)
        )


def test_a_design_without_slots_gets_a_step_of_its_board(
    make_context: Make, make_design: Callable[..., Design]
) -> None:
    context = make_context(design=make_design(slots=False))
    fit = fit_of(context)
    assert fit is not None
    assert fit.slot == 0.0
    body = coupon(context, fit, 2, (10.0, 20.0))
    assert body.lengths[0].length == 5.0


def test_without_tabs_the_slot_in_which_panels_cross_is_tried(
    make_context: Make, make_design: Callable[..., Design]
) -> None:
    design = make_design(slots=False)
    lap = EdgeTreatment(
        "top", 0.0, 0.0, None, (), ("a",), Place("spec.yaml", 1, 1), (), (LapSlot(40.0, 5.0, 0.4, ("a",)),)
    )
    parts = (replace(design.parts[0], treatments=(lap,)), *design.parts[1:])
    fit = fit_of(make_context(design=replace(design, parts=parts)))
    assert fit is not None
    assert (fit.thickness, fit.slot) == (5.0, 5.4)


def test_a_design_without_parts_has_no_coupon(make_context: Make, make_design: Callable[..., Design]) -> None:
    assert fit_of(make_context(design=make_design(parts=()))) is None
