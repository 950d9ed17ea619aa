"""The curves of a sweep's plot: steps stand where the jumps are."""

from pathlib import Path

import pytest

from publisher import api
from publisher.sweep.plotting import plot_of


def test_curves_step_where_counts_jump(squares: Path) -> None:
    plot = plot_of(api.vary(api.read(squares), "", ("radius = 74 mm to 75 mm",), values=2))
    needs, copies, sheets, pages = plot.panels
    (curve,) = copies.curves
    assert curve.name == "A on 300 x 300 mm"
    assert curve.stretches == (((74.0, 16.0), (74.25, 16.0), (74.26, 9.0), (75.0, 9.0)),)
    assert needs.curves[0].stretches[0][0] == (74.0, pytest.approx(2.0)) and needs.line == 0.5
    assert sheets.curves[0].stretches[0][0] == (74.0, 1.0) and pages.low == 0.0


def test_two_sizes_have_no_plot(squares: Path) -> None:
    sweep = api.vary(api.read(squares), "", ("radius = 74 mm to 75 mm", "board = 5 mm to 5.2 mm"), values=2)
    with pytest.raises(ValueError, match="one size"):
        plot_of(sweep)
