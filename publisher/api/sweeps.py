"""A design at many values of its sizes."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.brief import Brief
    from publisher.sweep import Sweep, Told


def vary(
    brief: Brief,
    variant: str,
    ranges: tuple[str, ...],
    values: int | None = None,
    workers: int = 1,
    told: Told | None = None,
) -> Sweep:
    """Try one size or two over their ranges ("reach = 80 mm to 120 mm"): what needs leave to spare, what sheets, templates and boards
    do at each value, where that jumps, and the best value. Nothing is stored.

    ``values``: how many of each range; 41 of one, 9 each of two when not given. ``workers``: processes that share the work; with
    more than one, a program of its own starts it under ``if __name__ == "__main__"``. ``told`` hears how much of the work is done, of
    how much. A KeyboardInterrupt ends it: what is finished is returned. Raises Refusal for ranges that cannot be used.
    """
    from publisher import sweep

    return sweep.vary(brief, variant, ranges, values, workers, told)


def plot_sweep(sweep: Sweep, png: bool = False) -> bytes:
    """Return a plot of a sweep of one size, in black on white, as SVG or PNG. Raises ValueError for two sizes, or fewer than two rows."""
    from publisher.press import write_plot_png, write_plot_svg
    from publisher.sweep import plot_of

    return (write_plot_png if png else write_plot_svg)(plot_of(sweep))
