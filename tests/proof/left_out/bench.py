"""Leaves out a line, a paragraph or a sentence of a pack in what was read of its file, with all that pages themselves claim of it."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from publisher.basics import Carried, Promises, errors, run_checks
from publisher.pages import Pack, Words
from publisher.press import write_pdf
from publisher.proof import PROMISED
from publisher.proof.measuring import Case, lines_in
from publisher.proof.reading import FileRead, PageRead, TextRun, normal, read_file

CLAIMED = {"proof/drawn", "proof/structure", "proof/untagged"}  # held against what pages say of themselves
BY_DOTS = {
    "proof/ink-unseen", "proof/ink-stray", "proof/outline-by-pixels", "proof/calibration-by-pixels", "proof/ink-by-pixels",
    "proof/readers-agree",
}  # fmt: skip
STILL = {
    "covers",
    "ink",
    "strokes",
    "lengths",
    "outlines",
    "marks",
    "parts",
    "pixels",
    "titles",
    "given",
}  # no words in them
OF_A_PAGE = {"lines", "own_words", "areas", "hidden", "boxes"}
ENDS = re.compile(r"(?<=[.!?;]) +(?=\S)")
Span = tuple[int, int]  # places in the words of a paragraph, of what is left out


@dataclass(frozen=True)
class LeftOut:
    """Words that were left out of a page, of which kind it is, and the check that found it; '' for none."""

    page: int
    kind: str
    words: str
    check: str


class Trial:
    """A pack and its file as read, once, and what all readings of it share."""

    def __init__(self, pack: Pack) -> None:
        """Write and read the file; run all checks on it as it is."""
        self.pack = pack
        data = write_pdf(pack)
        self.file = read_file(data, "whole.pdf")
        self.case = Case(data, self.file, pack.promises)
        self.checks = [check for check in PROMISED if check.id not in CLAIMED | BY_DOTS]
        if wrong := [check.id for check in self.checks if errors(run_checks((check,), self.case))]:
            raise ValueError(f"refused as it is: {wrong}")
        self.often: dict[str, int] = {}

    def left_out(self, only: str = "") -> Iterator[LeftOut]:
        """Leave out each paragraph, and each sentence of those that have several; ``only``: pages of this kind."""
        for page, read in zip(self.pack.pages, self.file.pages, strict=True):
            if only in page.kind:
                for runs in paragraphs([thing for thing in page.drawn if isinstance(thing, Words)], read):
                    for words, texts in _without(runs):
                        yield LeftOut(page.number, page.kind, words, self._found(read, runs, texts))

    def _found(self, read: PageRead, runs: list[TextRun], texts: list[str]) -> str:
        """Return the check that finds that runs of a page say these words in place of theirs; '' when none does."""
        new = {id(run): text for run, text in zip(runs, texts, strict=True)}
        kept = tuple(
            run if id(run) not in new else replace(run, text=new[id(run)])
            for run in read.texts
            if new.get(id(run), "x").strip()
        )
        pages = tuple(replace(read, texts=kept) if page is read else page for page in self.file.pages)
        file = replace(self.file, pages=pages)
        first = self._judged(file, read.number, ())
        if not first:
            return ""
        silent = tuple(where for where in self.case.carried_on(read.number) if self._silent(file, where))
        return self._judged(file, read.number, silent) if silent else first

    def _silent(self, file: FileRead, where: Carried) -> bool:
        """Say whether a place where a page carries something has lost words."""
        now = Case(b"", file, self.case.promises)
        return len(lines_in(self.case.lines(where.page), where.box)) > len(lines_in(now.lines(where.page), where.box))

    def _judged(self, file: FileRead, page: int, unclaimed: tuple[Carried, ...]) -> str:
        """Return the first check that finds something in a file of which one page has other words, and claims nothing of the rest."""
        case = Case(self.case.data, file, None)
        case.promised, case.take_down = True, self.case.take_down
        case.promises = self.case.promises
        for key, taken in self.case.taken.items():
            if key[0] in STILL or (key[0] in OF_A_PAGE and key[1] != page):
                case.taken[key] = taken
        case.promises = _claimed(case, self.case.promises, page, unclaimed)
        for check in sorted(self.checks, key=lambda check: -self.often.get(check.id, 0)):
            if errors(run_checks((check,), case)):
                self.often[check.id] = self.often.get(check.id, 0) + 1
                return check.id
        return ""


def _claimed(case: Case, promises: Promises, page: int, unclaimed: tuple[Carried, ...]) -> Promises:
    """Return promises without those of words that their own page no longer says."""
    said = {normal(line.text) for line in case.lines(page)}
    whole = normal(" ".join(line.text for line in case.lines(page)))
    texts = tuple(one for one in promises.texts if one.page != page or _stands(one.text, said, whole))
    lengths = tuple(
        one if one.page != page or _stands(one.label, said, whole) else replace(one, label="")
        for one in promises.lengths
    )
    carried = tuple(where for where in promises.carried if where not in unclaimed)
    return replace(promises, texts=texts, lengths=lengths, carried=carried)


def _stands(text: str, said: set[str], whole: str) -> bool:
    words = normal(text)
    return any(words in line for line in said) or words in whole


def paragraphs(words: list[Words], read: PageRead) -> Iterator[list[TextRun]]:
    """Yield the runs of each paragraph that was placed on a page."""
    runs = iter(sorted(read.texts, key=lambda run: run.order))
    found: list[TextRun] = []
    for line in words:
        if not line.goes_on and found:
            yield found
            found = []
        said = ""
        while said.strip() != line.text.strip():
            run = next(runs)
            said += run.text
            found.append(run)
    if found:
        yield found


def _without(runs: list[TextRun]) -> Iterator[tuple[str, list[str]]]:
    """Yield what is left out of a paragraph, all of it or one of its sentences, and what each of its runs still says."""
    texts = [run.text for run in runs]
    whole = " ".join(texts)
    yield whole, ["" for _ in texts]
    ends = [0, *(found.end() for found in ENDS.finditer(whole)), len(whole)]
    for start, end in pairwise(ends) if len(ends) > 2 else ():
        yield whole[start:end], list(_cut(texts, start, end))


def _cut(texts: list[str], start: int, end: int) -> Iterator[str]:
    at = 0
    for text in texts:
        low, high = max(start - at, 0), max(end - at, 0)
        yield text[:low] + text[high:]
        at += len(text) + 1
