"""A version as a folder: every file, a manifest with SHA-256 sums, one zip; put in place by one rename, never overwritten."""

import json
import zipfile
import zlib
from hashlib import sha256
from io import BytesIO
from pathlib import Path

from publisher import __version__
from publisher.basics import Refusal, Rule, Severity, record
from publisher.basics.wording import listed
from publisher.release import disk
from publisher.release.names import LIST, check_names, is_dropping
from publisher.release.placing import WORK, held, settle, stage, told
from publisher.release.proved import refuse_unlisted

VERSION_EXISTS = Rule(
    "release/version-exists",
    "A version that was released keeps its content",
    "Buyers hold the old files: the same version number must never mean two things.",
    Severity.ERROR,
)
DAMAGED = Rule(
    "release/damaged-copy",
    "A released version is whole",
    "Whoever sends a cut or changed file to a buyer believes it to be the one that was proved.",
    Severity.ERROR,
)
TRIAL_RELEASED = Rule(
    "release/trial",
    "A trial is not released",
    "Its sizes stand in no spec: nobody could make the same pack again, and two packs would bear one version.",
    Severity.ERROR,
)
MANIFEST = "manifest.json"


@record
class Bundle:
    """All files of one version: (path below the version's folder, bytes), the manifest and the zip among them, sorted by path."""

    slug: str
    version: str
    files: tuple[tuple[str, bytes], ...]

    @property
    def sums(self) -> dict[str, str]:
        """The SHA-256 of each file that the manifest names."""
        return _sums(dict(self.files)[MANIFEST]) or {}


def make_bundle(slug: str, version: str, files: tuple[tuple[str, bytes], ...]) -> Bundle:
    """Return the bundle of these files with ``manifest.json`` and ``<slug>-<version>.zip`` added. Same files, same bytes.

    Raises ValueError when two files have one name.
    """
    everything = sorted(files)
    if len({name for name, _ in everything}) < len(everything):
        raise ValueError(f"two files of {slug} {version} have one name")
    manifest = {
        "format": 1,
        "slug": slug,
        "version": version,
        "tool": f"publisher {__version__}",
        "files": [{"path": name, "size": len(data), "sha256": sha256(data).hexdigest()} for name, data in everything],
    }
    text = json.dumps(manifest, indent=2, ensure_ascii=False, sort_keys=True) + "\n"
    everything.append((MANIFEST, text.encode("utf-8")))
    archive = BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as box:
        for name, data in sorted(everything):
            info = zipfile.ZipInfo(f"{slug}-{version}/{name}", (1980, 1, 1, 0, 0, 0))  # no clock in an output
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = 0o644 << 16
            info.create_system = 3
            box.writestr(info, data)
    everything.append((f"{slug}-{version}.zip", archive.getvalue()))
    return Bundle(slug, version, tuple(sorted(everything)))


def refuse_trial(slug: str, sets: tuple[tuple[str, str], ...]) -> None:
    """Raise Refusal when sizes were set that the spec does not say."""
    if sets:
        said = listed([f"{name} = {value}" for name, value in sets], 5)
        raise Refusal(
            TRIAL_RELEASED.found(
                f"{slug} with {said} is a trial, which is not released",
                subject=slug,
                hint="write the sizes into the spec, as its own or as a variant, and release that",
            )
        )


@record
class Release:
    """A bundle in its place: the folder, whether it is new, and what else lies there (droppings of file browsers aside)."""

    folder: Path
    new: bool
    others: tuple[str, ...] = ()


def place_bundle(bundle: Bundle, releases: Path) -> Release:
    """Put a bundle at ``releases/<slug>/<version>`` by one rename, or find it there.

    Raises Refusal when the version exists with other content (saying what differs), when the copy that stands there is damaged, or
    when it cannot be written, or when its lists are not of its files; then nothing has changed.
    """
    home = releases / bundle.slug
    target = home / bundle.version
    check_names([f"{bundle.version}/{name}" for name, _ in bundle.files])
    refuse_unlisted(bundle.files, target)
    with held(home):
        alike = [p.name for p in home.iterdir() if p.name.casefold() == bundle.version.casefold()]
        if alike:
            return _there(bundle, home / alike[0])
        stage(home / WORK / "new", bundle.files)
        disk.replace(home / WORK / "new", target)
        disk.sync([home])
    return Release(target, True)


def is_released(bundle: Bundle, releases: Path) -> bool:
    """Look whether a bundle stands in its place, whole. Raises Refusal as ``settle`` does."""
    settle(releases / bundle.slug)
    target = releases / bundle.slug / bundle.version
    with told(target):
        return all(disk.digest(target / name) == sha256(data).hexdigest() for name, data in bundle.files)


def _there(bundle: Bundle, target: Path) -> Release:
    """Hold what stands at ``target`` against the bundle. Raises Refusal when it is another, or a damaged copy of the same."""
    there, new = _files_of(target), dict(bundle.files)
    differing = sorted(name for name, data in new.items() if not _same(name, there.get(name), data))
    if not differing:
        return Release(target, False, tuple(sorted({*there} - {*new})))
    released = _sums(there.get(MANIFEST))
    if released is None and differing != [MANIFEST]:
        raise _exists(
            bundle, target, differing, "; its manifest is missing or damaged, so that nobody can say what it held"
        )
    sums = released or {name: sha256(data).hexdigest() for name, data in bundle.files}
    other = {name for name in differing if name in bundle.sums and sums.get(name) != bundle.sums[name]}
    if changed := sorted(other | set(sums) - set(new)):
        raise _exists(bundle, target, changed, _made_otherwise(there.get(LIST), new.get(LIST)))
    raise _damaged(bundle, target, [_harm(name, there.get(name), new[name]) for name in differing])


def _files_of(folder: Path) -> dict[str, bytes]:
    """Return the files of a folder by name, without links and what file browsers left."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and not path.is_symlink() and not is_dropping(path.name)
    }


def _same(name: str, there: bytes | None, new: bytes) -> bool:
    """Say whether two files are the same; of zips the members count, which another zlib packs otherwise."""
    if there == new or there is None or not name.endswith(".zip"):
        return there == new
    members = _members(there)
    return members is not None and members == _members(new)


def _members(data: bytes) -> dict[str, str] | None:
    """Return the SHA-256 of each member of a zip by name; None when it is damaged."""
    try:
        with zipfile.ZipFile(BytesIO(data)) as box:
            if len(set(box.namelist())) < len(box.namelist()):
                return None
            return {name: sha256(box.read(name)).hexdigest() for name in box.namelist()}
    except (zipfile.BadZipFile, zlib.error, ValueError, EOFError, RuntimeError, OSError):
        return None


def _sums(manifest: bytes | None) -> dict[str, str] | None:
    """Return the SHA-256 of each file of a manifest by name; None when it cannot be read."""
    try:
        return {one["path"]: one["sha256"] for one in json.loads(manifest or b"")["files"]}
    except (ValueError, LookupError, TypeError, RecursionError):
        return None


def _made_otherwise(there: bytes | None, new: bytes | None) -> str:
    """Return what made the difference when both were made of the same files; '' when they were not, or when nobody can say."""
    try:
        before, now = (json.loads(text or b"") for text in (there, new))
        others = sorted(name for name, version in now["versions"].items() if before["versions"].get(name) != version)
        if before["inputs"] == now["inputs"] and others:
            return f"; it was made of the same files, by another version of {listed(others, 3)}"
    except (ValueError, LookupError, TypeError, AttributeError, RecursionError):
        pass
    return ""


def _harm(name: str, there: bytes | None, new: bytes) -> str:
    if there is None:
        return f"{name} is missing"
    if len(there) != len(new):
        return f"{name} has {len(there)} bytes in place of {len(new)}"
    return f"{name} has other bytes"


def _exists(bundle: Bundle, target: Path, differing: list[str], why: str = "") -> Refusal:
    return Refusal(
        VERSION_EXISTS.found(
            f"version {bundle.version} of {bundle.slug} was released before with other content ({listed(differing, 5)} "
            f"{'differs' if len(differing) == 1 else 'differ'}){why}",
            subject=str(target),
            hint="give the spec a higher version: the last number for words and pictures, the middle one for parts added or "
            "counts changed, the first when old templates no longer fit",
        )
    )


def _damaged(bundle: Bundle, target: Path, harms: list[str]) -> Refusal:
    return Refusal(
        DAMAGED.found(
            f"version {bundle.version} of {bundle.slug} was released before with the same content, but the copy in {target} is damaged: "
            f"{listed(harms, 5)}",
            subject=str(target),
            hint="put a whole copy there from where you keep yours, or move this one away and release again: the files will be the same",
        )
    )
