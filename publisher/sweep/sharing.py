"""The work of a sweep, handed out: coarse values first, then finer ones, then what jumps between neighbours; to one process or several."""

from __future__ import annotations

from collections import deque
from contextlib import closing
from itertools import product

from publisher.basics import record
from publisher.sharing import shared
from publisher.sweep.halving import between, look
from publisher.sweep.model import Looked, Refined, Told
from publisher.sweep.trying import Trial

At = tuple[int, ...]


class SweepDesk:
    """Hands out the work, coarse values first, so that finer ones find what is known on both sides; keeps what comes back."""

    def __init__(self, trial: Trial, grids: tuple[tuple[float, ...], ...], told: Told | None) -> None:
        """Start with the ends of every run along the first size."""
        self.trial, self.grids, self.told = trial, grids, told
        self.done: dict[At, Looked] = {}
        self.refined: dict[At, Refined] = {}
        self.rows: deque[tuple[At, tuple[Looked, ...]]] = deque()  # what is to be looked at, beside what
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
            with closing(shared(_do, self.trial, self._next, workers)) as results:
                for task, result in results:
                    self._keep(task, result)
        except KeyboardInterrupt:
            return False
        return True

    def _next(self) -> _Task | None:
        """Return what is to be done next: rows before jumps."""
        if self.rows:
            at, sides = self.rows.popleft()
            values = tuple(grid[k] for grid, k in zip(self.grids, at, strict=True))
            return _LookTask(at, values, sides)
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
        if high[0] - low[0] > 1:
            middle = ((low[0] + high[0]) // 2, *low[1:])
            self.rows.append((middle, (self.done[low], self.done[high])))
            self.open |= {(low, middle), (middle, high)}
        elif self.done[low].alike(self.done[high]):
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


def _do(trial: Trial, task: _Task) -> _Result:
    if isinstance(task, _GapTask):
        return between(trial, task.low, task.high)
    return look(trial, task.values, task.sides)
