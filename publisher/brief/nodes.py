"""The YAML node graph as read: scalars keep their text, every node and key keeps its line and column (from 1)."""

from dataclasses import dataclass, field


@dataclass(slots=True)
class Scalar:
    """A scalar: its text; ``plain`` when it is written in one line without quotes."""

    text: str
    plain: bool
    line: int
    column: int
    size: int = 1
    depth: int = 0


@dataclass(slots=True)
class Key:
    """A key of a mapping; ``dropped`` when its value is not used: a second of its name, or a merge."""

    text: str
    line: int
    column: int
    dropped: bool = False


@dataclass(slots=True)
class Mapping:
    """A mapping in the order in which it was written; ``flow`` when it is written with braces."""

    flow: bool
    line: int
    column: int
    entries: "list[tuple[Key, RawNode]]" = field(default_factory=list)
    size: int = 1
    depth: int = 1

    def get(self, key: str) -> "RawNode | None":
        """Return the first node under ``key``, or None."""
        return next((node for k, node in self.entries if k.text == key), None)

    def key(self, text: str) -> Key | None:
        """Return the key itself, with its place."""
        return next((k for k, _ in self.entries if k.text == text), None)


@dataclass(slots=True)
class Sequence:
    """A list; ``flow`` when it is written with square brackets."""

    flow: bool
    line: int
    column: int
    items: "list[RawNode]" = field(default_factory=list)
    size: int = 1
    depth: int = 1


RawNode = Scalar | Mapping | Sequence
