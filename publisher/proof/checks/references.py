"""Where words send the buyer: to a page that shows what they name, to a step that there is; steps are numbered in their order."""

import re
from collections.abc import Iterator

from publisher.basics import Box, Carried, Check, Findings
from publisher.proof.checks.frame import RUN, about, judged, numbers_in, page_name
from publisher.proof.measuring import ELSEWHERE, Case, lines_in
from publisher.proof.reading import normal, says

OF = re.compile(r"\bpage (\d+) of (\d+)")
SENT = re.compile(rf"\b[Pp]ages? ({RUN})")
QUOTED = re.compile(r"“([^”|]+)” (?:on|from) page (\d+)")
LETTERED = re.compile(rf"(?<![\w.])([A-Z]+\d*): pages? ({RUN})")
CALLED = re.compile(r"(?<![\w.])(\d+): (check|[A-Z]+\d*(?:, [A-Z]+\d*)*)(?!\w)")
TILE = re.compile(r"\b[Tt]ile (?:\S+ )?(\d+) of (\d+)")
CELL = re.compile(r"\b[Rr]ow (\d+), column (\d+)(?: of (\d+) × (\d+))?")
COPY = re.compile(r"\bcopy (\d+)")
OTHER_TILE = re.compile(r"\btile (\d+) \(page (\d+)\)")
KINDS = (  # what words say of a page, and the kind of page that it is
    (re.compile(rf"gauge on page ({RUN})"), "print_check"),
    (re.compile(rf"coupon of page ({RUN})"), "print_check"),
    (re.compile(rf"Print page ({RUN}) (?:alone|at 100)"), "print_check"),
    (re.compile(rf"(?<!\d )page ({RUN}) alone"), "print_check"),
    (re.compile(rf"Read page ({RUN})"), "cautions"),
    (re.compile(rf"page ({RUN}) read\b"), "cautions"),
    (re.compile(rf"(?:print list, and|Then) read page ({RUN})"), "cautions"),
    (re.compile(rf"square of pages? ({RUN})"), "print_check"),
    (re.compile(rf"board as pages? ({RUN}) show"), "cut_list"),
    (re.compile(rf"lay, as pages? ({RUN}) show"), "cut_list"),
    (re.compile(rf"glue area of page ({RUN})"), "tiles"),
)
SAYINGS = (OF, SENT, QUOTED, LETTERED, CALLED, TILE, CELL, COPY)
NAME_MOST = (
    80  # letters of what may be a name, broken over lines and cells; longer words of the designer stand in one piece
)
STEPS = re.compile(r"\bSteps? (\d+)(?: to (\d+))?")
STEP_AWAY = 16.0  # mm from a step's number to its title

TileAt = tuple[int, int, int]  # row and column of a tile from the upper left, and its page


@judged(
    "proof/page-reference",
    "Pages that words send to",
    "a wrong page number sends the buyer to print, glue or read something else: each page that is named is there, and shows what is said "
    "of it",
    may_be_empty=True,
)
def page_references(case: Case, check: Check[Case]) -> Findings:
    """Look at every page number in the tool's own words."""
    looked = 0
    written = {
        found[0]
        for name in case.given
        if len(name) <= NAME_MOST
        for saying in SAYINGS
        for found in saying.finditer(name)
    }
    hint = "number the pages first, and take the number from the page that is meant"
    for page in case.promises.pages if case.promises.prints else ():
        text = case.own_words(page.page)
        for words in written:
            text = text.replace(words, ELSEWHERE)
        looked += len(SENT.findall(text))
        for fault in _misled(case, page.page, text):
            yield about(check, page_name(page.page), f": {fault}", hint)
    return looked


def _misled(case: Case, page: int, text: str) -> Iterator[str]:
    """Yield in words what is wrong with the references of one page's text."""
    pages = {one.page: one.kind for one in case.promises.pages}
    for here, total in OF.findall(text):
        if (int(here), int(total)) != (page, len(pages)):
            yield f"it says that it is page {here} of {total}; it is {page} of {len(pages)}"
    for run in SENT.findall(text):
        if not numbers_in(run) <= pages.keys():
            yield f"it names page {run}, which is not there"
    for saying, kind in KINDS:
        for run in saying.findall(text):
            if any(pages.get(number) != kind for number in numbers_in(run)):
                yield f"it sends to page {run}, which is no page of {kind.replace('_', ' ')}"
    for title, number in QUOTED.findall(text):
        there = (" ".join(line.text for line in case.lines(int(number))), case.own_words(int(number)))
        if not any(
            says(words, normal(title)) for words in there
        ):  # as it stands, or as another language's words are read
            yield f"it sends to “{title}” on page {number}, where nothing is called so"
    yield from _letters_misled(case, text)
    yield from _tiles_misled(case, page, text)


def _letters_misled(case: Case, text: str) -> Iterator[str]:
    """Yield what is wrong with pages named by the letters of their parts."""
    shown: dict[int, set[str]] = {}
    named = [(one.page, one.letter) for one in case.promises.outlines]
    for page, letter in (*named, *((strip.page, strip.letter) for strip in case.promises.compasses)):
        shown.setdefault(page, set()).add(letter)
    for letter, run in LETTERED.findall(text):
        there = {page for page, letters in shown.items() if letter in letters}
        if numbers_in(run) != there:
            yield f"it says that {letter} is on page {run}; it is on {', '.join(map(str, sorted(there))) or 'none'}"
    for number, called in CALLED.findall(text):
        wanted = shown.get(int(number), {"check"})
        if set(called.split(", ")) != wanted:
            yield f"it says that page {number} shows {called}; it shows {', '.join(sorted(wanted))}"


def _tiles_misled(case: Case, page: int, text: str) -> Iterator[str]:
    """Yield what is wrong with the numbers of tiles."""
    tiles: dict[tuple[str, int], set[TileAt]] = {}
    for one in case.promises.outlines:
        if one.row:
            tiles.setdefault((one.letter, one.copy), set()).add((one.row, one.column, one.page))
    wholes = [sorted(cells) for cells in tiles.values()]
    here = [cells for cells in wholes if any(on == page for *_, on in cells)]
    for number, total in TILE.findall(text):
        if not any(len(cells) == int(total) and _is_on(cells, int(number), page) for cells in here):
            yield f"it says “tile {number} of {total}”, and shows no such tile"
    for row, column, down, across in CELL.findall(text):
        mine = [cells for cells in here if (int(row), int(column), page) in cells]
        if not mine or (down and not any(_rows(cells) == (int(down), int(across)) for cells in mine)):
            yield f"it says “row {row}, column {column}”, and shows no such tile"
    for number in COPY.findall(text):
        if int(number) > max((row.count + row.spare for row in case.promises.rows), default=0):
            yield f"it names copy {number}, which is not cut"
    for number, on in OTHER_TILE.findall(text):
        if not any(_is_on(cells, int(number), int(on)) for cells in here):
            yield f"it says that tile {number} is on page {on}, which shows no such tile"


def _is_on(cells: list[TileAt], number: int, page: int) -> bool:
    """Say whether the tile with this number, counted row by row, is on a page."""
    return 0 < number <= len(cells) and cells[number - 1][2] == page


def _rows(cells: list[TileAt]) -> tuple[int, int]:
    return max(row for row, _, _ in cells), max(column for _, column, _ in cells)


@judged(
    "proof/step-number",
    "Steps numbered in their order",
    "a buyer who loses the place finds it by the number: each step has the next one beside its title, and a page says which it has",
    may_be_empty=True,
)
def step_numbers(case: Case, check: Check[Case]) -> Findings:
    """Look for each step's number to the left of its title, in the order of the pages."""
    titles = [w for w in case.promises.carried if w.key.endswith(":title") and w.key.startswith(("step:", "act:"))]
    hint = "count the steps in the order in which they are printed"
    on: dict[int, set[int]] = {}
    steps = {where.key.removesuffix(":title"): number for number, where in enumerate(titles, 1)}
    for where in case.promises.carried:  # a step that goes on shows its pictures on the pages after its title's
        if (number := steps.get(":".join(where.key.split(":")[:2]))) is not None:
            on.setdefault(where.page, set()).add(number)
    for number, where in enumerate(titles, 1):
        if not _numbered(case, where, str(number)):
            yield about(check, page_name(where.page), f": step {number} has not its number beside its title", hint)
    for page, numbers in on.items():
        for first, last in STEPS.findall(case.own_words(page)):
            if (int(first), int(last or first)) != (min(numbers), max(numbers)):
                what = f": it says “steps {first} to {last or first}”; it has {min(numbers)} to {max(numbers)}"
                yield about(check, page_name(page), what, hint)
    return len(titles)


def _numbered(case: Case, where: Carried, number: str) -> bool:
    title = where.box
    beside = Box(title.left - STEP_AWAY, title.bottom - 2.0, title.left, title.top + 2.0)
    return any(normal(line.text) == number for line in lines_in(case.lines(where.page), beside))
