"""The plot of a sweep: what is drawn stands where the numbers say, in black, in both forms."""

import re
from io import BytesIO

from PIL import Image

from publisher.press import PlotCurve, PlotPanel, SweepPlot, write_plot_png, write_plot_svg
from publisher.press.sweep_plot import PLOT_LEFT, PLOT_RIGHT, PLOT_TALL, PLOT_WIDE

STEP = PlotCurve("A on 300 x 300 mm", (((0.0, 16.0), (5.0, 16.0), (5.0, 9.0), (10.0, 9.0)),))
OTHER = PlotCurve("B <&>", (((0.0, 0.0), (10.0, 9.1)),))
PANEL = PlotPanel("copies", 0.0, 20.0, ((0.0, "0"), (10.0, "10")), (STEP, OTHER), 10.0)
PLOT = SweepPlot("squares: side", "side, mm", 0.0, 10.0, ((0.0, "0"), (10.0, "10")), (PANEL,), ((5.0, "best"),))


def test_a_curve_runs_through_its_points() -> None:
    text = write_plot_svg(PLOT).decode("utf-8")
    lines = [[float(v) for v in re.split("[ ,]", found)] for found in re.findall(r'points="([^"]+)"', text)]
    (step,) = [line for line in lines if len(line) == 8]
    across = PLOT_WIDE - PLOT_LEFT - PLOT_RIGHT
    assert step[0::2] == [PLOT_LEFT, PLOT_LEFT + across / 2, PLOT_LEFT + across / 2, PLOT_LEFT + across]
    assert step[1] - step[5] == -7.0 / 20.0 * PLOT_TALL
    assert "B &lt;&amp;&gt;" in text and 'stroke-dasharray="9 5"' in text
    assert set(re.findall(r'(?:stroke|fill)="([^"]+)"', text)) == {"black", "none", "white"}


def test_words_of_curves_that_end_together_do_not_lie_on_each_other() -> None:
    text = write_plot_svg(PLOT).decode("utf-8")
    first, second = (float(re.search(rf'y="([\d.]+)"[^>]*>{name}|>{name}', text)[1]) for name in ("A on", "B &lt;"))
    assert abs(first - second) >= 13.0


def test_the_png_is_the_same_picture_in_grey() -> None:
    image = Image.open(BytesIO(write_plot_png(PLOT)))
    assert (image.mode, image.size) == ("L", (2 * PLOT_WIDE, 2 * PLOT.height))
    text = write_plot_svg(PLOT).decode("utf-8")
    (step,) = [found for found in re.findall(r'points="([^"]+)"', text) if found.count(",") == 4]
    x, y = (float(v) for v in step.split(" ")[0].split(","))
    assert image.getpixel((2 * round(x) + 40, round(2 * y))) == 0
