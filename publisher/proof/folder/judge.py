"""A folder judged: its content against promises, its lists against its files."""

from publisher.basics import Check, FilePromises, Finding, record
from publisher.proof.folder.case import FileList, FolderCase
from publisher.proof.folder.listed_files import LISTS, read_list
from publisher.proof.folder.rules import AS_A_WHOLE, BY_PROMISES, CONTENT
from publisher.proof.reading import GIVES_UP, Proof, why_given_up


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
    """Judge a folder by the lists that lie in it: ``promises`` name what the design makes, where that is known; then no PDF may lie there
    of which they say nothing."""
    lists = tuple(read_list(one, files[one]) for one in LISTS if one in files)
    checks = AS_A_WHOLE if promises is None else AS_A_WHOLE + BY_PROMISES
    return _run(checks, FolderCase(name, files, promises, {}, lists or (FileList(LISTS[0], (), "it is not there"),)))


def _run(checks: tuple[Check[FolderCase], ...], folder: FolderCase) -> FolderProof:
    found: list[Finding] = []
    looked: list[LookedAt] = []
    for check in checks:
        try:
            outcome = check.run(folder, check)
        except GIVES_UP as trouble:
            found.append(
                check.found(
                    f"{folder.name}: “{check.title}” could not be judged: {why_given_up(trouble)}",
                    subject=folder.name,
                    hint="take a whole copy, or build the design again",
                )
            )
            continue
        found += outcome.findings
        looked.append(LookedAt(check.title, outcome.looked_at))
    return FolderProof(tuple(found), tuple(looked))
