"""Counts of layouts along the size that runs: what is known at some values, and the walk from jump to jump between them.

A count is a staircase. From the side that gives more, the last value that still gives as much is found by halving, with layouts made
as the known one was; the next value is searched in full, so that no jump is said where another layout still gives as much. Most
values then need no full search: what lies between two that give the same gives that too, where a layout that holds shows it.
"""

from bisect import insort
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from publisher.basics import Finding, errors
from publisher.material import CountKey, SheetCount, count_layouts
from publisher.pipeline import Made
from publisher.sweep.model import Jump, KnownCount
from publisher.sweep.trying import Trial
from publisher.sweep.values import finest, midway

MOST_HALVINGS = 60  # on the way to one jump: what jumps more often is said to lie between two values


class CountWalk:
    """What is known of all counts along the first size; ``beside`` are the values of the other one."""

    def __init__(self, trial: Trial, beside: tuple[float, ...], known: Iterable[KnownCount] = ()) -> None:
        """Start with what is known."""
        self.trial, self.beside, self.unit = trial, beside, finest(trial.spans[0])
        self.marks: dict[CountKey, list[KnownCount]] = {}
        for mark in known:
            self._keep(mark)

    def at(self, value: float) -> tuple[tuple[SheetCount, ...], tuple[Finding, ...]]:
        """Return all counts at a value, and what boards refuse there; what gives less than the better of its neighbours is searched in
        full."""
        made = self._made(value)
        if made.design is None:
            return (), ()
        sides = tuple(side.count for key in self.marks for side in self._around(key, value))
        counts, found = count_layouts(made.design, made.pieces, sides)
        for count in counts:
            self._keep(KnownCount(value, count))
        return counts, found

    def jumps(self, low: float, high: float) -> tuple[Jump, ...]:
        """Walk all counts from one value to another; return where they jump."""
        found: list[Jump] = []
        for marks in self.marks.values():
            while steps := [
                (a, b) for a, b in pairwise(marks) if self._open(a, b) and low <= a.value and b.value <= high
            ]:
                start, stop = sorted(steps[0], key=_rank)
                if self._walk(start, stop) is None:
                    break
            found += (self._jump(a, b) for a, b in pairwise(marks) if a.count.number != b.count.number)
        return tuple(jump for jump in found if low <= jump.last and jump.first <= high)

    def _walk(self, start: KnownCount, stop: KnownCount) -> KnownCount | None:
        """Go from a known mark towards one that gives less, up to the first value that gives less: keep it and the last before it.

        Return it; that at the stop where the start's count reaches so far; None where it jumps too often.
        """
        before, after, left = start, stop, MOST_HALVINGS
        while left > 0:
            while left > 0 and (middle := midway(before.value, after.value, self.unit)) is not None:
                left -= 1
                here = self._count(stop, middle, (before, after), near=True)
                before, after = (here, after) if here.rank <= start.rank else (before, here)
            sure = any(mark is after for mark in self.marks[stop.key])
            first = after if sure else self._count(stop, after.value, (after,))
            if first.rank > start.rank:
                self._keep(before)
                self._keep(first)
                return first
            if first.value == stop.value:
                self._keep(first)
                return first
            before, after, left = first, stop, left - 1
        return None

    def _count(self, like: KnownCount, value: float, sides: tuple[KnownCount, ...], near: bool = False) -> KnownCount:
        """Look at one count at a value; where nothing can be made it is 0."""
        made = self._made(value)
        if made.design is not None:
            known = tuple(side.count for side in sides)
            for count in count_layouts(made.design, made.pieces, known, {like.key}, near)[0]:
                return KnownCount(value, count)
        return KnownCount(value, replace(like.count, number=0))

    def _made(self, value: float) -> Made:
        """Return the parts at a value; no design where they cannot be made."""
        made = self.trial.make((value, *self.beside))
        return Made() if errors(made.findings) else made

    def _keep(self, mark: KnownCount) -> None:
        """Keep a mark, in place of one that gives less at its value."""
        own = self.marks.setdefault(mark.key, [])
        same = next((one for one in own if one.value == mark.value), None)
        if same is not None and same.rank <= mark.rank:
            return
        if same is not None:
            own.remove(same)
        insort(own, mark, key=lambda one: one.value)

    def _around(self, key: CountKey, value: float) -> tuple[KnownCount, ...]:
        """Return the nearest marks on both sides, as far as there are any; one that lies there is both."""
        own = self.marks.get(key, [])
        low = [mark for mark in own if mark.value <= value][-1:]
        high = [mark for mark in own if mark.value >= value][:1]
        return (*low, *high)

    def _open(self, low: KnownCount, high: KnownCount) -> bool:
        return low.count.number != high.count.number and midway(low.value, high.value, self.unit) is not None

    def _jump(self, last: KnownCount, first: KnownCount) -> Jump:
        count, spans = last.count, self.trial.spans
        beside = tuple(zip((span.size.name for span in spans[1:]), self.beside, strict=True))
        subject = f"{count.letter} on {count.sheet.label}" if count.part else count.sheet.label
        before, after = str(count.number), str(first.count.number)
        kind = "copies" if count.part else "sheets"
        return Jump(kind, subject, spans[0].size.name, last.value, first.value, before, after, beside)  # type: ignore[arg-type]


def _rank(mark: KnownCount) -> float:
    return mark.rank
