"""The listing text: what a shop page says about a pack, in Markdown that also reads as plain text."""

from publisher.basics import record
from publisher.basics.wording import say_length
from publisher.joints import BoardRange, sold_words, takes_words


@record
class SheetsToBuy:
    """Sheets of one size that hold the whole cut list of one board."""

    variant: str
    board: str
    sheet: str
    sheets: int


@record
class Listing:
    """All that the listing says. ``pages``: (variant title, paper title, page count) of each PDF."""

    title: str
    version: str
    designer: str
    licence: str
    summary: str
    pages: tuple[tuple[str, str, int], ...]
    boards: tuple[BoardRange, ...]
    sheets: tuple[SheetsToBuy, ...]
    tools: tuple[str, ...]
    materials: tuple[str, ...]
    cautions: tuple[str, ...]


def listing_text(listing: Listing) -> str:
    """Return the listing as Markdown."""
    lines = [f"# {listing.title}", "", listing.summary.strip(), ""]
    lines += ["## What you get", ""]
    for variant, paper, count in listing.pages:
        lines.append(f"- {f'{variant}, ' if variant else ''}{paper}: {count} pages, to print at 100 %")
    lines += ["- cut files (SVG, true size in mm) and a picture of every page", ""]
    lines += ["## What you need", ""]
    lines += [f"- {_board(board)}" for board in listing.boards]
    for need in listing.sheets:
        variant = f" ({need.variant})" if need.variant else ""
        plural = "sheet" if need.sheets == 1 else "sheets"
        lines.append(f"- at least {need.sheets} {plural} of {need.sheet}{variant}")
    lines += [f"- {name}" for name in (*listing.tools, *listing.materials)]
    if listing.cautions:
        lines += ["", "## Cautions", "", *(f"- {caution}" for caution in listing.cautions)]
    lines += ["", f"Version {listing.version}, by {listing.designer}. Licence: {listing.licence}.", ""]
    return "\n".join(lines)


def _board(board: BoardRange) -> str:
    """Return what to buy: the name that a board is sold by, its measured thickness, and which thicknesses will do."""
    name = f", sold as {board.sold_as}" if board.sold_as else ""
    said = f"board “{board.board}”{name}, measured {say_length(board.thickness)} thick"
    takes = takes_words(board)
    if not takes:
        return said
    sold = sold_words(board)
    return f"{said}; takes board {takes}{f'. {sold}' if sold else ''}"
