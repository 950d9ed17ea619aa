"""An SVG file read as a tree of elements, with limits: it is a stranger's input."""

from dataclasses import dataclass, field
from xml.parsers import expat

MOST_BYTES = 5_000_000
MOST_ELEMENTS = 20_000
DEEPEST = 60


class Unreadable(Exception):
    """A drawing cannot be used; the text says what was found, ``hint`` what to do. Never leaves this package."""

    def __init__(self, message: str, hint: str) -> None:
        """Keep both sentences."""
        super().__init__(message)
        self.hint = hint


@dataclass(slots=True)
class Element:
    """An element by its local name, with its attributes and children."""

    tag: str
    attributes: dict[str, str]
    children: list["Element"] = field(default_factory=list)

    def get(self, name: str, default: str = "") -> str:
        """Return an attribute's text."""
        return self.attributes.get(name, default)


def read_tree(data: bytes) -> Element:
    """Return the root element. Nothing is fetched; entity declarations, deep nesting and huge files are refused."""
    if len(data) > MOST_BYTES:
        raise Unreadable(
            f"the drawing has {len(data) / 1e6:.1f} million bytes", "save it without pictures: 5 million at most"
        )
    builder = _Builder()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.StartElementHandler = builder.start
    parser.EndElementHandler = builder.end
    parser.EntityDeclHandler = builder.entity
    try:
        parser.Parse(data, True)
    except (expat.ExpatError, LookupError, ValueError) as trouble:
        line = getattr(trouble, "lineno", 0)
        where = f" at line {line}" if line else ""
        raise Unreadable(
            f"the drawing is not well-formed XML{where}", "open it in the drawing program and save it as plain SVG"
        ) from None
    root = builder.root
    if root is None or root.tag != "svg":
        raise Unreadable("the file is no SVG drawing", "save the drawing as plain SVG")
    return root


class _Builder:
    """Collects elements as the parser meets them."""

    def __init__(self) -> None:
        self.root: Element | None = None
        self.open: list[Element] = []
        self.count = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        if self.count > MOST_ELEMENTS or len(self.open) > DEEPEST:
            raise Unreadable(
                "the drawing has too many or too deeply nested elements",
                f"simplify it: at most {MOST_ELEMENTS} elements, {DEEPEST} deep",
            )
        space, _, local = name.rpartition(" ")
        own = {key: value for key, value in attributes.items() if " " not in key}
        element = Element(local if space in ("", "http://www.w3.org/2000/svg") else f"foreign:{local}", own)
        if self.open:
            self.open[-1].children.append(element)
        else:
            self.root = element
        self.open.append(element)

    def end(self, name: str) -> None:
        del name
        self.open.pop()

    def entity(self, *declaration: object) -> None:
        del declaration
        raise Unreadable("the drawing declares XML entities", "save it as plain SVG without a DOCTYPE")
