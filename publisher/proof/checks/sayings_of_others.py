"""What holds of other designs alone is said nowhere: how prints are pasted where they are traced, slots where there are none."""

from collections.abc import Iterator
from functools import cache

from publisher.basics import Check, Findings, PagePromise, record
from publisher.proof.checks.frame import MOST_SAID, about, judged, page_name
from publisher.proof.checks.sayings import SayingForm, close, forms_of, joined, sayings, sayings_table
from publisher.proof.measuring import Case, holds

LEAST_LETTERS = 24  # of a form without figures: shorter ones may be part of another sentence


@record
class Contrary:
    """Lines that stand on no page of a file of which a circumstance does not hold: their ``forms`` by language."""

    when: str
    forms: tuple[tuple[str, tuple[str, ...]], ...]


@judged(
    "proof/saying-of-others",
    "Nothing is said that holds of other designs",
    "“glue it to the board” on a page whose card is drawn round, or a remedy for slots that no part has, sends a buyer to do what the pack "
    "does not ask for: sentences that hang on what a design has stand in no pack of a design that has it not",
    may_be_empty=True,
)
def sayings_of_others(case: Case, check: Check[Case]) -> Findings:
    """Look on the pages where they would stand for sentences and footers of which the circumstances do not hold."""
    if not case.promises.figures or not case.promises.prints:
        return 0
    told = {page.page: close(case.lines(page.page)).lower() for page in case.promises.pages}
    asked = [
        form.words
        for saying in sayings()
        if saying.asked_of(case.promises)
        for form in forms_of(saying, case.promises, case.take_down)
    ]
    asked += [joined(one).lower() for one in (*case.promises.given, *(one.text for one in case.promises.sentences))]
    looked = 0
    found: list[tuple[int, str]] = []
    for form, pages in _others(case):
        if any(form.words in one for one in asked):
            continue
        looked += len(pages)
        found += [(page.page, form.words) for page in pages if form.stands_in(told[page.page])]
    for contrary in contraries():
        if _holds(case, contrary.when):
            continue
        forms = dict(contrary.forms)
        lines = forms.get(case.promises.language.partition("-")[0].lower(), forms["en"])
        lines = lines if case.take_down is None else tuple(map(case.take_down, lines))
        for page in case.promises.pages:
            looked += 1
            found += [(page.page, line) for line in lines if any(said.text == line for said in case.lines(page.page))]
    for number, words in found[:MOST_SAID]:
        what = f": it says “{words[:80]}”, which holds of other designs"
        yield about(check, page_name(number), what, "say what holds of this design")
    return looked


def _holds(case: Case, name: str) -> bool:
    """Say whether a circumstance holds; a compass strip is drawn with a pencil too."""
    return holds(case.promises, name) or (name == "traced" and bool(case.promises.compasses))


def _others(case: Case) -> Iterator[tuple[SayingForm, list[PagePromise]]]:
    """Yield the forms of sayings that hold of other designs alone, with the pages on which they would stand."""
    for saying in sayings():
        if saying.name not in sayings_table()["alone"] or all(_holds(case, name) for name in saying.when):
            continue
        for form in forms_of(saying, case.promises, case.take_down):
            if len(form.words) >= LEAST_LETTERS:
                yield form, saying.of(case.promises)


@cache
def contraries() -> tuple[Contrary, ...]:
    """Return the lines of the table that hang on one circumstance."""
    return tuple(
        Contrary(row["when"], tuple((language, tuple(row[language])) for language in row if language != "when"))
        for row in sayings_table()["contraries"]
    )
