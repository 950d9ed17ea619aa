"""A design at many values of one size or two: what its needs leave, what boards, sheets and pages it takes, and where that jumps.

Comes in: a brief, a variant, ranges of sizes. Goes out: a ``Sweep``: a row for each value, the jumps between them, the best value.
Never: stores a layout, draws a page, changes the design.

What does not change between two values is not worked out anew between them: a layout that holds at a greater value is held against
the smaller ones, and jumps are halved one quantity at a time.
"""

from __future__ import annotations

import signal
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from contextlib import closing
from dataclasses import dataclass, field, replace
from itertools import product
from math import ceil, floor, isfinite, log10
from multiprocessing import get_context
from queue import SimpleQueue
from typing import Literal

from publisher.basics import Finding, Point, Refusal, errors, record
from publisher.brief import Brief, Inputs, brief_of
from publisher.design import STANDARD, Design, Kind, SizeSpan, size_span, two_ranges, work_out
from publisher.joints import NEED_NOT_MET, BoardRange, Joined, margin_of
from publisher.material import CountKey, SheetCount, count_layouts
from publisher.pages import PageCount
from publisher.pipeline import Made, count_papers, join_made, make_at
from publisher.press import PlotCurve, PlotPanel, SweepPlot

VALUES_OF_ONE, VALUES_OF_TWO = 41, 9  # values of each size that are tried
FINEST: dict[Kind, float] = {"length": 0.01, "angle": 0.01, "count": 1.0}  # mm, degrees: how near a jump is found
FINEST_SHARE = 1e-5  # of the range, for plain numbers
TO_SPARE = 0.5  # mm or degrees that a good value leaves to each need, but for needs that ask one exact value
CLOSE = 1e-6
MOST_HALVINGS = (
    60  # of one quantity between two neighbouring values: what jumps more often is said to lie between two values
)

Told = Callable[[int, int], None]


@record
class VariedNeed:
    """A need at one value: its fact, by how much it is kept (negative: missed; inf: open), and whether it asks one exact value."""

    fact: str
    kind: Kind
    value: float
    margin: float
    exact: bool

    @property
    def met(self) -> bool:
        """Whether it is met."""
        return self.margin >= -CLOSE

    @property
    def roomy(self) -> bool:
        """Whether it is met with something to spare, as far as it can be."""
        spare = TO_SPARE if self.kind in ("length", "angle") and not self.exact else 0.0
        return self.margin >= spare - CLOSE


@record
class VariedSheet:
    """A board on one sheet size: the sheets that the whole list takes (0: a part fits none), and copies of each part alone."""

    board: str
    sheet: str
    sheets: int
    copies: tuple[tuple[str, int], ...]  # letter, copies on one sheet


@record
class SweepRow:
    """The design at one value of each size that is varied. ``why`` says what stops it there, "" when nothing does; what could still
    be worked out is there all the same."""

    values: tuple[float, ...]
    why: str = ""
    needs: tuple[VariedNeed, ...] = ()
    sheets: tuple[VariedSheet, ...] = ()
    papers: tuple[PageCount, ...] = ()
    print_scale: tuple[float, float] = (0.0, 0.0)  # least, most; 1 = true size
    boards: tuple[BoardRange, ...] = ()

    @property
    def met(self) -> bool:
        """Whether it can be built and every need is met."""
        return not self.why and all(need.met for need in self.needs)

    @property
    def roomy(self) -> bool:
        """Whether it can be built and every need is met with something to spare."""
        return not self.why and all(need.roomy for need in self.needs)


JumpKind = Literal["built", "need", "sheets", "copies", "pages", "tiled"]


@record
class Jump:
    """Where something changes: it is ``before`` up to and with the value ``last``, and ``after`` from ``first`` on.

    ``size`` is the one that runs, ``beside`` the value of the other one. ``subject``: the fact, the sheet, the part on the sheet or
    the paper. Numbers are said as numbers, needs as ``met`` or ``missed``, whether
    it can be built as ``yes`` or ``no``, tiled parts by their letters.
    """

    kind: JumpKind
    subject: str
    size: str
    last: float
    first: float
    before: str
    after: str
    beside: tuple[tuple[str, float], ...] = ()


@record
class Missed:
    """A need that no value of the range meets: the value that comes nearest, and by how much it misses there."""

    fact: str
    kind: Kind
    values: tuple[float, ...]
    short: float


@record
class Sweep:
    """A design at many values. ``whole`` is False when it was stopped: ``rows`` are then those that were finished.

    ``best``: of the values that meet every need with something to spare, that with the fewest sheets, then the fewest pages, then
    the one nearest to the size as it stands; None when there is none.
    """

    slug: str
    variant: str
    spans: tuple[SizeSpan, ...]
    rows: tuple[SweepRow, ...]
    jumps: tuple[Jump, ...] = ()
    best: SweepRow | None = None
    missed: tuple[Missed, ...] = ()
    whole: bool = True


Trait = tuple[str, ...]
"""What may jump: its kind, then what it is about."""

TraitValue = bool | int | str | None


@record
class Looked:
    """A row with what its neighbours may use: the layouts of its counts, and the values of all that may jump."""

    row: SweepRow
    counts: tuple[SheetCount, ...] = ()
    traits: tuple[tuple[Trait, TraitValue], ...] = ()


@record
class Refined:
    """What was found between two neighbouring values: jumps, and rows at those that may be the best value."""

    jumps: tuple[Jump, ...]
    rows: tuple[SweepRow, ...]


def vary(
    brief: Brief,
    variant: str,
    ranges: tuple[str, ...],
    values: int | None = None,
    workers: int = 1,
    told: Told | None = None,
) -> Sweep:
    """Try one size or two over their ranges ("reach = 80 mm to 120 mm").

    ``values``: how many of each range; 41 of one, 9 each of two when not given. Jumps are looked for along the first range, at each
    value of the second. ``workers``: processes that share the work. ``told`` hears how much of the work is done, of how much. A
    KeyboardInterrupt ends it: what is finished is returned. Raises Refusal for ranges that cannot be used, and when the design
    cannot be read or has a size without a value.
    """
    design = work_out(brief, variant)
    if wrong := errors((*brief.findings, *design.findings)):
        raise Refusal(*wrong)
    spans = two_ranges(tuple(size_span(text, design.sizes) for text in ranges))
    number = values or (VALUES_OF_ONE if len(spans) == 1 else VALUES_OF_TWO)
    desk = _Desk(_Job(brief.inputs, variant, spans), tuple(grid_of(span, number) for span in spans), told)
    whole = desk.run(workers)
    rows = tuple(desk.done[at].row for at in sorted(desk.done, key=lambda at: at[::-1]))
    found = [desk.refined[at] for at in sorted(desk.refined, key=lambda at: at[::-1])]
    every = (*rows, *(row for one in found for row in one.rows))
    jumps = tuple(jump for one in found for jump in one.jumps)
    return Sweep(brief.slug, variant, spans, rows, jumps, best_of(every, spans), missed_of(rows), whole)


def grid_of(span: SizeSpan, number: int) -> tuple[float, ...]:
    """Return so many values from one end of a range to the other, as sizes are written: the ends as given, between them to 0.01 mm
    or degree; whole ones where only these are tried."""
    unit, reach = finest(span), span.most - span.least
    inner = (round((span.least + reach * k / (number - 1)) / unit) * unit for k in range(1, number - 1))
    tidy = dict.fromkeys(round(value, 9) for value in inner)
    return (span.least, *(value for value in tidy if span.least < value < span.most), span.most)


def finest(span: SizeSpan) -> float:
    """Return how near jumps of a size are found, in its unit."""
    if span.whole:
        return 1.0
    return FINEST.get(span.size.kind, (span.most - span.least) * FINEST_SHARE)


def best_of(rows: Iterable[SweepRow], spans: tuple[SizeSpan, ...]) -> SweepRow | None:
    """Return the best row: see ``Sweep``."""

    def rank(row: SweepRow) -> tuple[float, ...]:
        away = sum(abs(v - s.size.value) / (s.most - s.least) for v, s in zip(row.values, spans, strict=True))
        return (sheets_of(row), pages_of(row), round(away, 9), *row.values)

    return min((row for row in rows if row.roomy), key=rank, default=None)


def sheets_of(row: SweepRow) -> float:
    """Return how many sheets are bought: of each board those of the first size that every part fits; inf where none does."""
    boards = dict.fromkeys(one.board for one in row.sheets)
    return sum(
        next((float(one.sheets) for one in row.sheets if one.board == board and one.sheets), float("inf"))
        for board in boards
    )


def pages_of(row: SweepRow) -> float:
    """Return the template and tile pages of the first paper; inf where no pack holds them."""
    pages = row.papers[0].pages if row.papers else None
    return float("inf") if pages is None else float(pages)


def missed_of(rows: tuple[SweepRow, ...]) -> tuple[Missed, ...]:
    """Return the needs that no row meets, each with the row that comes nearest."""
    built = [row for row in rows if row.needs]
    found: list[Missed] = []
    for at in range(min((len(row.needs) for row in built), default=0)):
        near = max(built, key=lambda row: row.needs[at].margin)
        need = near.needs[at]
        if not need.met:
            found.append(Missed(need.fact, need.kind, near.values, -need.margin))
    return tuple(found)


def plot_of(sweep: Sweep) -> SweepPlot:
    """Return the plot of a sweep of one size: what needs leave to spare, copies, sheets and pages, each jump where it is.

    Raises ValueError for a sweep of two sizes, or of fewer than two rows.
    """
    if len(sweep.spans) != 1 or len(sweep.rows) < 2:
        raise ValueError("a plot shows one size, at two values or more")
    (span,) = sweep.spans
    needs = {need.fact: need for row in sweep.rows for need in row.needs if need.kind == "length" and not need.exact}
    spare = {
        fact: [(r.values[0], n.margin) for r in sweep.rows for n in r.needs if n.fact == fact and isfinite(n.margin)]
        for fact in needs
    }
    copies: dict[str, list[Point]] = {}
    sheets: dict[str, list[Point]] = {}
    pages: dict[str, list[Point]] = {}
    for row in sweep.rows:
        for one in row.sheets:
            if one.sheets:
                sheets.setdefault(one.sheet, []).append((row.values[0], float(one.sheets)))
            for letter, number in one.copies:
                copies.setdefault(f"{letter} on {one.sheet}", []).append((row.values[0], float(number)))
        for paper in row.papers:
            if paper.pages is not None:
                pages.setdefault(paper.paper, []).append((row.values[0], float(paper.pages)))
    for kind, curves in (("copies", copies), ("sheets", sheets), ("pages", pages)):
        for jump in sweep.jumps:
            if jump.kind == kind and jump.subject in curves and jump.before.isdecimal() and jump.after.isdecimal():
                curves[jump.subject] += [(jump.last, float(jump.before)), (jump.first, float(jump.after))]
    shown = (
        _panel("to spare of each need, mm (dotted: 0.5 mm)", spare, TO_SPARE),
        _panel("copies on one sheet, of each part alone", copies),
        _panel("sheets for all parts", sheets),
        _panel("template and tile pages", pages),
    )
    marks = [(span.size.value, "as it stands")] if span.least <= span.size.value <= span.most else []
    if sweep.best is not None and abs(sweep.best.values[0] - span.size.value) > finest(span):
        marks.append((sweep.best.values[0], "best"))
    unit = {"length": ", mm", "angle": ", degrees"}.get(span.size.kind, "")
    title = f"{sweep.slug}, {sweep.variant or STANDARD}: {span.size.name}"
    ticks = _ticks(span.least, span.most, 8.0)
    panels = tuple(panel for panel in shown if panel is not None)
    return SweepPlot(title, f"{span.size.name}{unit}", span.least, span.most, ticks, panels, tuple(marks))


def _panel(title: str, curves: dict[str, list[Point]], line: float | None = None) -> PlotPanel | None:
    """Return a panel that holds the curves from zero, or from below it; None without a point."""
    values = [y for points in curves.values() for _, y in points]
    if not values:
        return None
    low, high = min(0.0, *values), max(1.0, *values) * 1.08
    drawn = tuple(PlotCurve(name, (tuple(sorted(points)),)) for name, points in curves.items() if points)
    return PlotPanel(title, low * 1.08, high, _ticks(low, high, least=0.0 if line else 1.0), drawn, line)


def _ticks(low: float, high: float, about: float = 5.0, least: float = 0.0) -> tuple[tuple[float, str], ...]:
    """Return round values of a scale with their words: about so many, no nearer to each other than ``least``."""
    rough = max((high - low) / about, least)
    power = 10.0 ** floor(log10(rough) + 1e-9)
    step = next(power * s for s in (1.0, 2.0, 5.0, 10.0) if power * s >= rough - 1e-9)
    first = ceil(low / step - 1e-9)
    return tuple((k * step, f"{k * step:g}") for k in range(first, floor(high / step + 1e-9) + 1))


@dataclass(slots=True)
class _Job:
    """What a process must know to work at any value; the brief is made of its inputs when it is first needed."""

    inputs: Inputs
    variant: str
    spans: tuple[SizeSpan, ...]
    _brief: Brief | None = field(default=None, init=False)

    def __reduce__(self) -> tuple[type[_Job], tuple[Inputs, str, tuple[SizeSpan, ...]]]:
        """Hand only the inputs to another process."""
        return (_Job, (self.inputs, self.variant, self.spans))

    def make(self, values: tuple[float, ...]) -> Made:
        """Return the parts at these values."""
        if self._brief is None:
            self._brief = brief_of(self.inputs)
        tried = tuple(
            replace(span.size, value=v, kind=_kind(span, v)) for span, v in zip(self.spans, values, strict=True)
        )
        return make_at(self._brief, self.variant, tried)

    def look(self, values: tuple[float, ...], sides: tuple[Looked, ...] = ()) -> Looked:
        """Work out everything at these values. ``sides``: what is known at a smaller and a greater value; where both take the same
        pages, so does what lies between them."""
        made = self.make(values)
        if made.design is None or errors(made.findings):
            why = _why(made.findings)
            return Looked(SweepRow(values, why), (), ((("built",), False),))
        joined = join_made(made.design, made)
        known = tuple(one for side in sides for one in side.counts)
        papers = {side.row.papers for side in sides}
        counts, found = count_layouts(made.design, made.pieces, known)
        row = SweepRow(
            values,
            _why((*made.findings, *joined.findings, *found)),
            _needs(made.design, joined),
            tuple(_sheets(counts)),
            papers.pop() if len(sides) > 1 and len(papers) == 1 else count_papers(made.design, made, joined),
            (joined.budget.least, joined.budget.most),
            joined.boards,
        )
        return Looked(row, counts, (*_traits(row), *_count_traits(counts)))

    def between(self, low: Looked, high: Looked) -> Refined:
        """Find the jumps between two neighbouring values of the first size."""
        return _Between(self, low, high).refined()


def _kind(span: SizeSpan, value: float) -> Kind:
    kind = span.size.kind
    return kind if kind != "count" or value == round(value) else "number"


def _why(findings: Iterable[Finding]) -> str:
    """Return what stops a design, but for needs, which have columns of their own."""
    wrong = dict.fromkeys(f.message for f in errors(findings) if f.check != NEED_NOT_MET.id)
    return "; ".join(wrong)


def _needs(design: Design, joined: Joined) -> tuple[VariedNeed, ...]:
    found = []
    for need in design.needs:
        fact = joined.fact(need.fact)
        if fact is not None:
            exact = need.at_least is not None and need.at_most is not None and need.at_most - need.at_least < CLOSE
            kind = fact.kind if fact.kind in ("mass", "force") else need.kind
            found.append(VariedNeed(need.fact, kind, fact.value, margin_of(need, fact), exact))
    return tuple(found)


def _sheets(counts: tuple[SheetCount, ...]) -> Iterator[VariedSheet]:
    """Yield each board and sheet size; a list of which a part fits no sheet takes none."""
    for board, label in dict.fromkeys((one.board, one.sheet.label) for one in counts):
        own = [one for one in counts if (one.board, one.sheet.label) == (board, label)]
        copies = tuple((one.letter, one.number) for one in own if one.part)
        listed = next((one.number for one in own if not one.part), 0)
        yield VariedSheet(board, label, listed if all(number for _, number in copies) else 0, copies)


def _traits(row: SweepRow) -> Iterator[tuple[Trait, TraitValue]]:
    """Yield what may jump, but for counts of layouts."""
    yield ("built",), not row.why
    for at, need in enumerate(row.needs):
        yield ("need", str(at), need.fact), need.met
        yield ("roomy", str(at), need.fact), need.roomy
    for paper in row.papers:
        yield ("pages", paper.paper), paper.pages
        yield ("tiled", paper.paper), ", ".join(paper.tiled)


def _count_traits(counts: Iterable[SheetCount]) -> Iterator[tuple[Trait, TraitValue]]:
    for one in counts:
        yield ("copies" if one.part else "sheets", *one.key), one.number


class _Between:
    """Halves the way between two neighbouring values, for each quantity that differs there by itself."""

    def __init__(self, job: _Job, low: Looked, high: Looked) -> None:
        """Start with what is known at both ends."""
        self.job, self.low, self.high = job, low, high
        self.beside = low.row.values[1:]
        self.unit = finest(job.spans[0])
        self.looked: dict[tuple[str, float], Looked] = {}
        self.made: dict[float, Made] = {}

    def refined(self) -> Refined:
        """Return all jumps, and rows at both sides of those that may make a value the best."""
        before, after = dict(self.low.traits), dict(self.high.traits)
        jumps: list[Jump] = []
        edges: set[float] = set()
        for trait in dict.fromkeys((*before, *after)):
            if trait not in before or trait not in after or before[trait] == after[trait]:
                continue
            for last, first, was, becomes in self.steps(trait):
                if trait[0] != "roomy":
                    jumps.append(self.jump(trait, last, first, was, becomes))
                if trait[0] != "copies":
                    edges |= {last, first}
        sides = (self.low, self.high)
        inner = sorted(edges - {self.low.row.values[0], self.high.row.values[0]})
        rows = tuple(self.job.look((value, *self.beside), sides).row for value in inner)
        return Refined(tuple(sorted(jumps, key=lambda jump: (jump.last, jump.kind))), rows)

    def steps(self, trait: Trait) -> Iterator[tuple[float, float, TraitValue, TraitValue]]:
        """Yield each jump of one quantity, from below: the last value before, the first after, what it is on both sides.

        Counts are halved at the turns of known layouts; what is then the first value after a jump is searched in full, so that
        no jump is said where another turn still gives as many. From there on all is searched in full.
        """
        low, left, near = self.low, MOST_HALVINGS, trait[0] == "copies"
        end = dict(self.high.traits).get(trait)
        while (was := dict(low.traits).get(trait)) != end:
            before, after = low, self.high
            while (middle := self.middle(before, after)) is not None and left > 0:
                left -= 1
                here = self.at(middle, trait, before, after, near)
                before, after = (here, after) if dict(here.traits).get(trait) == was else (before, here)
            if near and after is not self.high and left > 0:
                left -= 1
                after = self.at(after.row.values[0], trait, before, self.high, near=False)
            becomes = dict(after.traits).get(trait)
            if becomes == was:
                near = False
            else:
                yield before.row.values[0], after.row.values[0], was, becomes
            low = after

    def middle(self, low: Looked, high: Looked) -> float | None:
        """Return the value midway between two; None where they are as near as jumps are found."""
        a, b = low.row.values[0], high.row.values[0]
        middle = round(round((a + b) / 2.0 / self.unit) * self.unit, 9)
        return middle if b - a > 1.5 * self.unit and a < middle < b else None

    def at(self, value: float, trait: Trait, low: Looked, high: Looked, near: bool = True) -> Looked:
        """Work one quantity out at a value, and what comes with it."""
        values = (value, *self.beside)
        if value not in self.made:
            self.made[value] = self.job.make(values)
        made = self.made[value]
        if made.design is None or errors(made.findings):
            return Looked(SweepRow(values), (), ((("built",), False),))
        kind = trait[0]
        if kind in ("copies", "sheets"):
            known = (*low.counts, *high.counts)
            counts, _ = count_layouts(made.design, made.pieces, known, {_key(trait)}, near)
            return Looked(SweepRow(values), counts, tuple(_count_traits(counts)))
        papers = kind in ("pages", "tiled")
        if (held := self.looked.get((str(papers), value))) is None:
            joined = join_made(made.design, made)
            _, found = count_layouts(made.design, made.pieces, only=())
            row = SweepRow(values, _why((*made.findings, *joined.findings, *found)), _needs(made.design, joined))
            if papers:
                row = replace(row, papers=count_papers(made.design, made, joined))
            held = self.looked[str(papers), value] = Looked(row, (), tuple(_traits(row)))
        return held

    def jump(self, trait: Trait, last: float, first: float, was: TraitValue, becomes: TraitValue) -> Jump:
        """Return a jump in words that a table can hold."""
        kind, *about = trait
        subject = about[-1] if about else ""
        if kind == "copies":
            letter = next(one.letter for one in (*self.low.counts, *self.high.counts) if one.part == about[2])
            subject = f"{letter} on {about[1]}"
        elif kind == "sheets":
            subject = about[1]
        beside = tuple(zip((span.size.name for span in self.job.spans[1:]), self.beside, strict=True))
        name = self.job.spans[0].size.name
        return Jump(_JUMPS[kind], subject, name, last, first, _said(kind, was), _said(kind, becomes), beside)


_JUMPS: dict[str, JumpKind] = {
    "built": "built", "need": "need", "sheets": "sheets", "copies": "copies", "pages": "pages", "tiled": "tiled",
}  # fmt: skip


_WORDS = {"need": ("missed", "met"), "built": ("no", "yes")}


def _key(trait: Trait) -> CountKey:
    _, board, sheet, part = trait
    return (board, sheet, part)


def _said(kind: str, seen: TraitValue) -> str:
    if kind in _WORDS:
        return _WORDS[kind][bool(seen)]
    return "" if seen is None else str(seen)


At = tuple[int, ...]


class _Desk:
    """Hands out the work, coarse values first, so that finer ones find what is known on both sides; keeps what comes back."""

    def __init__(self, job: _Job, grids: tuple[tuple[float, ...], ...], told: Told | None) -> None:
        """Start with the ends of every run along the first size."""
        self.job, self.grids, self.told = job, grids, told
        self.done: dict[At, Looked] = {}
        self.refined: dict[At, Refined] = {}
        self.rows: deque[tuple[At, tuple[Looked, ...]]] = deque()
        self.gaps: deque[tuple[At, At]] = deque()  # neighbours, between which something jumps
        last = len(grids[0]) - 1
        self.runs = tuple(product(*(range(len(grid)) for grid in grids[1:])))
        for run in self.runs:
            self.rows += [((0, *run), ()), ((last, *run), ())]
        self.open = {((0, *run), (last, *run)) for run in self.runs}  # stretches whose ends are not both done
        self.alike = 0  # neighbours between which nothing jumps

    def run(self, workers: int) -> bool:
        """Do all the work; False when it was stopped."""
        try:
            if workers > 1:
                self._share(workers)
            else:
                while task := self._next():
                    self._keep(task, _do(self.job, task))
        except KeyboardInterrupt:
            return False
        return True

    def _share(self, workers: int) -> None:
        """Do the work in processes of its own, a little more handed out than is being done."""
        back: SimpleQueue[tuple[_Task, _Result | BaseException]] = SimpleQueue()
        out = 0
        # a process started anew holds nothing of this one: forked ones would share threads of libraries
        with closing(get_context("spawn").Pool(workers, _begin, (self.job,))) as pool:
            try:
                while True:
                    while out < workers + 1 and (task := self._next()):
                        pool.apply_async(_do_begun, (task,), callback=_put(back, task), error_callback=_put(back, task))
                        out += 1
                    if not out:
                        return
                    task, result = back.get()
                    out -= 1
                    if isinstance(result, BaseException):
                        raise result
                    self._keep(task, result)
            finally:
                pool.terminate()

    def _next(self) -> _Task | None:
        """Return what is to be done next: rows before jumps."""
        if self.rows:
            at, sides = self.rows.popleft()
            return _LookTask(at, tuple(grid[k] for grid, k in zip(self.grids, at, strict=True)), sides)
        if self.gaps:
            low, high = self.gaps.popleft()
            return _GapTask(low, self.done[low], self.done[high])
        return None

    def _keep(self, task: _Task, result: _Result) -> None:
        """Keep a result, and find what can be done now."""
        if isinstance(result, Refined):
            self.refined[task.at] = result
        else:
            self.done[task.at] = result
            for low, high in [ends for ends in self.open if ends[0] in self.done and ends[1] in self.done]:
                self.open.remove((low, high))
                self._divide(low, high)
        if self.told is not None:
            gaps = (len(self.grids[0]) - 1) * len(self.runs)
            self.told(len(self.done) + len(self.refined) + self.alike, gaps + (gaps + len(self.runs)))

    def _divide(self, low: At, high: At) -> None:
        """Ask for the middle of a stretch; of neighbours, for what jumps between them."""
        one, other = self.done[low], self.done[high]
        if high[0] - low[0] > 1:
            middle = ((low[0] + high[0]) // 2, *low[1:])
            self.rows.append((middle, (one, other)))
            self.open |= {(low, middle), (middle, high)}
        elif one.traits == other.traits:
            self.alike += 1
        else:
            self.gaps.append((low, high))


@record
class _LookTask:
    """Values to work out, with what is known on both sides."""

    at: At
    values: tuple[float, ...]
    sides: tuple[Looked, ...]


@record
class _GapTask:
    """Two neighbouring values, between which something jumps."""

    at: At
    low: Looked
    high: Looked


_Task = _LookTask | _GapTask
_Result = Looked | Refined
_BEGUN: list[_Job] = []  # of a process that shares the work: its job


def _begin(job: _Job) -> None:
    """Start a process that shares the work. Ctrl-C is for the first process alone: it ends the others."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _BEGUN[:] = [job]


def _do_begun(task: _Task) -> _Result:
    return _do(_BEGUN[0], task)


def _do(job: _Job, task: _Task) -> _Result:
    if isinstance(task, _GapTask):
        return job.between(task.low, task.high)
    return job.look(task.values, task.sides)


def _put(
    back: SimpleQueue[tuple[_Task, _Result | BaseException]], task: _Task
) -> Callable[[_Result | BaseException], None]:
    """Return what puts a result into the queue beside its task."""
    return lambda result: back.put((task, result))
