"""Tries mutants: each in a process of its own, which loads the changed module, makes the packs anew and proves them by what it promised."""

import ast
import os
import resource
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib.abc import Loader, MetaPathFinder
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_file_location
from pathlib import Path
from types import ModuleType
from typing import Any

from publisher.proof.identity import identify
from publisher.proof.reading import PageRead, read_file
from tests.proof.mutants.makings import Clean, Made, make
from tests.proof.mutants.sites import TOP, Mutant
from tests.proof.mutants.verdicts import slight, words_meet

MADE_ANEW = ("publisher.pages", "publisher.press", "publisher.pipeline")
SECONDS = 120  # of the processor: a mutant that takes longer never ends
MOST_TRIED = 3  # makings that run what was changed: with more a mutant takes minutes


@dataclass(frozen=True)
class Tried:
    """What became of a mutant. ``fate``: ``unused`` (nothing is made by what was changed), ``equivalent`` (the same bytes, or all
    pages draw the same), ``beside`` (the pages draw the same, but not what stands beside them), ``slight`` (things only moved a little, or
    only look somewhat other: see ``verdicts``), ``broke`` (it makes no pack), ``caught`` (``by`` this check), ``survived`` (``by``: in
    what, and whether words differ, or lines, or only the places of both)."""

    mutant: Mutant
    fate: str
    by: str = ""


def try_all(mutants: Iterable[Mutant], makings: tuple[Clean, ...], at_once: int) -> Iterator[Tried]:
    """Try mutants, some at once, each in a child process; what became of them comes in any order."""
    running: dict[int, tuple[Mutant, int]] = {}
    waiting = iter(mutants)
    while True:
        while len(running) < at_once and (mutant := next(waiting, None)) is not None:
            running.update([_started(mutant, makings)])
        if not running:
            return
        child, status = os.wait()
        mutant, pipe = running.pop(child)
        with os.fdopen(pipe, encoding="utf-8") as told:
            fate, _, by = told.read().partition("\n")
        yield Tried(mutant, fate, by) if fate else Tried(mutant, "broke", f"the process ended with {status}")


def _started(mutant: Mutant, makings: tuple[Clean, ...]) -> tuple[int, tuple[Mutant, int]]:
    """Start a child; return its number, and where it will tell."""
    read, write = os.pipe()
    sys.stdout.flush()
    child = os.fork()
    if child:
        os.close(write)
        return child, (mutant, read)
    try:
        resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
        os.dup2(os.open(os.devnull, os.O_WRONLY), 2)
        fate, by = _fate(mutant, makings)
        os.write(write, f"{fate}\n{by}".encode())
    finally:
        os._exit(0)


def _fate(mutant: Mutant, makings: tuple[Clean, ...]) -> tuple[str, str]:
    met = [clean for clean in makings if clean.meets(mutant.site)][:MOST_TRIED]
    fates: dict[str, str] = {}
    try:
        _made_anew(mutant)
        for clean in met:
            made = make(clean.worked, clean.wanted)
            if made.found:
                return "caught", made.found
            if made.packs and "/pages/" in mutant.site.path and made.placed() == clean.placed:
                continue  # it would be written and judged as it was
            if check := made.fault():
                return "caught", check
            fate, by = _compared(made, clean)
            if fate == "survived":
                return fate, by
            fates[fate] = by
    except Exception as trouble:
        return "broke", f"{type(trouble).__name__}: {trouble}"[:90]
    order = ("slight", "beside", "equivalent")
    return next(((fate, fates[fate]) for fate in order if fate in fates), ("equivalent" if met else "unused", ""))


def _compared(made: Made, clean: Clean) -> tuple[str, str]:
    """Return how files that proof lets through differ from those that are right."""
    if made.files == clean.made.files:
        return "equivalent", ""
    if not made.packs:
        return "survived", f"files: {clean.wanted}"
    fates = [_one_compared(made, clean, *pair) for pair in zip(made.files, clean.made.files, strict=False)]
    order = ("survived", "slight", "beside", "equivalent")
    return min(fates, key=lambda fate: order.index(fate[0]))


def _one_compared(made: Made, clean: Clean, mine: str, other: str) -> tuple[str, str]:
    data, before = made.files[mine], clean.made.files[other]
    compared = identify(data, before, str(clean.wanted))
    if not compared.pages and "the number of pages" not in " ".join(compared.beside):
        return ("beside" if compared.beside else "equivalent"), ", ".join(compared.beside)
    where = f"{clean.wanted}, pages {', '.join(map(str, compared.pages))}"
    verdict = slight(made.packs, clean.made.packs)
    if verdict and words_meet(data) <= words_meet(before):
        return "slight", f"{verdict}: {where}"
    return "survived", f"{_other(data, before)}: {where}"


def _other(data: bytes, clean: bytes) -> str:
    """Return what differs of the pages: their words, else their lines and areas (in whatever place), else the places alone."""
    ours, theirs = (read_file(one, "").pages for one in (data, clean))
    for what, told in (("words", _words), ("lines", _lines)):
        if [told(page) for page in ours] != [told(page) for page in theirs]:
            return what
    return "places"


def _words(page: PageRead) -> Counter[str]:
    return Counter(word for run in page.texts for word in run.text.split())


def _lines(page: PageRead) -> Counter[tuple[Any, ...]]:
    """Count the pieces of a page by their looks and size (to 0.1 mm)."""
    return Counter(
        (piece.width, piece.dash, piece.grey, piece.fill_grey, round(box.width, 1), round(box.height, 1))
        for piece in page.pieces
        for box in (piece.box,)
    )


def _made_anew(mutant: Mutant) -> None:
    """Take the rooms that make pages and files out of what is loaded: they are loaded again, one module of them changed."""
    for name in [name for name in sys.modules if name.startswith(MADE_ANEW)]:
        del sys.modules[name]
    sys.meta_path.insert(0, _Finder(mutant))


class _Finder(MetaPathFinder, Loader):
    """Finds the one changed module, and runs it in the place of the one on disk."""

    def __init__(self, mutant: Mutant) -> None:
        self.mutant = mutant

    def find_spec(self, fullname: str, path: Any = None, target: Any = None) -> ModuleSpec | None:
        """Return how the changed module is loaded; None for all others."""
        if fullname != self.mutant.site.module:
            return None
        file = TOP / self.mutant.site.path
        inside = [str(file.parent)] if file.name == "__init__.py" else None
        return spec_from_file_location(fullname, file, loader=self, submodule_search_locations=inside)

    def create_module(self, spec: ModuleSpec) -> ModuleType | None:
        """Leave that to Python."""
        return None

    def exec_module(self, module: ModuleType) -> None:
        """Run the changed module."""
        file = str(Path(TOP / self.mutant.site.path))
        exec(compile(ast.fix_missing_locations(self.mutant.tree), file, "exec"), module.__dict__)
