"""What an element's computed style means for outlines: seen or not, filled or not, by which rule, what is left out."""

import re
from collections.abc import Mapping

from publisher.geometry.drawings.css import INHERITED
from publisher.geometry.drawings.numbers import NUMBER, px
from publisher.geometry.drawings.tree import Element, external

Style = Mapping[str, str]
_URL = re.compile(r"url\(\s*[\"']?([^\"')]*)[\"']?\s*\)\s*(.*)", re.S)
_SERVERS = ("linearGradient", "radialGradient", "pattern")


def computed(own: Style, parent: Style) -> dict[str, str]:
    """Return an element's computed properties: its own, and what it inherits."""
    style = {name: parent[name] for name in INHERITED if name in parent}
    for name, value in own.items():
        if value != "inherit":
            style[name] = value
        elif name in parent:
            style[name] = parent[name]
    return style


def standing(element: Element) -> dict[str, str]:
    """Return the computed style of an element where it stands in the file."""
    chain: list[Element] = []
    at: Element | None = element
    while at is not None:
        chain.append(at)
        at = at.parent
    style: dict[str, str] = {}
    for one in reversed(chain):
        style = computed(one.own, style)
    return style


def shown(style: Style) -> bool:
    """Say whether ``display`` lets the element and all in it be drawn."""
    return style.get("display", "inline") != "none"


def visible(style: Style) -> bool:
    """Say whether ``visibility`` lets the element itself be drawn."""
    return style.get("visibility", "visible") not in ("hidden", "collapse")


def rule(style: Style, name: str = "fill-rule") -> str:
    """Return ``evenodd`` or ``nonzero``."""
    return "evenodd" if style.get(name, "nonzero") == "evenodd" else "nonzero"


def font_size(style: Style) -> float:
    """Return one em in px (16 when unsaid: CSS ``medium``)."""
    text = style.get("font-size", "")
    return px(text) or 16.0 if NUMBER.match(text.strip()) and not text.strip().endswith(("em", "ex", "%")) else 16.0


def link(value: str, line: int = 0) -> tuple[str, str]:
    """Return the id in ``url(#id)`` and the fallback after it; ids are never looked up outside the file."""
    match = _URL.match(value.strip())
    if match is None:
        return "", value
    target = match[1].strip()
    if target and not target.startswith("#"):
        raise external("a paint or clip", target, line)
    return target[1:], match[2].strip()


def painted(style: Style, name: str, ids: Mapping[str, Element], line: int = 0) -> bool:
    """Say whether ``fill`` or ``stroke`` puts anything on the page."""
    value = style.get(name, "black" if name == "fill" else "none").strip()
    if value.startswith("url("):
        wanted, fallback = link(value, line)
        server = ids.get(wanted)
        if server is not None and server.tag in _SERVERS:
            return bool(server.children) or "href" in server.attributes
        value = fallback or "none"
    if _clear(value) or _zero(style.get(f"{name}-opacity", "1")):
        return False
    return not (name == "stroke" and _zero(style.get("stroke-width", "1")))


def paint_server(style: Style, ids: Mapping[str, Element], line: int = 0) -> str:
    """Return what kind of gradient or pattern fills the element; empty for a plain colour."""
    value = style.get("fill", "")
    server = ids.get(link(value, line)[0]) if value.strip().startswith("url(") else None
    return "" if server is None else "pattern" if server.tag == "pattern" else "gradient"


def seen_through(style: Style) -> bool:
    """Say whether ``opacity`` lets nothing be seen."""
    return _zero(style.get("opacity", "1"))


def _zero(text: str) -> bool:
    match = NUMBER.match(text.strip())
    return match is not None and float(match[0]) <= 0.0


def _clear(colour: str) -> bool:
    colour = colour.strip().lower()
    if colour in ("", "none", "transparent"):
        return True
    if colour.startswith("#"):
        return (len(colour) == 5 and colour[4] == "0") or (len(colour) == 9 and colour[7:] == "00")
    last = re.fullmatch(r"(?:rgba?|hsla?)\((.*)\)", colour)
    values = re.split(r"[\s,/]+", last[1].strip()) if last else []
    return len(values) == 4 and _zero(values[3])


def stroke_words(style: Style) -> frozenset[str]:
    """Return the words that name an element's stroke in a spec: ``dashed`` or ``solid``, and its colour as written."""
    colour = style.get("stroke", "none").strip().lower()
    if _clear(colour):
        return frozenset()
    dashes = [float(found) for found in NUMBER.findall(style.get("stroke-dasharray", ""))]
    return frozenset(("dashed" if any(dash > 0.0 for dash in dashes) else "solid", colour, _long(colour)))


def _long(colour: str) -> str:
    """Write ``#f00`` as ``#ff0000``."""
    short = re.fullmatch(r"#([0-9a-f]{3})", colour)
    return "#" + "".join(letter * 2 for letter in short[1]) if short else colour
