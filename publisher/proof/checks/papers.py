"""The paper that was asked for: its size and its margins, by what its name means to everybody or by the designer's own words of it."""

import re

from publisher.basics import Check, Findings, PaperPromise, record
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.checks.pages import SAME_SIZE
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, normal

A0 = (841.0, 1189.0)  # mm: ISO 216; each further size is half the one before, whole millimetres
IN_INCHES = {  # PWG 5101.1, width and height of upright sheets
    "letter": (8.5, 11.0), "legal": (8.5, 14.0), "tabloid": (11.0, 17.0),
    "arch_c": (18.0, 24.0), "arch_d": (24.0, 36.0), "arch_e": (36.0, 48.0),
}  # fmt: skip
A_SIZE = re.compile(r"a(\d)")
BOTH = ("a4", "letter")  # what prints on both is as wide as the one and as high as the other
COMMON = "common"
AT_HOME = 330.0  # mm of width: no printer at home takes more (common practice, no source)
LONG_EDGE, SHORT_EDGE = MM_PER_INCH / 4.0, MM_PER_INCH / 2.0  # mm along these edges that no printer at home reaches


@record
class AskedSheet:
    """An upright sheet in mm, and how far from its long and its short edges nothing is printed; the words by which a page names it."""

    width: float
    height: float
    long_edge: float
    short_edge: float
    called: tuple[str, ...]


@judged(
    "proof/paper",
    "Pages for the paper that was asked for",
    "a page for another sheet is clipped or fitted, and what stands in the margins is not printed: each page is as large as its paper, "
    f"upright or lying, to {SAME_SIZE:g} mm, keeps its margins ({LONG_EDGE:.2f} mm along long edges and "
    f"{SHORT_EDGE:.1f} along short ones where the design names no others), and a page that must print true says which paper it is; "
    f"where that is wider than {AT_HOME:g} mm, pages that are only read may be for A4 or Letter paper, all for the same",
    may_be_empty=True,
)
def paper_asked_for(case: Case, check: Check[Case]) -> Findings:
    """Hold each page's size, its limit and the name of its paper against the paper."""
    promise = case.promises.paper
    if promise is None:
        return 0
    paper = size_of(promise)
    if paper is None:
        what = f"is for the paper “{promise.name}”, whose size nobody knows"
        yield about(check, case.file.name, what, "say its width and height in the spec")
        return 1
    hint = "lay pages out for the size and the margins of the paper that was asked for"
    asked, everyday = paper, _everyday(paper, case)
    for page, read in case.there(case.promises.pages):
        lying = read.width > read.height
        sides = (read.height, read.width) if lying else (read.width, read.height)
        paper = asked if page.true_size else everyday
        if not _is(paper, sides):
            what = (
                f"is {sides[0]:.2f} × {sides[1]:.2f} mm; {paper.called[0]} is {paper.width:.2f} × {paper.height:.2f} mm"
            )
            yield about(check, page_name(page.page), what, hint)
        across = min(page.limit.left, read.width - page.limit.right)
        down = min(page.limit.bottom, read.height - page.limit.top)
        along_long, along_short = (down, across) if lying else (across, down)
        if along_long < paper.long_edge - SAME_SIZE or along_short < paper.short_edge - SAME_SIZE:
            what = f"may be printed on to {along_long:.2f} mm from long edges and {along_short:.2f} from short ones; the margins are "
            what += f"{paper.long_edge:.2f} and {paper.short_edge:.2f} mm"
            yield about(check, page_name(page.page), what, hint)
        told = normal(" ".join(line.text for line in case.lines(page.page))).lower()
        if page.true_size and not all(re.search(rf"(?<!\w){re.escape(word)}(?!\w)", told) for word in paper.called):
            yield about(check, page_name(page.page), f"does not say that it is for {promise.name} paper", hint)
    return len(case.promises.pages)


def _is(paper: AskedSheet, sides: tuple[float, float]) -> bool:
    return max(abs(sides[0] - paper.width), abs(sides[1] - paper.height)) <= SAME_SIZE


def _everyday(paper: AskedSheet, case: Case) -> AskedSheet:
    """Return the sheet of pages that are only read: the paper itself; for a plan the one of A4 and Letter that the first of them is."""
    if paper.width <= AT_HOME:
        return paper
    first = next((read for page, read in case.there(case.promises.pages) if not page.true_size), None)
    known = (size_of(PaperPromise(one)) for one in BOTH)
    return next((one for one in known if first and one and _is(one, (first.width, first.height))), paper)


def size_of(promise: PaperPromise) -> AskedSheet | None:
    """Return the sheet that a promise means; None for a name that nobody knows without a size."""
    name = promise.name
    called = (normal(name.replace("_", " ")).lower(),)
    if promise.width > 0.0 and promise.height > 0.0:
        return _own(promise, called)
    if found := A_SIZE.fullmatch(name):
        width, height = A0
        for _ in range(int(found[1])):
            width, height = height // 2, width
        return AskedSheet(width, height, LONG_EDGE, SHORT_EDGE, called)
    if name == COMMON:
        narrow, low = (size_of(PaperPromise(one)) for one in BOTH)
        return AskedSheet(narrow.width, low.height, LONG_EDGE, SHORT_EDGE, BOTH) if narrow and low else None
    if name not in IN_INCHES:
        return None
    width, height = (MM_PER_INCH * side for side in IN_INCHES[name])
    return AskedSheet(width, height, LONG_EDGE, SHORT_EDGE, called)


def _own(promise: PaperPromise, called: tuple[str, ...]) -> AskedSheet:
    """Return a sheet of the designer's own, turned upright; its margins are those beside the edges as the spec names them."""
    width, height = promise.width, promise.height
    if promise.margins is None:
        return AskedSheet(min(width, height), max(width, height), LONG_EDGE, SHORT_EDGE, called)
    left, bottom, right, top = promise.margins
    beside, over = max(left, right), max(bottom, top)
    return (
        AskedSheet(width, height, beside, over, called)
        if width <= height
        else AskedSheet(height, width, over, beside, called)
    )
