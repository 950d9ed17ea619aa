"""Content streams taken apart: operators with their operands (ISO 32000-1, 7.8.2 and 7.2).

A tokenizer of our own, since a pack of 15 pages must be proved in half a second: numbers followed by an operator, which
is nearly all of a drawing, are taken in one match.
"""

import re
from collections.abc import Callable, Iterator
from typing import Any

from publisher.proof.reading.objects import TooMuch

FAST = re.compile(
    rb"[\x00\t\n\x0c\r ]*((?:[-+.0-9]++[\x00\t\n\x0c\r ]++){0,6}+)([A-Za-z'\"][A-Za-z0-9*]*+)(?=[\x00\t\n\x0c\r ()<>\[\]/%]|\Z)"
)
BLANK = re.compile(rb"(?:[\x00\t\n\x0c\r ]++|%[^\r\n]*+)*+")
WORD = re.compile(rb"[^\x00\t\n\x0c\r ()<>\[\]{}/%]++")
STRING = re.compile(rb"\(((?:[^()\\]++|\\.)*+)\)", re.DOTALL)
PAREN = re.compile(rb"\\.|[()]", re.DOTALL)
HEX = re.compile(rb"<([^<>]*+)>")
ESCAPE = re.compile(rb"\\(\r\n|[0-7]{1,3}|.)", re.DOTALL)
INLINE_END = re.compile(rb"[\x00\t\n\x0c\r ]EI(?=[\x00\t\n\x0c\r ]|\Z)")
NAME_ESCAPE = re.compile(rb"#([0-9A-Fa-f]{2})")
ESCAPED = {b"n": b"\n", b"r": b"\r", b"t": b"\t", b"b": b"\b", b"f": b"\x0c", b"\n": b"", b"\r": b"", b"\r\n": b""}
MOST_OPERANDS = 512
MOST_SLOW = 300_000  # objects of one stream that are not plain numbers before an operator
DEEPEST_ARRAY = 24

Operation = tuple[bytes, list[Any]]


class Name(str):
    """A name object, without its slash."""

    __slots__ = ()


def operations(data: bytes) -> Iterator[Operation]:
    """Yield (operator, operands) of a decoded content stream.

    Operands are float, Name, bytes (strings), list (arrays), dict or None. An inline image comes as ``BI`` with one dict
    operand. Raises TooMuch for a stream without end. Whatever cannot be understood is passed over; a viewer would do the same.
    """
    at, end = 0, len(data)
    operands: list[Any] = []
    fast, slow = FAST.match, 0
    while at < end:
        found = fast(data, at)
        if found:
            at = found.end()
            numbers, word = found.groups()
            if numbers:
                operands += _numbers(numbers)
            if word == b"BI":
                image, at = _inline_image(data, at)
                yield word, [image]
            elif word in (b"true", b"false", b"null"):
                operands.append(word == b"true" if word != b"null" else None)
                continue
            else:
                yield word, operands
            operands = []
            continue
        thing, at = _object(data, at, 0)
        slow += 1
        if slow > MOST_SLOW:
            raise TooMuch("its pages hold hundreds of thousands of words that draw nothing")
        if isinstance(thing, _Operator):
            yield thing.word, operands
            operands = []
        elif thing is not _STRAY and len(operands) < MOST_OPERANDS:
            operands.append(thing)


class _Operator:
    __slots__ = ("word",)

    def __init__(self, word: bytes) -> None:
        self.word = word


_STRAY = object()


def _numbers(text: bytes) -> list[float]:
    try:
        return list(map(float, text.split()))
    except ValueError:
        return [_number(word) for word in text.replace(b"\x00", b" ").split()]


def _number(word: bytes) -> float:
    try:
        return float(word)
    except ValueError:
        return 0.0


def _object(data: bytes, at: int, depth: int) -> tuple[Any, int]:
    """Return one object or operator, and where it ends; ``_STRAY`` for a stray delimiter or the end."""
    blank = BLANK.match(data, at)
    at = blank.end() if blank else at
    if at >= len(data):
        return _STRAY, at
    opener = _OPENERS.get(data[at : at + 2] if data[at : at + 2] == b"<<" else data[at : at + 1], _word)
    return opener(data, at, depth)


def _word(data: bytes, at: int, _: int) -> tuple[Any, int]:
    word = WORD.match(data, at)
    if not word:
        return _STRAY, at + 1
    text = word.group()
    if text[:1] in b"+-.0123456789":
        return _number(text), word.end()
    if text in (b"true", b"false", b"null"):
        return (text == b"true" if text != b"null" else None), word.end()
    return _Operator(text), word.end()


def _name_at(data: bytes, at: int, _: int) -> tuple[Name, int]:
    word = WORD.match(data, at + 1)
    return (_name(word.group()), word.end()) if word else (Name(""), at + 1)


def _hex_at(data: bytes, at: int, _: int) -> tuple[Any, int]:
    found = HEX.match(data, at)
    return (_hex(found.group(1)), found.end()) if found else (_STRAY, at + 1)


def _array(data: bytes, at: int, depth: int) -> tuple[list[Any], int]:
    at, depth = at + 1, depth + 1
    things: list[Any] = []
    while at < len(data):
        blank = BLANK.match(data, at)
        at = blank.end() if blank else at
        if data[at : at + 1] == b"]":
            return things, at + 1
        if depth > DEEPEST_ARRAY:
            return things, len(data)
        thing, at = _object(data, at, depth)
        if thing is not _STRAY and not isinstance(thing, _Operator):
            things.append(thing)
    return things, at


def _dictionary(data: bytes, at: int, depth: int) -> tuple[dict[str, Any], int]:
    at, depth = at + 2, depth + 1
    things: list[Any] = []
    while at < len(data):
        blank = BLANK.match(data, at)
        at = blank.end() if blank else at
        if data[at : at + 2] == b">>":
            at += 2
            break
        if depth > DEEPEST_ARRAY:
            return {}, len(data)
        thing, at = _object(data, at, depth)
        if thing is not _STRAY:
            things.append(thing)
    return {str(key): value for key, value in zip(things[::2], things[1::2], strict=False)}, at


def string_at(data: bytes, at: int) -> tuple[bytes, int]:
    """Return the literal string that opens at ``at``, unescaped, and where it ends."""
    found = STRING.match(data, at)
    if found:
        return _unescape(found.group(1)), found.end()
    depth = 0
    for bracket in PAREN.finditer(data, at):
        if bracket.group() == b"(":
            depth += 1
        elif bracket.group() == b")":
            depth -= 1
            if depth == 0:
                return _unescape(data[at + 1 : bracket.start()]), bracket.end()
    return b"", len(data)


def _unescape(text: bytes) -> bytes:
    if b"\\" not in text:
        return text
    return ESCAPE.sub(_one_escape, text)


def _one_escape(found: re.Match[bytes]) -> bytes:
    code = found.group(1)
    if code[:1] in b"01234567":
        return bytes((int(code, 8) & 255,))
    return ESCAPED.get(code, code)


def _hex(text: bytes) -> bytes:
    digits = re.sub(rb"[^0-9A-Fa-f]", b"", text)
    return bytes.fromhex((digits + b"0" * (len(digits) % 2)).decode("ascii"))


def _name(text: bytes) -> Name:
    if b"#" in text:
        text = NAME_ESCAPE.sub(lambda found: bytes.fromhex(found.group(1).decode("ascii")), text)
    return Name(text.decode("latin-1"))


def _inline_image(data: bytes, at: int) -> tuple[dict[str, Any], int]:
    """Return the dictionary of an inline image (8.9.7) and where its data end."""
    things: list[Any] = []
    while at < len(data):
        thing, at = _object(data, at, 1)
        if isinstance(thing, _Operator):
            if thing.word == b"ID":
                break
            continue
        if thing is not _STRAY and len(things) < MOST_OPERANDS:
            things.append(thing)
    found = INLINE_END.search(data, at)
    image = {str(key): value for key, value in zip(things[::2], things[1::2], strict=False)}
    return image, (found.end() if found else len(data))


_OPENERS: dict[bytes, Callable[[bytes, int, int], tuple[Any, int]]] = {
    b"(": lambda data, at, _: string_at(data, at),
    b"/": _name_at,
    b"<<": _dictionary,
    b"<": _hex_at,
    b"[": _array,
}
