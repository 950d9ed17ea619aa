"""Bent and papered board from the spec on: what is pressed into paper, what peeling changes, what a bend bears."""

from pathlib import Path

import pytest

from publisher import api

SPEC = """\
format: 2
title: Turret
version: 1.0.0
designer: Ebbwater Patterns
licence: CC-BY-NC-4.0
use: paste
boards:
  card: {{thickness: 5 mm, faces: {faces}, sheets: [20 x 30 in]}}
parts:
  wall: {{name: Wall, board: card, shape: curved_wall, count: 1, with: {{inner_radius: 60 mm, angle: 180 deg, height: 60 mm{more}}},
         surface: {{pattern: brick, how: {how}, with: {{length: 9 mm, height: 4 mm, bond: running}}}}}}
steps: [{{title: Bend, stage: print, say: "Slit it {{wall.slit_depth}} deep.", parts: [wall]}}]
"""


def said(tmp_path: Path, faces: str, how: str, more: str = "") -> tuple[list[str], dict[str, float]]:
    folder = tmp_path / "turret"
    folder.mkdir()
    (folder / "spec.yaml").write_text(SPEC.format(faces=faces, how=how, more=more), encoding="utf-8")
    worked = api.work(api.read(folder))
    facts = {fact.name: fact.value for fact in worked.joined.facts if fact.value is not None} if worked.joined else {}
    return [f.check for f in worked.findings], facts


@pytest.mark.keeps("joints/pressed-on-paper")
@pytest.mark.parametrize(
    ("faces", "how"), [("paper_both", "drawn"), ("paper_both, peeled: 4.6 mm", "pressed"), ("paper_one", "pressed")]
)
def test_a_pattern_on_what_takes_it(tmp_path: Path, faces: str, how: str) -> None:
    found, facts = said(tmp_path, faces, how)
    assert "joints/pressed-on-paper" not in found
    thick = 4.6 if "peeled" in faces else 5.0
    assert (facts["wall.thickness"], facts["wall.bend_radius"]) == pytest.approx((thick, 60.0 + thick / 2))
    assert ("joints/bent-too-tightly" in found) == ("peeled" in faces)  # without its paper it strains by 3.7 %


@pytest.mark.breaks("joints/pressed-on-paper")
@pytest.mark.parametrize(("faces", "more"), [("paper_both", ""), ("bare", ", covered: paper")])
def test_a_pattern_pressed_into_paper(tmp_path: Path, faces: str, more: str) -> None:
    assert said(tmp_path, faces, "pressed", more)[0] == ["joints/pressed-on-paper"]


@pytest.mark.breaks("design/board-measure")
@pytest.mark.parametrize("faces", ["bare, peeled: 4.6 mm", "paper_both, peeled: 5 mm", "paper_both, peeled: 0 mm"])
def test_board_that_cannot_be_peeled(tmp_path: Path, faces: str) -> None:
    assert "design/board-measure" in said(tmp_path, faces, "drawn")[0]
