"""The verdict on a board: does what a pack prints take board of a measured thickness? Worked out anew from the recorded meetings."""

import math

from publisher.basics import Finding, Refusal, Rule, Severity, record
from publisher.ruler.pack_facts import Met, PackFacts
from publisher.ruler.readings import READING_UNUSABLE
from publisher.ruler.written import read_length

BOARD_MISFIT = Rule(
    "ruler/board-does-not-fit",
    "The board at hand is one that the pack takes",
    "Slots and rooms are drawn for one thickness of board and hold within a range of it: outside, parts cannot be put together or "
    "fall apart.",
    Severity.ERROR,
)
THICKEST_BOARD = 100.0  # mm
HOLDS = 1e-6  # mm: sizes in a record are rounded to 0.0001


@record
class BoardVerdict:
    """What can be said of a board ``thickness`` mm thick: ``least`` and ``most`` (mm; 0 and inf: no limit) are what the meetings
    take, ``misfits`` what would not fit, ``fits_with`` the other packs of the design that take it."""

    verdict: str  # good, bad
    board: str
    sold_as: str
    thickness: float
    drawn_for: float
    least: float
    most: float
    misfits: tuple[str, ...]
    fits_with: tuple[str, ...]
    advice: tuple[str, ...]
    findings: tuple[Finding, ...]


def read_thickness(text: str) -> float:
    """Return a thickness in mm: ``4.6 mm``, ``4,6mm``, ``3/16 in``, ``0.18 in``. Raises Refusal for what is none."""
    written = read_length(text)
    if written is not None and written.mm <= THICKEST_BOARD:
        return written.mm
    raise Refusal(
        READING_UNUSABLE.found(
            f"the board is “{text[:40]}”: a thickness with its unit was expected, above 0 and up to {THICKEST_BOARD:g} mm",
            subject="board",
            hint="measure ten boards in a pile, divide by ten, and write it with its unit: --board 4.6mm or --board 0.18in",
        )
    )


def board_range(meetings: tuple[Met, ...], board: str) -> tuple[float, float]:
    """Return the least and the greatest thickness (mm) with which every meeting with this board holds at true size; 0 and inf
    where nothing limits it.

    A meeting holds while least + k·(t − t₁) ≤ printed ≤ most + k·(t − t₂): k boards are in it, its least size is stated for the
    worse end t₁ of the spread, its greatest for the other end t₂.
    """
    low, high = 0.0, math.inf
    for met in meetings:
        if met.board != board or not met.boards:
            continue
        worse = math.copysign(met.spread, met.boards)
        goes_in = met.thickness + worse + (met.printed - met.least) / met.boards
        holds = None if met.most is None else met.thickness - worse + (met.printed - met.most) / met.boards
        # thicker board is tighter, but where it takes from what the size meets
        upper, lower = (goes_in, holds) if met.boards > 0 else (holds, goes_in)
        low = low if lower is None else max(low, lower)
        high = high if upper is None else min(high, upper)
    return low, high


def judge_board(
    thickness: float,
    pack: PackFacts,
    others: tuple[PackFacts, ...] = (),
    scales: tuple[float, ...] = (1.0,),
    board: str = "",
) -> BoardVerdict:
    """Judge a board against a pack, as cut from a sheet that printed at ``scales``. ``others``: packs of the same design with
    other sizes. ``board`` names it where the pack is cut from several. Raises Refusal when it is not clear which is meant."""
    taken = _which(pack, board)
    least, most = board_range(pack.meetings, taken)
    told = (_misfit(met, thickness, scales) for met in pack.meetings if met.board == taken)
    misfits = tuple(dict.fromkeys(said for said in told if said))
    recorded = next(one for one in pack.boards if one.board == taken)
    if not misfits:
        return BoardVerdict(
            "good", taken, recorded.sold_as, thickness, recorded.thickness, least, most, (), (),
            ("go on: make the fit coupon from it before you cut anything else",), (),
        )  # fmt: skip
    fitting = _fitting(pack, others, taken, thickness)
    advice = (
        (f"use the pack {' or '.join(f'“{name}”' for name in fitting)}",)
        if fitting
        else (
            f"have the pack built for it: publisher build FOLDER --set SIZE={thickness:.2f}mm, SIZE being the board's",
        )
    )
    finding = BOARD_MISFIT.found(
        f"board of {thickness:.2f} mm: {misfits[0]}{f', and {len(misfits) - 1} more' if len(misfits) > 1 else ''}",
        subject=taken,
        hint=advice[0],
        value=thickness,
        limit=least if thickness < least else most,
    )
    return BoardVerdict(
        "bad", taken, recorded.sold_as, thickness, recorded.thickness, least, most, misfits, fitting, advice, (finding,)
    )


def _which(pack: PackFacts, board: str) -> str:
    """Return the board that is meant."""
    known = [one.board for one in pack.boards]
    if board in known:
        return board
    if not board and len(known) == 1:
        return known[0]
    if not known:
        what, hint = "this pack does not say which boards it takes", "use a pack that was built with a later version"
    elif board:
        what, hint = f"this pack is not cut from a board “{board}”", f"its boards are {', '.join(known)}"
    else:
        what = f"this pack is cut from several boards: {', '.join(known)}"
        hint = f"say which one you measured: --board {known[0]}=4.6mm"
    raise Refusal(READING_UNUSABLE.found(what, subject="board", hint=hint))


def _fitting(pack: PackFacts, others: tuple[PackFacts, ...], board: str, thickness: float) -> tuple[str, ...]:
    """Return the names of the other packs of a design that take this board."""
    alike = [one for one in others if one.slug == pack.slug and one.called != pack.called]
    return tuple(one.called for one in alike if _takes(one, board, thickness))


def _takes(pack: PackFacts, board: str, thickness: float) -> bool:
    if board not in [one.board for one in pack.boards]:
        return False
    low, high = board_range(pack.meetings, board)
    return low - HOLDS <= thickness <= high + HOLDS


def _misfit(met: Met, thickness: float, scales: tuple[float, ...]) -> str:
    """Say by how much a meeting fails with this board; '' when it holds at every scale."""
    worse = math.copysign(met.spread, met.boards)
    least = met.least + met.boards * (thickness - met.thickness - worse)
    most = math.inf if met.most is None else met.most + met.boards * (thickness - met.thickness + worse)
    sizes = [met.cut(scale) for scale in scales]
    if min(sizes) < least - HOLDS:
        return f"the {met.what} is {min(sizes):.2f} mm when cut and needs {least:.2f} mm: {least - min(sizes):.2f} mm too tight"
    if max(sizes) > most + HOLDS:
        return f"the {met.what} is {max(sizes):.2f} mm when cut and holds up to {most:.2f} mm: {max(sizes) - most:.2f} mm too loose"
    return ""
