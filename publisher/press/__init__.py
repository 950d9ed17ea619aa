"""Room 8: pages in, files out.

Comes in: a ``Pack``, a ``Part``, a ``Layout``, a ``SweepPlot``, the bytes of a finished PDF. Goes out: PDF, SVG and PNG bytes.
Writers decide nothing and ignore each other. Never: imports pypdf, computes a size, chooses a place.
"""

from publisher.press.cut_files import write_part_svg, write_sheet_svg
from publisher.press.outline_picture import draw_outlines
from publisher.press.pdf import write_pdf
from publisher.press.previews import render_previews
from publisher.press.sweep_plot import PlotCurve, PlotPanel, SweepPlot, write_plot_png, write_plot_svg

__all__ = [
    "PlotCurve",
    "PlotPanel",
    "SweepPlot",
    "draw_outlines",
    "render_previews",
    "write_part_svg",
    "write_pdf",
    "write_plot_png",
    "write_plot_svg",
    "write_sheet_svg",
]
