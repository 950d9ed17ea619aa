"""The board gauge: two lines that diverge, so that the edge of a board finds the place where it fits between them."""

from math import floor

from publisher.basics import Layer, LengthPromise, Path, Point, polyline
from publisher.pages.model import Drawn, Fill, Stroke
from publisher.pages.sheet import Body, described
from publisher.pages.type import CUT, GAUGE, LEAST, TICK, Align, Setter

LENGTH = 100.0
GAUGE_STEPS = 10  # graduations 0.2 mm of width apart
RANGE = 2.0  # mm between the narrow and the wide end
MARKER = 3.8  # height kept above for the marker of the design's own thickness
FOOT = 3.0  # height kept below for the numbers


def gauge_from(thickness: float) -> float:
    """Return the width at the narrow end: 4 mm for boards of about 5, so that the design's board lies inside the gauge."""
    return max(1.0, floor(thickness + 0.5) - 1.0)


def gauge(setter: Setter, page: int, at: Point, thickness: float, takes: tuple[float, float] | None = None) -> Body:
    """Draw the gauge with the narrow end of its lower line at ``at``; mark the design's board thickness (mm) on it.

    A heavy bar over the upper line shows which boards will do: those that it ``takes``, from a least to a greatest thickness.

    Every graduation is a line across the gap, as long as the gap is wide there, and is promised.
    """
    x, y = at
    least = gauge_from(thickness)
    upper, lower = ((x, y + least), (x + LENGTH, y + least + RANGE)), ((x, y), (x + LENGTH, y))
    ticks: list[Path] = []
    lengths: list[LengthPromise] = []
    words: list[Drawn] = []
    for step in range(GAUGE_STEPS + 1):
        along, wide = x + LENGTH * step / GAUGE_STEPS, least + RANGE * step / GAUGE_STEPS
        start, end = (along, y), (along, y + wide)
        label = f"{wide:.1f}"
        ticks.append(polyline((start, end)))
        lengths.append(LengthPromise(page, start, end, wide, "gauge", label))
        align: Align = "left" if step == 0 else "right" if step == GAUGE_STEPS else "centre"
        words += setter.line(label, LEAST, along, y - 0.6 - setter.cap(LEAST), align=align)
    drawn: list[Drawn] = [
        Stroke(GAUGE, (polyline(upper), polyline(lower)), Layer.PAGE),
        Stroke(TICK, tuple(ticks), Layer.PAGE),
        *words,
    ]
    share = (thickness - least) / RANGE
    if 0.0 <= share <= 1.0:
        tip = (x + LENGTH * share, y + least + RANGE * share + 1.3)
        arrow = polyline((tip, (tip[0] + 1.1, tip[1] + 2.2), (tip[0] - 1.1, tip[1] + 2.2)), True)
        drawn.append(Fill(0.0, (arrow,), Layer.PAGE))
    low, high = (min(1.0, max(0.0, (end - least) / RANGE)) for end in takes or (0.0, 0.0))
    if low < high:
        bar = tuple((x + LENGTH * s, y + least + RANGE * s + 0.8) for s in (low, high))
        drawn.append(Stroke(CUT, (polyline(bar),), Layer.PAGE))
    shown = described(drawn, f"Board gauge: a gap that widens from {least:.1f} to {least + RANGE:.1f} mm")
    return Body(shown, lengths=tuple(lengths))
