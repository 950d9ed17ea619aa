"""A version as a folder: every file, a manifest with SHA-256 sums, one zip; put in place by one rename, never overwritten."""

import hashlib
import json
import os
import zipfile
from io import BytesIO
from pathlib import Path

from publisher import __version__
from publisher.basics import Refusal, Rule, Severity, record
from publisher.release.placing import cannot_write, clear, sweep

VERSION_EXISTS = Rule(
    "release/version-exists",
    "A version that was released keeps its content",
    "Buyers hold the old files: the same version number must never mean two things.",
    Severity.ERROR,
)


@record
class Bundle:
    """All files of one version: (path below the version's folder, bytes), the manifest and the zip among them, sorted by path."""

    slug: str
    version: str
    files: tuple[tuple[str, bytes], ...]


def make_bundle(slug: str, version: str, files: tuple[tuple[str, bytes], ...]) -> Bundle:
    """Return the bundle of these files with ``manifest.json`` and ``<slug>-<version>.zip`` added. Same files, same bytes.

    Raises ValueError when two files have one name.
    """
    listed = sorted(files)
    if len({name for name, _ in listed}) < len(listed):
        raise ValueError(f"two files of {slug} {version} have one name")
    manifest = {
        "format": 1,
        "slug": slug,
        "version": version,
        "tool": f"publisher {__version__}",
        "files": [
            {"path": name, "size": len(data), "sha256": hashlib.sha256(data).hexdigest()} for name, data in listed
        ],
    }
    text = json.dumps(manifest, indent=2, ensure_ascii=False, sort_keys=True) + "\n"
    listed.append(("manifest.json", text.encode("utf-8")))
    archive = BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED, compresslevel=6) as box:
        for name, data in sorted(listed):
            info = zipfile.ZipInfo(f"{slug}-{version}/{name}", (1980, 1, 1, 0, 0, 0))  # no clock in an output
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = 0o644 << 16
            info.create_system = 3
            box.writestr(info, data)
    listed.append((f"{slug}-{version}.zip", archive.getvalue()))
    return Bundle(slug, version, tuple(sorted(listed)))


def place_bundle(bundle: Bundle, releases: Path) -> tuple[Path, bool]:
    """Put a bundle at ``releases/<slug>/<version>`` by one rename; return the folder and whether it is new.

    Raises Refusal when the version exists with other content (saying what differs), or when it cannot be written; then nothing
    has changed.
    """
    target = releases / bundle.slug / bundle.version
    if target.exists():
        differing = _differences(bundle, target)
        if not differing:
            return target, False
        raise _exists(bundle, target, differing)
    staging = releases / bundle.slug / f".staging-{bundle.version}-{os.getpid()}"
    if staging.parent.is_dir():
        sweep(staging.parent)
    try:
        for name, data in bundle.files:
            path = staging / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        staging.rename(target)
    except OSError as error:
        if target.exists():  # another release of the same design won
            raise _exists(bundle, target, _differences(bundle, target)) from error
        raise cannot_write(releases, error) from error
    finally:
        clear(staging)
    return target, True


def _differences(bundle: Bundle, target: Path) -> list[str]:
    try:
        there = {p.relative_to(target).as_posix(): p.read_bytes() for p in sorted(target.rglob("*")) if p.is_file()}
    except OSError as error:
        raise cannot_write(target, error) from error
    new = dict(bundle.files)
    return sorted(name for name in {*there, *new} if there.get(name) != new.get(name))


def _exists(bundle: Bundle, target: Path, differing: list[str]) -> Refusal:
    shown = ", ".join(differing[:5]) + (f" and {len(differing) - 5} more" if len(differing) > 5 else "")
    return Refusal(
        VERSION_EXISTS.found(
            f"version {bundle.version} of {bundle.slug} was released before with other content ({shown} differ)"
            if differing
            else f"version {bundle.version} of {bundle.slug} was released at the same moment by another run",
            subject=str(target),
            hint="give the spec a higher version: the last number for words and pictures, the middle one for parts added or "
            "counts changed, the first when old templates no longer fit",
        )
    )
