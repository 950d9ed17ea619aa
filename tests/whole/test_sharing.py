"""Work shared by processes: all of it comes back, and what goes wrong there is raised here. (Small, as each process imports it.)"""

import os
import signal
from contextlib import closing

import pytest

from publisher.sharing import shared


def squared(plus: int, number: int) -> int:
    """Work for other processes."""
    if number == 13:
        raise ValueError("thirteen")
    return number * number + plus


@pytest.mark.parametrize("workers", [1, 2])
def test_shared_work_comes_back_whole_and_faults_are_raised_here(workers: int) -> None:
    numbers = iter(range(9))
    with closing(shared(squared, 5, lambda: next(numbers, None), workers)) as results:
        assert sorted(results) == [(n, n * n + 5) for n in range(9)]
    bad = iter((1, 13, 2))
    with (
        pytest.raises(ValueError, match="thirteen"),
        closing(shared(squared, 5, lambda: next(bad, None), workers)) as results,
    ):
        list(results)


def ended(_: None, number: int) -> int:
    """Work that ends its process, as a system short of memory does."""
    if number == 2:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system has no SIGKILL")
def test_a_process_that_is_ended_from_outside_ends_the_wait() -> None:
    numbers = iter((1, 2, 3))
    with (
        pytest.raises(RuntimeError, match="ended by something else"),
        closing(shared(ended, None, lambda: next(numbers, None), 2)) as results,
    ):
        list(results)


def unsendable(_: None, number: int) -> object:
    """Work whose result no other process can take."""
    return lambda: number


def test_a_result_that_cannot_be_handed_on_is_told() -> None:
    numbers = iter((1, 2))
    with (
        pytest.raises(RuntimeError, match="cannot be handed on"),
        closing(shared(unsendable, None, lambda: next(numbers, None), 2)) as results,
    ):
        list(results)
