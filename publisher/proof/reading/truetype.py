"""As much of an embedded TrueType program as proof needs: which glyph a code shows, and how high a letter is.

Tables head, loca, glyf, cmap, maxp as in the OpenType specification 1.9. Subsets lack most other tables, so that a general font
library refuses some of them.
"""

from dataclasses import dataclass, field
from struct import error as StructError
from struct import unpack_from


@dataclass(frozen=True, slots=True)
class Program:
    """A TrueType program: glyphs there are, units to the em, and code → glyph by (platform, encoding) of its cmap tables."""

    glyphs: int
    units: int
    tops: tuple[float, ...]
    codes: dict[tuple[int, int], dict[int, int]] = field(default_factory=dict)

    def glyph(self, code: int) -> int | None:
        """Return the glyph that a simple font shows for a code (ISO 32000-1, 9.6.6.4, symbolic fonts); None if no table says."""
        for key in ((3, 0), (1, 0), (3, 1), (0, 3)):
            table = self.codes.get(key)
            if table is not None:
                for offset in (0, 0xF000, 0xF100, 0xF200):
                    if code + offset in table:
                        return table[code + offset]
        return None if not self.codes else 0

    def top(self, glyph: int) -> float:
        """Return the height of a glyph's highest point above the baseline, in em; 0 for a blank one."""
        return self.tops[glyph] if 0 <= glyph < len(self.tops) else 0.0


def read_program(data: bytes) -> Program | None:
    """Return what can be read of a TrueType program, or None when it is none."""
    try:
        return _read(data)
    except (StructError, IndexError, ValueError, ZeroDivisionError):
        return None


def _read(data: bytes) -> Program | None:
    if data[:4] not in (b"\x00\x01\x00\x00", b"true"):
        return None
    (count,) = unpack_from(">H", data, 4)
    tables = {}
    for i in range(min(count, 64)):
        tag, _, offset, length = unpack_from(">4sIII", data, 12 + 16 * i)
        tables[tag] = (offset, length)
    if not {b"head", b"loca", b"glyf", b"maxp"} <= tables.keys():
        return None
    head = tables[b"head"][0]
    (units,) = unpack_from(">H", data, head + 18)
    (long_loca,) = unpack_from(">h", data, head + 50)
    (glyphs,) = unpack_from(">H", data, tables[b"maxp"][0] + 4)
    glyphs = min(glyphs, tables[b"loca"][1] // (4 if long_loca else 2) - 1)
    loca = unpack_from(f">{glyphs + 1}{'I' if long_loca else 'H'}", data, tables[b"loca"][0])
    step = 1 if long_loca else 2
    tops = []
    for glyph in range(glyphs):
        start, end = loca[glyph] * step, loca[glyph + 1] * step
        tops.append(unpack_from(">h", data, tables[b"glyf"][0] + start + 8)[0] / units if end > start else 0.0)
    codes = _code_tables(data, tables[b"cmap"][0]) if b"cmap" in tables else {}
    return Program(glyphs, units, tuple(tops), codes)


def _code_tables(data: bytes, at: int) -> dict[tuple[int, int], dict[int, int]]:
    (count,) = unpack_from(">H", data, at + 2)
    found = {}
    for i in range(min(count, 16)):
        platform, encoding, offset = unpack_from(">HHI", data, at + 4 + 8 * i)
        table = _code_table(data, at + offset)
        if table is not None:
            found[(platform, encoding)] = table
    return found


def _code_table(data: bytes, at: int) -> dict[int, int] | None:
    (form,) = unpack_from(">H", data, at)
    if form == 0:
        return dict(enumerate(data[at + 6 : at + 262]))
    if form == 6:
        first, count = unpack_from(">HH", data, at + 6)
        return {first + i: glyph for i, glyph in enumerate(unpack_from(f">{count}H", data, at + 10))}
    if form == 4:
        return _segments(data, at)
    return None


def _segments(data: bytes, at: int) -> dict[int, int]:
    """Read a format 4 subtable."""
    count = unpack_from(">H", data, at + 6)[0] // 2
    ends = unpack_from(f">{count}H", data, at + 14)
    starts = unpack_from(f">{count}H", data, at + 16 + 2 * count)
    deltas = unpack_from(f">{count}H", data, at + 16 + 4 * count)
    ranges_at = at + 16 + 6 * count
    ranges = unpack_from(f">{count}H", data, ranges_at)
    table: dict[int, int] = {}
    for i in range(count):
        for code in range(starts[i], min(ends[i], 0xFFFE) + 1):
            if ranges[i] == 0:
                glyph = (code + deltas[i]) & 0xFFFF
            else:
                (glyph,) = unpack_from(">H", data, ranges_at + 2 * i + ranges[i] + 2 * (code - starts[i]))
                glyph = (glyph + deltas[i]) & 0xFFFF if glyph else 0
            if glyph:
                table[code] = glyph
    return table
