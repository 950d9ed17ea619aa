"""All that a drawing draws, in the order it draws it: shapes with their matrix to mm, style, clips and the names they go by."""

import shapely
from shapely.geometry.base import BaseGeometry

from publisher.basics import SAGITTA, record
from publisher.geometry.drawings import areas
from publisher.geometry.drawings.basic_shapes import SHAPES, shape_paths
from publisher.geometry.drawings.css import apply_styles
from publisher.geometry.drawings.numbers import IDENTITY, LARGEST_DRAWING, Matrix, carried, px, times, transform
from publisher.geometry.drawings.pieces import PointAllowance, path_of, sagitta_of
from publisher.geometry.drawings.styles import computed, font_size, link, seen_through, shown, standing, visible
from publisher.geometry.drawings.svg_shapes import DrawnShape, box_of
from publisher.geometry.drawings.tree import DEEPEST_ELEMENT, Element, Unreadable, external
from publisher.geometry.drawings.views import SvgPage, page_of, view_box, window_of

MOST_DRAWN = 10_000  # shapes, copies by <use> counted
_GROUPS = ("g", "a", "svg", "switch", "symbol")
_SILENT = ("title", "desc", "metadata", "style", "defs", "marker", "pattern", "clipPath", "mask", "filter", "view")
_SILENT_TOO = ("linearGradient", "radialGradient", "cursor", "font", "color-profile")
_WORDS = {"text": "words", "image": "a picture", "foreignObject": "foreign content", "script": "a script"}


@record
class Scene:
    """A whole drawing: its page, what it draws, its elements by id, and what was left out, in words."""

    root: Element
    page: SvgPage
    drawn: tuple[DrawnShape, ...]
    ids: dict[str, Element]
    twice: frozenset[str]
    left_out: tuple[str, ...]


def read_scene(root: Element, sagitta: float = SAGITTA, scale: float = 1.0) -> Scene:
    """Return the scene of a drawing, ``scale`` times as large; what is no arc of a circle is flattened to this sagitta (mm).

    Raises Unreadable for what cannot be used at all.
    """
    unread = apply_styles(root)
    page = page_of(root).scaled(scale)
    walk = _Walk(root, sagitta)
    style = computed(root.own, {})
    if transform(root.own.get("transform", "")) != IDENTITY or root.own.get("clip-path", "none") != "none":
        hint = "apply it to what is drawn, in the drawing program"
        raise Unreadable("the drawing's page itself is transformed or clipped", hint, root.line)
    clips: list[DrawnShape] = []
    if shown(style):
        box = view_box(root)
        view = (box[2], box[3]) if box else page.view
        for child in root.children:
            clips += walk.draw(child, _Place(page.to_mm, style, view, (root,), seen_through(style)))
    return Scene(
        root, page, tuple(clips), walk.ids, frozenset(walk.twice), tuple(dict.fromkeys((*walk.notes, *unread)))
    )


@record
class _Place:
    """Where an element is drawn: matrix to mm, inherited style, size of percentages, what it stands in, whether faint."""

    to_mm: Matrix
    style: dict[str, str]
    view: tuple[float, float]
    within: tuple[Element, ...]
    faint: bool


class _Walk:
    """Walks the tree once; copies and clips are walked where they are used."""

    def __init__(self, root: Element, sagitta: float) -> None:
        self.ids: dict[str, Element] = {}
        self.twice: set[str] = set()
        self.notes: list[str] = []
        self.budget = PointAllowance()
        self.sagitta = sagitta
        self.count = 0
        for element in root.all():
            if element.id and self.ids.setdefault(element.id, element) is not element:
                self.twice.add(element.id)

    def note(self, element: Element, what: str) -> None:
        """Say that something was left out."""
        where = f"{element.tag}{f' “{element.id}”' if element.id else ''} (line {element.line})"
        self.notes.append(f"{where}: {what}")

    def draw(self, element: Element, place: _Place) -> list[DrawnShape]:
        """Return what an element draws."""
        style = computed(element.own, place.style)
        if not shown(style):
            return []
        if element.tag == "image" and element.get("href").strip().split(":")[0].lower() not in ("data", ""):
            address = element.get("href").strip()
            if ":" in address or address.startswith(("/", "\\")):
                raise external("a picture", address, element.line)
        if element.tag in _WORDS:
            self.note(element, f"{_WORDS[element.tag]}, no outline")
        if element.tag not in (*SHAPES, *_GROUPS, "use"):
            if element.tag not in (*_SILENT, *_SILENT_TOO, *_WORDS) and not element.tag.startswith("foreign:"):
                self.note(element, "not known")
            return []
        self.count += 1
        if self.count > MOST_DRAWN or len(place.within) > DEEPEST_ELEMENT:
            raise Unreadable(
                "the drawing draws too many things, or copies of copies without end",
                f"simplify it: at most {MOST_DRAWN} shapes with all copies, {DEEPEST_ELEMENT} inside each other",
                element.line,
            )
        user = times(place.to_mm, _own_transform(element))
        if max(map(abs, user)) > LARGEST_DRAWING:
            raise Unreadable(
                f"{element.named()} is drawn too large or too far away", "check the drawing's size", element.line
            )
        inner = _Place(user, style, place.view, (*place.within, element), place.faint or seen_through(style))
        found = self._inside(element, inner)
        self._clip(element, inner, found)
        return found

    def _inside(self, element: Element, place: _Place) -> list[DrawnShape]:
        if element.tag in SHAPES:
            return self._shape(element, place)
        if element.tag == "use":
            return self._copy(element, place)
        if element.tag == "svg":
            return self._view(element, place, element)
        if element.tag == "symbol":
            return []
        children = element.children
        if element.tag == "switch":
            children = [child for child in children if _understood(child)][:1]
        return [drawn for child in children for drawn in self.draw(child, place)]

    def _shape(self, element: Element, place: _Place) -> list[DrawnShape]:
        if not visible(place.style):
            return []
        paths, problem = shape_paths(element, place.view, font_size(place.style))
        if problem:
            self.note(element, problem)
        for name, word in (("filter", "a filter"), ("mask", "a mask")):
            if any(e.own.get(name, "none") != "none" for e in place.within):
                self.note(element, f"{word} on it")
        if any(place.style.get(f"marker-{at}", "none") != "none" for at in ("start", "mid", "end")):
            self.note(element, "markers on its line")
        sagitta = sagitta_of(paths, place.to_mm, self.sagitta)
        name = element.id or element.tag
        made = [path_of(subpath, place.to_mm, name, sagitta, self.budget) for subpath in paths]
        kept = tuple(path for path in made if path.edges)
        return [DrawnShape(element, place.within, place.style, place.to_mm, kept, sagitta, problem, place.faint)]

    def _copy(self, element: Element, place: _Place) -> list[DrawnShape]:
        address = element.get("href").strip()
        if address and not address.startswith("#"):
            raise external("a shape", address, element.line)
        target = self.ids.get(address[1:])
        if target is None:
            self.note(element, f"it copies “{address[1:]}”, which is not in the drawing")
            return []
        if target in place.within:
            raise Unreadable(
                f"the element {target.named()} contains a copy of itself", "take the <use> out of it", element.line
            )
        x, y = (px(element.own.get(name, ""), of, 16.0) or 0.0 for name, of in zip("xy", place.view, strict=True))
        moved = _Place(
            times(place.to_mm, (1.0, 0.0, 0.0, 1.0, x, y)), place.style, place.view, place.within, place.faint
        )
        if target.tag not in ("symbol", "svg"):
            return self.draw(target, moved)
        style = computed(target.own, place.style)
        if not shown(style):
            return []
        user = times(moved.to_mm, _own_transform(target))
        inside = _Place(user, style, place.view, (*place.within, target), place.faint or seen_through(style))
        found = self._view(target, inside, element)
        self._clip(target, inside, found)
        return found

    def _view(self, element: Element, place: _Place, sized: Element) -> list[DrawnShape]:
        """Return what stands in a nested svg or symbol; ``sized``: the element whose width and height count first."""
        window = window_of(element, sized, place.view)
        if window is None:
            return []
        inner = _Place(times(place.to_mm, window.to_user), place.style, window.view, place.within, place.faint)
        found = [drawn for child in element.children for drawn in self.draw(child, inner)]
        if window.clips:
            region = shapely.Polygon([carried(place.to_mm, corner) for corner in window.corners])
            for drawn in found:
                drawn.clips.append(region)
        return found

    def _clip(self, element: Element, place: _Place, found: list[DrawnShape]) -> None:
        """Clip what an element draws by its own clip-path. ``place``: its own, itself included."""
        value = place.style.get("clip-path", "none")
        if value == "none" or not found:
            return
        wanted, _ = link(value, element.line)
        target = self.ids.get(wanted)
        if target is None or target.tag != "clipPath":
            self.note(element, f"its clip “{value[:40]}” is not one that the tool reads")
            return
        region = self._clip_region(target, place, found)
        for drawn in found:
            drawn.clips.append(region)

    def _clip_region(self, clip: Element, place: _Place, found: list[DrawnShape]) -> BaseGeometry:
        """Return the region (mm) of a clipPath for an element at ``place`` that draws ``found`` (SVG 1.1, section 14.3)."""
        if clip in place.within or len(place.within) > DEEPEST_ELEMENT:
            raise Unreadable(f"the clip {clip.named()} is clipped by itself", "take the clip off it", clip.line)
        inside, view = times(place.to_mm, _own_transform(clip)), place.view
        if clip.get("clipPathUnits") == "objectBoundingBox":
            box = box_of(found, place.to_mm)
            if box is None:
                return shapely.Polygon()
            inside = times(inside, (box[2] - box[0], 0.0, 0.0, box[3] - box[1], box[0], box[1]))
            view = (1.0, 1.0)
        style = standing(clip)
        within = (*place.within, clip)
        regions = []
        for child in clip.children:
            if child.tag in (*SHAPES, "use"):
                regions += [
                    drawn.region("clip-rule")
                    for drawn in self._clip_child(child, _Place(inside, style, view, within, False))
                ]
            elif child.tag == "text":
                self.note(child, "words, no outline: the clip lacks them")
        region = areas.united(regions)
        value = style.get("clip-path", "none")
        further = self.ids.get(link(value, clip.line)[0]) if value != "none" else None
        if further is not None and further.tag == "clipPath":
            around = _Place(place.to_mm, place.style, place.view, within, False)
            region = areas.clipped(region, [self._clip_region(further, around, found)])
        return region

    def _clip_child(self, child: Element, place: _Place) -> list[DrawnShape]:
        if child.tag == "use":
            target = self.ids.get(child.get("href").strip()[1:])
            if target is not None and target.tag not in SHAPES:
                return []
        return self.draw(child, place)


def _own_transform(element: Element) -> Matrix:
    """Return an element's transform, about its transform-origin if it says one in px."""
    own = transform(element.own.get("transform", ""))
    origin = element.own.get("transform-origin", "").split()
    if not origin or own == IDENTITY:
        return own
    if any(word.endswith("%") or word[0] not in "+-.0123456789" for word in origin[:2]):
        raise Unreadable(
            f"{element.named()} turns about “{' '.join(origin)[:40]}”, which the tool does not read",
            "say its transform-origin in px, or apply the transform in the drawing program",
            element.line,
        )
    x, y = (px(word) or 0.0 for word in (*origin, "0")[:2])
    return times(times((1.0, 0.0, 0.0, 1.0, x, y), own), (1.0, 0.0, 0.0, 1.0, -x, -y))


def _understood(child: Element) -> bool:
    """Say whether a <switch> takes this child: it asks for no extension, and for English or no language."""
    languages = [word.strip().lower() for word in child.get("systemLanguage", "en").split(",")]
    asks = child.get("requiredExtensions")
    return not asks and any(language.split("-")[0] == "en" for language in languages)
