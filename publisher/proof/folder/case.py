"""A folder on trial: its files, what they should show, and what is read of them, each once."""

from collections.abc import Callable, Generator
from functools import cached_property

from publisher.basics import Check, CutFilePromise, FilePromises, Finding, Findings, checked, record
from publisher.proof.folder.cut_lines import CopiesRead, copies_of
from publisher.proof.folder.svg import CutFile, read_svg
from publisher.proof.reading import Proof

FEW_SAID = 3  # findings of one check about one file; the rest are counted


@record
class Listed:
    """A file as a list names it: its size in bytes, and its SHA-256 in small hexadecimal letters."""

    path: str
    size: int
    sha256: str


@record
class FileList:
    """A list that lies in the folder: its own name, and the files that it names. ``trouble``: why it cannot be read."""

    name: str
    files: tuple[Listed, ...] = ()
    trouble: str = ""


class FolderCase:
    """The subject of every check of a folder. ``proofs``: of the PDFs, by their paths."""

    def __init__(
        self,
        name: str,
        files: dict[str, bytes],
        expected: FilePromises | None,
        proofs: dict[str, Proof],
        lists: tuple[FileList, ...] = (),
    ) -> None:
        """Keep what is there and what should be; files are read when first asked for."""
        self.name, self.files, self.proofs, self.lists = name, files, proofs, lists
        self.expected = expected if expected is not None else FilePromises()
        self.read: dict[str, CutFile] = {}

    @cached_property
    def cut_files(self) -> list[tuple[CutFilePromise, CutFile, CopiesRead]]:
        """The promised cut files that are there and can be read, as read, with the copies that they show."""
        there = ((one, self.cut_file(one.path)) for one in self.expected.cut_files if one.path in self.files)
        return [(promise, file, copies_of(promise, file)) for promise, file in there if not file.trouble]

    def cut_file(self, path: str) -> CutFile:
        """Return a cut file as read."""
        if path not in self.read:
            self.read[path] = read_svg(self.files[path])
        return self.read[path]


FileTest = Callable[[FolderCase, Check[FolderCase]], Findings]


def judged_files(name: str, title: str, rationale: str) -> Callable[[FileTest], Check[FolderCase]]:
    """Make a check of a folder of the test that stands below: a set may have no file of the kind."""
    return checked(name, title, rationale, may_be_empty=True)


def few(check: Check[FolderCase], path: str, said: list[str], hint: str) -> Generator[Finding, None, None]:
    """Yield findings about one file: the first few, and how many more there are."""
    for what in said[:FEW_SAID]:
        yield check.found(f"{path}: {what}", subject=path, hint=hint)
    if len(said) > FEW_SAID:
        yield check.found(f"{path}: and {len(said) - FEW_SAID} more of this kind", subject=path, hint=hint)
