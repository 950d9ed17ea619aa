"""The tagged structure says what the pages show: headings, lists, tables and figures, in the order of reading, with their words."""

from collections.abc import Iterator
from itertools import zip_longest

from publisher.basics import Check, Findings
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import TagRead, normal

DOCUMENT, PAGE_OF_IT = "Document", "Sect"  # the two upper levels: the whole, and a section for each page
WORDED = ("H1", "H2", "P", "Lbl", "LBody")
"""Roles of elements that are nothing but their words."""

Spoken = tuple[int, str, str, str]  # depth, type, words in the place of a figure, its own words


@judged(
    "proof/structure",
    "Tagged structure as made",
    "a reader who listens hears the pages by it: what is left out is not read, what stands under a wrong heading misleads",
    may_be_empty=True,
)
def structure(case: Case, check: Check[Case]) -> Findings:
    """Compare the tree element by element with the promised one: depth, type, words in the place of figures, own words."""
    if not case.promises.tags:
        return 0
    wanted = tuple(_promised(case))
    there = tuple((tag.page, _read(tag)) for tag in case.file.tags)
    hint = "write the structure from what the pages were made of, in the order of reading"
    page = 1
    for number, (found, (on, promised)) in enumerate(zip_longest(there, wanted, fillvalue=(0, None)), 1):
        page = on or page
        if found[1] != promised:
            what = f": element {number} of the structure is {_said(found[1])}; promised is {_said(promised)}"
            yield about(check, page_name(page), what, hint)
            break
        if found[0] not in (0, page):
            yield about(check, page_name(page), f": element {number} of the structure is one of page {found[0]}", hint)
            break
    for tag in case.promises.tags:
        if tag.role in WORDED and not tag.text.strip():
            what = f": an element of the structure ({tag.role}) has no words: what it holds is read as nothing"
            yield about(
                check, page_name(tag.page), what, "tag lines as figures with words in their place, or as furniture"
            )
            break
    return len(there) + len(wanted)


@judged(
    "proof/untagged",
    "Words in the structure or beside it on purpose",
    "words that are neither in the structure nor marked as furniture are read anywhere, or not at all",
    may_be_empty=True,
)
def untagged(case: Case, check: Check[Case]) -> Findings:
    """Look at every run of letters: it has a mark."""
    if not case.promises.tags:
        return 0
    looked = 0
    for page in case.file.pages:
        runs = [run for run in page.texts if run.text.strip()]
        looked += len(runs)
        bare = [run for run in runs if run.mark is None]
        if bare:
            what = f": “{bare[0].text.strip()[:40]}” stands outside the structure and is not marked as furniture"
            yield about(
                check,
                page_name(page.number),
                what,
                "mark all that is drawn, furniture as artifacts",
                float(len(bare)),
                0.0,
            )
    return looked


def _promised(case: Case) -> Iterator[tuple[int, Spoken | None]]:
    """Yield the promised elements with their pages: the document, under it a section for each page, in that what the page shows."""
    shown: dict[int, list[Spoken]] = {page.page: [] for page in case.promises.pages}
    for tag in case.promises.tags:
        shown.setdefault(tag.page, []).append((tag.depth + 2, tag.role, normal(tag.alt), _close(tag.text)))
    yield 0, (0, DOCUMENT, "", "")
    for number, elements in shown.items():
        yield number, (1, PAGE_OF_IT, "", "")
        yield from ((number, element) for element in elements)


def _read(tag: TagRead) -> Spoken | None:
    return tag.depth, tag.role, normal(tag.alt), _close(tag.text)


def _close(text: str) -> str:
    """Return words without blanks: a line in two fonts is two runs, and no file says whether a blank stands between them."""
    return "".join(normal(text).split())


def _said(element: Spoken | None) -> str:
    """Return an element in words."""
    if element is None:
        return "none"
    depth, role, alt, text = element
    words = alt or text
    return f"{role}{f' “{words[:40]}”' if words else ''} at level {depth + 1}"
