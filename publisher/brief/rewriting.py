"""A spec's text with some of its words replaced, everything else left as it stands: comments, blanks, order, line ends."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import yaml

from publisher.brief.bind import pointer
from publisher.brief.yaml_reader import PARSER


@dataclass(frozen=True, slots=True)
class Word:
    """A key or value that can be replaced: what it says, and where it begins and ends in the text, quotes left out."""

    text: str
    start: int
    end: int


class SpecText:
    """The text of a spec that has been read without a refusal, and its words by JSON pointer."""

    def __init__(self, text: str) -> None:
        """Find every key and value of the text."""
        self.text = text
        self._starts = [0, *(found.end() for found in re.finditer(r"\r\n|\r|\n", text))]
        self.values: dict[str, Word | None] = {}
        """By pointer; None for one that cannot be replaced: on several lines, or with escapes in quotes."""
        self.keys: dict[str, Word | None] = {}
        parser = PARSER(text)
        try:
            top = parser.get_single_node()
        finally:
            parser.dispose()
        for path, node in _walked(top):
            self.values[pointer(path)] = self._word(node)

            if isinstance(node, yaml.MappingNode):
                for key, _ in node.value:
                    self.keys[pointer((*path, str(key.value)))] = self._word(key)

    def below(self, at: str) -> tuple[str, ...]:
        """Return the pointers of the values and sections right below a pointer, in the order of the text."""
        return tuple(p for p in self.values if p.rpartition("/")[0] == at and p != at)

    def alike(self, at: str) -> tuple[str, ...]:
        """Return the pointers of the value at a pointer: more than one where aliases repeat it."""
        word = self.values.get(at)
        return tuple(p for p, other in self.values.items() if word is not None and other == word)

    def line(self, at: str) -> tuple[int, int]:
        """Return line and column, from 1, of the key or value at a pointer; (0, 0) where there is none."""
        word = self.keys.get(at) or self.values.get(at)
        if word is None:
            return (0, 0)
        row = sum(1 for start in self._starts if start <= word.start)
        return (row, word.start - self._starts[row - 1] + 1)

    def replaced(self, values: Mapping[str, str], keys: Mapping[str, str] | None = None) -> str:
        """Return the text with these values and keys, by pointer. Raises ValueError for one that cannot be replaced, or twice."""
        edits: dict[tuple[int, int], str] = {}
        wanted = [(self.values.get(at), new) for at, new in values.items()]
        wanted += [(self.keys.get(at), new) for at, new in (keys or {}).items()]
        for word, new in wanted:
            if word is None or edits.get((word.start, word.end), new) != new:
                raise ValueError(f"“{new}” cannot be written there")
            edits[word.start, word.end] = new
        text = self.text
        for (start, end), new in sorted(edits.items(), reverse=True):
            text = text[:start] + new + _moved_up(text[end:], len(new) - (end - start))
        return text

    def _word(self, node: yaml.Node) -> Word | None:
        if not isinstance(node, yaml.ScalarNode) or node.style in (">", "|"):
            return None
        # an anchor or a tag stands before the value: only its end is sure
        end = self._starts[node.end_mark.line] + node.end_mark.column - (1 if node.style in ("'", '"') else 0)
        start = end - len(node.value)
        return Word(node.value, start, end) if node.value and self.text[start:end] == node.value else None


def _moved_up(rest: str, longer: int) -> str:
    """Return what follows a value that grew, with a comment behind it in its old column as far as there is room."""
    blanks = re.match(r"[\"']?( +)(?=#)", rest)
    taken = min(longer, len(blanks[1]) - 1) if blanks and longer > 0 else 0
    return rest[: blanks.end() - taken] + rest[blanks.end() :] if blanks and taken else rest


def _walked(top: yaml.Node | None) -> Iterator[tuple[tuple[str | int, ...], yaml.Node]]:
    """Yield every node with its path; nodes that aliases repeat come once for each place."""
    waiting: list[tuple[tuple[str | int, ...], yaml.Node]] = [] if top is None else [((), top)]
    while waiting:
        path, node = waiting.pop()
        yield path, node
        below: list[tuple[tuple[str | int, ...], yaml.Node]] = []
        if isinstance(node, yaml.MappingNode):
            below = [((*path, str(key.value)), value) for key, value in node.value]
        elif isinstance(node, yaml.SequenceNode):
            below = [((*path, number), item) for number, item in enumerate(node.value)]
        waiting += reversed(below)
