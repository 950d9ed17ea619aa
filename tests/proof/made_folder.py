"""A small design built with all its files, and a way to spoil one of them."""

from collections.abc import Callable
from pathlib import Path

from publisher.basics import FilePromises, Finding, errors
from publisher.brief import read_brief
from publisher.pipeline import build
from publisher.pipeline.expecting import expected_by
from publisher.proof import Proof, judge_files, judge_lists
from publisher.release import bundle_of

SPEC = """\
format: 2
title: Quay box
version: 1.0.0
designer: Ebbwater Patterns
use: trace
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
  wall:
    name: Wall
    board: foam
    count: 2
    shape: wall_panel
    with: {width: 120 mm, height: 60 mm}
    openings: {window: {kind: window, head: square, width: 22 mm, height: 20 mm, centre: 30 mm, sill: 20 mm}}
    surface: {pattern: brick, with: {length: 9 mm, height: 3 mm, bond: running}}
  disc: {name: Disc, board: foam, count: 3, shape: disc, with: {radius: 20 mm}}
papers: [a4]
steps: [{title: Print and cut, stage: print, say: Print page 2 first., parts: [wall, disc]}]
"""


class Made:
    """The files of a release of the design, what they must show, and the proof of its PDF."""

    def __init__(self, folder: Path) -> None:
        (folder / "spec.yaml").write_text(SPEC, encoding="utf-8")
        brief = read_brief(folder)
        built = build(brief)
        assert built.good, built.findings
        self.built = built
        self.files = dict(bundle_of((built.offer,)).files)
        self.promises: FilePromises = expected_by(brief, self.files, False).files
        self.proofs: dict[str, Proof] = {one.pdf.path: one.proof for one in built.packs}

    def name(self, ending: str) -> str:
        """Return the one file whose name ends so."""
        (name,) = [one for one in self.files if one.endswith(ending)]
        return name

    def found(self, files: dict[str, bytes]) -> tuple[Finding, ...]:
        """Return what is found in its content, whatever its lists say."""
        return errors(judge_files(files, self.promises, self.proofs).findings)

    def listed(self, files: dict[str, bytes]) -> tuple[Finding, ...]:
        """Return what is found by its lists."""
        return errors(judge_lists(files, "box", self.promises).findings)

    def spoiled(self, ending: str, change: Callable[[bytes], bytes]) -> dict[str, bytes]:
        """Return its files with one of them changed."""
        name = self.name(ending)
        changed = change(self.files[name])
        assert changed != self.files[name]
        return {**self.files, name: changed}
