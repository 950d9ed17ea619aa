"""The schema, written from the registry, asks for every size that a shape needs: nothing later looks for missing ones."""

from pathlib import Path

from publisher.brief import read_brief
from publisher.geometry import shape_infos

SPEC = """\
format: 2
title: Tiles
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
summary: A tile of each kind.
use: paste
sizes: {board: 5 mm}
boards: {foam: {thickness: board, sheets: [20 x 30 in]}}
parts:
"""


def test_every_size_that_a_shape_needs_is_asked_for_by_name(tmp_path: Path) -> None:
    shapes = [info for info in shape_infos() if not info.layered]
    parts = "".join(f"  {i.name}: {{name: P, board: foam, shape: {i.name}, count: 1, with: {{}}}}\n" for i in shapes)
    folder = tmp_path / "tiles"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SPEC + parts, encoding="utf-8")
    found = read_brief(folder).findings
    needed = [(info.name, p.name) for info in shapes for p in info.parameters if p.default is None]
    assert len(needed) > 50
    assert {f.check for f in found} == {"brief/missing-key"}
    asked = {(info, size) for info, size in needed if any(f"“{info}” lacks “{size}”" in f.message for f in found)}
    assert asked == set(needed)
