"""Work of one kind, shared by processes; or done here, one task after the other.

Comes in: a function of a module, what it needs for every task, and whoever gives the next task. Goes out: each task with its result, as
soon as it is there. Never: knows what the work is, keeps a result, leaves a process behind.
"""

from __future__ import annotations

import gc
import signal
from collections.abc import Callable, Generator, Iterator
from contextlib import contextmanager
from functools import partial
from multiprocessing import active_children, get_context
from queue import Empty, SimpleQueue
from typing import Any, TypeVar

LOOK = 1.0  # s between two looks whether all processes are still there

Job = TypeVar("Job")
Task = TypeVar("Task")
Result = TypeVar("Result")


def shared(
    do: Callable[[Job, Task], Result], job: Job, next_task: Callable[[], Task | None], workers: int
) -> Generator[tuple[Task, Result], None, None]:
    """Yield each task with ``do(job, task)``, in the order in which they are finished.

    ``next_task`` is asked whenever one more can be handed out, a little more than is being done; None: there is none before another one
    is finished. With ``workers`` over 1 the function, the job, tasks and results are pickled. What the function raises is raised
    here. To be closed (``contextlib.closing``) by whoever may leave it early: that ends its processes.
    """
    if workers <= 1:
        while (task := next_task()) is not None:
            yield task, do(job, task)
        return
    back: SimpleQueue[tuple[Task, Result | BaseException]] = SimpleQueue()
    out = 0
    # a process started anew holds nothing of this one: forked ones would share threads of libraries
    with _deaf():
        pool = get_context("spawn").Pool(workers, _begin, (gc.get_threshold(), do, job))
    begun = {process.pid for process in active_children()}
    try:
        while True:
            while out < workers + 1 and (task := next_task()) is not None:
                put = partial(_put, back, task)
                pool.apply_async(_do_begun, (task,), callback=put, error_callback=put)
                out += 1
            if not out:
                return
            task, result = _next_back(back, begun)
            out -= 1
            if isinstance(result, BaseException):
                raise result
            yield task, result
    finally:
        pool.terminate()
        pool.join()
        del pool
        gc.collect()  # its semaphores go with it: a command that was stopped ends too fast to tidy them up


def _next_back(back: SimpleQueue[Any], begun: set[int | None]) -> Any:
    """Wait for a result. Raises RuntimeError when a process was ended by something else: its task would never come back."""
    while True:
        try:
            return back.get(timeout=LOOK)
        except Empty:
            if not begun <= {process.pid for process in active_children()}:
                words = "a process that shared the work was ended by something else; try fewer at once with --jobs"
                raise RuntimeError(words) from None


_BEGUN: list[
    tuple[Callable[[Any, Any], Any], Any]
] = []  # of a process that shares the work: what it does, for what job


def _begin(rings: tuple[int, int, int], do: Callable[[Any, Any], Any], job: object) -> None:
    """Start a process that shares the work; it looks for rings of records as seldom as the first. Ctrl-C is for the first process
    alone: it ends the others."""
    gc.set_threshold(*rings)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    _BEGUN[:] = [(do, job)]


def _do_begun(task: object) -> object:
    do, job = _BEGUN[0]
    return do(job, task)


def _put(back: SimpleQueue[Any], task: object, result: object) -> None:
    back.put((task, result))


@contextmanager
def _deaf() -> Iterator[None]:
    """Start processes that hear no Ctrl-C from their first moment, while they import; this one hears it afterwards."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    former = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, former)
