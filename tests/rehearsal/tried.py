"""Packs to rehearse: those of random designs, built for the purpose and thrown away.

Random designs say nothing of how they are built, and nobody could build from their packs: the steps that the tool proposes are written
to them.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from publisher import api
from publisher.basics import Refusal
from tests.random_designs.make import true_design
from tests.random_designs.tool import written

SPEC = "spec.yaml"


@dataclass(frozen=True, slots=True)
class Tried:
    """A random design's folder and the first of its packs."""

    name: str
    folder: Path
    pdf: Path


def random_packs(seeds: range, top: Path) -> Iterator[Tried]:
    """Build the first pack of each true random design below ``top``; those that the tool refuses are left out."""
    for seed in seeds:
        made = true_design(seed)
        below = top / str(seed)
        below.mkdir()
        folder = written(below, made.spec, made.files)
        try:
            with_steps(folder)
            built = api.build(api.read(folder), previews=False)
        except Refusal:
            continue
        packs = built.packs
        if packs:
            pdf = below / "pack.pdf"
            pdf.write_bytes(packs[0].pdf.data)
            yield Tried(f"{made.kind} {seed}", folder, pdf)


def with_steps(folder: Path) -> None:
    """Write the steps that the tool proposes behind the spec of a design that has none."""
    steps, _ = api.steps(api.read(folder))
    if steps:
        spec = folder / SPEC
        spec.write_text(spec.read_text(encoding="utf-8") + steps, encoding="utf-8")
