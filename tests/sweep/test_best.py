"""The best value against brute force: every value of a range built by itself, with nothing that the sweep knows."""

from collections.abc import Callable
from math import inf
from pathlib import Path

import pytest

from publisher import api
from publisher.design import work_out
from publisher.sweep.best import best_of, missed_of
from publisher.sweep.model import SweepRow, VariedNeed
from tests.sweep.test_counting import trial_of
from tests.sweep.test_savings import TWO_WALLS

SQUARE = ("shape: disc, with: {radius: radius}", "shape: rectangle, with: {width: radius, height: radius}")
FEWER_SHEETS = (
    SQUARE,
    ("count: 3", "count: 16"),
    ("sheets: [20 x 30 in]", "sheets: [300 x 300 mm], knife_gap: 1 mm"),
    ("papers: [a4, letter]", "needs: [{fact: disc.width, at_least: 73.7 mm}]\npapers: [a4]"),
)  # 16 of them fill a sheet up to 74.25 mm, and the need leaves 0.5 mm from 74.2 mm on
FEWER_PAGES = (
    *TWO_WALLS[:-1],
    ("papers: [a4, letter]", "needs: [{fact: disc.width, at_least: 200 mm}]\npapers: [a4]"),
)  # the wall is longer than a page of A4 from 270.61 mm on
TWO_NEEDS = (
    ("shape: disc, with: {radius: radius}", "shape: rectangle, with: {width: radius, height: 60 mm - radius}"),
    (
        "papers: [a4, letter]",
        "needs: [{fact: disc.width, at_least: 25 mm}, {fact: disc.height, at_least: 33 mm}]\npapers: [letter]",
    ),
)


def built(folder: Path, value: float) -> tuple[bool, float, float]:
    """Return whether a design at a value leaves 0.5 mm to each need, its sheets and its pages, from the work as a user has it."""
    worked = api.work(api.read(folder, (("radius", f"{value} mm"),)))
    (pack,), _ = api.compose(worked)
    assert worked.design is not None and worked.joined is not None and worked.needs is not None
    spare = []
    for need in worked.design.needs:
        fact = worked.joined.fact(need.fact)
        assert fact is not None
        spare += [fact.value - need.at_least] if need.at_least is not None else []
        spare += [need.at_most - fact.value] if need.at_most is not None else []
    pages = sum(page.kind in ("templates", "tiles", "overview") for page in pack.pages)
    return min(spare) >= 0.5 - 1e-6, len(worked.needs.yields[0].sheets), pages


@pytest.mark.parametrize(
    ("words", "low", "high", "best"),
    [(FEWER_SHEETS, 74.19, 74.26, 74.2), (FEWER_PAGES, 270.59, 270.61, 270.6), (TWO_NEEDS, 25.49, 25.51, 25.5)],
)
def test_the_best_value_is_that_of_brute_force(
    design: Callable[..., Path], words: tuple[tuple[str, str], ...], low: float, high: float, best: float
) -> None:
    folder = design(*words)
    sweep = api.vary(api.read(folder), "", (f"radius = {low} mm to {high} mm",), values=2)
    now = next(size.value for size in work_out(api.read(folder), "").sizes if size.name == "radius")
    every = [round(low + k * 0.01, 2) for k in range(round((high - low) / 0.01) + 1)]
    ranked = [(sheets, pages, abs(v - now), v) for v in every for good, sheets, pages in [built(folder, v)] if good]
    assert sweep.best is not None
    assert sweep.best.values == (min(ranked)[-1],) == (best,)


def needing(*margins: float) -> SweepRow:
    return SweepRow((margins[0],), needs=tuple(VariedNeed("a", "length", 0.0, m, False) for m in margins))


def test_a_need_that_is_never_met_is_said_with_the_nearest_value() -> None:
    (missed,) = missed_of((needing(-3.0, 1.0), needing(-2.0, 1.0), needing(-4.0, -1.0)))
    assert (missed.values, missed.short) == ((-2.0,), 2.0)


def test_no_value_is_best_where_none_has_room(design: Callable[..., Path]) -> None:
    trial = trial_of(design(), "radius = 15 mm to 30 mm")
    assert best_of((needing(0.4), needing(-1.0)), trial.spans) is None
    assert best_of((needing(0.4), needing(inf)), trial.spans) == needing(inf)
