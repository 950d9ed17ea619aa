from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.geometry import BendStretch, BentForm
from publisher.joints.assembled import Assembled
from publisher.joints.checks.bent_edge_joined import bent_edge_joined


def corner(make: SimpleNamespace, bent: bool, joint: str = "mitre", corner: float = 90.0) -> Assembled:
    wall = make.wall("round", 80, 40)
    form = BentForm((BendStretch(0.0, 80.0, 60.0),), "middle", 0.0, 0, "none")
    plan = make.panels(
        "fort",
        {"front": "wall", "tower": "round"},
        "front.bottom",
        make.join("front.right", "tower.left", joint, corner),
    )
    parts = (make.wall("wall", 100, 40), replace(wall, bending=form if bent else None))
    return make.assembled(make.design(panels=(plan,)), *parts)


@pytest.mark.keeps("joints/bent-edge-joined")
def test_flat_parts_are_joined(make: SimpleNamespace) -> None:
    outcome = bent_edge_joined.run(corner(make, bent=False), bent_edge_joined)
    assert (outcome.looked_at, outcome.findings) == (1, ())


@pytest.mark.breaks("joints/bent-edge-joined")
def test_the_end_of_a_bent_part_is_not_bevelled(make: SimpleNamespace) -> None:
    (finding,) = bent_edge_joined.run(corner(make, bent=True), bent_edge_joined).findings
    assert "tower.left is an edge of a bent part" in finding.message


@pytest.mark.keeps("joints/bent-edge-joined")
@pytest.mark.parametrize(("joint", "angle"), [("mitre", 180.0), ("butt", 90.0)])
def test_an_end_is_joined_square_as_it_is_cut(make: SimpleNamespace, joint: str, angle: float) -> None:
    """End on end, or butted on the wall that runs through; not by the edges that are bent."""
    subject = corner(make, bent=True, joint=joint, corner=angle)
    assert bent_edge_joined.run(subject, bent_edge_joined).findings == ()
    (mating,) = subject.panels[0].matings
    assert mating.gap == pytest.approx(0.0, abs=1e-9)
    assert mating.corner == pytest.approx(angle)
