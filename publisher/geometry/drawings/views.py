"""Sizes of a drawing: CSS lengths of the page, viewBox and preserveAspectRatio (SVG 1.1, sections 7.2 to 7.8)."""

from dataclasses import replace

from publisher.basics import Point, record
from publisher.geometry.drawings.numbers import IDENTITY, MM_PER_PX, Matrix, numbers, px, times
from publisher.geometry.drawings.tree import Element, Unreadable

_ALIGN = {"xmin": 0.0, "xmid": 0.5, "xmax": 1.0, "ymin": 0.0, "ymid": 0.5, "ymax": 1.0}


@record
class SvgPage:
    """The drawing's own page: size in mm, the matrix from user units to mm (origin lower left, y upward), the size that
    percentages are of (user units), and how its size is known: ``said`` in the file, or read from its ``viewBox`` at 96 user
    units to the inch, or ``open`` (it says nothing: the page is what is drawn)."""

    width: float
    height: float
    to_mm: Matrix
    view: tuple[float, float]
    known: str

    def scaled(self, scale: float) -> "SvgPage":
        """Return the page with all on it this many times as large, both ways."""
        to_mm = times((scale, 0.0, 0.0, scale, 0.0, 0.0), self.to_mm)
        return replace(self, width=self.width * scale, height=self.height * scale, to_mm=to_mm)


def page_of(root: Element) -> SvgPage:
    """Return the page of a drawing. Raises Unreadable for a page of no size."""
    said = px(root.own.get("width", "")), px(root.own.get("height", ""))
    box = view_box(root)
    known = "viewBox" if said == (None, None) else "said"
    width, height = _sides(*said, box)
    if width is None or height is None:
        return SvgPage(0.0, 0.0, (MM_PER_PX, 0.0, 0.0, -MM_PER_PX, 0.0, 0.0), (width or 0.0, height or 0.0), "open")
    if width <= 0.0 or height <= 0.0:
        raise Unreadable("the drawing's page has no size", "give it a width and a height in mm", root.line)
    inner = IDENTITY if box is None else fitted(box, (0.0, 0.0, width, height), root.get("preserveAspectRatio"))
    to_mm = times((MM_PER_PX, 0.0, 0.0, -MM_PER_PX, 0.0, height * MM_PER_PX), inner)
    view = (width, height) if box is None else (box[2], box[3])
    return SvgPage(width * MM_PER_PX, height * MM_PER_PX, to_mm, view, known)


def _sides(
    width: float | None, height: float | None, box: tuple[float, float, float, float] | None
) -> tuple[float | None, float | None]:
    """Return width and height of a page (user units) as far as the file says them; its viewBox gives what is left open."""
    if box is None:
        return width, height
    if width is None and height is None:
        return box[2], box[3]
    if width is None and height is not None:
        return height * box[2] / box[3], height
    if height is None and width is not None:
        return width, width * box[3] / box[2]
    return width, height


def view_box(element: Element) -> tuple[float, float, float, float] | None:
    """Return a viewBox (x, y, width, height); None when there is none."""
    text = element.get("viewBox")
    if not text.strip():
        return None
    box = numbers(text)
    if len(box) != 4 or box[2] <= 0.0 or box[3] <= 0.0:
        raise Unreadable("the drawing's viewBox is no box", "save the drawing again as plain SVG", element.line)
    return (box[0], box[1], box[2], box[3])


def fitted(box: tuple[float, float, float, float], place: tuple[float, float, float, float], how: str) -> Matrix:
    """Return the matrix that fits a viewBox into a place (x, y, width, height) as preserveAspectRatio says."""
    words = [word for word in how.lower().split() if word != "defer"]
    x, y = place[2] / box[2], place[3] / box[3]
    align = words[0] if words else "xmidymid"
    if align == "none":
        return (x, 0.0, 0.0, y, place[0] - box[0] * x, place[1] - box[1] * y)
    both = max(x, y) if "slice" in words else min(x, y)
    dx = (place[2] - box[2] * both) * _ALIGN.get(align[:4], 0.5)
    dy = (place[3] - box[3] * both) * _ALIGN.get(align[4:], 0.5)
    return (both, 0.0, 0.0, both, place[0] + dx - box[0] * both, place[1] + dy - box[1] * both)


@record
class Window:
    """The window of a nested svg or symbol: corners in the user units around it, the matrix from the units inside to those around,
    the size that percentages inside are of, and whether it hides what lies outside."""

    corners: tuple[Point, Point, Point, Point]
    to_user: Matrix
    view: tuple[float, float]
    clips: bool


def window_of(element: Element, sized: Element, around: tuple[float, float]) -> Window | None:
    """Return the window of a nested svg or symbol; None when it has no size. ``sized``: whose width and height count first (a
    ``use``); ``around``: what percentages of its own size are of."""
    own = element if element.tag == "svg" else None  # a symbol has no place of its own
    x, y = ((px(own.own.get(name, ""), of) or 0.0) if own else 0.0 for name, of in zip("xy", around, strict=True))
    width, height = (
        next((size for one in (sized, element) if (size := px(one.own.get(name, ""), of)) is not None), of)
        for name, of in zip(("width", "height"), around, strict=True)
    )
    if min(width, height) <= 0.0:
        return None
    box = view_box(element)
    return Window(
        ((x, y), (x + width, y), (x + width, y + height), (x, y + height)),
        (1.0, 0.0, 0.0, 1.0, x, y)
        if box is None
        else fitted(box, (x, y, width, height), element.get("preserveAspectRatio")),
        (width, height) if box is None else (box[2], box[3]),
        element.own.get("overflow", "hidden") not in ("visible", "auto"),
    )
