"""Work of one kind, shared by processes; or done here, one task after the other.

Comes in: a function of a module, what it needs for every task, and whoever gives the next task. Goes out: each task with its result, as
soon as it is there. Never: knows what the work is, keeps a result, leaves a process behind.
"""

from __future__ import annotations

import gc
import signal
from collections.abc import Callable, Generator, Iterator
from contextlib import contextmanager
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from queue import SimpleQueue
from threading import Thread
from typing import Any, TypeVar

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
    tasks: SimpleQueue[Task | None] = SimpleQueue()
    back: SimpleQueue[tuple[Task, Result | BaseException]] = SimpleQueue()
    out = 0
    processes = []
    try:
        for _ in range(workers):
            processes.append(_begun(do, job, tasks, back))
        while True:
            while out < workers + 1 and (task := next_task()) is not None:
                tasks.put(task)
                out += 1
            if not out:
                return
            task, result = back.get()
            out -= 1
            if isinstance(result, BaseException):
                raise result
            yield task, result
    finally:
        for process in processes:
            process.terminate()
            tasks.put(None)
        for process in processes:
            process.join()


def _begun(do: Callable[[Any, Any], Any], job: object, tasks: SimpleQueue[Any], back: SimpleQueue[Any]) -> BaseProcess:
    """Start a process, and a thread that hands it one task after the other.

    They speak through a pipe: queues between processes would need semaphores of the system, which a command that is stopped leaves
    behind. The process is started anew, so that it holds nothing of this one: a forked one would share threads of libraries.
    """
    system = get_context("spawn")
    here, there = system.Pipe()
    process = system.Process(target=_work, args=(there, gc.get_threshold(), do, job), daemon=True)
    with _deaf():
        process.start()
    there.close()  # so that the end of the process ends the pipe
    Thread(target=_hand_on, args=(here, tasks, back), daemon=True).start()
    return process


def _hand_on(there: Connection, tasks: SimpleQueue[Any], back: SimpleQueue[Any]) -> None:
    """Give a process its tasks until there is no more; what it was doing when it ended is a RuntimeError."""
    with there:
        while (task := tasks.get()) is not None:
            try:
                there.send(task)
                result = there.recv()
            except (EOFError, OSError):
                words = "a process that shared the work was ended by something else; try fewer at once with --jobs"
                result = RuntimeError(words)
            except Exception as error:  # a task or a result that cannot be sent
                result = error
            back.put((task, result))


def _work(there: Connection, rings: tuple[int, int, int], do: Callable[[Any, Any], Any], job: object) -> None:
    """Do tasks in a process of its own; it looks for rings of records as seldom as the first. Ctrl-C is for the first process alone: it
    ends the others."""
    gc.set_threshold(*rings)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    while True:
        try:
            task = there.recv()
        except EOFError:
            return
        try:
            result = do(job, task)
        except Exception as error:
            result = error
        try:
            there.send(result)
        except OSError:
            return  # nobody is there to take it
        except Exception as error:  # a result that cannot be sent
            there.send(RuntimeError(f"a result cannot be handed on: {error}"))


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
