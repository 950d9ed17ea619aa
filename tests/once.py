"""What is costly to make is made once in a run, not once in each of its processes."""

import os
import time
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest

PATIENCE = 600.0  # seconds: only so that a run whose process died comes to an end


def shared(factory: pytest.TempPathFactory) -> Path:
    """Return a folder that all processes of this run share."""
    base = factory.getbasetemp()
    return base.parent if "PYTEST_XDIST_WORKER" in os.environ else base


def made_once(folder: Path, names: Iterable[str], make: Callable[[str, Path], Path]) -> Path:
    """Return ``folder`` with one folder for each name, made by this process or by another one of the same run.

    ``make(name, room)`` makes one somewhere below the empty folder ``room`` and returns it; it is then moved in whole. Each process
    takes the names that nobody has claimed, so that several are made at a time, and waits for the rest.

    Raises:
        RuntimeError: another process could not make one.
    """
    names = tuple(names)
    claims = folder.with_name(f"{folder.name}-claims")
    folder.mkdir(parents=True, exist_ok=True)
    claims.mkdir(parents=True, exist_ok=True)
    for name in names:
        try:
            os.close(os.open(claims / name, os.O_CREAT | os.O_EXCL))
        except FileExistsError:
            continue
        room = claims / f"{name}-room"
        room.mkdir()
        try:
            make(name, room).rename(folder / name)
        except BaseException:
            (claims / f"{name}-failed").touch()
            raise
    last = time.monotonic() + PATIENCE
    while missing := [name for name in names if not (folder / name).exists()]:
        failed = [name for name in missing if (claims / f"{name}-failed").exists()]
        if failed or time.monotonic() > last:
            raise RuntimeError(f"{', '.join(failed or missing)} could not be made by another process of this run")
        time.sleep(0.05)
    return folder
