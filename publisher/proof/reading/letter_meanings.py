"""/ToUnicode: which letters the codes of a font mean (ISO 32000-1, 9.10.3)."""

import re

from publisher.proof.reading.objects import Spent

BLOCK = re.compile(rb"begin(bfchar|bfrange)(.*?)end\1", re.DOTALL)
ITEM = re.compile(rb"<([0-9A-Fa-f\s]*)>|\[([^\]]*)\]")
MOST_MEANINGS = 70_000
ENTRY = 64  # bytes that an entry of a table costs, about


def read_meanings(data: bytes, spent: Spent) -> dict[int, str]:
    """Return code → text of a /ToUnicode map; codes that mean nothing are left out."""
    found: dict[int, str] = {}
    for block in BLOCK.finditer(data):
        items = [(m.group(1), m.group(2)) for m in ITEM.finditer(block.group(2))]
        if block.group(1) == b"bfchar":
            for (code, _), (text, _) in zip(items[::2], items[1::2], strict=False):
                if code is not None and text is not None:
                    found[_code(code)] = _text(text)
        else:
            _ranges(items, found, spent)
        if len(found) > MOST_MEANINGS:
            break
    return {code: text for code, text in found.items() if text and text != "\ufffd"}


def _ranges(items: list[tuple[bytes | None, bytes | None]], found: dict[int, str], spent: Spent) -> None:
    for (low, _), (high, _), (text, several) in zip(items[::3], items[1::3], items[2::3], strict=False):
        if low is None or high is None:
            continue
        first, last = _code(low), min(_code(high), _code(low) + 65_535)
        spent.unpack(max(0, last - first + 1) * ENTRY)
        if several is not None:
            for code, one in zip(range(first, last + 1), re.findall(rb"<([^>]*)>", several), strict=False):
                found[code] = _text(one)
        elif text is not None:
            start = _text(text)
            for code in range(first, last + 1) if start else ():
                found[code] = start[:-1] + chr(min(ord(start[-1]) + code - first, 0x10FFFF))


def _code(text: bytes) -> int:
    digits = b"".join(text.split())
    return int(digits[:8] or b"0", 16)


def _text(text: bytes) -> str:
    digits = b"".join(text.split())
    digits += b"0" * (-len(digits) % 4)
    return bytes.fromhex(digits.decode("ascii")).decode("utf-16-be", "replace")
