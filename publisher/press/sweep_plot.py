"""A plot of figures over a size: panels under one another, each with its own scale, all over one axis; black on white.

Curves are told apart by how they are dashed and by their words, never by colour. It draws what it is given and decides nothing.
"""

from __future__ import annotations

from io import BytesIO
from itertools import pairwise
from typing import TYPE_CHECKING

from publisher.basics import Point, record

if TYPE_CHECKING:
    from PIL import ImageDraw, ImageFont

PLOT_WIDE, PLOT_LEFT, PLOT_RIGHT, PLOT_TOP, PLOT_TALL, PLOT_GAP, PLOT_FOOT = (
    900,
    90,
    190,
    58,
    150,
    34,
    56,
)  # px of the plot and of what stands round a panel
PLOT_DASHES: tuple[tuple[int, ...], ...] = ((), (9, 5), (2, 4), (14, 4, 2, 4), (5, 3), (2, 8))
LETTERS_PX = 13  # px


@record
class PlotCurve:
    """One figure over the size: its name at the right, stretches of points (x, y in the plot's units)."""

    name: str
    stretches: tuple[tuple[Point, ...], ...]


@record
class PlotPanel:
    """Curves over one scale from ``low`` to ``high``; ``ticks``: (y, words); ``line`` is a level drawn across, None for none."""

    title: str
    low: float
    high: float
    ticks: tuple[tuple[float, str], ...]
    curves: tuple[PlotCurve, ...]
    line: float | None = None


@record
class SweepPlot:
    """Panels over one axis from ``low`` to ``high``; ``ticks``: (x, words); ``marks``: values marked through all panels."""

    title: str
    axis: str
    low: float
    high: float
    ticks: tuple[tuple[float, str], ...]
    panels: tuple[PlotPanel, ...]
    marks: tuple[tuple[float, str], ...] = ()

    @property
    def height(self) -> int:
        """Its height in px."""
        return PLOT_TOP + len(self.panels) * (PLOT_TALL + PLOT_GAP) + PLOT_FOOT


@record
class _Line:
    points: tuple[Point, ...]
    width: float
    dashes: tuple[int, ...] = ()


@record
class _Label:
    text: str
    at: Point
    anchor: str = "start"  # start, middle, end


def _drawn(plot: SweepPlot) -> tuple[list[_Line], list[_Label]]:
    """Return the plot as lines and words in px, y downwards."""
    lines, labels = list[_Line](), [_Label(plot.title, (PLOT_LEFT, 20))]

    def across(x: float) -> float:
        return PLOT_LEFT + (x - plot.low) / (plot.high - plot.low) * (PLOT_WIDE - PLOT_LEFT - PLOT_RIGHT)

    end = PLOT_TOP
    for panel in plot.panels:
        top = end + PLOT_GAP - 10
        end = top + PLOT_TALL + 10
        bottom = top + PLOT_TALL

        def up(y: float, panel: PlotPanel = panel, bottom: float = bottom) -> float:
            return bottom - (y - panel.low) / (panel.high - panel.low) * PLOT_TALL

        frame = (
            (PLOT_LEFT, top),
            (PLOT_WIDE - PLOT_RIGHT, top),
            (PLOT_WIDE - PLOT_RIGHT, bottom),
            (PLOT_LEFT, bottom),
            (PLOT_LEFT, top),
        )
        lines.append(_Line(frame, 1.0))
        labels.append(_Label(panel.title, (PLOT_LEFT, top - 6)))
        for y, words in panel.ticks:
            lines.append(_Line(((PLOT_LEFT - 5, up(y)), (PLOT_LEFT, up(y))), 1.0))
            labels.append(_Label(words, (PLOT_LEFT - 9, up(y) + 4), "end"))
        for x, _ in plot.ticks:
            lines.append(_Line(((across(x), bottom), (across(x), bottom + 5)), 1.0))
        lines += [_Line(((across(x), top), (across(x), bottom)), 1.0, (6, 3)) for x, _ in plot.marks]
        if panel.line is not None and panel.low <= panel.line <= panel.high:
            lines.append(_Line(((PLOT_LEFT, up(panel.line)), (PLOT_WIDE - PLOT_RIGHT, up(panel.line))), 0.7, (1, 3)))
        named = -1e9
        ends = sorted(
            (
                (up(curve.stretches[-1][-1][1]), at, curve)
                for at, curve in enumerate(panel.curves)
                if curve.stretches and curve.stretches[-1]
            ),
            key=lambda one: one[:2],
        )
        for y, at, curve in ends:
            dashes = PLOT_DASHES[at % len(PLOT_DASHES)]
            lines += [_Line(tuple((across(x), up(v)) for x, v in s), 2.0, dashes) for s in curve.stretches]
            named = max(named + LETTERS_PX + 3, y + 4)
            lines.append(
                _Line(((PLOT_WIDE - PLOT_RIGHT + 6, named - 4), (PLOT_WIDE - PLOT_RIGHT + 38, named - 4)), 2.0, dashes)
            )
            labels.append(_Label(curve.name, (PLOT_WIDE - PLOT_RIGHT + 44, named)))
    for x, words in plot.ticks:
        labels.append(_Label(words, (across(x), end + 10), "middle"))
    labels.append(_Label(plot.axis, ((PLOT_LEFT + PLOT_WIDE - PLOT_RIGHT) / 2, end + 32), "middle"))
    for at, (x, words) in enumerate(plot.marks):
        labels.append(_Label(words, (across(x), PLOT_TOP - 2 - (LETTERS_PX + 3) * (at % 2)), "middle"))
    return lines, labels


def write_plot_svg(plot: SweepPlot) -> bytes:
    """Return the plot as SVG."""
    import svgwrite  # not above: its own imports take as long as a whole room's

    drawing = svgwrite.Drawing(size=(PLOT_WIDE, plot.height), debug=False)
    drawing.viewbox(0, 0, PLOT_WIDE, plot.height)
    drawing.set_desc(title=plot.title)
    drawing.add(drawing.rect((0, 0), (PLOT_WIDE, plot.height), fill="white"))
    lines, labels = _drawn(plot)
    for line in lines:
        points = [(round(x, 2), round(y, 2)) for x, y in line.points]
        shape = drawing.polyline(points, fill="none", stroke="black", stroke_width=line.width)
        if line.dashes:
            shape["stroke-dasharray"] = " ".join(map(str, line.dashes))
        drawing.add(shape)
    for label in labels:
        at = (round(label.at[0], 2), round(label.at[1], 2))
        drawing.add(
            drawing.text(
                label.text, insert=at, font_size=LETTERS_PX, font_family="sans-serif", text_anchor=label.anchor
            )
        )
    text: str = drawing.tostring()
    return ('<?xml version="1.0" encoding="utf-8"?>\n' + text + "\n").encode("utf-8")


def write_plot_png(plot: SweepPlot) -> bytes:
    """Return the plot as PNG, two dots for each of its units."""
    from PIL import Image, ImageDraw, ImageFont

    image = Image.new("L", (2 * PLOT_WIDE, 2 * plot.height), 255)
    draw = ImageDraw.Draw(image)
    font = ImageFont.load_default(2 * LETTERS_PX)
    lines, labels = _drawn(plot)
    for line in lines:
        for part in _dashed([(2 * x, 2 * y) for x, y in line.points], [2 * d for d in line.dashes]):
            draw.line(part, fill=0, width=max(1, round(2 * line.width)))
    for label in labels:
        _write(draw, font, label)
    out = BytesIO()
    image.save(out, "PNG", compress_level=4)
    return out.getvalue()


def _write(draw: ImageDraw.ImageDraw, font: ImageFont.FreeTypeFont | ImageFont.ImageFont, label: _Label) -> None:
    anchor = {"start": "ls", "middle": "ms", "end": "rs"}[label.anchor]
    draw.text((2 * label.at[0], 2 * label.at[1]), label.text, fill=0, font=font, anchor=anchor)


def _dashed(points: list[Point], dashes: list[int]) -> list[list[Point]]:
    """Return a line as the strokes of its dashes, which go on round its corners."""
    if not dashes:
        return [points]
    found: list[list[Point]] = []
    at, left = 0, float(dashes[0])
    for (x0, y0), (x1, y1) in pairwise(points):
        length, done = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5, 0.0
        while done < length:
            step = min(left, length - done)
            if at % 2 == 0:
                ends = [(x0 + (x1 - x0) * d / length, y0 + (y1 - y0) * d / length) for d in (done, done + step)]
                found.append(ends)
            done, left = done + step, left - step
            if left <= 1e-9:
                at += 1
                left = float(dashes[at % len(dashes)])
    return found
