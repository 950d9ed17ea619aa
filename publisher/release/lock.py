"""One run at a time works in a folder: a lock that the system takes away from a run that dies."""

import errno
import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path

from publisher.basics import Refusal, Rule, Severity
from publisher.release import disk

BUSY = Rule(
    "release/busy",
    "One run at a time puts files into a folder",
    "Two runs that place their files at once would leave some of each.",
    Severity.ERROR,
)
LOCK = ".publisher-lock"
WAIT = 60.0  # seconds: far longer than placing takes; whoever holds the lock longer hangs
_LOOK_AGAIN = 0.05  # seconds
_FAR = 1 << 30  # Windows lets nobody read the byte that is locked, so it lies behind what is written


@contextmanager
def locked(folder: Path, wait: float = WAIT) -> Iterator[None]:
    """Hold ``folder`` alone; wait for a run that holds it.

    Raises Refusal, which names the other run, when that takes longer than ``wait`` seconds; OSError when no lock can be made there.
    """
    path = folder / LOCK
    handle = _take(path, wait)
    try:
        yield
    finally:
        _let_go(handle, path)


def _let_go(handle: int, path: Path) -> None:
    """Remove the lock and leave. One that cannot be removed stays, and hinders nobody."""
    if os.name == "nt":  # a file that is open cannot be removed there
        os.close(handle)
    try:
        with suppress(OSError):
            disk.to_the_end(partial(disk.remove, path))
    finally:
        if os.name != "nt":
            os.close(handle)


def _take(path: Path, wait: float) -> int:
    until = time.monotonic() + wait
    while True:
        disk.before("lock", path)
        handle = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), 0o644)
        try:
            if _lock(handle) and _is(handle, path):
                with suppress(OSError):  # on a full disk the lock holds without a name
                    os.ftruncate(handle, 0)
                    os.write(handle, f"{os.getpid()}\n".encode())
                return handle
            if time.monotonic() > until:
                owner = os.pread(handle, 20, 0).decode("ascii", "replace").strip() if hasattr(os, "pread") else ""
                raise _busy(path.parent, owner, wait)
        except BaseException:
            os.close(handle)
            raise
        os.close(handle)
        time.sleep(_LOOK_AGAIN)


def _lock(handle: int) -> bool:
    """Lock an open file if nobody else holds it; True also on a disk that knows no locks."""
    try:
        if sys.platform == "win32":
            import msvcrt

            os.lseek(handle, _FAR, os.SEEK_SET)
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
            os.lseek(handle, 0, os.SEEK_SET)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        return error.errno in (errno.ENOLCK, errno.ENOTSUP, errno.ENOSYS)
    return True


def _is(handle: int, path: Path) -> bool:
    """Say whether the name still leads to the file that was locked: its last owner removed it on leaving."""
    try:
        return os.path.samestat(os.fstat(handle), path.lstat())
    except FileNotFoundError:
        return False


def _busy(folder: Path, owner: str, wait: float) -> Refusal:
    who = f"another run (process {owner})" if owner.isdigit() else "another run"
    return Refusal(
        BUSY.found(
            f"{who} is putting files into {folder}, and has not finished for {wait:.0f} seconds",
            subject=str(folder),
            hint="wait until it has ended, or end it, and run this again; what it leaves unfinished is finished then",
        )
    )
