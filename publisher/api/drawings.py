"""A designer’s own drawing, as the tool sees it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.geometry import Look


def outline(svg: bytes, name: str, wanted: str = "") -> Look:
    """Return what the tool sees in a drawing, or in one outline of it (id, .class, layer:NAME, stroke:STYLE).

    Raises Refusal, with the drawing's line, when it cannot be used.
    """
    from publisher.geometry import look_at

    return look_at(svg, name, wanted)


def picture(look: Look) -> bytes:
    """Return a picture (PNG) of what is seen in a drawing, with the names of outlines, and lines that do not close."""
    from publisher.press import draw_outlines

    outlines = [(f"{seen.id} “{seen.label}”" if seen.label else seen.id, seen.rings) for seen in look.outlines]
    open_lines = [(f"{line.id}, open", line.points) for line in look.open_lines]
    return draw_outlines(look.width, look.height, look.filled, outlines, open_lines)
