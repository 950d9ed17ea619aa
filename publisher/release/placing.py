"""Finished files go into a folder all or none, however the run ends: staged, written down in a journal, moved, the journal removed.

What a run that died left behind is finished, or taken back, by the next one that comes to the folder: the journal and the files that
still stand in the work folder say how far it got. So the way back after a fault is no second way, but the same one.
"""

import errno
import json
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from functools import partial
from hashlib import sha256
from pathlib import Path, PurePosixPath

from publisher.basics import Refusal, Rule, Severity, record
from publisher.release import disk
from publisher.release.lock import BUSY, LOCK, locked
from publisher.release.names import check_names, inside

CANNOT_WRITE = Rule(
    "release/cannot-write",
    "The output folder can be written",
    "Files that are half there look finished; so nothing is put in place unless all of it can be.",
    Severity.ERROR,
)
WORK = ".publisher-work"
"""The folder in which files are staged, beside the place where they go: ``new`` those to come, ``old`` those that went, the journal."""
_JOURNAL = "journal.json"


@record
class Move:
    """A file of a journal: its name below the folder, and what stood there and shall (see ``_stands``); None for nothing."""

    name: str
    old: str | None
    new: str | None


def put_in_place(folder: Path, files: Iterable[tuple[str, bytes]]) -> tuple[Path, ...]:
    """Write ``files`` (path below ``folder``, bytes), all or none, and return their paths.

    Raises Refusal, with nothing changed, when a file cannot be written (full disk, no rights), when another run does not leave the
    folder, or when names clash; ValueError when two files have one name.
    """
    listed = tuple(files)
    with held(folder):
        return place(folder, listed)


def settle(folder: Path) -> None:
    """Finish or take back what a run that died left unfinished in ``folder``; nothing happens where nothing was left.

    Raises Refusal when it cannot be done, or when the run is alive and does not end. Files that were only staged, or a lock, need
    not go: who may read a folder and not write to it reads whole files there.
    """
    with told(folder):
        left = os.path.lexists(folder / WORK) or os.path.lexists(folder / LOCK)
    if left:
        try:
            with held(folder):
                pass
        except Refusal as refusal:
            if refusal.findings[0].check == BUSY.id or _has_journal(folder):
                raise


@contextmanager
def held(folder: Path) -> Iterator[None]:
    """Hold a folder, made if it is missing, for placing: locked, and free of what dead runs left. Nothing staged stays afterwards.

    Raises Refusal for any OSError of the body or its own.
    """
    with told(folder):
        there = folder.is_dir()
        disk.make_folder(folder)
        try:
            with locked(folder):
                _settle(folder)
                try:
                    yield
                finally:
                    if not _has_journal(folder):  # else the next run needs what is there
                        with suppress(OSError):
                            disk.to_the_end(partial(disk.remove_tree, folder / WORK))
        finally:
            if not there:
                disk.remove_empty(folder)


@contextmanager
def told(folder: Path) -> Iterator[None]:
    """Make a Refusal of any OSError of the body, which reads or writes in ``folder``."""
    try:
        yield
    except OSError as error:
        raise cannot_write(folder, error) from error


def place(folder: Path, files: tuple[tuple[str, bytes], ...], gone: Iterable[str] = ()) -> tuple[Path, ...]:
    """Put files into a folder that is ``held``, and remove those called ``gone``, all or none; return the paths of the files.

    Raises OSError or Refusal with nothing changed.
    """
    names = [name for name, _ in files]
    if len(set(names)) < len(names):
        raise ValueError(f"two files are called {next(name for name in names if names.count(name) > 1)}")
    _look_through(folder, names)
    work = folder / WORK
    stage(work / "new", files)
    moves = [Move(name, _stands(folder / name), None) for name in gone]
    moves += (Move(name, _stands(folder / name), sha256(data).hexdigest()) for name, data in files)
    _write_down(work, tuple(moves))
    _finish(folder, tuple(moves))
    return tuple(folder / name for name in names)


def stage(folder: Path, files: Iterable[tuple[str, bytes]]) -> None:
    """Write files into a folder that is not there yet, and wait until they are on the disk."""
    disk.remove_tree(folder)
    disk.make_folder(folder)
    paths = []
    for name, data in files:
        path = folder / name
        disk.make_folder(path.parent)
        disk.write(path, data)
        paths.append(path)
    folders = {above for path in paths for above in path.parents if above == folder or folder in above.parents}
    disk.sync([*paths, *sorted(folders, reverse=True)])


def through_link(folder: Path, name: str) -> Path | None:
    """Return the link below ``folder`` that a name leads through; None when it leads through none."""
    above = (folder.joinpath(*PurePosixPath(name).parts[:k]) for k in range(1, len(PurePosixPath(name).parts)))
    return next((path for path in above if path.is_symlink()), None)


def _look_through(folder: Path, names: list[str]) -> None:
    """Raise Refusal when two names are one on some system, when one leaves the folder, or leads through a link."""
    check_names(names)
    _keep_inside(folder, names)


def _keep_inside(folder: Path, names: list[str]) -> None:
    """Raise Refusal when a name leads through a link, ValueError when it leads out of the folder."""
    for name in names:
        if not inside(name):
            raise ValueError(f"{name} leads out of its folder")
        if (link := through_link(folder, name)) is not None:
            raise _linked(link)


def _write_down(work: Path, moves: tuple[Move, ...]) -> None:
    """Write the journal, at once: from here on the moves are finished, whatever happens."""
    document = {"format": 1, "moves": [{"name": m.name, "old": m.old, "new": m.new} for m in moves]}
    draft = work / "draft.json"
    disk.write(draft, json.dumps(document, indent=1).encode())
    disk.sync([draft])
    disk.replace(draft, work / _JOURNAL)


def _settle(folder: Path) -> None:
    """Finish what a dead run had written down, then sweep its work folder.

    It is taken back when a staged file is not whole, or when somebody changed a file meanwhile that it would still replace."""
    work = folder / WORK
    if not work.is_symlink() and (work / _JOURNAL).is_file():
        moves = _read_journal(work / _JOURNAL)
        if all(_can_be_done(folder, move) for move in moves):
            _finish(folder, moves)
        else:
            _take_back(folder, moves)
    disk.remove_tree(work)


def _can_be_done(folder: Path, move: Move) -> bool:
    """Say whether a move is done, or may still be: its file is whole, and what it replaces is what was there when it was written down."""
    staged, kept = folder / WORK / "new" / move.name, folder / WORK / "old" / move.name
    if move.new is None or not staged.exists():
        return True
    expected = (
        None if os.path.lexists(kept) else move.old
    )  # what stood there was moved away, and nothing came in its place
    return disk.digest(staged) == move.new and _stands(folder / move.name) == expected


def _stands(path: Path) -> str | None:
    """Return what tells one thing of this name from another: the SHA-256 of a file, where a link leads; None where nothing is."""
    if path.is_symlink():
        return f"link to {path.readlink()}"
    return "folder" if path.is_dir() else disk.digest(path)


def _has_journal(folder: Path) -> bool:
    """Say whether files of a folder may stand there half moved."""
    return (folder / WORK / _JOURNAL).exists()


def _read_journal(path: Path) -> tuple[Move, ...]:
    """Return the moves of a journal. Raises Refusal for one that no run of ours has written so."""
    try:
        document = json.loads(path.read_text(encoding="utf-8"))
        moves = tuple(Move(str(one["name"]), one["old"], one["new"]) for one in document["moves"])
        _keep_inside(path.parent.parent, [move.name for move in moves])
    except (ValueError, LookupError, TypeError, RecursionError) as error:
        raise Refusal(
            CANNOT_WRITE.found(
                f"cannot write to {path.parent.parent}: a run that died left {path}, and it cannot be read",
                subject=str(path),
                hint=f"look which files there are whole, remove {path.parent}, and run this again",
            )
        ) from error
    return moves


def _finish(folder: Path, moves: tuple[Move, ...]) -> None:
    """Do all that the journal says and that is not done yet; take all of it back when something cannot be done."""
    try:
        disk.to_the_end(partial(_move, folder, moves))
    except OSError:
        _take_back(folder, moves)
        raise


def _move(folder: Path, moves: tuple[Move, ...]) -> None:
    """Files that go, go first: on a disk that ignores case a new one may bear the same name."""
    new, old = folder / WORK / "new", folder / WORK / "old"
    disk.sync([folder / WORK])  # the journal is there before anything is moved
    for move in moves:
        target, kept = folder / move.name, old / move.name
        if move.new is None and not os.path.lexists(kept) and disk.digest(target) == move.old is not None:
            disk.make_folder(kept.parent)
            disk.replace(target, kept)
        elif move.new is not None and (new / move.name).exists():
            if os.path.lexists(target) and not os.path.lexists(kept):
                if target.is_dir() and not target.is_symlink():
                    raise IsADirectoryError(errno.EISDIR, f"a folder is called “{move.name}”")
                disk.make_folder(kept.parent)
                disk.replace(target, kept)
            disk.make_folder(target.parent)
            disk.replace(new / move.name, target)
    _remove_emptied(folder, moves)
    parents = {(folder / move.name).parent for move in moves}
    disk.sync(sorted({folder, *(parent for parent in parents if parent.is_dir())}))
    _close(folder)


def _remove_emptied(folder: Path, moves: tuple[Move, ...]) -> None:
    """Remove the folders from which the last file went, the innermost first."""
    gone = {above for move in moves if move.new is None for above in PurePosixPath(move.name).parents}
    for above in sorted(gone - {PurePosixPath()}, reverse=True):
        if (folder / above).is_dir():
            disk.remove_empty(folder / above)


def _take_back(folder: Path, moves: tuple[Move, ...]) -> None:
    """Put back what stood there before, in the order against that of ``_move``."""
    new, old = folder / WORK / "new", folder / WORK / "old"
    for move in reversed(moves):
        target, kept, staged = folder / move.name, old / move.name, new / move.name
        moved = move.new is not None and not staged.exists()
        if moved and disk.digest(target) == move.new:
            disk.make_folder(staged.parent)
            disk.replace(target, staged)
        if os.path.lexists(kept) and not os.path.lexists(
            target
        ):  # else somebody put a file of their own there meanwhile
            disk.make_folder(target.parent)
            disk.replace(kept, target)
    _close(folder)


def _close(folder: Path) -> None:
    disk.remove(folder / WORK / _JOURNAL)
    disk.sync([folder / WORK])


def cannot_write(folder: Path, error: OSError) -> Refusal:
    """Say what the system said, in a sentence, and what stands there now."""
    reason = (error.strerror or "it cannot be written").lower()
    with suppress(OSError):
        if _has_journal(folder):
            return Refusal(
                CANNOT_WRITE.found(
                    f"cannot write to {folder}: {reason}; some files there are new and some are old",
                    subject=str(folder),
                    hint="make room and rights there, and run this again: the next run first puts right what this one could not",
                )
            )
    return Refusal(
        CANNOT_WRITE.found(
            f"cannot write to {_short(folder)}: {reason}",
            subject=str(folder),
            hint="make room and rights there (build and release go elsewhere with --out); what was there before is untouched",
        )
    )


def _linked(link: Path) -> Refusal:
    return Refusal(
        CANNOT_WRITE.found(
            f"cannot write to {link}: it is a link that leads elsewhere",
            subject=str(link),
            hint="remove the link; nothing is written or removed through a link",
        )
    )


def _short(folder: Path) -> str:
    said = str(folder)
    return said if len(said) <= 200 else f"{said[:100]} … {said[-60:]} ({len(said)} letters)"
