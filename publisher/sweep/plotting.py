"""A sweep as curves: what needs leave to spare, copies, sheets and pages over the size, each jump where it is."""

from collections.abc import Callable, Iterator
from math import ceil, floor, isfinite, log10

from publisher.basics import Point
from publisher.design import STANDARD
from publisher.press import PlotCurve, PlotPanel, SweepPlot
from publisher.sweep.model import TO_SPARE, JumpKind, Sweep, SweepRow
from publisher.sweep.values import finest

Curves = dict[str, list[Point]]  # the points of each curve, by its name


def plot_of(sweep: Sweep) -> SweepPlot:
    """Return the plot of a sweep of one size: what needs leave to spare, copies, sheets and pages, each jump where it is.

    Raises ValueError for a sweep of two sizes, or of fewer than two rows.
    """
    if len(sweep.spans) != 1 or len(sweep.rows) < 2:
        raise ValueError("a plot shows one size, at two values or more")
    (span,) = sweep.spans
    shown = (
        _panel("to spare of each need, mm (dotted: 0.5 mm)", _spares(sweep), TO_SPARE),
        _panel("copies on one sheet, of each part alone", _counts(sweep, "copies", _copies)),
        _panel("sheets for all parts", _counts(sweep, "sheets", _sheets)),
        _panel("template and tile pages", _counts(sweep, "pages", _pages)),
    )
    marks = [(span.size.value, "as it stands")] if span.least <= span.size.value <= span.most else []
    if sweep.best is not None and abs(sweep.best.values[0] - span.size.value) > finest(span):
        marks.append((sweep.best.values[0], "best"))
    unit = {"length": ", mm", "angle": ", degrees"}.get(span.size.kind, "")
    title = f"{sweep.slug}, {sweep.variant or STANDARD}: {span.size.name}"
    ticks = _ticks(span.least, span.most, 8.0)
    panels = tuple(panel for panel in shown if panel is not None)
    return SweepPlot(title, f"{span.size.name}{unit}", span.least, span.most, ticks, panels, tuple(marks))


def _spares(sweep: Sweep) -> Curves:
    """Return what each need of a length leaves to spare; one that is open, or asks one exact value, has no curve."""
    curves: Curves = {}
    for row in sweep.rows:
        for need in row.needs:
            if need.kind == "length" and not need.exact:
                points = curves.setdefault(need.fact, [])
                points += [(row.values[0], need.margin)] if isfinite(need.margin) else []
    return curves


def _counts(sweep: Sweep, kind: JumpKind, counted: Callable[[SweepRow], Iterator[tuple[str, int]]]) -> Curves:
    """Return the curves of what is counted in a row under each name, each jump of this kind where it is."""
    curves: Curves = {}
    for row in sweep.rows:
        for name, number in counted(row):
            curves.setdefault(name, []).append((row.values[0], float(number)))
    for jump in sweep.jumps:
        if jump.kind == kind and jump.subject in curves and jump.before.isdecimal() and jump.after.isdecimal():
            curves[jump.subject] += [(jump.last, float(jump.before)), (jump.first, float(jump.after))]
    return curves


def _copies(row: SweepRow) -> Iterator[tuple[str, int]]:
    for one in row.sheets:
        for letter, number in one.copies:
            yield f"{letter} on {one.sheet}", number


def _sheets(row: SweepRow) -> Iterator[tuple[str, int]]:
    for one in row.sheets:
        if one.sheets:
            yield one.sheet, one.sheets


def _pages(row: SweepRow) -> Iterator[tuple[str, int]]:
    for paper in row.papers:
        if paper.pages is not None:
            yield paper.paper, paper.pages


def _panel(title: str, curves: Curves, line: float | None = None) -> PlotPanel | None:
    """Return a panel that holds the curves from zero, or from below it; None without a point."""
    values = [y for points in curves.values() for _, y in points]
    if not values:
        return None
    low, high = min(0.0, *values), max(1.0, *values) * 1.08
    drawn = tuple(PlotCurve(name, (tuple(sorted(points)),)) for name, points in curves.items() if points)
    return PlotPanel(title, low * 1.08, high, _ticks(low, high, least=0.0 if line else 1.0), drawn, line)


def _ticks(low: float, high: float, about: float = 5.0, least: float = 0.0) -> tuple[tuple[float, str], ...]:
    """Return round values of a scale with their words: about so many, no nearer to each other than ``least``."""
    rough = max((high - low) / about, least)
    power = 10.0 ** floor(log10(rough) + 1e-9)
    step = next(power * s for s in (1.0, 2.0, 5.0, 10.0) if power * s >= rough - 1e-9)
    first = ceil(low / step - 1e-9)
    return tuple((k * step, f"{k * step:g}") for k in range(first, floor(high / step + 1e-9) + 1))
