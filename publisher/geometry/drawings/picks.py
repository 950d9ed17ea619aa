"""What a spec names in a drawing: by id, class, layer or stroke.

``outline`` or ``#outline``: the element with this id. ``.thin``: all of this class. ``layer:Cuts``: all in the layer of this
name. ``stroke:dashed``, ``stroke:solid``, ``stroke:red``, ``stroke:#ff0000``: all whose line is so. No colour means anything
by itself.
"""

from publisher.basics.wording import did_you_mean, listed
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.drawings.styles import shown, standing, stroke_words, visible
from publisher.geometry.drawings.svg_shapes import Drawn
from publisher.geometry.drawings.tree import Element, Unreadable


class Missing(Unreadable):
    """What the spec names is not drawn."""


def pick(scene: Scene, wanted: str) -> tuple[Drawn, ...]:
    """Return the shapes that a name stands for, in drawing order. Raises Missing when there is none, and says why."""
    wanted = wanted.strip()
    kind, colon, name = wanted.partition(":")
    if wanted in scene.ids or (wanted.startswith("#") and wanted[1:] in scene.ids):
        return _by_id(scene, wanted.removeprefix("#") if wanted not in scene.ids else wanted)
    if wanted.startswith("."):
        found = tuple(d for d in scene.drawn if any(wanted[1:] in e.classes for e in d.within))
        known = {name for e in scene.root.all() for name in e.classes}
        what, names = f"class “{wanted[1:]}”", sorted(known)
    elif colon and kind.strip() == "layer":
        name = name.strip()
        found = tuple(d for d in scene.drawn if any(e.layer == name for e in d.within))
        what, names = f"layer “{name}”", sorted({e.layer for e in scene.root.all() if e.layer})
    elif colon and kind.strip() == "stroke":
        word = name.strip().lower()
        found = tuple(d for d in scene.drawn if word in stroke_words(d.style))
        what, names = f"stroke “{word}”", sorted({w for d in scene.drawn for w in stroke_words(d.style)})
    else:
        raise _unknown(f"element with the id “{wanted}”", "ids", wanted, sorted(scene.ids))
    if not found:
        raise _unknown(f"visible line of the {what}", "it has", name or wanted, names)
    return found


def _unknown(what: str, which: str, wanted: str, known: list[str]) -> Missing:
    hint = f"{did_you_mean(wanted, known)} {which}: {listed(known) or 'none'}".lstrip()
    return Missing(f"the drawing has no {what}", hint)


def _by_id(scene: Scene, wanted: str) -> tuple[Drawn, ...]:
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
