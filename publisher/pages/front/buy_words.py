"""What is said of the board to buy and of the work: sheets, spares, what is left, lengths, blades."""

from publisher.basics import SheetsPromise, WorkPromise
from publisher.basics.units import inches
from publisher.basics.wording import LengthUnit, counted, fixed, paired
from publisher.pages.front.layout_words import sheet_name
from publisher.pages.sheet import Edition

NONE = "none"
SMALL_ONLY = "small pieces only"  # none is left that is worth keeping
FOOT_MM = inches(1.0) ** -1 * 12.0


def way_words(way: SheetsPromise, another: bool, first: LengthUnit) -> tuple[str, str, str, str]:
    """Return the words of a way to buy: how many sheets, of which size, the spares that go on beside the list, the largest piece left.

    ``another``: there is a way before it for the same board, so that it is one or the other."""
    count = counted(way.sheets, "sheet")
    spares = ", or ".join(f"{copies}{' or more' if more else ''} {letter}" for letter, copies, more in way.spares)
    left = SMALL_ONLY
    if way.offcut is not None:
        metric = " × ".join(fixed(side, 0, "down") for side in way.offcut) + " mm"
        imperial = " × ".join(fixed(inches(side), 1, "down") for side in way.offcut) + " in"
        left = paired(metric, imperial, first)
    return f"or {count}" if another else count, sheet_name(way.label, way.width, way.height), spares or NONE, left


def shop_note(edition: Edition, ways: tuple[SheetsPromise, ...]) -> str:
    """Say whether shops have the sheets of the list where people print on such paper, and which they have; '' without any sheet."""
    if not ways:
        return ""
    if all(edition.sells(way.width, way.height) for way in ways):
        return f"Sheets as shops sell them where {edition.where} is used: check your shop."
    return f"Check your shop: where {edition.where} is used, board is sold in {edition.sold}."


def work_words(work: WorkPromise, first: LengthUnit) -> tuple[str, str, str, str, str]:
    """Return the words of the work: to cut, to score, holes, texture, blade tips."""
    texture = f"{say_long(work.texture, first)} in {work.strokes} strokes" if work.strokes else NONE
    least, most = work.blades
    return (
        say_long(work.cut, first),
        say_long(work.score, first) if work.score else NONE,
        str(work.holes) if work.holes else NONE,
        texture,
        str(most) if least == most else f"{least} to {most}",
    )


def say_long(mm: float, first: LengthUnit) -> str:
    """Say a long length in metres and feet."""
    return paired(f"{fixed(mm / 1000.0, 1)} m", f"{fixed(mm / FOOT_MM, 1)} ft", first)
