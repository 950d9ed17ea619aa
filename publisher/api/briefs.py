"""What a designer writes: a folder is read, begun, given steps, or rewritten in the format of today."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from publisher.basics import Finding
    from publisher.brief import Brief, Inputs
    from publisher.upgrade import Upgraded


def designs(folder: Path) -> tuple[Path, ...]:
    """Return the design folders that ``folder`` names: itself, or those in it, by name. Raises Refusal when there are none."""
    from publisher.brief import spec_folders

    return spec_folders(folder)


def read(folder: Path, sets: tuple[tuple[str, str], ...] = (), papers: tuple[str, ...] = ()) -> Brief:
    """Read a design's folder, once: all that a build needs is then in ``Brief.inputs``, which any process can build from.

    ``sets``: sizes with values as a designer writes them, (("board", "3/16 in"),), over those of the spec and its variants.
    ``papers``: names in small letters; () for those of the spec. Raises Refusal when there is no spec that can be read.
    """
    from publisher.brief import read_brief

    return read_brief(folder, sets, papers)


def brief_of(inputs: Inputs) -> Brief:
    """Return the brief of inputs that were read before, here or in another process. No file is opened."""
    from publisher.brief import brief_of

    return brief_of(inputs)


def variants(brief: Brief, asked: tuple[str, ...] = ()) -> tuple[str, ...]:
    """Return the variants that are asked for, or all, the sizes as written ('') first. Raises Refusal for an unknown one."""
    from publisher.design import asked_variants

    return asked_variants(brief, asked)


def new(folder: Path, like: str = "stair", designer: str = "") -> tuple[Path, ...]:
    """Write a new design into ``folder``, whose name becomes the design's, and return the paths of its files, the spec first.

    ``like``: one of ``STARTS``; ``designer``: who signs it, '' for nobody yet. Raises Refusal when the name is none for a design, or
    the designer's none for a spec, when one of the files is there, or when they cannot be written; ValueError for another ``like``.
    """
    from publisher.brief import STARTS, begin
    from publisher.release import held, place

    if like not in STARTS:
        raise ValueError(f"no design begins like “{like}”")
    home, files = begin(folder, like, designer)
    with held(home):
        begin(folder, like, designer)  # another run may have begun it before this one held the folder
        place(home, files)
    return tuple(folder / Path(name).name for name, _ in files)


def steps(brief: Brief, variant: str = "") -> tuple[str, tuple[Finding, ...]]:
    """Return steps that a design could have, as text of its spec from the key ``steps`` on, and what was found in the design without
    its own steps; '' where that has an error. They come in an order by which the solids of its parts go together."""
    from publisher.pipeline import proposed_steps_of

    return proposed_steps_of(brief, variant)


def upgrade(folder: Path) -> Upgraded:
    """Rewrite a design's spec in the format that is read today, in memory: comments stay, and the parts are the same.

    ``findings`` say what must be done by hand before it may be written (errors), and what to look at (warnings). Raises Refusal
    when there is no spec that can be read.
    """
    from publisher import upgrade

    return upgrade.upgrade(folder)


def keep_spec(upgraded: Upgraded) -> Path:
    """Write a rewritten spec in the place of the former one, at once, and return its path.

    Raises Refusal when it cannot be written; ValueError when it is not complete.
    """
    from publisher.release import put_in_place

    if not upgraded.complete:
        raise ValueError("what is not rewritten whole is not written")
    (path,) = put_in_place(upgraded.folder, [("spec.yaml", upgraded.after.encode("utf-8"))])
    return path
