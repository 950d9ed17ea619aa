from pathlib import Path
from types import SimpleNamespace

import pytest

from publisher.basics import Severity
from publisher.brief import read_brief
from publisher.design import work_out
from publisher.geometry import make_parts
from publisher.joints.checks.parts_share_space import parts_share_space

DESIGNS = Path(__file__).parents[3] / "designs"


def corner(make: SimpleNamespace, take_off: float) -> object:
    """Two walls that meet at a right angle; the second is shorter by ``take_off`` at the corner: 5 mm make a butt corner."""
    side = make.polygon("s", [(take_off, 0), (30, 0), (30, 40), (take_off, 40)])
    short = make.part("s", side.outline.outer, edges=make.wall("s", 30, 40).edges)
    plan = make.panels("b", {"f": "w", "r": "s"}, "f.bottom", make.join("f.right", "r.left"))
    return make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), short)


@pytest.mark.keeps("joints/parts-share-space")
def test_a_butt_corner_only_touches(make: SimpleNamespace) -> None:
    outcome = parts_share_space.run(corner(make, 5.0), parts_share_space)
    assert (outcome.looked_at, outcome.findings) == (2, ())


@pytest.mark.breaks("joints/parts-share-space")
def test_a_wall_that_was_not_shortened_is_found_with_its_place(make: SimpleNamespace) -> None:
    (found,) = parts_share_space.run(corner(make, 3.0), parts_share_space).findings
    assert found.severity is Severity.ERROR
    assert "stand in one place" in found.message
    assert found.value is not None
    assert 1.9 < found.value < 2.1


def test_the_demos_have_no_board_where_other_board_stands(make: SimpleNamespace) -> None:
    for slug in ("toll-house", "quay"):
        for sets in ((), (("board", "3/16 in"),)):
            design = work_out(read_brief(DESIGNS / slug, sets))
            parts, _ = make_parts(design)
            outcome = parts_share_space.run(make.assembled(design, *parts), parts_share_space)
            assert outcome.looked_at > 5
            assert outcome.findings == ()


def test_two_panels_that_lie_in_each_other_are_found(make: SimpleNamespace) -> None:
    plan = make.panels(
        "b",
        {"f": "w", "r": "s", "k": "s"},
        "f.bottom",
        make.join("f.right", "r.left", inset=3.0),
        make.join("f.right", "k.left"),
    )
    side = make.polygon("s", [(5, 0), (30, 0), (30, 40), (5, 40)])
    short = make.part("s", side.outline.outer, edges=make.wall("s", 30, 40).edges)
    subject = make.assembled(make.design(panels=(plan,)), make.wall("w", 60, 40), short)
    (found,) = parts_share_space.run(subject, parts_share_space).findings
    assert found.message.startswith("r (part S) and k (part S) stand in one place")
    assert found.value is not None
