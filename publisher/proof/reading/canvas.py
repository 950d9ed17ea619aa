"""What a content stream paints on: the graphics state, its stack, and all that was painted so far."""

from dataclasses import dataclass, replace
from typing import Any

from publisher.basics import Box
from publisher.proof.reading.fonts import Font, read_font
from publisher.proof.reading.layers import Layers
from publisher.proof.reading.matrices import IDENTITY
from publisher.proof.reading.model import Clip, Matrix, PaintedPath, PlacedImage, TextRun
from publisher.proof.reading.objects import Spent, TooMuch, plain, raw

DEFAULT_SPACES = ("/DefaultGray", "/DefaultRGB", "/DefaultCMYK")
MOST_NESTED = 500  # marked contents inside each other


@dataclass(slots=True)
class State:
    """The graphics state (ISO 32000-1, 8.4). ``ctm`` carries to mm on the page; greys after colour, before transparency."""

    ctm: Matrix
    clip: Clip
    width: float = 1.0
    dash: tuple[float, ...] = ()
    stroke_grey: float | None = 0.0
    fill_grey: float | None = 0.0
    stroke_space: str = "DeviceGray"
    fill_space: str = "DeviceGray"
    stroke_alpha: float = 1.0
    fill_alpha: float = 1.0
    font: Font | None = None
    size: float = 0.0
    letter_space: float = 0.0
    word_space: float = 0.0
    stretch: float = 1.0
    leading: float = 0.0
    rise: float = 0.0
    mode: int = 0

    def stroke(self) -> float:
        """Return the grey of strokes on white paper, transparency counted."""
        return 1.0 - (1.0 - (0.5 if self.stroke_grey is None else self.stroke_grey)) * self.stroke_alpha

    def fill(self) -> float:
        """Return the grey of fills on white paper, transparency counted."""
        return 1.0 - (1.0 - (0.5 if self.fill_grey is None else self.fill_grey)) * self.fill_alpha


class Canvas:
    """One page while it is walked."""

    def __init__(
        self, base: Matrix, page: Box, resources: Any, layers: Layers, spent: Spent, fonts: dict[Any, Font]
    ) -> None:
        """Start with the matrix that carries user space to mm, and the page's own box as the clip."""
        self.state = State(base, Clip(page))
        self.stack: list[State] = []
        self.layers = layers
        self.spent = spent
        self.fonts = fonts
        self.pieces: list[PaintedPath] = []
        self.texts: list[TextRun] = []
        self.images: list[PlacedImage] = []
        self.opened: list[
            tuple[str, int | None]
        ] = []  # open marked contents: the layer that hides each, or ""; its mark
        self.hidden_layers: dict[str, None] = {}
        self.unread: dict[str, None] = {}
        self.path_operators = 0
        self.in_path = False
        self.order = 0
        self.text_matrix: Matrix = IDENTITY
        self.line_matrix: Matrix = IDENTITY
        self.enter(resources)

    def enter(self, resources: Any) -> None:
        """Take the resources of a page or a form; ones that give the device colours another meaning are noted (8.6.5.6)."""
        self.resources = resources
        spaces = plain(raw(resources, "/ColorSpace"))
        for name in DEFAULT_SPACES if isinstance(spaces, dict) else ():
            if name in spaces:
                self.unread[f"a colour space {name[1:]}, which gives every grey another look"] = None

    def layer(self, reference: Any) -> str:
        """Return the layer that hides what is marked with this group or membership, or ""; an expression is noted."""
        if self.layers.by_expression(reference):
            self.unread["a layer shown by an expression"] = None
        return self.layers.hidden(reference)

    def open_marked(self, hidden: str, mark: int | None = None) -> None:
        """Begin marked content; ``hidden`` names the layer that hides it, or is empty; without a mark it has that of the one around it."""
        if len(self.opened) >= MOST_NESTED:
            raise TooMuch("hundreds of marked contents lie inside each other")
        self.opened.append((hidden, self.mark() if mark is None else mark))

    def mark(self) -> int | None:
        """Return the mark of what is painted now; None outside all marks."""
        return self.opened[-1][1] if self.opened else None

    def next_order(self) -> int:
        """Count one more painted thing."""
        self.order += 1
        return self.order

    def visible(self) -> bool:
        """Say whether what is painted now shows; remember the layer that hides it."""
        if not self.opened:
            return True
        hidden = next((name for name, _ in self.opened if name), "")
        if hidden:
            self.hidden_layers[hidden] = None
        return not hidden

    def resource(self, kind: str, name: Any) -> Any:
        """Return a named resource as the resources hold it (a reference, mostly), or None."""
        return raw(plain(raw(self.resources, kind)), f"/{name}")

    def font(self, name: Any) -> Font | None:
        """Return a font of the resources, read once per file."""
        reference = self.resource("/Font", name)
        return font_of(reference, self.fonts, self.spent)

    def save(self) -> None:
        """q"""
        if len(self.stack) < 256:
            self.stack.append(replace(self.state))

    def restore(self) -> None:
        """Q"""
        if self.stack:
            self.state = self.stack.pop()


def font_of(reference: Any, fonts: dict[Any, Font], spent: Spent) -> Font | None:
    """Return the font behind a reference, read once."""
    resource = plain(reference)
    if not isinstance(resource, dict):
        return None
    key = getattr(reference, "idnum", None) or id(resource)
    if key not in fonts:
        fonts[key] = read_font(resource, spent)
    return fonts[key]
