"""Basic shapes (SVG 1.1, section 9) as subpaths in their own user units."""

from itertools import pairwise

from publisher.geometry.drawings.numbers import diagonal, points_of, px
from publisher.geometry.drawings.path_data import PathSegment, Straight, Subpath, read_path
from publisher.geometry.drawings.pieces import full_turn
from publisher.geometry.drawings.tree import Element

SHAPES = ("path", "rect", "circle", "ellipse", "line", "polyline", "polygon")


def shape_paths(element: Element, view: tuple[float, float], font: float) -> tuple[list[Subpath], str]:
    """Return what a basic shape or path draws, and in words what of it cannot be read.

    ``view``: width and height (user units) that percentages are of; ``font``: px of one em.
    """
    width, height = view
    whole = {"x": width, "y": height}

    def size(name: str, of: float) -> float:
        return px(element.own.get(name) or element.get(name), of, font) or 0.0

    match element.tag:
        case "path":
            return read_path(element.get("d"))
        case "rect":
            return _rectangle(element, view, font), ""
        case "circle":
            r = size("r", diagonal(width, height))
            return ([full_turn((size("cx", width), size("cy", height)), r, r)] if r > 0.0 else []), ""
        case "ellipse":
            rx, ry = _radii(element, view, font)
            middle = (size("cx", width), size("cy", height))
            return ([full_turn(middle, rx, ry)] if min(rx, ry) > 0.0 else []), ""
        case "line":
            a, b = ((size(f"x{k}", whole["x"]), size(f"y{k}", whole["y"])) for k in "12")
            return [Subpath(a, [Straight(a, b)])], ""
    return _corners(element)


def _corners(element: Element) -> tuple[list[Subpath], str]:
    points, sound = points_of(element.get("points"))
    closed = element.tag == "polygon"
    pieces: list[PathSegment] = [Straight(a, b) for a, b in pairwise(points)]
    if closed and len(points) > 1 and points[-1] != points[0]:
        pieces.append(Straight(points[-1], points[0]))
    problem = "" if sound else "its list of points is not pairs of numbers to its end"
    return ([Subpath(points[0], pieces, closed)] if pieces else []), problem


def _radii(element: Element, view: tuple[float, float], font: float) -> tuple[float, float]:
    """Return rx and ry; one of them alone counts for both (SVG 2, section 10.4); a negative one counts as unsaid."""
    rx = px(element.own.get("rx") or element.get("rx"), view[0], font)
    ry = px(element.own.get("ry") or element.get("ry"), view[1], font)
    rx, ry = (None if r is None or r < 0.0 else r for r in (rx, ry))
    return (rx if rx is not None else ry) or 0.0, (ry if ry is not None else rx) or 0.0


def _rectangle(element: Element, view: tuple[float, float], font: float) -> list[Subpath]:
    """A rectangle, round corners as arcs."""
    x, y, w, h = (
        px(element.own.get(name) or element.get(name), of, font) or 0.0
        for name, of in zip(("x", "y", "width", "height"), (*view, *view), strict=True)
    )
    rx, ry = _radii(element, view, font)
    rx, ry = min(rx, w / 2.0), min(ry, h / 2.0)
    if min(w, h) <= 0.0:
        return []
    if min(rx, ry) <= 0.0:
        return read_path(f"M{x!r},{y!r}h{w!r}v{h!r}h{-w!r}Z")[0]
    arc = f"a{rx!r},{ry!r} 0 0 1 "
    wide, high = w - 2.0 * rx, h - 2.0 * ry
    return read_path(
        f"M{x + rx!r},{y!r}h{wide!r}{arc}{rx!r},{ry!r}v{high!r}{arc}{-rx!r},{ry!r}h{-wide!r}{arc}{-rx!r},{-ry!r}"
        f"v{-high!r}{arc}{rx!r},{-ry!r}Z"
    )[0]
