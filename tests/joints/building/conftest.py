"""Assemblies from the text of a spec, put together as the order of building looks at them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.joints import as_glued
from publisher.joints.assembled import Assembled
from publisher.joints.put_together import assemble
from tests.reference.solids import HEAD

BOX = """
sizes: {board: 5 mm}
parts:
  side: {name: Side, board: foam, shape: wall_panel, with: {width: 120 mm, height: 60 mm}}
  end: {name: End, board: foam, shape: wall_panel, with: {width: 80 mm, height: 60 mm}}
  lid: {name: Lid, board: foam, shape: wall_panel, with: {width: 120 mm, height: 80 mm}}
assembly:
  box:
    panels: {front: side, back: side, left: end, right: end, lid: lid}
    stands_on: front.bottom
    joins:
      - {edges: [front.right, right.left], joint: tab_and_slot, tabs_on: right, tabs: 2, inset: 10 mm, play: 0.3 mm}
      - {edges: [right.right, back.left], joint: tab_and_slot, tabs_on: right, tabs: 2, inset: 10 mm, play: 0.3 mm}
      - {edges: [back.right, left.left], joint: tab_and_slot, tabs_on: left, tabs: 2, inset: 10 mm, play: 0.3 mm}
      - {edges: [left.right, front.left], joint: tab_and_slot, tabs_on: left, tabs: 2, inset: 10 mm, play: 0.3 mm}
      - {edges: [lid.bottom, front.top], joint: butt, runs_through: lid}
      - {edges: [lid.top, back.top], joint: butt, runs_through: lid}
"""
"""Two ends with tabs at both of their sides, between two sides with closed slots, and a lid on top."""

BRACED = """
sizes: {board: 5 mm}
parts:
  plinth: {name: Plinth, board: foam, shape: disc, with: {radius: 92 mm}}
  step: {name: Step, board: foam, shape: spiral_stair_layer, with: {core_radius: 30 mm, reach: 92 mm, step_angle: 40 deg, turn: 20 deg}}
assembly:
  stair: {brace: {run: 40 mm, drop: 20 mm, under: [6, 7, 11]}, stack: [{part: plinth}, {part: step, count: 12, turn: 20 deg}]}
"""
"""A stair that winds up on a plinth, with knee braces under three of its steps."""


@pytest.fixture
def assembled(tmp_path: Path) -> Callable[..., Assembled]:
    """A spec put together; ``adds``: what its steps add, one text for each step, ``dry:`` before what is only tried; ``after``: steps
    as the spec says them."""

    def made(text: str, *adds: str, after: str = "") -> Assembled:
        steps = (
            "".join(
                f"  - {{title: Step, say: Do it., stage: {'dry_fit' if one.startswith('dry:') else 'glue'}, "
                f"adds: [{one.removeprefix('dry:')}]}}\n"
                for one in adds
            )
            + after
        )
        folder = tmp_path / "piece"
        folder.mkdir(exist_ok=True)
        (folder / "spec.yaml").write_text(HEAD + text + (f"steps:\n{steps}" if steps else ""), encoding="utf-8")
        brief = read_brief(folder)
        design = work_out(brief)
        assert [str(found) for found in (*brief.findings, *design.findings)] == []
        parts, found = make_parts(design)
        assert [str(one) for one in found] == []
        return assemble(design, as_glued(design, parts))[0]

    return made
