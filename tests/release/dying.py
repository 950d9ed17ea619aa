"""Runs that die, or are refused by the disk, before any one of their changes to it; and sets of packs that are cheap to place."""

import os
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.brief import InputFile, Inputs
from publisher.proof import Proof
from publisher.release import Offer, Output, disk


class Death(BaseException):
    """The process is killed. Nothing that it would do afterwards happens: a dead run tidies nothing up."""


class Disk:
    """Counts changes to the disk. Before the change of number ``last`` it raises; with ``dead``, before all that follow too.

    A file that would be written then is left half written: whoever reads it later must see that it is not whole.
    """

    def __init__(self, last: int, fault: Callable[[], BaseException], dead: bool) -> None:
        self.count, self.last, self.fault, self.dead = 0, last, fault, dead

    def before(self, what: str, path: Path) -> None:
        self.count += 1
        if self.count == self.last and what == "write":
            path.write_bytes(b"half")
        if self.count == self.last or (self.dead and self.count > self.last > 0):
            raise self.fault()


def failing(
    patch: pytest.MonkeyPatch, last: int = 0, fault: Callable[[], BaseException] = Death, dead: bool = True
) -> Disk:
    """Let the disk fail at a change; at none by itself. The disk's own waiting is left out, which no process can see."""
    found = Disk(last, fault, dead)
    patch.setattr(disk, "before", found.before)
    patch.setattr(os, "fsync", lambda _: None)
    return found


def everything(folder: Path) -> dict[str, bytes]:
    """Return the bytes of every file below a folder, hidden ones too."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def offer(
    content: bytes, *papers: str, variant: str = "", version: str = "1.0.0", parts: str = "a", program: str = "1"
) -> Offer:
    """A stand-in for the offer of ``quay``: each file holds ``content``, the spec too, so that one tells of which spec it is."""
    stem = f"quay-{version}-{variant}" if variant else f"quay-{version}"
    folder = variant or "standard"
    names = [f"{stem}-{paper}.{kind}" for paper in papers for kind in ("pdf", "json")]
    names += [f"previews/{folder}-{paper}/page-01.png" for paper in papers]
    names += [f"cut-files/{folder}/part-{part}.svg" for part in parts]
    design: Any = SimpleNamespace(slug="quay", version=version, variant=variant, sizes=(), boards=(), parts=())
    packs: Any = tuple(
        (
            SimpleNamespace(
                paper=SimpleNamespace(name=p), id=p, slug="quay", version=version, variant=variant, pages=()
            ),
            Proof(p, ()),
        )
        for p in papers
    )
    needs: Any = None
    inputs = Inputs(
        "quay", (InputFile("spec.yaml", content, sha256(content).hexdigest()),), versions=(("publisher", program),)
    )
    return Offer(design, needs, packs, tuple(Output(name, content) for name in names), (), inputs)
