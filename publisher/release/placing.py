"""Finished files go into a folder: staged beside their place, then moved in one by one, so that nothing is ever half written."""

import os
import shutil
import time
from collections.abc import Iterable
from pathlib import Path

from publisher.basics import Refusal, Rule, Severity

CANNOT_WRITE = Rule(
    "release/cannot-write",
    "The output folder can be written",
    "Files that are half there look finished; so nothing is put in place unless all of it can be.",
    Severity.ERROR,
)


ABANDONED = 3600.0  # seconds: a staging folder that nobody touched for so long was left by a run that was killed


def put_in_place(folder: Path, files: Iterable[tuple[str, bytes]], owned: tuple[str, ...] = ()) -> tuple[Path, ...]:
    """Write ``files`` (path below ``folder``, bytes) and return their paths.

    All are first written to a staging folder inside ``folder`` and then moved to their names by atomic replace, in the given
    order; when a move fails, those done before it are taken back. ``owned``: sub-folders that hold only files of this set: what
    stands there from an earlier build and is not in the set is removed afterwards. Raises Refusal, with nothing changed, when a file
    cannot be written (full disk, no rights); ValueError when two files have one name.
    """
    staging = folder / f".staging-{os.getpid()}"
    names: list[str] = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        sweep(folder)
        for name, data in files:
            if name in names:
                raise ValueError(f"two files are called {name}")
            target = staging / "new" / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(data)
            names.append(name)
        _move(staging, folder, names)
        kept = {folder / name for name in names}
        for sub in owned:
            for old in sorted((folder / sub).glob("*")) if (folder / sub).is_dir() else ():
                if old.is_file() and old not in kept:
                    old.unlink()
    except OSError as error:
        raise cannot_write(folder, error) from error
    finally:
        clear(staging)
    return tuple(folder / name for name in names)


def _move(staging: Path, folder: Path, names: list[str]) -> None:
    """Move every file to its place; take all of them back when one cannot be moved."""
    done: list[str] = []
    try:
        for name in names:
            target, old = folder / name, staging / "old" / name
            target.parent.mkdir(parents=True, exist_ok=True)
            if target.exists():
                old.parent.mkdir(parents=True, exist_ok=True)
                shutil.copy2(target, old)
            done.append(name)
            (staging / "new" / name).replace(target)
    except BaseException:
        for name in reversed(done):
            old = staging / "old" / name
            if old.exists():
                old.replace(folder / name)
            elif not (staging / "new" / name).exists():  # it was moved, and nothing stood there before
                (folder / name).unlink()
        raise


def clear(staging: Path) -> None:
    """Remove a staging folder; whoever presses Ctrl-C meanwhile stops the run, but not in the middle of this."""
    try:
        shutil.rmtree(staging, ignore_errors=True)
    except KeyboardInterrupt:
        shutil.rmtree(staging, ignore_errors=True)
        raise


def sweep(folder: Path) -> None:
    """Remove staging folders that killed runs left behind; those of runs that are at work are newer."""
    for left in sorted(folder.glob(".staging-*")):
        try:
            if time.time() - left.stat().st_mtime > ABANDONED:
                shutil.rmtree(left, ignore_errors=True)
        except FileNotFoundError:
            continue  # its own run has just removed it


def cannot_write(folder: Path, error: OSError) -> Refusal:
    """Say what the system said, in a sentence, and that nothing was changed."""
    reason = (error.strerror or "it cannot be written").lower()
    return Refusal(
        CANNOT_WRITE.found(
            f"cannot write to {folder}: {reason}",
            subject=str(folder),
            hint="choose another folder with --out, or make room and rights there; what was there before is untouched",
        )
    )
