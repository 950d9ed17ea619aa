"""The print plan, every task with the pages that do it and every page in one task; the list of the pages that must print true, and their
small pictures with the letters of their parts."""

import re
from collections import Counter
from collections.abc import Iterator
from functools import partial
from itertools import groupby

from publisher.basics import Carried, Check, CompassPromise, Findings, OutlinePromise
from publisher.proof.checks.frame import about, carried_faults, judged, numbers_in, words_at
from publisher.proof.checks.table_rows import bands
from publisher.proof.measuring import Case
from publisher.proof.reading import PageRead, normal

PLAN_RULE = 30.0  # mm: lines between rows are longer
PRINT_LIST, KEY_PLAN = "print_list", "key_plan"
NO_PART = "check"  # what the key plan calls a page that shows no part
_RUNS = r"\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*"
NOW = re.compile(rf"now ({_RUNS}), then ")
LIST = re.compile(rf"((?:now {_RUNS}, then )?{_RUNS}) on paper: (\d+) sheets? ")
PAGES = re.compile(r"\d+(?:-\d+)?")
CHECK_FIRST = "print_check"  # the kind of the page that is printed and measured before the others


@judged(
    "proof/print-plan",
    "Print plan as the pages stand",
    "a buyer prints by it: a page that no task names is not printed, a wrong number prints another page",
    may_be_empty=True,
)
def print_plan(case: Case, check: Check[Case]) -> Findings:
    """Look for each task with the numbers of the pages that are printed for it."""
    pages = case.promises.pages
    if not any(page.task for page in pages):
        return 0
    stretches = [(task, [page.page for page in run]) for task, run in groupby(pages, key=lambda page: page.task)]
    tasks = Counter(task for task, _ in stretches)
    rows = [row for page in map(case.in_english, case.file.pages) for row in _rows(page)]
    for task, numbers in stretches:
        fault = f"prints pages for “{task}” in several places" if tasks[task] > 1 else _fault(rows, task, numbers)
        if fault:
            hint = "number the pages first, and write the plan from their numbers"
            yield about(check, case.file.name, f"has a print plan that {fault}", hint)
    return len(stretches)


@judged(
    "proof/print-list",
    "Print list of the pages that must print true",
    "a buyer copies it into a print dialogue: a page too few is a missing part, a page too many wastes paper, and who prints all at once "
    "has not measured the print check first",
    may_be_empty=True,
)
def print_list(case: Case, check: Check[Case]) -> Findings:
    """Read the list where its page carries it: the numbers of the pages that must print true, those of the print check before the
    others, and how many sheets they are."""
    true = [page for page in case.promises.pages if page.true_size]
    wanted = [page.page for page in true]
    if not wanted or case.promises.purpose != "pack":
        return 0  # a test page is printed whole
    first = [page.page for page in true if page.kind == CHECK_FIRST]
    judge = partial(_list_fault, case, wanted, first if len(first) < len(wanted) else [])
    hint = "write the list from the numbers of the pages that must print true"
    yield from carried_faults(case, check, PRINT_LIST, "the print list", hint, judge)
    return len(wanted)


@judged(
    "proof/key-plan",
    "Key plan: each page with the letters of its parts",
    "who spoils a part looks here for the page to print again: under a wrong letter another part comes out",
    may_be_empty=True,
)
def key_plan(case: Case, check: Check[Case]) -> Findings:
    """Read the words under the small picture of each page: its number, and the letters of the parts that are promised there."""
    wanted = [page.page for page in case.promises.pages if page.true_size]
    if not any(case.carried(f"{KEY_PLAN}:{number}") for number in wanted):
        return 0  # no page has room for it
    shown: tuple[OutlinePromise | CompassPromise, ...] = (*case.promises.outlines, *case.promises.compasses)
    for number in wanted:
        letters = {promise.letter for promise in shown if promise.page == number}
        judge = partial(_caption_fault, case, number, letters)
        who, hint = (
            f"page {number} in the key plan",
            "write the key plan from the pages that must print true and from their parts",
        )
        yield from carried_faults(case, check, f"{KEY_PLAN}:{number}", who, hint, judge)
    return len(wanted)


def _caption_fault(case: Case, number: int, letters: set[str], where: Carried) -> str:
    """Return in words what stands under a small picture otherwise; empty when nothing."""
    said = words_at(case, where)
    page, _, named = said.partition(": ")
    right = sorted(named.split(", ")) == (sorted(letters) or [NO_PART])
    if page == str(number) and right:
        return ""
    return f": the key plan says “{said}” for page {number}, which shows {', '.join(sorted(letters)) or 'no part'}"


def _list_fault(case: Case, wanted: list[int], first: list[int], where: Carried) -> str:
    """Return in words what the printed list says otherwise than all pages that are ``wanted``, some of them ``first``; empty when
    nothing."""
    said = words_at(case, where)
    found = LIST.search(said)
    if found is None:
        return ": it has no list of pages to print on paper, with the number of their sheets"
    pages = [page for run in PAGES.findall(found[1]) for page in sorted(numbers_in(run))]
    if pages != wanted:
        return f": the print list says {found[1]}; the pages that must print true are {', '.join(map(str, wanted))}"
    now = NOW.match(found[1])
    if [page for run in PAGES.findall(now[1]) for page in sorted(numbers_in(run))] != first if now else first:
        return f": the print list says {found[1]}; {', '.join(map(str, first)) or 'nothing'} must be printed before the others"
    return "" if int(found[2]) == len(wanted) else f": the print list says {found[2]} sheets for {len(wanted)} pages"


def _fault(rows: list[tuple[str, list[str]]], task: str, numbers: list[int]) -> str:
    """Return in words what the printed row of a task says otherwise; empty when it is as promised."""
    wanted = f"{numbers[0]}-{numbers[-1]}" if len(numbers) > 1 else str(numbers[0])
    said = [found for words, found in rows if words == normal(task)]
    if not task or not said:
        return f"does not name “{task}”" if task else f"leaves out page {wanted}"
    wrong = [", ".join(found) or "no page" for found in said if found != [wanted]]
    return f"sends “{task}” to {wrong[0]}; promised is {wanted}" if wrong else ""


def _rows(page: PageRead) -> Iterator[tuple[str, list[str]]]:
    """Yield the words of each row of a page's tables, and the page numbers that stand in it."""
    for band in bands(page, PLAN_RULE):
        said = [normal(run.text) for run in sorted(band.runs, key=lambda run: (-run.y, run.x))]
        yield (
            normal(" ".join(text for text in said if not PAGES.fullmatch(text))),
            [text for text in said if PAGES.fullmatch(text)],
        )
