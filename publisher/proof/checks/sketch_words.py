"""What sketches of acts say: which side is up, angles, counts, pages; and the letter on each part is its own."""

import re
from collections.abc import Iterator

import shapely

from publisher.basics import Carried, Check, Findings, PrintPromise, SaidPromise
from publisher.proof.checks.frame import RUN, about, judged, numbers_in, page_name
from publisher.proof.checks.left_out import OF_PACK, act_of
from publisher.proof.checks.sayings import limits_of, says_limits
from publisher.proof.measuring import Case, carried_lines, lines_in
from publisher.proof.reading import normal

MORE = normal("…")
PRINTING, MAKING_CARDS, MARKING_OUT, TAPING = (
    f"act:{act}:does:{does}" for act, does in (("print", "print"), ("card", "card"), ("mark", "mark"), ("tape", "tape"))
)
CHECK_PAGE, LAYOUTS = "print_check", "cut_list"
OUTER = "4 in"
PAGES = re.compile(rf"\bpages? ({RUN})")
ALONE = re.compile(RUN)
ANGLE = re.compile(r"\d°")
THICK = re.compile(r"\d[\d.]* to \d[\d.]* (?:mm|in)\b")
LETTER = re.compile(r"[A-Z]{1,3}\d*(?:\.\d+)?")
GUIDE = "bevel guide"


@judged(
    "proof/sketch-words",
    "Sketches say which side is up, how many, and which pages",
    "who reads no sentence reads these words: each that an act calls for stands in its sketch, counts and angles among them; the sketch of "
    "printing has the reading that is true and the pages that are printed then, that of the templates the angle of their guides",
    may_be_empty=True,
)
def sketch_words(case: Case, check: Check[Case]) -> Findings:
    """Look for the words of each act where a page says that it shows its sketch, then for the pages that sketches name."""
    strips = {strip.part for strip in case.promises.compasses}
    looked = 0
    for promise in case.promises.said:
        if promise.carded and strips >= set(promise.carded):
            continue
        places = case.carried(promise.key)
        if not places and promise.key.startswith(OF_PACK) and not case.carried(f"{act_of(promise.key)}:title"):
            continue  # the pack has no such act
        looked += 1
        if not places:
            yield about(check, f"the sketch of {_named(promise.key)}", "stands on no page", "draw each act")
        for missing in _lacking(promise, [_said(case, where) for where in places]) if places else ():
            what = f": the sketch of {_named(promise.key)} does not say “{missing}”"
            yield about(check, page_name(places[0].page), what, "say in a sketch what its act calls for")
    for key, fault in ((PRINTING, _printing), (MAKING_CARDS, _cards), (MARKING_OUT, _marking), (TAPING, _taping)):
        for where in case.carried(key) if case.promises.figures else ():
            looked += 1
            if said := fault(case, where):
                what = f": the sketch of {_named(key)} {said}"
                yield about(check, page_name(where.page), what, "say in a sketch what its act calls for")
    return looked


def _named(key: str) -> str:
    """Return how messages call a sketch."""
    first, number, _, act = key.split(":")[:4]
    return f"“{act.replace('_', ' ')}”{f' (step {number})' if first == 'step' else ''}"


def _said(case: Case, where: Carried) -> list[str]:
    """Return the lines of words in a sketch."""
    return [normal(line.text) for line in lines_in(case.lines(where.page), where.box)]


def _lacking(promise: SaidPromise, sketches: list[list[str]]) -> Iterator[str]:
    """Yield what none of the sketches of an act says."""
    lines = [line for sketch in sketches for line in sketch]
    cut_off = any(line.endswith(MORE) for line in lines)
    for text in (*promise.texts, *(() if cut_off else promise.listed)):
        words = re.compile(rf"(?<![\w.]){re.escape(normal(text))}(?![\w.])")
        if not any(words.search(line) for line in lines):
            yield text


def _pages_of(case: Case, kind: str) -> set[int]:
    return {page.page for page in case.promises.pages if page.kind == kind}


def _true_pages(case: Case) -> set[int]:
    """Return the pages that are printed once the print check is true."""
    return {page.page for page in case.promises.pages if page.true_size} - _first(case)


def _first(case: Case) -> set[int]:
    """Return the page that is printed and measured first."""
    return set(sorted(_pages_of(case, CHECK_PAGE))[:1])


def _printing(case: Case, where: Carried) -> str:
    """Return in words what the sketch of printing says otherwise; empty when nothing."""
    lines = _said(case, where)
    if not any(ALONE.fullmatch(line) and numbers_in(line) == _first(case) for line in lines):
        return "does not say which page is printed first"
    named = [numbers_in(run) for run in PAGES.findall(" ".join(lines))]  # they may stand on several lines
    if named != ([others] if (others := _true_pages(case)) else []):
        return "does not say which pages are printed then"
    limits = limits_of(case.promises)
    if limits and OUTER not in lines and not any(says_limits(line, limits) for line in lines):
        return "does not say what the square must measure"
    return ""


def _cards(case: Case, where: Carried) -> str:
    """Return in words what the sketch of making templates says otherwise; empty when nothing."""
    lines = _said(case, where)
    told = " ".join(text for place in case.carried(f"{act_of(MAKING_CARDS)}:title") for text in _said(case, place))
    if GUIDE in told and not any(ANGLE.search(line) for line in lines):
        return "does not say the angle of its bevel guide"
    if not any(THICK.search(line) for line in lines):
        return "does not say how thick the card is"
    if any(ALONE.fullmatch(line) for line in lines):
        return "has a number of which nobody knows what it counts"
    named = [numbers_in(run) for line in lines for run in PAGES.findall(line)]
    tiled = any(one.row for one in case.promises.outlines)
    if named != ([] if tiled else [_true_pages(case)]):
        return "does not say which pages are glued"
    return ""


def _marking(case: Case, where: Carried) -> str:
    """Return in words what the sketch of marking out says otherwise; empty when nothing."""
    named = [numbers_in(line) for line in _said(case, where) if ALONE.fullmatch(line)]
    if _pages_of(case, LAYOUTS) not in named:
        return "does not say which pages show the layouts"
    if any(pages not in (_pages_of(case, LAYOUTS), _first(case)) for pages in named):
        return "names a page that shows no layout"
    return ""


def _taping(case: Case, where: Carried) -> str:
    """Return in words what the sketch of taping says otherwise; empty when nothing."""
    lines = _said(case, where)
    letters = {one.letter for one in case.promises.outlines if one.row}
    for letter in sorted(letters) if not any(line.endswith(MORE) for line in lines) else ():
        for words in (rf"(?<![\w.]){re.escape(letter)}: pages? ", rf"(?<![\w.])1 × {re.escape(letter)}(?![\w.])"):
            if not any(re.search(words, line) for line in lines):
                return f"does not say which pages are taped for {letter}"
    return ""


@judged(
    "proof/sketch-letter",
    "Letters in sketches are those of their parts",
    "a buyer takes the part by the letter on it: on each part in a sketch of an act stands no letter but its own",
    may_be_empty=True,
)
def sketch_letters(case: Case, check: Check[Case]) -> Findings:
    """Look at every letter within a part that a sketch shows."""
    pieces = {piece.part: piece for piece in case.promises.prints}
    looked = 0
    for where in case.promises.carried:
        _, does, rest = where.key.partition(":does:")
        part = rest.partition(":")[2]
        if not does or part not in pieces:
            continue
        looked += 1
        for letter in _letters_on(case, where, pieces[part]):
            what = f": in the sketch of {_named(where.key)} part {pieces[part].letter} has the letter {letter}"
            yield about(check, page_name(where.page), what, "set the letter of the part that is drawn")
    return looked


def _letters_on(case: Case, where: Carried, piece: PrintPromise) -> Iterator[str]:
    """Yield the letters that stand on a part and are not its own; those on what lies before it are others'."""
    shape = shapely.Polygon(carried_lines(where, piece.rings)[0])
    known = {one.letter for one in case.promises.prints}
    for line in lines_in(case.lines(where.page), where.box):
        text = normal(line.text)
        if LETTER.fullmatch(text) and text != piece.letter and shapely.contains(shape, line.area().centroid):
            others = (one for one in case.promises.prints if one.letter == text)
            if text not in known or not any(_stands_on(case, where, line.area().centroid, other) for other in others):
                yield text


def _stands_on(case: Case, where: Carried, at: shapely.Point, piece: PrintPromise) -> bool:
    """Say whether a point lies on another part of the same sketch."""
    key = ":".join(where.key.split(":")[:4])
    return any(
        shapely.contains(shapely.Polygon(carried_lines(other, piece.rings)[0]), at)
        for other in case.carried(f"{key}:{piece.part}")
        if (other.page, other.box) == (where.page, where.box)
    )
