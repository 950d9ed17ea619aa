from dataclasses import replace
from types import SimpleNamespace

import pytest

from publisher.geometry import BendStretch, BentForm
from publisher.joints.assembled import Assembled
from publisher.joints.checks.bent_too_tightly import bent_too_tightly


def bent(
    make: SimpleNamespace, radius: float, thick: float = 5.0, slits: int = 0, covered: str = "none", faces: str = "bare"
) -> Assembled:
    strip = make.wall("strip", 200, 60, thickness=thick)
    bending = BentForm((BendStretch(0.0, 200.0, radius),), "outside", 3.3 if slits else 0.0, slits, covered)
    return make.assembled(make.design(boards=(make.board(thick, faces),)), replace(strip, bending=bending))


@pytest.mark.keeps("joints/bent-too-tightly")
@pytest.mark.parametrize(
    ("radius", "thick", "slits", "covered", "faces"),
    [
        (125.0, 5.0, 0, "none", "bare"),  # 5/250 is 2 %
        (40.0, 5.0, 40, "paper", "bare"),  # 8 × 5
        (40.0, 5.0, 40, "none", "paper_both"),
        (75.0, 3.0, 0, "none", "bare"),
        (5.0, 1.0, 0, "none", "bare"),  # card
    ],
)
def test_bends_that_hold(
    make: SimpleNamespace, radius: float, thick: float, slits: int, covered: str, faces: str
) -> None:
    assert bent_too_tightly.run(bent(make, radius, thick, slits, covered, faces), bent_too_tightly).findings == ()


@pytest.mark.breaks("joints/bent-too-tightly")
@pytest.mark.parametrize(
    ("radius", "slits", "covered", "value", "limit", "words"),
    [
        (124.0, 0, "none", 5 / 248, 0.02, "strains its faces by 2.02%; board that is bare and not covered"),
        (89.0, 40, "none", 5 / 178, 0.02, "strains its faces by 2.8%; board that is bare and not covered"),
        (89.0, 0, "tape", 5 / 178, 0.02, "board that is not slit"),
        (39.0, 40, "paper", 39.0, 40.0, "slit and covered, bends to 40.0 mm"),
    ],
)
def test_bends_that_tear(
    make: SimpleNamespace, radius: float, slits: int, covered: str, value: float, limit: float, words: str
) -> None:
    (finding,) = bent_too_tightly.run(bent(make, radius, slits=slits, covered=covered), bent_too_tightly).findings
    assert words in finding.message
    assert (finding.value, finding.limit) == pytest.approx((value, limit))


@pytest.mark.breaks("joints/bent-too-tightly")
def test_a_cone_of_foam_tears_at_its_tip(make: SimpleNamespace) -> None:
    part = replace(
        make.wall("k", 60, 60, thickness=3.0), shape="cone", bending=BentForm((), "middle", 0.0, 0, "none", 3.0)
    )
    plan = make.design(boards=(make.board(3.0),))
    (finding,) = bent_too_tightly.run(make.assembled(plan, part), bent_too_tightly).findings
    assert (finding.value, finding.limit) == pytest.approx((0.5, 0.02))
    assert "next to its tip" in finding.message
    assert "cone_frustum" in finding.hint
    card = replace(part, thickness=1.0)
    assert bent_too_tightly.run(make.assembled(plan, card), bent_too_tightly).findings == ()


@pytest.mark.breaks("joints/bent-too-tightly")
@pytest.mark.parametrize("shape", ["tube_wrap", "cone_frustum"])
@pytest.mark.parametrize("covered", ["none", "paper"])
def test_no_slits_are_asked_of_a_shape_that_has_none(make: SimpleNamespace, shape: str, covered: str) -> None:
    subject = bent(make, 60.0, covered=covered)
    subject = replace(subject, parts=tuple(replace(part, shape=shape) for part in subject.parts))
    (finding,) = bent_too_tightly.run(subject, bent_too_tightly).findings
    assert "slits" not in finding.hint and "125.0 mm" in finding.hint


@pytest.mark.breaks("joints/bent-too-tightly")
@pytest.mark.parametrize("covered", ["none", "paper"])
def test_no_slits_are_asked_of_board_that_the_shapes_refuse_to_slit(make: SimpleNamespace, covered: str) -> None:
    """Board of 3 mm is too thin for a slit (4.5 mm): who followed the advice was refused the next time."""
    (finding,) = bent_too_tightly.run(bent(make, 46.5, thick=3.0, covered=covered), bent_too_tightly).findings
    assert "too thin to be slit" in finding.message
    assert "slit" not in finding.hint
    assert "75.0 mm" in finding.hint
