"""What a spec names in a drawing: by id, label, class, layer or stroke.

``outline`` or ``#outline``: the element with this id, else with this label of the drawing program. ``.thin``: all of this class.
``layer:Cuts``: all in the layer of this name. ``stroke:dashed``, ``stroke:solid``, ``stroke:red``, ``stroke:#ff0000``: all whose
line is so. No colour means anything by itself.
"""

from collections.abc import Callable, Collection

from publisher.basics import record
from publisher.basics.wording import did_you_mean, listed
from publisher.geometry.drawings.scene import Scene
from publisher.geometry.drawings.styles import shown, standing, stroke_words, visible
from publisher.geometry.drawings.svg_shapes import DrawnShape
from publisher.geometry.drawings.tree import Element, Unreadable
from publisher.geometry.rules.drawings import CLONE_LEFT_OUT, Trouble


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
    if own_id in scene.twice:
        line = scene.ids[own_id].line
        raise Missing(f"several elements have the id “{own_id}”", "give each element an id of its own", line)
    if own_id in scene.ids:
        return _drawn_by(scene, scene.ids[own_id])
    labelled, group = _labelled(scene, wanted), _group(scene, wanted)
    found = tuple(d for d in scene.drawn if group.name in group.borne_by(d)) if group is not None else ()
    if found:
        return found
    if labelled is not None:
        return _drawn_by(scene, labelled)
    if group is None:
        raise _unnamed(scene, wanted)
    written = wanted.partition(":")[2].strip() or wanted
    raise _unknown(f"visible line of the {group.word} “{group.name}”", "it has", written, sorted(group.known))


def _labelled(scene: Scene, label: str) -> Element | None:
    """Return the element that bears a label; None where none does. Raises Missing when several do."""
    found = [element for element in scene.root.all() if element.label == label]
    if len(found) > 1:
        ids = listed(element.id or f"line {element.line}" for element in found)
        raise Missing(f"several elements bear the label “{label}”", f"say which by its id: {ids}", found[0].line)
    return found[0] if found else None


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


def pick_outline(scene: Scene, wanted: str) -> tuple[tuple[DrawnShape, ...], list[Trouble]]:
    """Return the shapes of one outline, and what is to be said of it: its clones elsewhere in the drawing are no pieces of it.

    Raises Missing when there is none, or when nothing but several clones of it is drawn.
    """
    found = pick(scene, wanted)
    copies = {id(d): _copy_of(d, wanted.strip()) for d in found}
    own = tuple(d for d in found if copies[id(d)] is None)
    clones = list({id(one): one for one in copies.values() if one is not None}.values())
    if not clones or (not own and len(clones) == 1):
        return found, []
    names = listed(one.named() for one in clones)
    if not own:
        raise Missing(
            f"“{wanted}” itself is drawn nowhere, but {len(clones)} clones of it are",
            f"name one of them by its id: {names}",
            clones[0].line,
        )
    message = f"“{wanted}” is drawn again by {names}: only the original is the outline"
    hint = f"a clone is no second piece of a part: say count: {len(clones) + 1}, or give it a part of its own by its id"
    return own, [Trouble(CLONE_LEFT_OUT, message, hint, clones[0].line)]


def _copy_of(drawn: DrawnShape, wanted: str) -> Element | None:
    """Return the ``use`` that draws the named element elsewhere; None where it is drawn as it stands, or bears no such name."""
    for place, element in enumerate(drawn.within):
        if wanted.removeprefix("#") in (element.id, element.label) or wanted == element.label:
            return next((one for one in drawn.within[:place] if one.tag == "use"), None)
    return None


def _drawn_by(scene: Scene, element: Element) -> tuple[DrawnShape, ...]:
    found = tuple(d for d in scene.drawn if element in d.within)
    if not found:
        message = f"the element {element.named()} {_why(element)}"
        raise Missing(message, "draw it as a path, and let it be seen", element.line)
    return found


def _unnamed(scene: Scene, wanted: str) -> Missing:
    """Return the refusal of a name that is no id and no label; both are listed side by side."""
    labels = {one.label: one.id for one in scene.root.all() if one.label}
    known = [f"{id}{f' (“{one.label}”)' if one.label else ''}" for id, one in sorted(scene.ids.items())]
    known += [f"“{label}”" for label, id in sorted(labels.items()) if not id]
    near = did_you_mean(wanted, [*sorted(scene.ids), *sorted(labels)])
    hint = f"{near} it has: {listed(known) or 'no ids and no labels'}".lstrip()
    return Missing(f"the drawing has no element with the id or label “{wanted}”", hint)


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
