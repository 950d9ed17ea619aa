"""An SVG document: its physical size, and its elements by id as closed and open paths in mm (y upward)."""

from collections.abc import Iterator
from dataclasses import dataclass

from publisher.geometry.drawings.numbers import MM_PER_PX, SAME, Matrix, numbers, px, times, transform
from publisher.geometry.drawings.path_data import Line, Subpath, read_path
from publisher.geometry.drawings.pieces import full_turn
from publisher.geometry.drawings.tree import Element, Unreadable

_GROUPS = ("g", "a")
_SILENT = ("title", "desc", "metadata", "style", "defs")
_ALIGN = {"xMin": 0.0, "xMid": 0.5, "xMax": 1.0, "YMin": 0.0, "YMid": 0.5, "YMax": 1.0}


@dataclass(frozen=True, slots=True)
class Drawn:
    """A subpath with the matrix that carries it to mm."""

    path: Subpath
    to_mm: Matrix


def elements(root: Element, wanted: str) -> tuple[Drawn, ...]:
    """Return what the element with this id draws. Raises Unreadable when there is none, or what it uses is not read."""
    found = list(_find(root, wanted, _to_mm(root)))
    if not found:
        known = sorted({e.get("id") for e in _all(root) if e.get("id")})
        listed = ", ".join(known[:12]) if known else "none"
        raise Unreadable(f"the drawing has no element with the id “{wanted}”", f"ids that it has: {listed}")
    if len(found) > 1:
        raise Unreadable(f"{len(found)} elements have the id “{wanted}”", "give each element its own id")
    element, matrix = found[0]
    return tuple(_draw(element, matrix))


def _all(element: Element) -> Iterator[Element]:
    yield element
    for child in element.children:
        yield from _all(child)


def _find(element: Element, wanted: str, matrix: Matrix) -> Iterator[tuple[Element, Matrix]]:
    """Yield the elements with an id and the matrix of their parent; a container that is not read is said by name."""
    for child in element.children:
        if child.get("id") == wanted:
            yield child, matrix
        elif child.tag in _GROUPS:
            yield from _find(child, wanted, times(matrix, transform(child.get("transform"))))
        elif any(inner.get("id") == wanted for inner in _all(child)):
            raise Unreadable(
                f"the element “{wanted}” stands in a <{child.tag}>, which this version does not read",
                "ungroup or unlink it in the drawing program, and save the drawing again",
            )


def _draw(element: Element, matrix: Matrix) -> Iterator[Drawn]:
    if "none" in (element.get("display"), _style(element, "display")):
        return
    for name in ("clip-path", "mask", "transform"):
        told = _style(element, name) or (element.get(name) if name != "transform" else "")
        if told not in ("", "none"):
            raise Unreadable(
                f"a <{element.tag}> of the drawing has a {name} in its style, which this version does not read",
                "apply it in the drawing program (release clip or mask, convert to path)",
            )
    own = times(matrix, transform(element.get("transform")))
    if element.tag in _GROUPS:
        for child in element.children:
            yield from _draw(child, own)
    elif element.tag not in _SILENT:
        yield from (Drawn(path, own) for path in _paths(element))


def _style(element: Element, name: str) -> str:
    for rule in element.get("style").split(";"):
        key, _, value = rule.partition(":")
        if key.strip() == name:
            return value.strip()
    return ""


def _paths(element: Element) -> list[Subpath]:
    match element.tag:
        case "path":
            return read_path(element.get("d"))
        case "rect":
            return _rectangle(element)
        case "circle":
            r = _size(element, "r")
            return [full_turn((_size(element, "cx"), _size(element, "cy")), r, r)] if r > 0.0 else []
        case "ellipse":
            rx, ry = _size(element, "rx"), _size(element, "ry")
            return [full_turn((_size(element, "cx"), _size(element, "cy")), rx, ry)] if min(rx, ry) > 0.0 else []
        case "line":
            a, b = ((_size(element, f"x{k}"), _size(element, f"y{k}")) for k in "12")
            return [Subpath(a, [Line(a, b)])]
        case "polygon" | "polyline":
            values = numbers(element.get("points"))
            points = list(zip(values[::2], values[1::2], strict=False))
            return read_path(
                " ".join(f"{'L' if i else 'M'}{x!r},{y!r}" for i, (x, y) in enumerate(points))
                + ("Z" if element.tag == "polygon" and points else "")
            )
    raise Unreadable(
        f"a <{element.tag}> is no outline that this version reads",
        "convert text and linked copies to paths, leave pictures out",
    )


def _size(element: Element, name: str) -> float:
    return px(element.get(name, "0")) or 0.0


def _rectangle(element: Element) -> list[Subpath]:
    """A rectangle, round corners as arcs; one of rx and ry alone counts for both (SVG 1.1, section 9.2)."""
    x, y, w, h = (_size(element, name) for name in ("x", "y", "width", "height"))
    rx, ry = px(element.get("rx")), px(element.get("ry"))
    rx, ry = (rx if rx is not None else ry) or 0.0, (ry if ry is not None else rx) or 0.0
    rx, ry = min(rx, w / 2.0), min(ry, h / 2.0)
    if min(w, h) <= 0.0:
        return []
    if min(rx, ry) <= 0.0:
        return read_path(f"M{x!r},{y!r}h{w!r}v{h!r}h{-w!r}Z")
    arc = f"a{rx!r},{ry!r} 0 0 1 "
    wide, high = w - 2.0 * rx, h - 2.0 * ry
    return read_path(
        f"M{x + rx!r},{y!r}h{wide!r}{arc}{rx!r},{ry!r}v{high!r}{arc}{-rx!r},{ry!r}h{-wide!r}{arc}{-rx!r},{-ry!r}"
        f"v{-high!r}{arc}{rx!r},{-ry!r}Z"
    )


def _to_mm(root: Element) -> Matrix:
    """Return the matrix from the root's user units to mm, y upward, by CSS (96 px an inch) and preserveAspectRatio."""
    width, height = px(root.get("width")), px(root.get("height"))
    box = numbers(root.get("viewBox"))
    view = SAME
    if box:
        if len(box) != 4 or box[2] <= 0.0 or box[3] <= 0.0:
            raise Unreadable("the drawing's viewBox is no box", "save the drawing again as plain SVG")
        if width is None or height is None or width <= 0.0 or height <= 0.0:
            raise Unreadable("the drawing does not say how large it is", "give its page a width and a height in mm")
        view = _fitted(box, width, height, root.get("preserveAspectRatio", "xMidYMid").split())
    return times((MM_PER_PX, 0.0, 0.0, -MM_PER_PX, 0.0, 0.0), view)


def _fitted(box: list[float], width: float, height: float, how: list[str]) -> Matrix:
    x, y = width / box[2], height / box[3]
    align = how[0] if how else "xMidYMid"
    if align == "none":
        return (x, 0.0, 0.0, y, -box[0] * x, -box[1] * y)
    both = max(x, y) if "slice" in how else min(x, y)
    dx = (width - box[2] * both) * _ALIGN.get(align[:4], 0.5)
    dy = (height - box[3] * both) * _ALIGN.get(align[4:], 0.5)
    return (both, 0.0, 0.0, both, dx - box[0] * both, dy - box[1] * both)
