"""Tries mutants: each in a process of its own, which loads the changed module, makes the packs anew and proves them by what it promised."""

import ast
import os
import resource
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from importlib.abc import Loader, MetaPathFinder
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_file_location
from pathlib import Path
from types import FrameType, ModuleType
from typing import Any

from publisher.basics import errors
from publisher.brief import read_brief
from publisher.pages import Pack
from publisher.pipeline import Worked, compose_packs, work
from publisher.press import write_pdf
from publisher.proof import prove
from publisher.proof.identity import identify
from publisher.proof.reading import PageRead, read_file
from tests.proof.mutants.sites import ROOMS, TOP, Mutant, Site, sites
from tests.proof.plants.finished import first_check

Ran = tuple[str, int]  # a file, and a line of it
MADE_ANEW = ("publisher.pages", "publisher.press", "publisher.pipeline")
SECONDS = 60  # of the processor: a mutant that takes longer never ends
DESIGNS = (("quay", "a4"), ("toll-house", "letter"), ("lock-stair", "a4"), ("bridge", "letter"))


@dataclass(frozen=True)
class Clean:
    """A design as it was worked out, its paper, its pack and its file as they are without any change; which lines of which files run
    while both are made; all that is placed, as text."""

    name: str
    paper: str
    worked: Worked
    pack: Pack
    data: bytes
    runs: frozenset[Ran]
    placed: str

    def meets(self, site: Site) -> bool:
        """Say whether this pack is made by what stands at a site."""
        return any((site.path, line) in self.runs for line in range(site.line, site.last + 1))


@dataclass(frozen=True)
class Tried:
    """What became of a mutant. ``fate``: ``unused`` (none of the packs is made by what was changed), ``equivalent`` (the same bytes, or all
    pages draw the same), ``beside`` (the pages draw the same, but not what stands beside them), ``broke`` (it makes no pack), ``caught``
    (``by`` this check), ``survived`` (``by``: in the pages of which design, and whether words differ, or lines, or only the places of
    both)."""

    mutant: Mutant
    fate: str
    by: str = ""


def clean_packs(names: Iterable[tuple[str, str]] = DESIGNS) -> tuple[Clean, ...]:
    """Return demos worked out, composed for a paper and written. Raises ValueError where proof refuses one as it is: it would
    refuse every mutant."""
    found = []
    for name, paper in names:
        worked = work(read_brief(TOP / "designs" / name))
        with _lines_that_run() as runs:
            (pack,), _ = compose_packs(worked, (paper,))
            data = write_pdf(pack)
        if wrong := errors(prove(data, pack.promises, name).findings):
            raise ValueError(f"{name} on {paper} is refused without any change: {wrong[0].message}")
        found.append(Clean(name, paper, worked, pack, data, frozenset(runs), _placed(pack)))
    loaded = _lines_of_modules()
    return tuple(replace(clean, runs=clean.runs | loaded) for clean in found)


@contextmanager
def _lines_that_run() -> Iterator[set[Ran]]:
    """Note each line that runs in the rooms that are changed: their modules are loaded anew, so that nothing is remembered."""
    runs: set[Ran] = set()
    ours = {str(TOP / room) for room in ROOMS}

    def trace(frame: FrameType, event: str, _: object) -> Any:
        file = frame.f_code.co_filename
        if not file.startswith(tuple(ours)):
            return None
        path = file.removeprefix(f"{TOP}/")

        def line(inner: FrameType, event: str, _: object) -> Any:
            runs.add((path, inner.f_lineno))
            return line

        runs.add((path, frame.f_lineno))
        return line

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
        tree = ast.parse((TOP / path).read_text("utf-8"))
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


def _placed(pack: Pack) -> str:
    """Return all that is placed and promised, as text: modules that were loaded anew make records of classes of their own."""
    return repr((pack.pages, pack.bookmarks, pack.promises))


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
    met = [clean for clean in packs if clean.meets(mutant.site)]
    fates = ["equivalent" if met else "unused"]
    try:
        compose, write = _made_anew(mutant)
        for clean in met:
            (pack,), found = compose(clean.worked, (clean.paper,))
            if wrong := errors(found):
                return "caught", wrong[0].check
            if "/pages/" in mutant.site.path and _placed(pack) == clean.placed:
                continue  # it would be written and judged as it was
            data = write(pack)
            if check := first_check(pack, data):
                return "caught", check
            fates.append(_compared(data, clean.data, clean.name))
            if fates[-1].startswith("survived"):
                return "survived", fates[-1].removeprefix("survived ")
    except Exception as trouble:
        return "broke", f"{type(trouble).__name__}: {trouble}"[:90]
    return ("beside" if "beside" in fates else fates[0]), ""


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
