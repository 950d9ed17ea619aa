"""All that a build reads, as one value: gathered once, hashed once, and enough to build again in any process.

A build is a pure function of it. So it may be handed to another process, and two builds with equal digests have the same bytes.
"""

import json
from dataclasses import replace
from hashlib import sha256

from publisher.basics import Finding, record

INPUTS_FORMAT = 1  # of what is hashed: a digest of another form must never be taken for one of this


@record
class InputFile:
    """A file of the design's folder: its name (relative, with forward slashes), its bytes and their SHA-256."""

    name: str
    data: bytes
    sha256: str

    @classmethod
    def of(cls, name: str, data: bytes) -> "InputFile":
        """Hash the bytes, once."""
        return cls(name, data, sha256(data).hexdigest())


@record
class Inputs:
    """What a build reads. ``files``: every file of the folder that was opened, sorted by name, ``spec.yaml`` among them.

    ``sets``: (size, value as written) from the command. ``papers``: names asked for, () for those of the spec. ``versions``:
    (name, version) of this program and of the libraries that shape the bytes. ``unread``: names that the spec gives and
    that could not be read, and why; nothing is built from such inputs. ``folder`` is as it was given: findings name it,
    no file holds it, so it is in no digest.
    """

    slug: str
    files: tuple[InputFile, ...] = ()
    sets: tuple[tuple[str, str], ...] = ()
    papers: tuple[str, ...] = ()
    versions: tuple[tuple[str, str], ...] = ()
    unread: tuple[tuple[str, Finding], ...] = ()
    folder: str = ""

    @property
    def digest(self) -> str:
        """The SHA-256 of all of it, as 64 hex digits. The order of sets, papers and files does not count."""
        return _hash(
            {
                "slug": self.slug,
                "files": sorted((f.name, len(f.data), f.sha256) for f in self.files),
                "sets": sorted(self.sets),
                "papers": sorted(self.papers),
                "versions": sorted(self.versions),
                "unread": sorted((name, finding.check) for name, finding in self.unread),
            }
        )

    def pack_digest(self, variant: str, paper: str) -> str:
        """Return what names one pack of these inputs, as 64 hex digits: the same whatever other papers are built with it.

        ``variant`` is '' for the sizes as written, ``paper`` a name in small letters.
        """
        return _hash({"inputs": replace(self, papers=(paper,)).digest, "variant": variant, "paper": paper})

    def file(self, name: str) -> InputFile | None:
        """Return the file of this name."""
        return next((f for f in self.files if f.name == name), None)


NOTHING_READ = Inputs("")
"""Inputs of what was made in memory and not read from a folder."""


def _hash(document: dict[str, object]) -> str:
    text = json.dumps({"format": INPUTS_FORMAT, **document}, sort_keys=True, separators=(",", ":"))
    return sha256(text.encode()).hexdigest()
