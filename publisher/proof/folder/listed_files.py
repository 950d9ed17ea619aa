"""Checks of a folder as a whole: what its lists name is there, as it was made, and nothing else."""

import json
from collections.abc import Iterator
from hashlib import sha256
from typing import Any

from publisher.basics import Check, Findings, checked
from publisher.proof.folder.case import FileList, FolderCase, Listed, few, judged_files
from publisher.proof.folder.zips import is_zip_name, read_zip

LISTS = ("packs.json", "manifest.json")
"""The lists of a set of packs and of a release; a release has both, and its manifest names more."""
AGAIN = "take a whole copy, or build the design again"


@checked(
    "proof/file-not-as-listed",
    "Every listed file is there, as it was made",
    "a file cut in a transfer or changed by hand is none that was proved: size and SHA-256 are those of its list",
)
def as_listed(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Count and hash every file that a list names."""
    looked = 0
    for one in folder.lists:
        if one.trouble:
            yield check.found(f"{one.name} cannot be read: {one.trouble}", subject=one.name, hint=AGAIN)
            looked += 1
            continue
        looked += len(one.files)
        yield from few(check, one.name, list(_unlike(one, folder.files)), AGAIN)
    return looked


def _unlike(one: FileList, files: dict[str, bytes]) -> Iterator[str]:
    for file in one.files:
        data = files.get(file.path)
        if data is None:
            yield f"it names {file.path}, which is not there"
        elif len(data) != file.size:
            yield f"{file.path} has {len(data):,} bytes in place of {file.size:,}"
        elif sha256(data).hexdigest() != file.sha256:
            yield f"{file.path} has other bytes than when it was made"


@checked(
    "proof/file-unlisted",
    "Nothing lies there that no list names",
    "what was proved is what a list names: a file beside it may be of an older build, or of somebody else",
)
def unlisted(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Name the files that are on no list, and those that the lists say nothing of."""
    named = {file.path for one in folder.lists for file in one.files} | _zips(folder)
    named |= set(LISTS)  # no list names itself
    said = [f"{path} is on no list" for path in sorted(set(folder.files) - named)]
    expected = folder.expected.paths
    said += [f"the design makes {path}, which is on no list" for path in sorted(expected - named)] if named else []
    yield from few(check, folder.name, said, "move it away, or build the design again")
    return len(folder.files)


@judged_files(
    "proof/pdf-unknown",
    "Every PDF of a folder is one that something is known of",
    "a PDF of another design or version was held against nothing: beside proved ones it would pass for one of them",
)
def pdf_unknown(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Name the PDFs that no design and no record speaks of."""
    known = {pack.pdf for pack in folder.expected.packs}
    there = [path for path in sorted(folder.files) if path.endswith(".pdf")]
    for path in there:
        if path not in known:
            said = ["neither the design nor a record that can be read says what it should show"]
            yield from few(check, path, said, "give the spec of the same design and version, and keep the files' names")
    return len(there)


@judged_files(
    "proof/zip-content",
    "The zip of a release holds the release",
    "buyers get the zip and nobody opens it before them: its members are the files of its folder, all of them and byte by byte",
)
def zip_content(folder: FolderCase, check: Check[FolderCase]) -> Findings:
    """Compare the members of each zip with the files beside it."""
    looked = 0
    for path in sorted(_zips(folder)):
        box = read_zip(folder.files[path])
        if box.trouble:
            yield from few(check, path, [f"cannot be read: {box.trouble}"], AGAIN)
            continue
        members, beside = dict(box.files), {name: data for name, data in folder.files.items() if name != path}
        said = [f"lacks {name}" for name in sorted(set(beside) - set(members))]
        said += [f"holds {name}, which is not beside it" for name in sorted(set(members) - set(beside))]
        said += [
            f"holds another {name}" for name in sorted(set(members) & set(beside)) if members[name] != beside[name]
        ]
        yield from few(check, path, said, AGAIN)
        looked += len(members)
    return looked


def _zips(folder: FolderCase) -> set[str]:
    """Return the zip of a release, which holds its manifest and so cannot stand in it."""
    return {path for path in folder.files if is_zip_name(path) and "/" not in path and "manifest.json" in folder.files}


def read_list(name: str, data: bytes) -> FileList:
    """Return a list as read. Any bytes may come in."""
    try:
        document: Any = json.loads(data)
        files = tuple(Listed(str(one["path"]), int(one["size"]), str(one["sha256"])) for one in document["files"])
    except (ValueError, LookupError, TypeError, ArithmeticError, RecursionError):
        return FileList(name, (), "it is no list of files")
    return FileList(name, files)


def listed_names(files: dict[str, bytes]) -> frozenset[str]:
    """Return the paths that the lists of a folder name; none where there is no list that can be read."""
    return frozenset(file.path for name in LISTS if name in files for file in read_list(name, files[name]).files)
