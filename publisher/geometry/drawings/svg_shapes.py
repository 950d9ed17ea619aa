"""A shape of a drawing as it is drawn: its lines in mm, its style, its clips, and the names it goes by."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from shapely.geometry.base import BaseGeometry

from publisher.basics import Path
from publisher.geometry.drawings import areas
from publisher.geometry.drawings.numbers import Matrix, carried, inverse
from publisher.geometry.drawings.styles import rule
from publisher.geometry.drawings.tree import Element

UserBox = tuple[float, float, float, float]


@dataclass(slots=True, eq=False)
class DrawnShape:
    """A shape as drawn. ``within``: the element and all that it stands in or is drawn through, outermost first.

    ``paths``: its subpaths in mm, closed as the file says.
    ``clips``: regions (mm) outside of which nothing of it shows. ``faint``: opacity 0, its own or around it.
    ``problem``: what of it could not be read.
    """

    element: Element
    within: tuple[Element, ...]
    style: dict[str, str]
    to_mm: Matrix
    paths: tuple[Path, ...]
    sagitta: float
    problem: str
    faint: bool
    clips: list[BaseGeometry] = field(default_factory=list)

    @property
    def name(self) -> str:
        """Its id, or of the copy that draws it; else which element it is."""
        return self.known_as.id or f"{self.element.tag} (line {self.element.line})"

    @property
    def label(self) -> str:
        """What a drawing program calls it, where that is not its id; else nothing."""
        return self.known_as.label

    @property
    def called(self) -> str:
        """Its name for a message: that of the drawing program, with its id."""
        return f"{self.label}, id {self.name}" if self.label and self.known_as.id else self.label or self.name

    @property
    def known_as(self) -> Element:
        """The element whose names it goes by: its own, or the innermost copy with an id that draws it."""
        copies = [e for e in self.within if e.tag == "use" and e.id]
        return copies[-1] if copies else self.element

    def region(self, by: str = "fill-rule") -> BaseGeometry:
        """Return the area (mm) that it covers by its fill rule, open lines closed, inside its clips."""
        rings = [path.flattened(self.sagitta) for path in self.paths]
        return areas.clipped(areas.filled(rings, rule(self.style, by)), self.clips)


def box_of(found: list[DrawnShape], user: Matrix) -> UserBox | None:
    """Return the bounding box of what is drawn in the user units of an element; None when it has no width or height."""
    back = inverse(user)
    if back is None:
        return None
    points = [carried(back, point) for point in _points(found)]
    if not points:
        return None
    xs, ys = [x for x, _ in points], [y for _, y in points]
    box = (min(xs), min(ys), max(xs), max(ys))
    return box if box[2] - box[0] > 0.0 and box[3] - box[1] > 0.0 else None


def _points(found: list[DrawnShape]) -> Iterator[tuple[float, float]]:
    for drawn in found:
        for path in drawn.paths:
            yield from path.flattened(drawn.sagitta)
