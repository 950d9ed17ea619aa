"""A folder judged: its content against promises, its lists against its files."""

from publisher.basics import Check, FilePromises, Finding, record
from publisher.proof.folder.case import FileList, FolderCase
from publisher.proof.folder.listed_files import LISTS, read_list
from publisher.proof.folder.rules import AS_A_WHOLE, CONTENT
from publisher.proof.reading import Proof


@record
class LookedAt:
    """How many things a check looked at in the folder: ``what`` is its title."""

    what: str
    things: int


@record
class FolderProof:
    """What was found in a folder beside its PDFs, and what was looked at."""

    findings: tuple[Finding, ...] = ()
    looked: tuple[LookedAt, ...] = ()


def judge_files(
    files: dict[str, bytes], promises: FilePromises, proofs: dict[str, Proof], name: str = ""
) -> FolderProof:
    """Judge what lies beside PDFs by what it must show: paths below the folder, with forward slashes. ``proofs`` of the PDFs by path."""
    return _run(CONTENT, FolderCase(name, files, promises, proofs))


def judge_lists(files: dict[str, bytes], name: str, promises: FilePromises | None = None) -> FolderProof:
    """Judge a folder by the lists that lie in it: ``promises`` name what the design makes, where that is known."""
    lists = tuple(read_list(one, files[one]) for one in LISTS if one in files)
    return _run(
        AS_A_WHOLE, FolderCase(name, files, promises, {}, lists or (FileList(LISTS[0], (), "it is not there"),))
    )


def _run(checks: tuple[Check[FolderCase], ...], folder: FolderCase) -> FolderProof:
    found: list[Finding] = []
    looked: list[LookedAt] = []
    for check in checks:
        outcome = check.run(folder, check)
        found += outcome.findings
        looked.append(LookedAt(check.title, outcome.looked_at))
    return FolderProof(tuple(found), tuple(looked))
