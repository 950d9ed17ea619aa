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

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import Worked, compose_packs, work
from publisher.press import write_pdf
from publisher.proof import prove
from publisher.proof.identity import identify
from publisher.proof.reading import PageRead, read_file
from tests.proof.mutants.sites import TOP, Mutant

MADE_ANEW = ("publisher.pages", "publisher.press", "publisher.pipeline")
SECONDS = 60  # of the processor: a mutant that takes longer never ends
DESIGNS = (("quay", "a4"), ("toll-house", "letter"), ("lock-stair", "a4"), ("bridge", "letter"))


@dataclass(frozen=True)
class Clean:
    """A design as it was worked out, its paper, its pack and its file as they are without any change."""

    name: str
    paper: str
    worked: Worked
    pack: Pack
    data: bytes


@dataclass(frozen=True)
class Tried:
    """What became of a mutant. ``fate``: ``equivalent`` (the same bytes, or all pages draw the same), ``beside`` (the pages draw the same,
    but not what stands beside them), ``broke`` (it makes no pack), ``caught`` (``by`` these checks), ``survived`` (``by``: in the pages
    of which design, and whether words differ, or lines, or only the places of both)."""

    mutant: Mutant
    fate: str
    by: str = ""


def clean_packs(names: Iterable[tuple[str, str]] = DESIGNS) -> tuple[Clean, ...]:
    """Return demos worked out, composed for a paper and written. Raises ValueError where proof refuses one as it is: it would
    refuse every mutant."""
    found = []
    for name, paper in names:
        worked = work(read_brief(TOP / "designs" / name))
        (pack,), _ = compose_packs(worked, (paper,))
        data = write_pdf(pack)
        if wrong := errors(prove(data, pack.promises, name).findings):
            raise ValueError(f"{name} on {paper} is refused without any change: {wrong[0].message}")
        found.append(Clean(name, paper, worked, pack, data))
    return tuple(found)


def try_all(mutants: Iterable[Mutant], packs: tuple[Clean, ...], at_once: int) -> Iterator[Tried]:
    """Try mutants, some at once, each in a child process; what became of them comes in any order."""
    running: dict[int, tuple[Mutant, int]] = {}
    waiting = iter(mutants)
    while True:
        while len(running) < at_once and (mutant := next(waiting, None)) is not None:
            running.update([_started(mutant, packs)])
        if not running:
            return
        child, status = os.wait()
        mutant, pipe = running.pop(child)
        with os.fdopen(pipe, encoding="utf-8") as told:
            fate, _, by = told.read().partition("\n")
        yield Tried(mutant, fate, by) if fate else Tried(mutant, "broke", f"the process ended with {status}")


def _started(mutant: Mutant, packs: tuple[Clean, ...]) -> tuple[int, tuple[Mutant, int]]:
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
        fate, by = _fate(mutant, packs)
        os.write(write, f"{fate}\n{by}".encode())
    finally:
        os._exit(0)


def _fate(mutant: Mutant, packs: tuple[Clean, ...]) -> tuple[str, str]:
    fates = ["equivalent"]
    try:
        compose, write = _made_anew(mutant)
        for clean in packs:
            (pack,), found = compose(clean.worked, (clean.paper,))
            data = write(pack)
            judged = prove(data, pack.promises, "mutant.pdf")
            if wrong := errors((*found, *judged.findings)):
                return "caught", ", ".join(dict.fromkeys(finding.check for finding in wrong))
            fates.append(_compared(data, clean.data, clean.name))
            if fates[-1].startswith("survived"):
                return "survived", fates[-1].removeprefix("survived ")
    except Exception as trouble:
        return "broke", f"{type(trouble).__name__}: {trouble}"[:90]
    return ("beside" if "beside" in fates else "equivalent"), ""


def _compared(data: bytes, clean: bytes, name: str) -> str:
    if data == clean:
        return "equivalent"
    compared = identify(data, clean, name)
    if compared.pages or "the number of pages" in " ".join(compared.beside):
        return f"survived {_other(data, clean)}: {name}, pages {', '.join(map(str, compared.pages))}"
    return "beside" if compared.beside else "equivalent"


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
        for box in (piece.box(),)
    )


def _made_anew(mutant: Mutant) -> tuple[Any, Any]:
    """Load the rooms that make pages and files again, one module of them changed; return what composes and what writes."""
    for name in [name for name in sys.modules if name.startswith(MADE_ANEW)]:
        del sys.modules[name]
    sys.meta_path.insert(0, _Finder(mutant))
    from publisher.pipeline import compose_packs as compose
    from publisher.press import write_pdf as write

    return compose, write


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
