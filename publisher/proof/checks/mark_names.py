"""Names of match marks: the part, its two tiles by their numbers, and a letter, each name once; read beside its own mark."""

import re
from collections.abc import Iterator
from itertools import groupby
from math import hypot
from string import ascii_lowercase

import shapely

from publisher.basics import Check, Findings, Point, SeamPromise
from publisher.proof.checks.frame import about, judged, page_name
from publisher.proof.measuring import Case
from publisher.proof.reading import normal

NAME = re.compile(r"(\d+)-(\d+)·([a-z])")
Marks = list[tuple[Point, str]]


@judged(
    "proof/mark-name",
    "Match marks are named by their tiles",
    "tiles are found and laid together by these names: each begins with the letter of its part, says the numbers of the two tiles as "
    "their own labels do, row by row, and letters its marks from a; it stands nearer to its own mark than to any other",
    may_be_empty=True,
)
def mark_names(case: Case, check: Check[Case]) -> Findings:
    """Read the name of each match mark against the tiles that it ties, then where it stands."""
    seams = case.promises.seams
    hint = "name a match mark by its part, its two tiles and a letter, and set the name beside it"
    tiles = _numbers(case)
    letters = {(one.part, one.copy): one.letter for one in case.promises.outlines}
    for (part, copy), own in groupby(seams, key=lambda seam: (seam.part, seam.copy)):
        letter, marks = letters.get((part, copy), ""), list(own)
        called = (letter, f"{letter}.{copy} ")
        for seam in marks:
            if fault := _misnamed(tiles, seam, called):
                yield about(check, page_name(seam.pages[0]), f": the match mark “{seam.label}” {fault}", hint)
        if fault := _mislettered([normal(seam.label) for seam in marks]):
            yield about(check, f"part {part}, copy {copy}", f": {fault}", hint)
    for number in sorted({page for seam in seams for page in seam.pages}):
        here = [(at, seam.label) for seam in seams for on, at in zip(seam.pages, seam.at, strict=True) if on == number]
        for label, other in _astray(case, number, here):
            what = f": “{label}” stands nearer to the match mark “{other}” than to its own"
            yield about(check, page_name(number), what, hint)
    return len(seams)


def _numbers(case: Case) -> dict[tuple[str, int, int], set[int]]:
    """Return the numbers, row by row from 1, of the tiles of each copy on each page: (part, copy, page)."""
    cells: dict[tuple[str, int], list[tuple[int, int, int]]] = {}
    for one in case.promises.outlines:
        if one.row:
            cells.setdefault((one.part, one.copy), []).append((one.row, one.column, one.page))
    found: dict[tuple[str, int, int], set[int]] = {}
    for (part, copy), tiles in cells.items():
        for number, (_, _, page) in enumerate(sorted(tiles), 1):
            found.setdefault((part, copy, page), set()).add(number)
    return found


def _misnamed(tiles: dict[tuple[str, int, int], set[int]], seam: SeamPromise, called: tuple[str, ...]) -> str:
    """Return in words how a mark is named otherwise than its part, ``called`` so, and the tiles that it ties; empty when it is not."""
    label = normal(seam.label)
    found = next((found for name in called if (found := _after(name, label))), None)
    if found is None:
        return f"does not say of {called[0]} which tiles it ties, and which of their marks it is"
    for said, page in zip(found.groups(), seam.pages, strict=False):
        here = tiles.get((seam.part, seam.copy, page), set())
        if int(said) not in here:
            return f"names tile {said}; on page {page} is {', '.join(map(str, sorted(here))) or 'none'}"
    return "ties a tile to itself" if found[1] == found[2] else ""


def _after(name: str, label: str) -> re.Match[str] | None:
    """Return what a label says after the name of a part; None where it begins otherwise, or says something else."""
    return NAME.fullmatch(label.removeprefix(name)) if label.startswith(name) else None


def _mislettered(labels: list[str]) -> str:
    """Return in words how the marks of a copy are lettered otherwise than from a at each seam; empty when they are not."""
    for seam, own in groupby(sorted(labels), key=lambda label: label[:-1]):
        letters = "".join(label[-1:] for label in own)
        if letters != ascii_lowercase[: len(letters)]:
            return f"the marks of seam {seam.rstrip('·')} are lettered {letters}"
    return ""


def _astray(case: Case, page: int, marks: Marks) -> Iterator[tuple[str, str]]:
    """Yield each name that stands nearer to another mark of its page than to its own, and the other."""
    lines = case.lines(page)
    for at, label in marks:
        own = [line.area() for line in lines if normal(line.text) == normal(label)]
        others = [(x, y, name) for (x, y), name in marks if hypot(x - at[0], y - at[1]) > 0.0]
        for area in own[:1] if len(own) == 1 else ():
            away = shapely.distance(area, shapely.Point(at))
            near = [name for x, y, name in others if shapely.distance(area, shapely.Point(x, y)) < away]
            if near:
                yield label, near[0]
