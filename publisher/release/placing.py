"""Finished files go into a folder: staged beside their place, then moved in one by one, so that nothing is ever half written."""

import os
import shutil
from collections.abc import Iterable
from pathlib import Path

from publisher.basics import Refusal, Rule, Severity

CANNOT_WRITE = Rule(
    "release/cannot-write",
    "The output folder can be written",
    "Files that are half there look finished; so nothing is put in place unless all of it can be.",
    Severity.ERROR,
)


def put_in_place(folder: Path, files: Iterable[tuple[str, bytes]], owned: tuple[str, ...] = ()) -> tuple[Path, ...]:
    """Write ``files`` (path below ``folder``, bytes) and return their paths.

    All are first written to a staging folder inside ``folder`` and then moved to their names by atomic replace, in the given
    order. ``owned``: sub-folders that hold only files of this set: what stands there from an earlier build and is not in the set
    is removed afterwards. Raises Refusal, with nothing changed, when a file cannot be written (full disk, no rights).
    """
    staging = folder / f".staging-{os.getpid()}"
    names: list[str] = []
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, data in files:
            target = staging / name
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(data)
            names.append(name)
        for name in names:
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (staging / name).replace(folder / name)
    except OSError as error:
        raise cannot_write(folder, error) from error
    finally:
        shutil.rmtree(staging, ignore_errors=True)
    kept = {folder / name for name in names}
    for sub in owned:
        for old in sorted((folder / sub).glob("*")) if (folder / sub).is_dir() else ():
            if old.is_file() and old not in kept:
                old.unlink()
    return tuple(folder / name for name in names)


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
