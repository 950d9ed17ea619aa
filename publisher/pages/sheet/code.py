"""The page code: a QR symbol (ISO/IEC 18004) that says which page of which pack this is, so that a scan can be told apart.

Its form is settled for good, since codes that are printed cannot be changed: ``SLUG/PAGE/OF/ID/S`` in capital letters, where ID is
the pack's eight hexadecimal digits and the last letter is ``T`` for a trial, ``F`` for a free test page, ``S`` else. All names stand in
the pack's record. Capitals, digits, ``-`` and ``/`` are letters of the symbol's alphanumeric mode, which holds half as many again
as bytes do: version 3 at level M takes 61 of them (table 7). The longest slug (40 letters), two numbers of four digits and the
rest come to just that, so one size of symbol does for every page, with modules of 0.5 mm.
"""

from publisher.basics import Box, CodePromise, FileKind, Layer, polyline
from publisher.brief import Inputs
from publisher.pages.model import Fill, Paper
from publisher.pages.sheet.draft import Body
from publisher.pages.sheet.frame import CODE

VERSION = 3  # 29 x 29 modules
MODULES = 29
CODE_LETTERS = 61  # letters of the alphanumeric mode that version 3 holds at level M (ISO/IEC 18004, table 7)
ID_DIGITS = 8
_KINDS: dict[FileKind, str] = {"pack": "s", "test_page": "f", "phone": "p", "shop": "p"}
_MASK = 3  # any of the eight is valid; a fixed one keeps the search for the prettiest out of every page


def pack_id(inputs: Inputs, variant: str, paper: Paper, purpose: FileKind = "pack") -> str:
    """Return the eight hexadecimal digits by which a pack, or a file given beside it, is known, in small letters.

    They come from what was read and from the versions of program and libraries, not from the pack's own bytes or from other papers:
    they are known before a page is drawn, and are the same whatever is built beside.
    """
    named = paper.name if purpose == "pack" else f"{paper.name} {purpose}"  # no paper has a blank in its name
    return inputs.pack_digest(variant, named)[:ID_DIGITS]


def page_text(*, slug: str, page: int, total: int, pack: str, trial: bool, purpose: FileKind = "pack") -> str:
    """Return what a page's code says; ``pack`` is the pack's id."""
    kind = "t" if trial else _KINDS[purpose]
    return f"{slug}/{page}/{total}/{pack}/{kind}".upper()


def page_code(box: Box, text: str, page: int) -> Body:
    """Draw the code in its box: dark modules as rectangles, joined where they touch. Raises ValueError if the text is too long."""
    from segno import make

    if len(text) > CODE_LETTERS:
        raise ValueError(f"a page code holds {CODE_LETTERS} letters, this text has {len(text)}")
    symbol = make(text, version=VERSION, error="m", boost_error=False, micro=False, mask=_MASK, mode="alphanumeric")
    dark = [[bool(module) for module in row] for row in symbol.matrix]
    rows = tuple("".join("1" if module else "0" for module in row) for row in dark)
    module = CODE / MODULES
    paths = []
    for row, column, height, width in _rectangles(dark):
        left, top = box.left + column * module, box.top - row * module
        part = Box(left, top - height * module, left + width * module, top)
        paths.append(polyline(part.corners(), closed=True))
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
