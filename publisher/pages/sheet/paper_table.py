"""Papers: a table with sources, and those that a spec describes itself."""

import json
from functools import cache
from pathlib import Path

from publisher.basics import Finding, Refusal, Rule, Severity
from publisher.basics.wording import did_you_mean
from publisher.design import Design, PaperWish
from publisher.pages.model import Paper
from publisher.pages.sheet.editions import OTHER, edition_called

UNKNOWN_PAPER = Rule(
    "pages/unknown-paper", "A paper that nobody knows", "pages need a size in mm to be true to scale", Severity.ERROR
)

AT_HOME = 330.0  # mm of width: what printers for the home and the studio take at most (common practice, no source)


@cache
def papers() -> tuple[Paper, ...]:
    """Return every paper of the table, in its order."""
    rows = json.loads((Path(__file__).parent / "papers.json").read_text(encoding="utf-8"))["papers"]
    return tuple(
        Paper(
            r["name"],
            r["title"],
            float(r["width"]),
            float(r["height"]),
            _four(r["margins"]),
            r["source"],
            edition_called(r.get("edition", OTHER)).first,
            r.get("edition", OTHER),
        )
        for r in rows
    )


def paper_for(design: Design, name: str) -> Paper:
    """Return the paper of this name: one that the spec describes, or one of the table; small and capital letters are alike.

    A paper that the spec describes is turned upright. It states width and height in mm; its margins, if it states none, are
    those of the table's papers. Its size is one that `design` lets pass. Raises Refusal when the
    name is unknown.
    """
    wanted = name.strip().casefold()
    for wish in design.papers:
        if wish.name.casefold() == wanted and wish.width is not None and wish.height is not None:
            return _own(wish, wish.width, wish.height)
    for paper in papers():
        if paper.name == wanted:
            return paper
    raise Refusal(_unknown(design, name, wanted))


def _unknown(design: Design, name: str, wanted: str) -> Finding:
    known = list(
        dict.fromkeys([*(w.name.casefold() for w in design.papers if w.width is not None), *(p.name for p in papers())])
    )
    place = next((w.place for w in design.papers if w.name.casefold() == wanted), None)
    own = f"A paper of your own is written {{name: {wanted or 'mine'}, width: 300 mm, height: 400 mm}}"
    return UNKNOWN_PAPER.found(
        f"paper “{name}” is not known; known are {', '.join(known)}",
        subject=name,
        hint=f"{did_you_mean(wanted, known)} {own}".lstrip(),
        place=place,
    )


def read_on(paper: Paper) -> Paper:
    """Return the paper on which pages that are only read are laid out: the paper itself, or for one that no printer at home takes
    (plans, large sheets) the everyday one of its edition. Lines of words are then no longer than in a book, the buyer pays a copy
    shop for templates alone, and reads the rest on a screen or prints it at home."""
    if min(paper.width, paper.height) <= AT_HOME:
        return paper
    everyday = edition_called(paper.edition).read_on
    return next(one for one in papers() if one.name == everyday)


def _own(wish: PaperWish, width: float, height: float) -> Paper:
    """Make a paper of what the spec says; `design` has judged it."""
    left, bottom, right, top = wish.margins if wish.margins is not None else papers()[0].margins
    if width > height:  # upright; the sheet is turned a quarter, anticlockwise
        width, height, (left, bottom, right, top) = height, width, (top, left, bottom, right)
        if wish.margins is None:
            left, bottom, right, top = papers()[0].margins
    title = f"{wish.name}, {width:g} × {height:g} mm"
    return Paper(wish.name.casefold(), title, width, height, (left, bottom, right, top), "the design’s spec")


def _four(values: list[float]) -> tuple[float, float, float, float]:
    left, bottom, right, top = (float(v) for v in values)
    return (left, bottom, right, top)
