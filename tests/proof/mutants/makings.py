"""What mutants are tried with: files of the demos as they are made without any change, and which lines of the makers run for each."""

import ast
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import CodeType, FrameType
from typing import Any, Literal

from publisher.basics import FilePromises, errors
from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import Worked, work
from publisher.proof import judge_files, prove
from tests.proof.mutants.sites import ROOMS, TOP, Site, sites
from tests.proof.plants.finished import first_check

Ran = tuple[str, int]  # a file, and a line of it
Kind = Literal["pack", "phone", "test_page", "shop", "files"]
FEWEST_LINES = 3  # a wanted making that runs no more lines of its own than these is not kept
SMALL_DPI = 36  # of the pictures of pages that pages for a shop show


@dataclass(frozen=True)
class Wanted:
    """What is to be made of a demo, or of a spec by its folder: its pack on a paper, one of the small files beside it, or its cut ``files``
    and tables."""

    design: str
    paper: str
    kind: Kind = "pack"
    variant: str = ""

    def __str__(self) -> str:
        """Return how survivors name it."""
        return f"{self.design}{f' {self.variant}' if self.variant else ''} {self.paper} {self.kind}"


WANTED = (
    Wanted("quay", "a4"),
    Wanted("toll-house", "letter"),
    Wanted("lock-stair", "a4"),
    Wanted("bridge", "letter"),
    Wanted("quay", "a4", "files"),
    Wanted("toll-house", "a4", "phone"),
    Wanted("lock-stair", "letter", "test_page"),
    Wanted("quay", "a4", "shop"),
    Wanted("island", "a4"),
    Wanted("toll-house", "a4", variant="de"),
    Wanted("lock-stair", "a5"),
)
"""The first ones run most lines; a mutant is tried with the first of those that run its line."""


@dataclass(frozen=True)
class Made:
    """One making: the packs that it placed (none for ``files``), files by name, what they promise beside packs, errors that the makers
    found themselves."""

    packs: tuple[Pack, ...]
    files: dict[str, bytes]
    beside: FilePromises
    found: str = ""

    def fault(self) -> str:
        """Return the id of the first check that finds an error; '' when none does."""
        if self.found:
            return self.found
        for pack, (name, data) in zip(self.packs, self.files.items(), strict=True) if self.packs else ():
            if pack.purpose == "pack":
                check = first_check(pack, data)
            else:  # less is asked of small files
                check = next((one.check for one in errors(prove(data, pack.promises, name).findings)), "")
            if check:
                return check
        wrong = () if self.packs else errors(judge_files(self.files, self.beside, {}).findings)
        return wrong[0].check if wrong else ""

    def placed(self) -> str:
        """Return all that is placed and promised, as text: modules that were loaded anew make records of classes of their own."""
        return repr([(pack.pages, pack.bookmarks, pack.promises) for pack in self.packs])


@dataclass(frozen=True)
class Clean:
    """A demo as it was worked out, what was made of it without any change, and which lines of which files run meanwhile."""

    wanted: Wanted
    worked: Worked
    made: Made
    runs: frozenset[Ran]
    placed: str

    def meets(self, site: Site) -> bool:
        """Say whether this is made by what stands at a site."""
        return any((site.path, line) in self.runs for line in range(site.line, site.last + 1))


def make(worked: Worked, wanted: Wanted) -> Made:
    """Make what is wanted by the makers that are loaded now."""
    from publisher.pipeline import building, extras, promising
    from publisher.press import render_previews, write_pdf

    assert worked.needs is not None
    if wanted.kind == "files":
        files = {one.path: one.data for one in building.cut_files(worked.variant, worked.pieces, worked.needs)}
        return Made((), files, promising.promised_files(worked, ()))
    packs: tuple[Pack, ...]
    found: tuple[Any, ...] = ()
    if wanted.kind == "test_page":
        packs = extras.free_pages(worked, (wanted.paper,))
    else:
        packs, found = building.compose_packs(worked, (wanted.paper,))
    if wanted.kind == "phone":
        packs = extras.phone_copies(worked, packs)
    if wanted.kind == "shop":
        packs = extras.shop_pages(worked, [(packs[0], render_previews(write_pdf(packs[0]), SMALL_DPI))])
    wrong = [
        one for one in (*found, *(f for pack in packs for f in pack.findings)) if str(one.severity).endswith("error")
    ]
    files = {f"{wanted.kind} {n}.pdf": write_pdf(pack) for n, pack in enumerate(packs, 1)} if not wrong else {}
    return Made(packs, files, FilePromises(), wrong[0].check if wrong else "")


def clean_makings(every: tuple[Wanted, ...] = WANTED) -> tuple[Clean, ...]:
    """Return what is made without any change. Raises ValueError where one is refused as it is: it would refuse every mutant."""
    found: list[Clean] = []
    loaded = _lines_of_modules()
    known: set[Ran] = set()
    for wanted in every:
        worked = _worked(wanted.design, wanted.variant)
        with _lines_that_run() as runs:
            made = make(worked, wanted)
        if fault := made.fault():
            raise ValueError(f"{wanted} is refused without any change: {fault}")
        if len(runs - known) > FEWEST_LINES:
            found.append(Clean(wanted, worked, made, frozenset(runs) | loaded, made.placed()))
        known |= runs
    return tuple(found)


@cache
def _worked(design: str, variant: str) -> Worked:
    return work(read_brief(TOP / design if "/" in design else TOP / "designs" / design), variant)


@contextmanager
def _lines_that_run() -> Iterator[set[Ran]]:
    """Note each line that runs in the rooms that are changed. A function of which all lines were seen is followed no more."""
    runs: set[Ran] = set()
    ours = tuple(str(TOP / room) for room in ROOMS)
    left: dict[CodeType, set[int]] = {}

    def trace(frame: FrameType, event: str, _: object) -> Callable[..., Any] | None:
        code = frame.f_code
        if not code.co_filename.startswith(ours):
            return None
        if code not in left:
            left[code] = {line for _, _, line in code.co_lines() if line} - {frame.f_lineno}
        waiting = left[code]
        path = code.co_filename.removeprefix(f"{TOP}/")
        runs.add((path, frame.f_lineno))

        def line(inner: FrameType, event: str, _: object) -> Callable[..., Any] | None:
            runs.add((path, inner.f_lineno))
            waiting.discard(inner.f_lineno)
            return line if waiting else None

        return line if waiting else None

    before = sys.gettrace()
    sys.settrace(trace)
    try:
        yield runs
    finally:
        sys.settrace(before)


def _lines_of_modules() -> frozenset[Ran]:
    """Return the lines of all that runs while a module is loaded: all that is in no function."""
    found: set[Ran] = set()
    for path in {site.path for site in sites()}:
        tree = ast.parse((TOP / Path(path)).read_text("utf-8"))
        for node in ast.walk(tree):
            for inside in node.body if isinstance(node, ast.Module | ast.ClassDef) else ():
                if not isinstance(inside, ast.FunctionDef | ast.ClassDef):
                    found.update(
                        (path, line) for line in range(inside.lineno, (inside.end_lineno or inside.lineno) + 1)
                    )
                elif isinstance(inside, ast.FunctionDef):
                    first = (*inside.args.defaults, *inside.args.kw_defaults, *inside.decorator_list)
                    found.update((path, once.lineno) for once in first if once)
    return frozenset(found)
