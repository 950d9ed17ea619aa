"""The listing text: what a shop page says about a pack, in Markdown that also reads as plain text."""

from collections.abc import Callable, Iterable

from publisher.basics import record
from publisher.basics.wording import counted, say_length, say_thickness
from publisher.joints import BoardRange, sold_words, takes_words


@record
class SheetsToBuy:
    """Sheets of one size that hold the whole cut list of one board."""

    board: str
    sheet: str
    sheets: int


@record
class FinishedSize:
    """Overall size in mm of an assembly that is built, ``name`` as words: across, deep, high."""

    name: str
    width: float
    depth: float
    height: float


@record
class Variant:
    """What a buyer of one variant gets and needs. ``pages``: (paper title, page count) of each PDF, ``extras``: (words, page
    count) of each file that is given beside them; ``pieces`` are cut in all,
    ``spare`` ones included, of ``parts`` different parts; of several ``sheets`` for one board each will do."""

    title: str
    pages: tuple[tuple[str, int], ...]
    sizes: tuple[FinishedSize, ...]
    parts: int
    pieces: int
    spare: int
    boards: tuple[BoardRange, ...]
    sheets: tuple[SheetsToBuy, ...]
    materials: tuple[str, ...]
    extras: tuple[tuple[str, int], ...] = ()


@record
class Listing:
    """All that the listing says; tools and cautions are those of all variants."""

    title: str
    version: str
    designer: str
    licence: str
    summary: str
    variants: tuple[Variant, ...]
    tools: tuple[str, ...]
    cautions: tuple[str, ...]


ListingRows = Callable[[Variant], Iterable[str]]


def listing_text(listing: Listing) -> str:
    """Return the listing as Markdown. What is alike for all variants stands once, what is not under the variant's name; nothing
    that is unsaid leaves an empty line."""
    some = listing.variants
    lines = [f"# {listing.title}"]
    if summary := listing.summary.strip():
        lines += ["", summary]
    lines += ["", "## What you get", ""]
    for variant in some:
        for paper, count in variant.pages:
            title = f"{variant.title}, " if variant.title else ""
            lines.append(f"- {title}{paper}: {counted(count, 'page')}, to print at 100 %")
    several = len(some) > 1
    for variant in some:
        for said, count in variant.extras:
            title = f"{variant.title}, " if variant.title and several else ""
            lines.append(f"- {title}{said}; {counted(count, 'page')}")
    lines.append("- cut files (SVG, true size in mm) and a picture of every page")
    lines += _section("What you build", some, lambda one: (*map(_size, one.sizes), _pieces(one)), (), lambda _: ())
    lines += _section("What you need", some, _boards, listing.tools, lambda one: one.materials)
    if listing.cautions:
        lines += ["", "## Cautions", *_rows(listing.cautions)]
    by = f", by {listing.designer}" if listing.designer else ""
    terms = f" Licence: {listing.licence}." if listing.licence else ""
    lines += ["", f"Version {listing.version}{by}.{terms}", ""]
    return "\n".join(lines)


def _section(
    title: str, variants: tuple[Variant, ...], first: ListingRows, shared: Iterable[str], last: ListingRows
) -> list[str]:
    """Return a section. What all variants have stands once, with ``shared`` between their ``first`` and ``last`` rows; before it what
    only some have, under the name of each."""
    own = [(*first(one), *last(one)) for one in variants]
    common = set(own[0]).intersection(*own[1:])
    lines = ["", f"## {title}"]
    for variant, rows in zip(variants, own, strict=True):
        if differing := [row for row in rows if row not in common]:
            lines += ["", f"### {variant.title or 'As designed'}", *_rows(differing)]
    before, after = ([row for row in part(variants[0]) if row in common] for part in (first, last))
    alike = [*before, *shared, *after]
    if len(lines) > 2 and alike:
        lines += ["", "### For all of them"]
    return [*lines, *_rows(alike)] if alike else lines


def _rows(rows: Iterable[str]) -> list[str]:
    return ["", *(f"- {row}" for row in rows)]


def _size(size: FinishedSize) -> str:
    width, depth, height = (say_length(one) for one in (size.width, size.depth, size.height))
    return f"{size.name}: {width} wide, {depth} deep, {height} high"


def _pieces(variant: Variant) -> str:
    spare = f", {variant.spare} of them spare" if variant.spare else ""
    return f"{counted(variant.pieces, 'piece')} of board{spare}: {counted(variant.parts, 'different part')}"


def _boards(variant: Variant) -> Iterable[str]:
    """Yield what to buy of each board: its name and thickness, the thicknesses that will do, and sheets of one size or another."""
    for board in variant.boards:
        ways = [
            f"{counted(need.sheets, 'sheet')} of {need.sheet}" for need in variant.sheets if need.board == board.board
        ]
        yield f"{_board(board)}{': at least ' + ' or '.join(ways) if ways else ''}{_takes(board)}"


def _board(board: BoardRange) -> str:
    """Return the name that a board is sold by, and its measured thickness."""
    name = f", sold as {board.sold_as}" if board.sold_as else ""
    return f"board “{board.board}”{name}, measured {say_thickness(board.thickness)} thick"


def _takes(board: BoardRange) -> str:
    takes, sold = takes_words(board), sold_words(board)
    return f"; takes board {takes}{f'. {sold}' if sold else ''}" if takes else ""


def sheet_words(label: str, width: float, height: float, papers: Iterable[tuple[str, float, float]]) -> str:
    """Return a sheet's size as a shop writes it, ``20 × 30 in``, with the name of the paper (name, width, height in mm) that is as large:
    ``A3 (297 × 420 mm)``."""
    plain = " × ".join(part.strip() for part in label.replace("*", "x").replace("X", "x").replace("×", "x").split("x"))
    sides = sorted((width, height))
    for name, *measures in papers:
        if all(abs(a - b) < 0.5 for a, b in zip(sides, sorted(measures), strict=True)):
            return f"{name} ({plain})"
    return plain
