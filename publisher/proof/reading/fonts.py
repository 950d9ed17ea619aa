"""Fonts as a page names them: letters, widths, and whether the program is in the file."""

from dataclasses import dataclass, field
from typing import Any

from publisher.proof.reading.glyph_shapes import shapes_of
from publisher.proof.reading.letter_meanings import ENTRY, read_meanings
from publisher.proof.reading.model import GlyphRead
from publisher.proof.reading.objects import Spent, array, dictionary, number, numbers, plain, stream_bytes
from publisher.proof.reading.truetype import GlyphBox, Program, read_program

FLAT = "xzvwurnm"  # letters whose top is the x-height
TALL = "HIEFTLKNMZXY1475"  # as high as capitals
BESIDE_LETTER, UNDER_LETTER, OVER_LETTER = (
    0.1,
    -0.3,
    1.05,
)  # em: how far letters reach beside their width, below and above the baseline
X_TO_CAPITAL = 0.7  # ISO 3098-1: lower-case letters are 7/10 of the height of capitals


@dataclass(slots=True)
class Font:
    """A font ready to decode strings. Widths and ``x_height`` in em; ``two_bytes`` for composite fonts."""

    name: str
    kind: str
    embedded: bool
    two_bytes: bool = False
    meanings: dict[int, str] = field(default_factory=dict)
    has_meaning: bool = False
    widths: dict[int, float] = field(default_factory=dict)
    default_width: float = 0.5
    program: Program | None = None
    data: bytes = b""
    x_height: float = 0.0
    shown: bool = False
    glyph_of: dict[int, int] | None = None
    _letters: dict[int, tuple[str, float, bool, GlyphBox | None]] = field(default_factory=dict)

    def letters(self, codes: bytes) -> list[tuple[int, str, float, bool, GlyphBox | None]]:
        """Return (code, text, width in em, shown well, box of its ink in em) for each code of a string."""
        self.shown = True
        pairs = zip(codes[::2], codes[1::2], strict=False)
        sequence = [high << 8 | low for high, low in pairs] if self.two_bytes else list(codes)
        known = self._letters
        found = []
        for code in sequence:
            letter = known.get(code)
            if letter is None:
                letter = known[code] = self._letter(code)
            found.append((code, *letter))
        return found

    def _letter(self, code: int) -> tuple[str, float, bool, GlyphBox | None]:
        text, width, glyph = self.meanings.get(code, ""), self.widths.get(code, self.default_width), self._glyph(code)
        return text, width, bool(text) and glyph != 0, self._box(text, width, glyph)

    def _box(self, text: str, width: float, glyph: int | None) -> GlyphBox | None:
        """Return where the ink of a letter lies; of a program that is not read, where that of a usual font would at the most."""
        if self.program is not None and glyph is not None:
            return self.program.box(glyph)
        return (-BESIDE_LETTER, UNDER_LETTER, width + BESIDE_LETTER, OVER_LETTER) if text.strip() else None

    def _glyph(self, code: int) -> int | None:
        if self.two_bytes:
            return self.glyph_of.get(code, 0) if self.glyph_of is not None else code
        return self.program.glyph(code) if self.program else None

    def glyphs(self) -> tuple[GlyphRead, ...]:
        """Return the letters that were shown, with their outlines; none of a font whose program is not in the file."""
        if not self.data:
            return ()
        shown = {code: self._glyph(code) or 0 for code, (text, *_) in self._letters.items() if text}
        shapes = shapes_of(self.data, tuple(sorted(set(shown.values()))))
        return tuple(
            GlyphRead(
                self.name, self._letters[code][0], self._letters[code][1], None if shapes is None else shapes[glyph]
            )
            for code, glyph in shown.items()
        )

    def measure_x_height(self, fallback: float) -> None:
        """Set ``x_height`` from the glyphs of the program, else from the font's own /XHeight, else half an em."""
        if self.program is not None:
            tops = {text: self.program.top(self._glyph(code) or 0) for code, text in self.meanings.items()}
            for letters, factor in ((FLAT, 1.0), (TALL, X_TO_CAPITAL)):
                for letter in letters:
                    if tops.get(letter, 0.0) > 0.0:
                        self.x_height = tops[letter] * factor
                        return
        self.x_height = fallback if 0.2 < fallback < 0.9 else 0.5


def read_font(resource: Any, spent: Spent) -> Font:
    """Return a font from its resource dictionary (ISO 32000-1, 9.5 to 9.8)."""
    font = dictionary(resource)
    kind = str(plain(font.get("/Subtype")) or "").lstrip("/")
    name = str(plain(font.get("/BaseFont")) or plain(font.get("/Name")) or "without a name").lstrip("/")
    inner = _descendant(font) if kind == "Type0" else font
    descriptor = dictionary(inner.get("/FontDescriptor"))
    programs = (plain(descriptor.get(key)) for key in ("/FontFile2", "/FontFile3", "/FontFile"))
    program_stream = next((p for p in programs if hasattr(p, "get_data")), None)
    read = Font(name, kind, program_stream is not None or kind == "Type3", kind == "Type0")
    if program_stream is not None and "/FontFile2" in descriptor:
        read.data = stream_bytes(program_stream, spent)
        read.program = read_program(read.data)
    _meanings(font, read, spent)
    if read.two_bytes:
        _composite_widths(inner, read, spent)
        _glyph_map(inner, read, spent)
    else:
        _simple_widths(font, read)
    read.measure_x_height(number(descriptor.get("/XHeight")) / 1000.0)
    return read


def _descendant(font: Any) -> Any:
    """Return the CIDFont of a composite font, empty when it has none (9.7.1)."""
    descendants = array(font.get("/DescendantFonts"))
    return dictionary(descendants[0]) if len(descendants) else {}


def _meanings(font: Any, read: Font, spent: Spent) -> None:
    """Read /ToUnicode (9.10.3); a simple font without it is taken to mean what Latin 1 does."""
    table = plain(font.get("/ToUnicode"))
    if table is not None and hasattr(table, "get_data"):
        read.meanings = read_meanings(stream_bytes(table, spent), spent)
        read.has_meaning = True
    elif not read.two_bytes:
        read.meanings = {code: chr(code) for code in range(32, 256)}


def _simple_widths(font: Any, read: Font) -> None:
    """Read /Widths of a simple font (9.6.2); those of a Type 3 font are in the units of its own matrix (9.6.5)."""
    scale = 1000.0
    if read.kind == "Type3":
        matrix = numbers(font.get("/FontMatrix"))
        scale = 1.0 / matrix[0] if len(matrix) == 6 and matrix[0] else 1000.0
    first = int(number(font.get("/FirstChar")))
    read.widths = {first + i: w / scale for i, w in enumerate(numbers(font.get("/Widths"))[:256])}


def _composite_widths(inner: Any, read: Font, spent: Spent) -> None:
    """Read /W and /DW of a CIDFont (9.7.4.3)."""
    read.default_width = number(inner.get("/DW"), 1000.0) / 1000.0
    row = array(inner.get("/W"))
    i = 0
    while i + 1 < len(row) and len(read.widths) < 70_000:
        first, second = int(number(row[i])), plain(row[i + 1])
        if isinstance(second, list):
            read.widths.update({first + k: number(w) / 1000.0 for k, w in enumerate(second)})
            i += 2
        elif i + 2 < len(row):
            width, last = number(row[i + 2]) / 1000.0, min(int(number(second)), first + 65_535)
            spent.unpack(max(0, last - first + 1) * ENTRY)
            read.widths.update(dict.fromkeys(range(first, last + 1), width))
            i += 3
        else:
            break


def _glyph_map(inner: Any, read: Font, spent: Spent) -> None:
    table = plain(inner.get("/CIDToGIDMap"))
    if table is not None and hasattr(table, "get_data"):
        data = stream_bytes(table, spent)
        read.glyph_of = {i // 2: data[i] << 8 | data[i + 1] for i in range(0, len(data) - 1, 2)}
