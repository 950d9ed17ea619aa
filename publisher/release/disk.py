"""Every change that placing makes to a disk goes through these few functions, so that a test can stop before each of them."""

import errno
import os
from collections.abc import Callable, Iterable
from hashlib import sha256
from pathlib import Path

_NO_SYNC = (errno.EINVAL, errno.ENOTSUP, errno.EACCES, errno.EPERM, errno.EISDIR, errno.EBADF)


def before(_what: str, _path: Path) -> None:
    """Hear of a change before it is made. A test puts a function in this place that raises: the run died there."""


def to_the_end(change: Callable[[], None]) -> None:
    """Make changes that may be made twice, and if they are interrupted once make them again: only then is the run stopped."""
    try:
        change()
    except KeyboardInterrupt:
        change()
        raise


def make_folder(path: Path) -> None:
    """Make a folder and those above it, as far as they are missing."""
    if not path.is_dir():
        before("make", path)
        path.mkdir(parents=True, exist_ok=True)


def write(path: Path, data: bytes) -> None:
    """Write a file whole. It is on the disk for certain only after ``sync``."""
    before("write", path)
    path.write_bytes(data)


def replace(old: Path, new: Path) -> None:
    """Give a file or folder its name, at once; a file of that name goes."""
    before("replace", new)
    old.replace(new)


def remove(path: Path) -> None:
    """Remove a file, or a link itself, if it is there."""
    before("remove", path)
    path.unlink(missing_ok=True)


def remove_empty(folder: Path) -> None:
    """Remove a folder if nothing is in it."""
    before("remove", folder)
    try:
        folder.rmdir()
    except OSError:
        return  # something is in it, or it is in use: it stays


def remove_tree(folder: Path) -> None:
    """Remove a folder with all that is in it, nothing through a link. Raises OSError when something stays."""
    if folder.is_symlink() or folder.is_file():
        remove(folder)
    if not folder.is_dir():
        return
    for path in sorted(folder.rglob("*"), reverse=True):  # what is in a folder comes before the folder
        if path.is_dir() and not path.is_symlink():
            before("remove", path)
            path.rmdir()
        else:
            remove(path)
    before("remove", folder)
    folder.rmdir()


def sync(paths: Iterable[Path]) -> None:
    """Wait until files and the names in folders are on the disk itself: a power cut does not take them back.

    Folders of systems that know no such thing (Windows, some network disks) are passed over.
    """
    for path in paths:
        before("sync", path)
        folder = path.is_dir()
        try:
            handle = os.open(path, os.O_RDONLY if folder or os.name != "nt" else os.O_RDWR)
            try:
                os.fsync(handle)
            finally:
                os.close(handle)
        except OSError as error:
            if not folder or error.errno not in _NO_SYNC:
                raise


def digest(path: Path) -> str | None:
    """Return the SHA-256 of a file as 64 hex digits; None where no file stands (a link is none)."""
    if path.is_symlink() or not path.is_file():
        return None
    return sha256(path.read_bytes()).hexdigest()
