"""What the schema objects to at one place of a spec."""

from typing import Any

from publisher.basics import Place, record
from publisher.brief.bind import KeyPath, Schema, pointer
from publisher.brief.nodes import Key, Mapping, RawNode


@record
class Complaint:
    """What the validator objects to: keyword and its value, the instance and schema there, and the raw node and key."""

    keyword: str
    wanted: Any
    instance: Any
    schema: Schema
    path: KeyPath
    node: RawNode | None
    key: Key | None
    about_key: bool  # the objection is to a key's name, not to a value
    top: Mapping
    file: str

    @property
    def name(self) -> str:
        """The field's name for a sentence."""
        names = [str(step) for step in self.path if isinstance(step, str)]
        if not names:
            return "the spec"
        return f"“{names[-1]}”" if isinstance(self.path[-1], str) else f"item {int(self.path[-1]) + 1} of “{names[-1]}”"

    def place(self, key: Key | None = None) -> Place:
        """Return the place of the value, or of a key."""
        if key is not None:
            return Place(self.file, key.line, key.column, pointer((*self.path, key.text)))
        at = self.node or self.top
        return Place(self.file, at.line, at.column, pointer(self.path))
