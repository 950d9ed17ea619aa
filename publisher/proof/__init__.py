"""Room 9: finished files and their promises in, findings out, reading the files as a stranger would.

Comes in: the bytes of a finished PDF and, where there are any, its promises, or the bytes that its spec builds today; or all files of a
folder. Goes out: a ``Proof`` (truth: findings, readings, what was judged and what could not be), a ``FolderProof`` of what lies beside
the PDFs, or an ``Identity`` (the same file, or which pages differ).
Neither trusts the other. Never: imports a room that made the file, takes a length from tags in the file, undoes tiles by the poses
that made them (it uses the printed match marks), shares a unit constant with another room.
"""

from publisher.basics import Rule
from publisher.proof.checks import ALONE, OPENING, PROMISED
from publisher.proof.checks import RULES as TRUTH
from publisher.proof.covers import ALONE_COVERS, BESIDE_COVERS, BY_RECORD_COVERS, COVERS
from publisher.proof.folder import (
    FOLDER_RULES,
    LISTS,
    PDF_UNKNOWN,
    FolderProof,
    LookedAt,
    ZipRead,
    judge_files,
    judge_lists,
    listed_names,
    promises_by_records,
    read_zip,
)
from publisher.proof.identity import AS_BUILT, Identity, identify, identify_files
from publisher.proof.prove import prove
from publisher.proof.reading import Measured, PageLooked, Proof, ThingsLooked

RULES: tuple[Rule, ...] = (*TRUTH, AS_BUILT, *FOLDER_RULES)

__all__ = [
    "ALONE",
    "ALONE_COVERS",
    "BESIDE_COVERS",
    "BY_RECORD_COVERS",
    "COVERS",
    "LISTS",
    "OPENING",
    "PDF_UNKNOWN",
    "PROMISED",
    "RULES",
    "FolderProof",
    "Identity",
    "LookedAt",
    "Measured",
    "PageLooked",
    "Proof",
    "ThingsLooked",
    "ZipRead",
    "identify",
    "identify_files",
    "judge_files",
    "judge_lists",
    "listed_names",
    "promises_by_records",
    "prove",
    "read_zip",
]
