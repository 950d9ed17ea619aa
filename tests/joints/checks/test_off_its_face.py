from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest

from publisher.design import FaceSeat
from publisher.joints.assembled import Assembled
from publisher.joints.checks.off_its_face import off_its_face
from tests.reference.solids import build


def signed(make: SimpleNamespace, hole: bool = False, **said: Any) -> Assembled:
    """A wall of 100 × 60 with a sign of 40 × 20 on it."""
    cut = (((20.0, 10.0), (20.0, 50.0), (80.0, 50.0), (80.0, 10.0)),) if hole else ()
    wall = make.polygon("wall", [(0, 0), (100, 0), (100, 60), (0, 60)], ("bottom", "right", "top", "left"), holes=cut)
    seat = FaceSeat("sign", "front", "outside", "", (50.0, 30.0), 0.0, None, make.here)
    plan = make.panels("hut", {"front": "wall", "sign": "sign"}, "front.bottom", make.join("front.right", "sign.left"))
    joins = plan.joins if said.pop("joined", False) else ()
    plan = replace(plan, joins=joins, seats=(replace(seat, **said),))
    return make.assembled(make.design(panels=(plan,)), wall, make.wall("sign", 40, 20))


@pytest.mark.keeps("joints/off-its-face")
@pytest.mark.parametrize(
    "said",
    [
        {},
        {"at": (20.0, 10.0)},
        {"face": "inside"},
        {"turn": 30.0},
        {"edge": "bottom", "turn": 90.0},
        {"hole": True, "at": (80.0, 30.0)},
    ],
)
def test_a_sign_within_the_rim_lies(make: SimpleNamespace, said: dict[str, Any]) -> None:
    outcome = off_its_face.run(signed(make, **said), off_its_face)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/off-its-face")
@pytest.mark.parametrize(
    ("said", "value", "words"),
    [
        ({"at": (18.0, 30.0)}, 2.0, "reaches 2.00 mm"),
        ({"hole": True}, 0.0, "touches it with 0% of its own face"),
        ({"edge": "bottom", "hole": True}, 40.0, "of its edge over an opening"),
        (
            {"edge": "bottom", "slope": 30.0},
            60.0,
            "leans by 60°: it is cut for a slope of 30°, and that face rises by 90°",
        ),
        ({"joined": True}, None, "off its face, at an angle of 90.00° to it"),
    ],
)
def test_a_sign_that_does_not_lie_is_found(
    make: SimpleNamespace, said: dict[str, Any], value: float | None, words: str
) -> None:
    findings = off_its_face.run(signed(make, **said), off_its_face).findings
    (finding,) = findings
    assert words in finding.message
    assert value is None or finding.value == pytest.approx(value, abs=0.01)


CORNER = """sizes: {{board: 5 mm}}
parts:
  wall: {{name: Wall, board: foam, shape: wall_panel, with: {{width: 120 mm, height: 60 mm}}}}
  side: {{name: Side, board: foam, shape: wall_panel, with: {{width: 80 mm, height: 60 mm}}}}
  quoin: {{name: Quoin, board: foam, shape: rectangle, with: {{width: 20 mm, height: 10 mm}}}}
assembly:
  house:
    panels: {{front: wall, right: side, quoin: quoin}}
    stands_on: front.bottom
    joins:
      - {{edges: [front.right, right.left], joint: butt, runs_through: front{past}}}
      - {{place: quoin, {seat}}}
"""


@pytest.mark.parametrize(
    ("seat", "past", "over"),
    [
        ("lies_on: right, at: [10 mm, 30 mm]", 0, False),  # 5 mm of it on the end of the front, which is flush
        ("stands_on: right, edge: bottom, at: [10 mm, 30 mm], turn: 0 deg", 0, False),
        ("lies_on: right, at: [9 mm, 30 mm]", 0, True),  # 1 mm of it round the corner
        ("lies_on: right, face: inside, at: [10 mm, 30 mm]", 0, True),  # the front stands there
        ("lies_on: right, at: [10 mm, 30 mm]", 10, True),  # the front goes on past the corner
    ],
)
def test_a_face_goes_on_over_what_is_flush_with_it(tmp_path: Path, seat: str, past: int, over: bool) -> None:
    built = build(CORNER.format(seat=seat, past=f", inset: {past} mm" if past else ""), tmp_path)
    assert ("joints/off-its-face" in built.says()) == over
