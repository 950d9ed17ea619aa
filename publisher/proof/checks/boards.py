"""What a buyer asks for in a shop: faces, thickness and name of each board, what thicknesses will do, how many sheets, how much card."""

import re
from collections.abc import Iterator
from math import inf, isinf

from publisher.basics import BoardPromise, Check, Findings, Promises
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import CARDS, Case, figures_in, pieces_on
from publisher.proof.reading import normal, unbroken

FACES = {  # what is said of a board, its name in the place of {}
    "bare": "bare {} board, no paper on its faces",
    "paper_one": "{} board with paper on one face",
    "paper_both": "{} board with paper on both faces",
}
BOTH = r"[\d.]+(?:to[\d.]+)?(?:mm|in)\([\d.]+(?:to[\d.]+)?(?:mm|in)\)"  # in one unit and in the other
SHOPS = {  # what the name in shops of foam begins with, by whether paper is on it
    False: ("extrudedfoam", "extrudierteschaumplatte"),
    True: ("foamboard", "leichtschaumplatte"),
}
MEASURED = re.compile(rf"(?:\((?P<shop>[^()]*)\))?,(?:soldas(.+?),)?measured({BOTH})thick")
TAKES = re.compile(rf"takesboard(from|(?:up)?to|of)({BOTH})(ormore)?")
CARD = re.compile(r"(\d+)sheets?of[^:;]*?size(?:,and(\d+)more[^:]*:(.+?\))\.)?")
OFTEN = re.compile(r"([^,()]+)\((\d+)times\)")
FRONTS = ("cover", "about")  # what the cover has no room for stands on the page after it
GAUGED, THINNEST_GAUGED = (
    "print_check",
    1.0,
)  # the kind of page with the gauge; mm of the thinnest board that has a place in one
OTHER = "\0"  # in the place of the words about a board whose name ends with that of the one that is looked for
HALF_DIGIT = 0.5 + 1e-6  # of the last digit of a figure as it is printed


@judged(
    "proof/board-said",
    "Boards and card as they were worked out",
    "with the wrong board in the basket nothing fits: its faces, its measured thickness and the name under which it is sold, its place "
    "in the gauge, what thicknesses the design takes, the sheets that the cover asks for, and the card for its templates",
    may_be_empty=True,
)
def boards_said(case: Case, check: Check[Case]) -> Findings:
    """Read what the list to buy says of each board, and what the cover says of its sheets."""
    hint = "say of boards and card what was worked out of them"
    bought = {where.page for way in case.promises.sheets for where in case.carried(way.key)}
    lists = {
        one.page: _told(case, one.page) for one in case.promises.pages if one.kind == "cut_list" or one.page in bought
    }
    for board in case.promises.boards if lists else ():
        others = [one for one in case.promises.boards if one is not board]
        if fault := _board_wrong(board, "".join(lists.values()), others):
            yield about(check, f"{page_name(min(lists))}: board {board.board}", fault, hint)
    yield from _gauge_wrong(case, check)
    fronts = [page.page for page in case.promises.pages if page.kind in FRONTS]
    for fault in _cover_wrong(case.promises, "".join(_told(case, page) for page in fronts)) if fronts else ():
        yield about(check, page_name(fronts[0]), fault, hint)
    if lists and (fault := _card_wrong(case.promises, "".join(lists.values()))):
        yield about(check, page_name(min(lists)), fault, hint)
    return len(case.promises.boards) if lists else 0


def _gauge_wrong(case: Case, check: Check[Case]) -> Findings:
    """Yield that the gauge of a pack for one board has no place for it: one that is thinner than any gauge begins has none."""
    (board, *others) = case.promises.boards or (None,)
    pages = {page.page for page in case.promises.pages if page.kind == GAUGED}
    marks = [one for one in case.promises.lengths if one.purpose == "gauge" and one.label and one.page in pages]
    if board is not None and not others and marks and board.thickness >= THINNEST_GAUGED:
        low, high = min(one.length for one in marks), max(one.length for one in marks)
        if not low <= board.thickness <= high:
            what = f": its gauge goes from {low:.1f} to {high:.1f} mm; the board is {board.thickness:.2f} mm"
            yield about(check, page_name(marks[0].page), what, "draw a gauge in which the board finds its place")
    return len(marks)


def _told(case: Case, page: int) -> str:
    """Return the words of a page without blanks, in small letters: words may be broken over lines."""
    return _close(" ".join(line.text for line in case.lines(page)))


def _close(words: str) -> str:
    return re.sub(r"\s", "", unbroken(normal(words))).lower()


def _board_wrong(board: BoardPromise, said: str, others: list[BoardPromise]) -> str:
    """Return in words what the list says otherwise of a board than promised; empty when nothing."""
    phrase = _close(FACES[board.faces].format(board.called))
    called = [_close(FACES[one.faces].format(one.called)) for one in others]
    for longer in called:  # the name of one board may end with that of another
        said = said.replace(longer, OTHER) if longer != phrase and longer.endswith(phrase) else said
    rest = said.partition(phrase)[2]
    if not rest:
        return f": it is not called “{FACES[board.faces].format(board.called)}”"
    ends = (rest.find(words) for words in (*called, OTHER))
    rest = rest[: min((end for end in ends if end > 0), default=len(rest))]
    found = MEASURED.match(rest)
    if found is None:
        return ": its measured thickness does not stand with it"
    shop, sold_as, thick = found.groups()
    if shop and not shop.startswith(SHOPS[board.faces != "bare"]):
        return f": shops are asked for “{shop}”, which has other faces"
    if (sold_as or "") != _close(board.sold_as):
        return f": it is said to be sold as “{sold_as or ''}”; it is “{board.sold_as}”"
    if not _are(thick, (board.thickness,)):
        return f": it is said to measure {thick}; it is {board.thickness:.2f} mm"
    return _takes_wrong(board, rest, ": the list")


def _takes_wrong(board: BoardPromise, said: str, who: str) -> str:
    """Return in words what is said otherwise of the thicknesses that a design takes; empty when nothing."""
    wanted = tuple(end for end in (board.least, board.most) if 0.0 < end < inf)
    found = TAKES.search(said)
    if found is None:
        return f"{who} does not say what thicknesses the design takes" if wanted else ""
    form = (
        "from" if len(wanted) == 2 else "of" if isinf(board.most) else "to",
        "ormore" if isinf(board.most) else "",
    )
    if not wanted or (found[1].removeprefix("up"), found[3] or "") != form or not _are(found[2], wanted):
        return f"{who} says “{found[0]}”; the design takes {board.least:.2f} to {board.most:.2f} mm"
    return ""


def _are(said: str, wanted: tuple[float, ...]) -> bool:
    """Say whether the millimetres of words without blanks are these."""
    spaced = re.sub(r"(mm|in|to)", r" \1 ", said)
    shown = [one for one in figures_in(spaced) if one.unit == "mm"]
    return len(shown) == len(wanted) and all(
        abs(one.value - mm) <= HALF_DIGIT * one.step for one, mm in zip(shown, wanted, strict=True)
    )


def _cover_wrong(promises: Promises, said: str) -> Iterator[str]:
    """Yield what a cover says otherwise of sheets and boards than promised."""
    for way in promises.sheets:
        words = f"{way.sheets} sheet{'s' if way.sheets != 1 else ''} of {normal(way.label)}"
        if not re.search(rf"(?<![\d.]){re.escape(_close(words))}", said):
            yield f": “{words}” is not among what it takes"
    for board in promises.boards if len(promises.boards) > 1 and promises.language.startswith("en") else ():
        if _close(f"Board {board.called}") not in said:
            yield f": it does not say which of its sheets are board {board.called}"
    taken = [board for board in promises.boards if board.least > 0.0 or board.most < inf]
    if len(taken) == len(promises.boards) == 1 and (fault := _takes_wrong(taken[0], said, ": it")):
        yield fault


def _card_wrong(promises: Promises, said: str) -> str:
    """Return in words what the list says otherwise of the card for templates; empty when nothing."""
    pages = len({page for page, _ in pieces_on(promises)})
    if not pages or not any(piece.traced for piece in promises.prints):
        return ""
    _, begins, rest = said.partition(_close("card for the templates"))
    found = CARD.search(rest)
    if not begins or found is None:
        return ": it does not say how many sheets of card the templates take"
    shown: dict[str, set[int]] = {}
    for page, part in pieces_on(promises):
        shown.setdefault(part, set()).add(page)
    often = {row.letter: row for row in promises.rows if row.traced_often}
    more = CARDS * len(set().union(*(shown.get(row.part, ()) for row in often.values())))
    named = {letter.strip(","): int(times) for letter, times in OFTEN.findall(found[3] or "")}
    wanted = {_close(letter): row.traced_often for letter, row in often.items()}
    if (int(found[1]), int(found[2] or 0), named) != (pages, more, wanted):
        return f": it says “{found[0]}”; {pages} sheets of card and {more} more are needed, for {', '.join(sorted(often)) or 'none'}"
    return ""
