"""What a spec names in a drawing: by id, class, layer or stroke.

``outline`` or ``#outline``: the element with this id. ``.thin``: all of this class. ``layer:Cuts``: all in the layer of this
name. ``stroke:dashed``, ``stroke:solid``, ``stroke:red``, ``stroke:#ff0000``: all whose line is so. No colour means anything
by itself.
"""

from collections.abc import Callable, Collection

from publisher.basics import record
from publisher.basics.wording import did_you_mean, listed
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.drawings.styles import shown, standing, stroke_words, visible
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.drawings.tree import Element, Unreadable


class Missing(Unreadable):
    """What the spec names is not drawn."""


@record
class _Group:
    """What many shapes can have in common: the word for it, the name that is asked for, the names that a shape bears, and all
    names that the drawing knows."""

    word: str
    name: str
    borne_by: Callable[[DrawnShape], Collection[str]]
    known: set[str]


def pick(scene: Scene, wanted: str) -> tuple[DrawnShape, ...]:
    """Return the shapes that a name stands for, in drawing order. Raises Missing when there is none, and says why."""
    wanted = wanted.strip()
    own_id = wanted if wanted in scene.ids else wanted.removeprefix("#")
    if own_id in scene.ids:
        return _by_id(scene, own_id)
    group = _group(scene, wanted)
    if group is None:
        raise _unknown(f"element with the id “{wanted}”", "ids", wanted, sorted(scene.ids))
    found = tuple(d for d in scene.drawn if group.name in group.borne_by(d))
    if not found:
        written = wanted.partition(":")[2].strip() or wanted
        raise _unknown(f"visible line of the {group.word} “{group.name}”", "it has", written, sorted(group.known))
    return found


def _group(scene: Scene, wanted: str) -> _Group | None:
    """Return the class, layer or stroke that a name stands for; None when it is written as an id."""
    kind, colon, name = wanted.partition(":")
    if wanted.startswith("."):
        return _Group("class", wanted[1:], _classes, {one for e in scene.root.all() for one in e.classes})
    if colon and kind.strip() == "layer":
        return _Group("layer", name.strip(), _layers, {e.layer for e in scene.root.all() if e.layer})
    if colon and kind.strip() == "stroke":
        return _Group("stroke", name.strip().lower(), _strokes, {word for d in scene.drawn for word in _strokes(d)})
    return None


def _classes(drawn: DrawnShape) -> set[str]:
    return {one for element in drawn.within for one in element.classes}


def _layers(drawn: DrawnShape) -> set[str]:
    return {element.layer for element in drawn.within}


def _strokes(drawn: DrawnShape) -> frozenset[str]:
    return stroke_words(drawn.style)


def _unknown(what: str, which: str, wanted: str, known: list[str]) -> Missing:
    hint = f"{did_you_mean(wanted, known)} {which}: {listed(known) or 'none'}".lstrip()
    return Missing(f"the drawing has no {what}", hint)


def _by_id(scene: Scene, wanted: str) -> tuple[DrawnShape, ...]:
    element = scene.ids[wanted]
    if wanted in scene.twice:
        raise Missing(f"several elements have the id “{wanted}”", "give each element an id of its own", element.line)
    found = tuple(d for d in scene.drawn if element in d.within)
    if not found:
        raise Missing(f"the element “{wanted}” {_why(element)}", "draw it as a path, and let it be seen", element.line)
    return found


def _why(element: Element) -> str:
    """Say why an element draws nothing."""
    at: Element | None = element
    while at is not None:
        if not shown(standing(at)) or not visible(standing(element)):
            return "is hidden"
        if at.tag in ("defs", "symbol", "clipPath", "mask", "pattern", "marker") and at is not element:
            return f"stands in a <{at.tag}> and is drawn nowhere"
        at = at.parent
    if element.tag in ("text", "tspan", "image"):
        return f"is a <{element.tag}>, which has no outline"
    return "draws nothing that could be an outline"
