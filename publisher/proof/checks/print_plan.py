"""The print plan: every task with the pages that do it, and every page in one task."""

import re
from collections.abc import Iterator

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged
from publisher.proof.checks.table_rows import bands
from publisher.proof.measuring import Case
from publisher.proof.reading import PageRead, normal

PLAN_RULE = 30.0  # mm: lines between rows are longer
PAGES = re.compile(r"\d+(?:-\d+)?")


@judged(
    "proof/print-plan",
    "Print plan as the pages stand",
    "a buyer prints by it: a page that no task names is not printed, a wrong number prints another page",
    may_be_empty=True,
)
def print_plan(case: Case, check: Check[Case]) -> Findings:
    """Look for each task with the numbers of the pages that are printed for it."""
    pages = case.promises.pages
    hint = "number the pages first, and write the plan from their numbers"
    tasks = dict.fromkeys(promise.task for promise in pages)
    rows = [row for page in case.file.pages for row in _rows(page)] if any(tasks) else []
    for task in tasks if any(tasks) else ():
        numbers = [promise.page for promise in pages if promise.task == task]
        if not task or numbers != list(range(numbers[0], numbers[-1] + 1)):
            said = (
                f"has pages for “{task}” that do not follow each other"
                if task
                else "has a page that no task is printed for"
            )
            yield about(check, case.file.name, said, hint)
        fault = (
            _fault(rows, task, f"{numbers[0]}-{numbers[-1]}" if len(numbers) > 1 else str(numbers[0])) if task else ""
        )
        if fault:
            yield about(check, case.file.name, f"has a print plan that {fault}", hint)
    return len(tasks) if any(tasks) else 0


def _fault(rows: list[tuple[str, list[str]]], task: str, wanted: str) -> str:
    """Return in words what the printed row of a task says otherwise; empty when it is as promised."""
    named = [numbers for words, numbers in rows if words == normal(task)]
    if not named:
        return f"does not name “{task}”"
    wrong = [numbers for numbers in named if numbers != [wanted]]
    return f"sends “{task}” to {', '.join(wrong[0]) or 'no page'}; promised is {wanted}" if wrong else ""


def _rows(page: PageRead) -> Iterator[tuple[str, list[str]]]:
    """Yield the words of each row of a page's tables, and the page numbers that stand in it."""
    for band in bands(page, PLAN_RULE):
        said = [normal(run.text) for run in sorted(band.runs, key=lambda run: (-run.y, run.x))]
        yield (
            normal(" ".join(text for text in said if not PAGES.fullmatch(text))),
            [text for text in said if PAGES.fullmatch(text)],
        )
