"""Room 8: pages in, files out.

Comes in: a ``Pack``, a ``Part``, a ``Layout``, the bytes of a finished PDF. Goes out: PDF, SVG and PNG bytes. Writers decide
nothing and ignore each other. Never: imports pypdf, computes a size, chooses a place.
"""

from publisher.press.cut_files import write_part_svg, write_sheet_svg
from publisher.press.outline_picture import draw_outlines
from publisher.press.pdf import write_pdf
from publisher.press.previews import render_previews

__all__ = ["draw_outlines", "render_previews", "write_part_svg", "write_pdf", "write_sheet_svg"]
