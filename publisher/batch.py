"""Many builds, shared by processes: a build is a pure function of its inputs, so that it is the same wherever it is made.

Comes in: briefs with a variant each, one after the other. Goes out: an outcome for each, in their order, whatever became of the others.
Never: puts a file in place, prints.
"""

from __future__ import annotations

import time
import traceback
from collections.abc import Generator, Iterable
from contextlib import closing
from dataclasses import replace

from publisher.basics import Finding, Refusal, record
from publisher.brief import Brief
from publisher.pages import Pack
from publisher.pipeline import Built, build
from publisher.sharing import shared

AHEAD = 4
"""Times the processes: builds that are handed out before the first of them is taken, so that they do not heap up."""


@record
class OwnFault:
    """An error of this program: its kind and words in one line, and where it was."""

    words: str
    trace: str


@record
class BuildOutcome:
    """What became of one build: exactly one of ``built``, ``refused`` (what could not be used), ``fault``. ``seconds`` by the clock.

    Nothing is drawn on the pages of ``built``: it stands in their PDF, and ``compose`` gives it.
    """

    slug: str
    variant: str
    seconds: float
    built: Built | None = None
    refused: tuple[Finding, ...] = ()
    fault: OwnFault | None = None


@record
class _BuildTask:
    number: int
    brief: Brief
    variant: str
    offered: bool


def build_many(
    wanted: Iterable[tuple[Brief, str]], workers: int = 1, offered: bool = False
) -> Generator[BuildOutcome, None, None]:
    """Yield the outcome of each build that is wanted, (brief, variant), in that order. ``wanted`` is asked for little more than is
    being done. ``offered``: with what is given beside the packs. To be closed by whoever leaves it early."""
    left, ready, taken = enumerate(wanted), dict[int, BuildOutcome](), 0
    handed = 0

    def next_task() -> _BuildTask | None:
        nonlocal handed
        if handed - taken >= AHEAD * workers:
            return None
        if (found := next(left, None)) is None:
            return None
        handed += 1
        return _BuildTask(found[0], *found[1], offered)

    with closing(shared(_build, None, next_task, workers)) as results:
        for task, outcome in results:
            ready[task.number] = outcome
            while taken in ready:
                yield ready.pop(taken)
                taken += 1


def fault_of(error: Exception) -> OwnFault:
    """Return what is said of an error of this program."""
    return OwnFault(f"{type(error).__name__}: {error}", "".join(traceback.format_exception(error)))


def _build(_: None, task: _BuildTask) -> BuildOutcome:
    start, slug = time.perf_counter(), task.brief.slug
    try:
        built = build(task.brief, task.variant, offered=task.offered)
    except Refusal as refusal:
        return BuildOutcome(slug, task.variant, time.perf_counter() - start, refused=refusal.findings)
    except Exception as error:
        return BuildOutcome(slug, task.variant, time.perf_counter() - start, fault=fault_of(error))
    return BuildOutcome(slug, task.variant, time.perf_counter() - start, _as_handed_on(built))


def _as_handed_on(built: Built) -> Built:
    """Return a build without the lines of its pages: three quarters of what would else go from process to process, for nobody."""
    packs = tuple(replace(one, pack=_without_lines(one.pack)) for one in built.packs)
    return replace(built, packs=packs, extras=tuple(replace(e, pack=_without_lines(e.pack)) for e in built.extras))


def _without_lines(pack: Pack) -> Pack:
    return replace(pack, pages=tuple(replace(page, drawn=()) for page in pack.pages))
