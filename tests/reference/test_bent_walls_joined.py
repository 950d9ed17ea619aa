"""A house with a round end: straight walls that go on as a curved one, held against the circle and as solids."""

from pathlib import Path

import numpy as np
import pytest

from publisher.joints.panels.place import place_panels
from tests.random_designs.solids import in_common
from tests.reference.solids import Built, build, solid

HOUSE = """sizes: {{board: 2 mm, inner: 50 mm}}
parts:
  bow: {{name: Bow, board: foam, shape: curved_wall, with: {{inner_radius: inner, angle: {angle} deg, height: 60 mm, cut: none}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: 70 mm, height: 60 mm}}}}
  other: {{name: Left side, like: side}}
  back: {{name: Back, board: foam, shape: wall_panel, with: {{width: 2 * inner + 2 * board, height: 60 mm}}}}
assembly:
  house:
    panels: {{back: back, right: side, bow: bow, left: other}}
    stands_on: back.bottom
    joins:
      - {{edges: [back.right, right.left], joint: butt, runs_through: back}}
      - {{edges: [right.right, bow.left], joint: mitre, corner: 180 deg}}
      - {{edges: [bow.right, left.left], joint: mitre, corner: 180 deg}}
      - {{edges: [left.right, back.left], joint: butt, runs_through: back}}
"""


def house(tmp_path: Path, angle: float = 180.0) -> Built:
    return build(HOUSE.format(angle=angle), tmp_path)


def test_a_half_circle_closes_the_ring(tmp_path: Path) -> None:
    built = house(tmp_path)
    errors = {finding.check for finding in built.findings if finding.severity.value == "error"}
    assert errors == set()
    assert built.joined.fact("house.depth") is not None
    size = {name: built.joined.fact(f"house.{name}") for name in ("width", "depth", "height")}
    # the sides are 70 mm deep on their outside, then the bow's outer radius
    assert {name: fact.value if fact else None for name, fact in size.items()} == {
        "width": pytest.approx(104.0, abs=0.01), "depth": pytest.approx(122.0, abs=0.01), "height": 60.0,
    }  # fmt: skip
    assembly = place_panels(built.design.panels[0], built.parts)
    boards = [solid(board.part, board.frame.matrix()) for board in assembly.boards]
    assert in_common(boards) == pytest.approx(0.0, abs=0.5)
    middle = np.array([52.0, 70.0])
    facets = [board for board in assembly.boards if board.name == "bow"]
    for board in facets:
        ends = np.array([[edge.nominal_start for edge in board.part.edges]]).reshape(-1, 2)
        points = board.frame.carry(np.column_stack([ends, np.zeros(len(ends))]))[:, :2]
        assert np.hypot(*(points - middle).T) == pytest.approx(52.0, abs=0.01)


def test_less_than_a_half_circle_does_not(tmp_path: Path) -> None:
    assert "joints/ring-does-not-close" in house(tmp_path, 170.0).says()
