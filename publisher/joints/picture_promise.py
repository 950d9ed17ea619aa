"""A line drawing as a promise: what a page must show of it."""

from publisher.basics import DrawingPromise
from publisher.joints.model import Drawing

HEADS = "head"  # weight of lines that are the border of a black area: the head of an arrow
PATTERN = ("detail", "ghost", "hatch")
"""Weights of lines that may be thinned out on a full page: patterns, which tell outsides, what lies behind, strokes, which tell insides."""


def picture_promise(key: str, drawing: Drawing, labels: bool = True) -> DrawingPromise:
    """Return the promise of a drawing; ``labels`` False: the page shows it without its words."""
    fine = [[line.points for line in drawing.lines if line.weight == weight] for weight in PATTERN]
    return DrawingPromise(
        key,
        drawing.name,
        drawing.width,
        drawing.height,
        tuple(line.points for line in drawing.lines if line.weight not in (*PATTERN, HEADS)),
        tuple(points for kind in fine for points in kind),
        tuple((label.text, label.at) for label in drawing.labels) if labels else (),
        kinds=tuple(len(kind) for kind in fine if kind),
        heads=tuple(line.points[:3] for line in drawing.lines if line.weight == HEADS),
    )
