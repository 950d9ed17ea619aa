"""The packs of a design are one set with one list: it is put in place whole, and what was made with another content goes by name.

The list, ``packs.json``, says which packs there are, of what they were made, and every file that was made, with its hash. Only what it
lists is ever removed, and only as long as it is as it was made.
"""

import json
import os
from dataclasses import field
from hashlib import sha256
from pathlib import Path
from typing import Any

from publisher.basics import record
from publisher.basics.wording import listed
from publisher.release import disk
from publisher.release.names import LIST, inside, trial_name
from publisher.release.offer import LIST_FORMAT, Offer, list_of, list_text, proof_of
from publisher.release.placing import held, place, settle, through_link, told
from publisher.release.proved import PROOF, kept_entries, proof_document, proof_text, refuse_unlisted

TRIALS = "trials"
"""The folder, in a design's own, that holds what was built with other sizes: a folder for each trial."""
CHANGED = "it is not as it was made"


@record
class Left:
    """A file of an earlier build that is not of this one: its name below the folder, and why it was removed, or stays.

    The name is ``.`` where nobody can say any more which files there are."""

    name: str
    why: str


@record
class PlacedSet:
    """A set that was put in place: its folder, the files of this build, what was removed of an earlier one, what of that stays."""

    folder: Path
    files: tuple[Path, ...]
    removed: tuple[Left, ...] = ()
    stays: tuple[Left, ...] = ()


@record
class _MadeFile:
    """A file of a list: its name below the folder, its bytes counted, and their SHA-256."""

    name: str
    size: int
    sha256: str


@record
class _Made:
    """A list as it was read; nothing where there is none."""

    version: str = ""
    kind: str = ""
    inputs: dict[str, str] = field(default_factory=dict)
    versions: dict[str, str] = field(default_factory=dict)
    packs: tuple[dict[str, Any], ...] = ()
    extras: tuple[dict[str, Any], ...] = ()
    files: tuple[_MadeFile, ...] = ()


def set_folder(packs: Path, offers: tuple[Offer, ...]) -> Path:
    """Return where a set goes: ``packs/<slug>``, and a folder of its own in there for a trial, so that neither replaces the other."""
    design, inputs = offers[0].design, offers[0].inputs
    home = packs / design.slug
    trial = trial_name((offer.design for offer in offers), inputs.sets)
    return home / TRIALS / trial if trial else home


def place_packs(offers: tuple[Offer, ...], packs: Path) -> PlacedSet:
    """Put all files of a design's variants into its folder below ``packs``, as one set, all or none.

    Packs of other variants and papers stay when they were made of the same files by the same program. Else they are removed,
    as would contradict what was built now under the same name: everything that the last list names and that is as it was made.
    Raises Refusal, with nothing changed, when something cannot be written, or the list is not of these files.
    """
    home = set_folder(packs, offers)
    files = tuple((output.path, output.data) for offer in offers for output in offer.outputs)
    now = {PROOF, *(name for name, _ in files)}
    with held(home):
        document, before = list_of(offers), _read_list(home)
        kept: list[_MadeFile] = []
        removed: list[Left] = []
        stays: list[Left] = []
        if before is None:
            before = _Made()
            stays.append(Left(".", f"the list of an earlier build, {LIST}, cannot be read"))
        why = _why(before, document)
        for file in before.files:
            path = home / file.name
            if file.name in now or not path.exists():
                continue
            if not _is_ours(home, file):
                stays.append(Left(file.name, CHANGED))
            elif why:
                removed.append(Left(file.name, why))
            else:
                kept.append(file)
        proof = proof_text(_proved(proof_of(offers), home, before, kept))
        files = (*files, (PROOF, proof))
        document["files"].append({"path": PROOF, "size": len(proof), "sha256": sha256(proof).hexdigest()})
        files = (*files, (LIST, list_text(_merged(document, before, kept))))
        refuse_unlisted((*files, *((file.name, (home / file.name).read_bytes()) for file in kept)), home)
        placed = place(home, files, [left.name for left in removed])
    return PlacedSet(home, placed, tuple(removed), tuple(stays))


def discard_trials(slug: str, packs: Path) -> tuple[PlacedSet, ...]:
    """Remove the trials of a design: of each folder of them the files that its list names and that are as they were made, and the list.

    All else stays and is told. Returns what was done in each folder that has a list of a trial. Raises Refusal as ``place_packs``.
    """
    home = packs / slug / TRIALS
    done = []
    with told(home):
        if home.is_symlink() or home.parent.is_symlink() or not home.is_dir():
            return ()
        for folder in sorted(path for path in home.iterdir() if path.is_dir() and not path.is_symlink()):
            settle(folder)
            made = _read_list(folder)
            if made is not None and made.kind == "trial":
                done.append(_discard(folder))
            disk.remove_empty(folder)
        disk.remove_empty(home)
    return tuple(done)


def _discard(folder: Path) -> PlacedSet:
    with held(folder):
        made = _read_list(folder) or _Made()  # anew: another run may have been here
        there = [file for file in made.files if os.path.lexists(folder / file.name)]
        whole = [file for file in there if _is_ours(folder, file)]
        removed = tuple(Left(file.name, "a trial") for file in whole)
        place(folder, (), [*(left.name for left in removed), LIST])
    return PlacedSet(folder, (), removed, tuple(Left(file.name, CHANGED) for file in there if file not in whole))


def _is_ours(folder: Path, file: _MadeFile) -> bool:
    """Say whether a file is as it was made, and no link leads to it."""
    return through_link(folder, file.name) is None and disk.digest(folder / file.name) == file.sha256


def is_placed(offers: tuple[Offer, ...], packs: Path) -> bool:
    """Look whether all files of these variants stand in their folder as they were built. Raises Refusal as ``settle`` does."""
    home = set_folder(packs, offers)
    settle(home)
    with told(home):
        return all(
            disk.digest(home / output.path) == sha256(output.data).hexdigest()
            for offer in offers
            for output in offer.outputs
        )


def _read_list(home: Path) -> _Made | None:
    """Read the list of a folder: None for one that is no list of ours, so that nothing is removed by it."""
    try:
        document = json.loads((home / LIST).read_text(encoding="utf-8"))
        if document["format"] != LIST_FORMAT:
            return None
        return _Made(
            str(document["version"]),
            str(document["kind"]),
            {one["name"]: one["sha256"] for one in document["inputs"]},
            {**document["versions"]},
            tuple({**one} for one in document["packs"]),
            tuple({**one} for one in document.get("extras", ())),
            tuple(
                _MadeFile(one["path"], int(one["size"]), one["sha256"])
                for one in document["files"]
                if inside(one["path"]) and one["path"] != LIST
            ),
        )
    except FileNotFoundError:
        return _Made()
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return None


def _why(before: _Made, now: dict[str, Any]) -> str:
    """Return why what the last list names cannot stay beside what is built now; '' when it can: both are made of the same."""
    if before.version != now["version"]:
        return f"it is of version {before.version}"
    inputs = {one["name"]: one["sha256"] for one in now["inputs"]}
    changed = sorted(name for name in {*inputs, *before.inputs} if inputs.get(name) != before.inputs.get(name))
    if changed:
        return f"{listed(changed, 3)} changed since it was made"
    others = {**now["versions"]}
    changed = sorted(name for name in {*others, *before.versions} if others.get(name) != before.versions.get(name))
    return f"it was made with another version of {listed(changed, 3)}" if changed else ""


def _proved(now: dict[str, Any], home: Path, before: _Made, kept: list[_MadeFile]) -> dict[str, Any]:
    """Return what was looked at in the files of this build, and in those that stay of an earlier one."""
    old = next((file for file in before.files if file.name == PROOF and _is_ours(home, file)), None)
    text = (home / PROOF).read_bytes() if old else None
    stays = {file.name: file.sha256 for file in kept}
    packs, beside = kept_entries(text, stays)
    return proof_document([*now["packs"], *packs], [*now["beside"], *beside])


def _merged(now: dict[str, Any], before: _Made, kept: list[_MadeFile]) -> dict[str, Any]:
    """Return the list of this build with what stays of the last one, in an order that does not tell which was built first."""
    names = {file.name for file in kept}
    packs = [*now["packs"], *(pack for pack in before.packs if pack.get("file") in names)]
    extras = [*now["extras"], *(one for one in before.extras if one.get("file") in names)]
    files = [*now["files"], *({"path": one.name, "size": one.size, "sha256": one.sha256} for one in kept)]
    return {
        **now,
        "packs": sorted(packs, key=lambda pack: (str(pack.get("variant")), str(pack.get("paper")))),
        "extras": sorted(extras, key=lambda one: str(one.get("file"))),
        "files": sorted(files, key=lambda one: str(one["path"])),
    }
