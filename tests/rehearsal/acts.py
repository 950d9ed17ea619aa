"""The acts of the steps that put something together: what is added in which order, read from the small words of their pictures.

In a picture of what is put together each label says how many of a part there are; what lies lowest on the page lies lowest on the table.
Sketches of other work, such as cutting, have larger words. A step that only tries is taken apart again: where a later one adds the same, it
counts for nothing.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist

from tests.rehearsal.outlines import Outline
from tests.rehearsal.pages import Line, ReadPage
from tests.rehearsal.turns import Curved

LABEL = re.compile(r"(\d+) × ([A-Z]\d*)")
WHOLE_LABEL = re.compile(r"^\d+ × [A-Z]\d*( +\d+ × [A-Z]\d*)*$")
TURN = re.compile(r"^(\d+(?:\.\d+)?)°$")
TIMES = re.compile(r"^(\d+) ×$")
SMALL = 3.0  # mm: the em of labels of what is put together is less, that of other bold words is more
HEADING = (4.4, 5.0)  # mm: the em of titles of steps and of the numbers of acts
SAME_ROW = 1.0  # mm
ABOVE = 4.0  # mm by which words of a picture stand above the number beside it
DRY = "dry"
ARROW_FAR = 25.0  # mm from degrees to the middle of their arrow
LEAST_ADDED = 8.0  # mm over all, of a contour of what is added
AS_LARGE = 0.4  # of what is added: the least that what is there is over all
BESIDE = 5.0  # mm by which what is there reaches out of the box of what is added


@dataclass(frozen=True, slots=True)
class Added:
    """Copies of a part with one label, and where that stands on the page (mm)."""

    count: int
    letter: str
    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Act:
    """One picture of what is put together: from the lowest up. ``turn``: degrees by which each goes on turned (None: not said),
    ``anticlockwise`` or not as the arrow beside the number runs (None: none was read);
    ``times``: how many are built so; ``page`` and ``step``: where, by the title of the step; ``on_thin``: it draws something thick, which
    is added, over something thin, which is there; ``letters``: the match letters beside it."""

    page: int
    step: str
    number: int
    added: tuple[Added, ...]
    turn: float | None = None
    times: int = 1
    trial: bool = False
    on_thin: bool = False
    anticlockwise: bool | None = None
    letters: tuple[str, ...] = ()

    @property
    def needs_standing(self) -> bool:
        """Say whether what is drawn thin must stand before: the one piece with a label is what is added."""
        return self.on_thin and sum(one.count for one in self.added) == 1

    @property
    def counts(self) -> Counter[str]:
        """Return how many of each letter it adds."""
        found: Counter[str] = Counter()
        for one in self.added:
            found[one.letter] += one.count * self.times
        return found


def acts_of(pages: Iterable[ReadPage]) -> tuple[Act, ...]:
    """Return the acts of all pages of steps in their order; trials that a later step does for good are left out."""
    acts = every_act(pages)
    kept: list[Act] = []
    for n, act in enumerate(acts):
        later: Counter[str] = Counter()
        for other in acts[n + 1 :]:
            later += other.counts if not other.trial else Counter()
        if not act.trial or act.counts - later:
            kept.append(act)
    return tuple(kept)


def every_act(pages: Iterable[ReadPage]) -> tuple[Act, ...]:
    """Return the acts of all pages of steps in their order, trials among them."""
    return tuple(act for page in pages if page.shows_steps for act in _of_page(page))


def misnumbered(pages: Iterable[ReadPage]) -> Iterator[str]:
    """Yield, in words, where the numbers of a step's pictures do not go on by one in the order in which they are read: row by row."""
    last = 0
    for page in pages:
        for title, lines in _steps(page) if page.shows_steps else ():
            numbers = [line for line in lines if _is_heading(line) and line.text.isdigit()]
            rows = sorted({round(line.y / SAME_ROW) for line in numbers}, reverse=True)
            level = {row: next(r for r in rows if r - row <= 1) for row in rows}
            read = [int(n.text) for n in sorted(numbers, key=lambda n: (-level[round(n.y / SAME_ROW)], n.x))]
            start = last if not title else 0
            if read and read != list(range(start + 1, start + len(read) + 1)):
                yield f"page {page.number}: the acts of “{title}” are numbered {', '.join(map(str, read))}"
            last = read[-1] if read else start


def _of_page(page: ReadPage) -> Iterator[Act]:
    for title, lines in _steps(page):
        yield from _of_step(page, title, lines)


def _steps(page: ReadPage) -> Iterator[tuple[str, list[Line]]]:
    """Yield the titles of a page's steps with their lines; "" of one that began on the page before."""
    titles = sorted((line for line in page.lines if _is_heading(line) and not line.text.isdigit()), key=lambda t: -t.y)
    titles = [line for line in titles if line.text != page.title]
    ends = [*(title.y + 3.0 for title in titles[1:]), 0.0][: len(titles)]
    before = titles[0].y + 3.0 if titles else 0.0
    if (carried := _between(page, page_top(page), before)) and titles:
        yield "", carried
    for title, end in zip(titles, ends, strict=True):
        yield title.text, _between(page, title.y + 3.0, end)
    if not titles:
        yield "", list(page.lines)


def page_top(page: ReadPage) -> float:
    """Return the height (mm) of a page's heading."""
    return max((line.y for line in page.lines if line.text == page.title), default=1e9) - 1.0


def _between(page: ReadPage, top: float, bottom: float) -> list[Line]:
    return [line for line in page.lines if bottom < line.y < top]


def _is_heading(line: Line) -> bool:
    return line.bold and HEADING[0] < line.em < HEADING[1]


def _of_step(page: ReadPage, title: str, lines: Sequence[Line]) -> Iterator[Act]:
    numbers = sorted(
        (line for line in lines if _is_heading(line) and line.text.isdigit()), key=lambda line: int(line.text)
    )
    small = [line for line in lines if line.bold and line.em < SMALL]
    high = max((line.y for line in lines), default=0.0) + 1.0
    low = min((line.y for line in lines), default=0.0)
    trial = DRY in title.split() or any(sign.dry and low < sign.y < high for sign in page.signs)
    groups: dict[int, list[Line]] = {}
    for line in small:
        groups.setdefault(_number_of(line.x, line.y, numbers), []).append(line)
    drawn = [one for one in page.outlines if low < one.middle[1] < high]
    for number in sorted(groups):
        own = [one for one in drawn if _is_in(one, number, numbers)]
        if (act := _act(page, title, number, groups[number], trial)) is not None:
            yield replace(act, on_thin=_over_thin(own))


def _is_in(one: Outline, number: int, numbers: Sequence[Line]) -> bool:
    """Say whether an outline is one of the picture beside a number."""
    under = not numbers or one.middle[1] < max(n.y for n in numbers) + ABOVE
    return under and _number_of(*one.middle, numbers) == number


def _over_thin(drawn: Sequence[Outline]) -> bool:
    """Say whether something thin, about as large as what is thick, lies farther down or up than all that is thick."""
    thick = [one for one in drawn if one.weight == "thick" and one.size > LEAST_ADDED]
    if not thick:
        return False
    whole = Outline(
        "thick",
        min(one.left for one in thick),
        min(one.bottom for one in thick),
        max(one.right for one in thick),
        max(one.top for one in thick),
    )
    largest = max(one.size for one in thick)
    thin = [one for one in drawn if one.weight == "thin" and one.size > AS_LARGE * largest]
    return any(not one.within(whole, BESIDE) for one in thin)


def _number_of(x: float, y: float, numbers: Sequence[Line]) -> int:
    """Return the number of the picture in which words stand; 0 where the step has but one."""
    above = [n for n in numbers if n.y + ABOVE > y]
    if not above:
        return int(numbers[0].text) if numbers else 0
    row = min(n.y for n in above)
    beside = [n for n in above if n.y < row + SAME_ROW and n.x <= x + 1.0]
    return int((max(beside, key=lambda n: n.x) if beside else min(above, key=lambda n: n.y)).text)


def _act(page: ReadPage, title: str, number: int, words: Sequence[Line], trial: bool) -> Act | None:
    added: list[Added] = []
    for line in words:
        if WHOLE_LABEL.match(line.text):
            added += [Added(int(n), letter, line.middle[0], line.middle[1]) for n, letter in LABEL.findall(line.text)]
    if not added:
        return None
    turns = [float(found[1]) for line in words if (found := TURN.match(line.text))]
    times = [int(found[1]) for line in words if (found := TIMES.match(line.text))]
    act = Act(page.number, title, number, tuple(sorted(added, key=lambda one: (one.y, one.x))))
    return replace(
        act,
        turn=turns[0] if turns else None,
        times=times[0] if times else 1,
        trial=trial,
        letters=tuple(line.text for line in words if len(line.text) == 1 and line.text.islower()),
        anticlockwise=_way_of([line for line in words if TURN.match(line.text)], page.curved),
    )


def _way_of(turns: Sequence[Line], curved: Sequence[Curved]) -> bool | None:
    """Return which way the arrow runs that stands beside degrees; None where none does."""
    near = [(dist(line.middle, (arrow.x, arrow.y)), arrow.anticlockwise) for line in turns[:1] for arrow in curved]
    far, way = min(near, default=(ARROW_FAR, None))
    return way if far < ARROW_FAR else None
