"""The cut list as printed, read as a table, and held against the parts as they were counted."""

import re
from collections.abc import Iterator, Sequence
from itertools import groupby
from math import floor

from publisher.basics import Check, Findings, Promises, RowPromise, record
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.checks.table_rows import bands
from publisher.proof.measuring import Case
from publisher.proof.reading import MM_PER_INCH, PageRead, TextRun, normal

TABLE_RULE = 80.0  # mm: lines between rows are longer
SAME_START = 0.5  # mm between words of one column
HEADINGS = ("Part", "Board", "Cut", "Width × height", "in inches", "in mm", "Page")
COLUMNS = 7  # the first, of letters, has no heading; sizes have a column in each unit, either first
COUNT = re.compile(r"(\d+)(?: \+ (\d+) spare)?(?:, (\d+) mirrored)?")
SIZE = re.compile(r"(\d+\.\d+) × (\d+\.\d+) (mm|in)")
HALF_MM, HALF_IN = 0.05, 0.005  # half of the last digit that is printed
LONGEST_LETTER = 4
PAGES_LETTERS = 9  # that the column of pages holds


@record
class PrintedRow:
    """A printed row: its page and the words of its cells, from the left."""

    page: int
    cells: tuple[str, ...]


@judged(
    "proof/cut-list",
    "Cut list as counted",
    "a buyer cuts by it: each part once, with its letter, board, counts, its size to "
    f"{HALF_MM:g} mm, and the pages that show it",
    may_be_empty=True,
)
def cut_list(case: Case, check: Check[Case]) -> Findings:
    """Read the rows of all pages; each promised row is there once, and there is no other."""
    promises = case.promises.rows
    if not promises or case.promises.purpose != "pack":
        return 0  # what is given beside a pack has no list
    rows = [row for page in map(case.in_english, case.file.pages) for row in _rows(page)]
    hint = "print the cut list from the parts that the pack shows"
    for promise in promises:
        who = f"part {promise.letter} ({promise.part})"
        mine = [row for row in rows if row.cells[0] == promise.letter]
        if len(mine) != 1:
            count = "is in no row" if not mine else f"is in {len(mine)} rows"
            yield about(check, who, f"{count} of the cut list", hint)
            continue
        shown = _pages(promise, case.promises)
        if not shown:
            yield about(check, who, "is in the cut list, and no page shows it", hint)
            continue
        if fault := _fault(mine[0], promise, shown):
            yield about(check, who, f": the cut list on {page_name(mine[0].page)} says {fault}", hint)
    letters = {promise.letter for promise in promises}
    for row in rows:
        if row.cells[0] not in letters:
            yield about(check, page_name(row.page), f": the cut list has a row “{row.cells[0]}” for no part", hint)
    return len(promises)


def _pages(promise: RowPromise, promises: Promises) -> str:
    """Return the pages that show a part, as the cut list says them; empty when none does."""
    shown = sorted(
        {outline.page for outline in promises.outlines if outline.part == promise.part}
        | {strip.page for strip in promises.compasses if strip.part == promise.part}
        | {
            where.page
            for where in promises.carried
            if where.key in {s.key for s in promises.sizes if s.part == promise.part}
        }
    )
    return pages_said(shown)


def pages_said(pages: Sequence[int]) -> str:
    """Return the pages of a part, ascending, as a narrow column says them: those that follow each other as a range, of many the first and
    the last."""
    runs = ([page for _, page in run] for _, run in groupby(enumerate(pages), key=lambda pair: pair[1] - pair[0]))
    said = ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs)
    return said if len(said) <= PAGES_LETTERS else f"{pages[0]} … {pages[-1]}"


def _fault(row: PrintedRow, promise: RowPromise, pages: str) -> str:
    """Return in words what a row says otherwise than promised, its part shown on these pages; empty when nothing."""
    _, name, board, counts, *sizes, page = row.cells
    size, inches = sorted(sizes, key=lambda words: not words.endswith("mm"))
    wanted = (promise.count, promise.spare, promise.mirrored)
    for words, right, expected in (
        (name, _whole(name) == _whole(promise.name), promise.name),
        (board, _whole(board) == _whole(promise.board), promise.board),
        (counts, _counts(counts) == wanted, " / ".join(map(str, wanted)) + " to cut, spare, mirrored"),
        (size, _sized(size, promise, 1.0, "mm", HALF_MM), f"{promise.width:.2f} × {promise.height:.2f} mm"),
        (inches, _sized(inches, promise, MM_PER_INCH, "in", HALF_IN), f"{promise.width:.2f} × {promise.height:.2f} mm"),
        (page, page == pages, f"page {pages}"),
    ):
        if not right:
            return f"“{words}”; promised is {expected}"
    return ""


def _counts(words: str) -> tuple[int, ...]:
    found = COUNT.fullmatch(words)
    return tuple(int(number or 0) for number in found.groups()) if found else ()


def _sized(words: str, promise: RowPromise, unit: float, name: str, half: float) -> bool:
    found = SIZE.fullmatch(words)
    if found is None or found[3] != name:
        return False
    wanted = (promise.width, promise.height) if unit == 1.0 else (_shown(promise.width), _shown(promise.height))
    return all(
        abs(float(text) - value / unit) <= half + 1e-6 for text, value in zip(found.groups()[:2], wanted, strict=True)
    )


def _shown(mm: float) -> float:
    """Return the tenths of a millimetre that are shown of a size: the inches beside them are theirs."""
    return floor(mm * 10.0 + 0.5 + 1e-5) / 10.0


def _rows(page: PageRead) -> Iterator[PrintedRow]:
    """Read the rows of every cut list on a page: under its headings, a row between each two level lines."""
    starts: list[float] = []
    for band in bands(page, TABLE_RULE):
        heads = [run for run in band.runs if _begins_a_heading(normal(run.text))]
        if {"part", "board", "cut", "page"} <= {normal(run.text).casefold() for run in heads}:
            starts = [band.left, *_starts(heads)]
            continue
        cells = _cells(band.runs, starts) if len(starts) == COLUMNS else ()
        if cells and 0 < len(cells[0]) <= LONGEST_LETTER:
            yield PrintedRow(page.number, cells)
        else:
            starts = []


def _begins_a_heading(words: str) -> bool:
    return any(heading.casefold().startswith(words.casefold()) for heading in HEADINGS)


def _starts(heads: list[TextRun]) -> list[float]:
    found: list[float] = []
    for x in sorted(run.x for run in heads):
        if not found or x - found[-1] > SAME_START:
            found.append(x)
    return found


def _cells(runs: tuple[TextRun, ...], starts: list[float]) -> tuple[str, ...]:
    """Return the words of each column, its lines joined from the top."""
    columns: list[list[TextRun]] = [[] for _ in starts]
    for run in sorted(runs, key=lambda r: (-r.y, r.x)):
        at = max((i for i, start in enumerate(starts) if start <= run.x + SAME_START), default=0)
        columns[at].append(run)
    return tuple(normal(" ".join(run.text for run in column)) for column in columns)


def _whole(name: str) -> str:
    """Return a name without the blanks at which, or between which, a narrow column may break it."""
    return "".join(normal(name).replace("_", " ").split())
