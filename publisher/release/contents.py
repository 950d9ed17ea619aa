"""What lies in an output folder, in a release or in its zip: all files, to be judged. What file browsers left is passed over."""

import os
from pathlib import Path

from publisher.basics import Refusal, Rule, Severity, record
from publisher.proof import LISTS, read_zip
from publisher.release.names import is_dropping
from publisher.release.packs import TRIALS
from publisher.release.placing import WORK

NOT_AN_OUTPUT = Rule(
    "release/not-an-output",
    "What is given to be proved is a set of packs or a release",
    "Only what has a list of its files can be judged whole: of any other folder nobody knows which files belong to it.",
    Severity.ERROR,
)
MOST_FILES = 20_000
MOST_FOLDER_BYTES = 2_000_000_000


@record
class Contents:
    """All files of a folder or zip by their paths below it, with forward slashes; ``name`` is how messages call it."""

    name: str
    files: tuple[tuple[str, bytes], ...]


def contents_of(path: Path) -> Contents:
    """Return the files of a set of packs, of a release, or of a release's zip; trials that lie in the folder are sets of their own.

    Raises Refusal when it cannot be read, when it is larger than is reasonable, or when it has no list.
    """
    try:
        path.stat()  # what is not there is said to be so, and not to be empty
        files = _zipped(path) if path.is_file() else _in_folder(path)
    except OSError as error:
        raise _refused(path, f"cannot be read: {(error.strerror or 'unreadable').lower()}") from error
    if not any(name in LISTS for name, _ in files):
        raise _refused(path, f"has no list of its files ({' or '.join(LISTS)})")
    return Contents(str(path), files)


def _zipped(path: Path) -> tuple[tuple[str, bytes], ...]:
    box = read_zip(path.read_bytes())
    if box.trouble:
        raise _refused(path, f"cannot be read: {box.trouble}")
    return box.files


def _in_folder(folder: Path) -> tuple[tuple[str, bytes], ...]:
    files: list[tuple[str, bytes]] = []
    total = 0
    for above, inner, names in os.walk(folder):
        here = Path(above)
        top = here == folder
        inner[:] = sorted(name for name in inner if not (top and name in (TRIALS, WORK)))
        for name in sorted(names):
            path = here / name
            if is_dropping(name) or path.is_symlink():
                continue
            total += path.stat().st_size
            if len(files) >= MOST_FILES or total > MOST_FOLDER_BYTES:
                raise _refused(folder, "holds more files than any set of packs")
            files.append((path.relative_to(folder).as_posix(), path.read_bytes()))
    return tuple(files)


def _refused(path: Path, why: str) -> Refusal:
    return Refusal(
        NOT_AN_OUTPUT.found(
            f"{path} {why}",
            subject=str(path),
            hint="give a folder that “publisher build” or “publisher release” made (build/packs/SLUG), or the zip of a release",
        )
    )
