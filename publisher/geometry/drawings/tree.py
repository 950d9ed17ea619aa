"""An SVG file read as a tree of elements, with limits: it is a stranger's input."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

MOST_SVG_BYTES = 8_000_000
MOST_ELEMENTS = 20_000
MOST_ATTRIBUTES = 100_000
MOST_STYLE = 200_000  # letters of style sheets
DEEPEST_ELEMENT = 60
_SVG = "http://www.w3.org/2000/svg"
_XLINK = "http://www.w3.org/1999/xlink"
_PLAIN = "save it as plain SVG"


class Unreadable(Exception):
    """A drawing cannot be used; the text says what was found, ``hint`` what to do, ``line`` where in the SVG (0 = unknown).

    Never leaves the drawings: it becomes a finding or a refusal.
    """

    def __init__(self, message: str, hint: str, line: int = 0) -> None:
        """Keep both sentences and the line."""
        super().__init__(message)
        self.hint = hint
        self.line = line


@dataclass(slots=True, eq=False)
class Element:
    """An element by its local name, with its attributes, children, text and line. ``own``: its properties by the cascade."""

    tag: str
    attributes: dict[str, str]
    line: int = 0
    parent: "Element | None" = None
    children: list["Element"] = field(default_factory=list)
    text: str = ""
    own: dict[str, str] = field(default_factory=dict)

    def get(self, name: str, default: str = "") -> str:
        """Return an attribute's text."""
        return self.attributes.get(name, default)

    @property
    def id(self) -> str:
        """Its id, or nothing."""
        return self.attributes.get("id", "")

    @property
    def classes(self) -> tuple[str, ...]:
        """Its class names."""
        return tuple(self.attributes.get("class", "").split())

    @property
    def layer(self) -> str:
        """The name that a drawing program shows for a group: its label, else its id; empty for what is no group."""
        return (self.label or self.id) if self.tag == "g" else ""

    @property
    def label(self) -> str:
        """The name that a drawing program shows for it, where that is not its id; else nothing."""
        said = (self.get("label") or self.get("data-name")).strip()
        return "" if said == self.id else said

    def named(self) -> str:
        """Say which element it is, as a designer finds it: what the program calls it, and by which id a spec can."""
        if self.label:
            return f"“{self.label}” ({f'id {self.id}' if self.id else f'line {self.line}'})"
        return f"“{self.id}”" if self.id else f"<{self.tag}> in line {self.line}"

    def all(self) -> Iterator["Element"]:
        """Yield the element and all inside it, in the file's order."""
        yield self
        for child in self.children:
            yield from child.all()


def read_tree(data: bytes) -> Element:
    """Return the root element. Nothing is fetched; entities, external parts, deep nesting and huge files are refused."""
    if data[:2] == b"\x1f\x8b":
        raise Unreadable("the drawing is compressed (svgz)", "save it as plain SVG, not compressed")
    if len(data) > MOST_SVG_BYTES:
        most = f"{MOST_SVG_BYTES // 1_000_000} million at most"
        raise Unreadable(f"the drawing has {len(data) / 1e6:.1f} million bytes", f"save it without pictures: {most}")
    builder = _Builder()
    try:
        builder.parser.Parse(data, True)
    except (expat.ExpatError, LookupError, ValueError) as trouble:
        line = getattr(trouble, "lineno", 0)
        where = f" at line {line}" if line else ""
        hint = "open it in the drawing program and save it as plain SVG"
        raise Unreadable(f"the drawing is not well-formed XML{where}", hint, line) from None
    root = builder.root
    if root is None or root.tag != "svg":
        raise Unreadable("the file is no SVG drawing", "save the drawing as plain SVG")
    return root


class _Builder:
    """Collects elements as the parser meets them."""

    def __init__(self) -> None:
        self.root: Element | None = None
        self.open: list[Element] = []
        self.count = self.attributes = self.letters = 0
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.buffer_text = True
        self.parser.StartElementHandler = self.start
        self.parser.EndElementHandler = self.end
        self.parser.CharacterDataHandler = self.letter
        self.parser.EntityDeclHandler = self.entity
        self.parser.SkippedEntityHandler = self.entity
        self.parser.StartDoctypeDeclHandler = self.doctype
        self.parser.ProcessingInstructionHandler = self.instruction

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        self.attributes += len(attributes)
        if self.count > MOST_ELEMENTS or self.attributes > MOST_ATTRIBUTES or len(self.open) > DEEPEST_ELEMENT:
            raise Unreadable(
                "the drawing has too many or too deeply nested elements",
                f"simplify it: at most {MOST_ELEMENTS} elements, {DEEPEST_ELEMENT} deep",
                self.parser.CurrentLineNumber,
            )
        space, _, local = name.rpartition(" ")
        own: dict[str, str] = {}
        for key, value in attributes.items():
            where, _, bare = key.rpartition(" ")
            if not where:
                own[key] = value
            elif where == _XLINK and bare == "href":
                own.setdefault("href", value)  # SVG 2: a plain href wins
            elif bare in ("label", "id") and not where.endswith("/namespace"):
                own.setdefault("label", value)  # how drawing programs keep the name that a designer gave
        tag = local if space in ("", _SVG) else f"foreign:{local}"
        parent = self.open[-1] if self.open else None
        element = Element(tag, own, self.parser.CurrentLineNumber, parent)
        if parent is not None:
            parent.children.append(element)
        else:
            self.root = element
        self.open.append(element)

    def end(self, name: str) -> None:
        del name
        self.open.pop()

    def letter(self, text: str) -> None:
        if self.open and self.open[-1].tag == "style":
            self.letters += len(text)
            if self.letters > MOST_STYLE:
                raise Unreadable("the drawing's style sheet is too long", _PLAIN, self.parser.CurrentLineNumber)
            self.open[-1].text += text

    def entity(self, *declaration: object) -> None:
        del declaration
        raise Unreadable(
            "the drawing declares or uses XML entities", f"{_PLAIN} without a DOCTYPE", self.parser.CurrentLineNumber
        )

    def doctype(self, name: str, system: str | None, public: str | None, inside: int) -> None:
        del name
        standard = not system or (public or "").startswith("-//W3C//DTD SVG")
        if inside or not standard:
            raise Unreadable(
                "the drawing has a document type of its own", f"{_PLAIN} without it", self.parser.CurrentLineNumber
            )

    def instruction(self, target: str, text: str) -> None:
        if target == "xml-stylesheet" and re.search(r"href\s*=\s*[\"'](?!#)", text):
            raise external("a style sheet", text, self.parser.CurrentLineNumber)


def external(what: str, address: str, line: int) -> Unreadable:
    """Return the refusal of something outside the file: nothing is ever fetched."""
    return Unreadable(
        f"the drawing takes {what} from outside the file (“{address.strip()[:60]}”); nothing is fetched",
        "put it into the drawing itself, or take it out",
        line,
    )
