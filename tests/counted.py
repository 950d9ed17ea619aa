"""Work as a count: the same on any machine, however busy it is. Seconds belong to ``tests/benchmarks/``."""

import sys
from collections.abc import Callable
from types import FrameType


def calls(work: Callable[[], object]) -> int:
    """Return how many functions, Python's and C's, are called while ``work`` runs."""
    counted = 0

    def count(frame: FrameType, event: str, argument: object) -> None:
        nonlocal counted
        counted += event in ("call", "c_call")

    before = sys.getprofile()
    sys.setprofile(count)
    try:
        work()
    finally:
        sys.setprofile(before)
    return counted
