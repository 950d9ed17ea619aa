"""The print plan: every task with the pages that do it, and every page in one task."""

import re

from publisher.basics import Check, Findings, Promises, ReferencePromise
from publisher.proof.checks.frame import about, judged, page_name
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
    """Look for each task with its page numbers, and hold the numbers against the pages' kinds."""
    references = case.promises.references
    hint = "number the pages first, and write the plan from their numbers"
    for promise in references:
        page = case.page(promise.page)
        fault = "" if page is None else _unsaid(page, promise) or _astray(promise, case.promises)
        if fault:
            yield about(check, page_name(promise.page), f": the print plan {fault}", hint)
    named = [number for promise in references for number in range(promise.first, promise.last + 1)]
    if references and sorted(named) != [promise.page for promise in case.promises.pages]:
        yield about(check, case.file.name, "has a print plan that does not name every page once", hint)
    return len(references)


def _unsaid(page: PageRead, promise: ReferencePromise) -> str:
    """Return in words what the printed row says otherwise; empty when it is as promised."""
    wanted = str(promise.first) if promise.first == promise.last else f"{promise.first}-{promise.last}"
    for band in bands(page, PLAN_RULE):
        runs = sorted(band.runs, key=lambda run: (-run.y, run.x))
        numbers = [normal(run.text) for run in runs if PAGES.fullmatch(normal(run.text))]
        task = normal(" ".join(run.text for run in runs if not PAGES.fullmatch(normal(run.text))))
        if task == normal(promise.task):
            return (
                "" if numbers == [wanted] else f"sends “{promise.task}” to {', '.join(numbers)}; promised is {wanted}"
            )
    return f"does not name “{promise.task}”"


def _astray(promise: ReferencePromise, promises: Promises) -> str:
    kinds = {page.kind for page in promises.pages if promise.first <= page.page <= promise.last}
    other = sorted(kinds - set(promise.kinds))
    return f"sends “{promise.task}” to a page of kind {', '.join(other)}" if other or not kinds else ""
