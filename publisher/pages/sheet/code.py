"""The page code: a QR symbol (ISO/IEC 18004) that says which page of which pack this is, so that a scan can be told apart."""

from zlib import crc32

from publisher.basics import Box, CodePromise, Layer
from publisher.pages.model import Fill, Path
from publisher.pages.sheet.draft import Body
from publisher.pages.sheet.frame import CODE

VERSION = 3  # 29 x 29 modules
MODULES = 29
_ROOM = (("m", 42), ("l", 53))  # bytes that version 3 holds at each level (ISO/IEC 18004, table 7)
_MASK = 3  # any of the eight is valid; a fixed one keeps the search for the prettiest out of every page


def page_text(*, slug: str, version: str, variant: str, paper: str, page: int, total: int) -> str:
    """Return what a page's code says: ``slug|version|variant|paper|page|total``.

    It is kept within what the symbol holds: a name that is too long is cut and ends in ``~`` and eight letters of its
    CRC-32, so that two long names stay apart.
    """
    text = f"{slug}|{version}|{variant}|{paper}|{page}|{total}"
    room = _ROOM[-1][1]
    if len(text.encode()) <= room:
        return text
    rest = f"|{page}|{total}"
    name = f"{slug}|{version}|{variant}|{paper}"
    check = f"~{crc32(name.encode()):08x}"
    head = name.encode()[: room - len(rest) - len(check)].decode(errors="ignore")
    return head + check + rest


def page_code(box: Box, text: str, page: int) -> Body:
    """Draw the code in its box: dark modules as rectangles, joined where they touch. Raises ValueError if the text is too long."""
    from segno import make

    level = next((name for name, room in _ROOM if len(text.encode()) <= room), None)
    if level is None:
        raise ValueError(f"a page code holds {_ROOM[-1][1]} bytes, this text has {len(text.encode())}")
    symbol = make(text, version=VERSION, error=level, boost_error=False, micro=False, mask=_MASK, mode="byte")
    dark = [[bool(module) for module in row] for row in symbol.matrix]
    rows = tuple("".join("1" if module else "0" for module in row) for row in dark)
    module = CODE / MODULES
    paths = []
    for row, column, height, width in _rectangles(dark):
        left, top = box.left + column * module, box.top - row * module
        part = Box(left, top - height * module, left + width * module, top)
        paths.append(Path(part.corners(), closed=True))
    drawn = Fill(0.0, tuple(paths), Layer.PAGE, tag="artifact")
    return Body((drawn,), codes=(CodePromise(page, box, text, rows),))


def _rectangles(dark: list[list[bool]]) -> list[tuple[int, int, int, int]]:
    """Cover the dark modules with few rectangles: (row, column, height, width), each module once."""
    free = [row[:] for row in dark]
    found: list[tuple[int, int, int, int]] = []
    size = len(free)
    for row in range(size):
        for column in range(size):
            if not free[row][column]:
                continue
            best = (0, 0, 0)
            width = 0
            least = size  # how far down all columns so far are dark
            while column + width < size and free[row][column + width]:
                down = 1
                while down < least and row + down < size and free[row + down][column + width]:
                    down += 1
                least = min(least, down)
                width += 1
                best = max(best, (width * least, least, width))
            _, height, width = best
            for y in range(row, row + height):
                for x in range(column, column + width):
                    free[y][x] = False
            found.append((row, column, height, width))
    return found
