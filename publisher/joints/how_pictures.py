"""The sketches of how a template is used and how a bevel is cut, which pages of cautions show: promised by what the pieces call for."""

from collections.abc import Iterable, Iterator

from publisher.basics import DrawingPromise
from publisher.design import Design
from publisher.geometry import Part
from publisher.joints.scenes import scene_promise

HOW_TEMPLATE, HOW_BEVEL = "how:template", "how:bevel"
"""Keys of what they show."""


def how_pictures(design: Design, pieces: Iterable[Part]) -> tuple[DrawingPromise, ...]:
    """Return those that a design calls for."""
    return tuple(_called_for(design, tuple(piece for piece in pieces if piece.printed != "sizes")))


def _called_for(design: Design, templates: tuple[Part, ...]) -> Iterator[DrawingPromise]:
    if design.use == "trace" and any(part.trace_allowance > 0.0 for part in templates):
        yield scene_promise(HOW_TEMPLATE, "how_template")
    if any(edge.bevel for part in templates for edge in part.edges):
        yield scene_promise(HOW_BEVEL, "how_bevel")
