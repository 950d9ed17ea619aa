"""Bytes of a spec to text: UTF-8 only, with a byte-order mark accepted, and no hidden characters."""

import re

from publisher.basics import Finding, Place, Refusal
from publisher.brief import limits, rules

# Control characters (C0 without tab and line ends, DEL, C1), the line ends that only some editors show, zero-width and
# direction characters (Unicode 17, UAX #9), tag characters and noncharacters.
HIDDEN = re.compile(
    "[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff"
    "\ufff9-\ufffb\ufffe\uffff\U000e0000-\U000e007f]"
)
_SHOWN = 20  # hidden characters reported one by one


def decode(data: bytes, file: str) -> str:
    """Return the text of a spec's bytes, without a byte-order mark. Raises Refusal when it is not UTF-8."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise Refusal(_not_utf8(file, "the spec is saved as UTF-16", Place(file, 1, 1)))
    data = data.removeprefix(b"\xef\xbb\xbf")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as fault:
        before = data[: fault.start]
        start = max(before.rfind(b"\n"), before.rfind(b"\r")) + 1
        lines = len(re.findall(rb"\r\n|\r|\n", before))
        column = len(before[start:].decode("utf-8")) + 1
        message = f"byte {fault.start + 1} of the spec (0x{data[fault.start]:02X}) is not UTF-8 text"
        raise Refusal(_not_utf8(file, message, Place(file, lines + 1, column))) from None


def too_big(file: str) -> Finding:
    """Return the finding for a spec of more bytes than a spec may have."""
    return rules.SPEC_SIZE.found(
        f"the spec is larger than {limits.SPEC_BYTES:,} bytes",
        subject=file,
        hint="a spec is some hundred lines; keep pictures and drawings in files of their own",
        place=Place(file),
        limit=float(limits.SPEC_BYTES),
    )


def _not_utf8(file: str, message: str, place: Place) -> Finding:
    return rules.NOT_UTF8.found(message, subject=file, hint="save the file as UTF-8 in your editor", place=place)


def hidden_characters(text: str, file: str) -> tuple[Finding, ...]:
    """Return a finding for each hidden character of a spec's text, with its line and column."""
    found: list[Finding] = []
    for match in HIDDEN.finditer(text):
        before = text[: match.start()]
        lines = re.split(r"\r\n|\r|\n", before)
        found.append(hidden(match.group(), Place(file, len(lines), len(lines[-1]) + 1)))
        if len(found) == _SHOWN:
            break
    return tuple(found)


def hidden(character: str, place: Place) -> Finding:
    """Return the finding for one hidden character at its place."""
    return rules.HIDDEN.found(
        f"an invisible character (U+{ord(character):04X}) stands here",
        hint="delete it; it often comes with words copied from a web page or another program",
        place=place,
    )
