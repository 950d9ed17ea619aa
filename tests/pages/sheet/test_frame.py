"""Frames: printable limit by the check values, corners, and papers that hold no page."""

import pytest

from publisher.basics import Box, Refusal
from publisher.pages.model import Paper
from publisher.pages.sheet.frame import CODE, Corner, columns, make_frame
from publisher.pages.sheet.paper_table import papers

A4 = next(p for p in papers() if p.name == "a4")
LETTER = next(p for p in papers() if p.name == "letter")


def inside(inner: Box, outer: Box) -> bool:
    return (
        inner.left >= outer.left
        and inner.bottom >= outer.bottom
        and inner.right <= outer.right
        and inner.top <= outer.top
    )


def test_the_limit_holds_at_both_short_edges_whichever_way_the_page_lies() -> None:
    # 6.35 mm, and 12.7 mm at both short edges, since the feed direction is unknown
    upright, across = make_frame(A4, False, 50.0), make_frame(A4, True, 50.0)
    assert upright.limit == Box(6.35, 12.7, 210 - 6.35, 297 - 12.7)
    assert (across.width, across.height) == (297, 210)
    assert across.limit == Box(12.7, 6.35, 297 - 12.7, 210 - 6.35)


def test_the_larger_of_two_margins_holds_on_both_sides() -> None:
    paper = Paper("mine", "mine", 200, 300, (3.0, 29.0, 6.0, 5.0), "")
    assert make_frame(paper, False, 0.0).limit == Box(6, 29, 194, 271)
    assert make_frame(paper, True, 0.0).limit == Box(29, 6, 271, 194)


@pytest.mark.parametrize("corner", ["lower_left", "lower_right", "upper_left", "upper_right"])
@pytest.mark.parametrize("side", [50.0, 30.0])
@pytest.mark.parametrize("landscape", [False, True])
def test_square_and_code_lie_in_the_corner_that_is_blocked(corner: Corner, side: float, landscape: bool) -> None:
    frame = make_frame(LETTER, landscape, side, corner)
    assert frame.calibration is not None
    assert frame.code is not None
    assert frame.calibration.width == pytest.approx(side)
    assert frame.calibration.height == pytest.approx(side)
    assert frame.code.width == pytest.approx(CODE)
    assert inside(frame.code.grown(2.0), frame.calibration)
    (blocked,) = frame.blocked
    assert inside(frame.calibration, blocked)
    assert inside(blocked, frame.live)
    assert blocked.left == frame.live.left if corner.endswith("left") else blocked.right == frame.live.right
    assert inside(frame.live, frame.limit)
    assert inside(frame.text, frame.live)


def test_pages_without_a_square() -> None:
    plain, coded = make_frame(A4, False, 0.0), make_frame(A4, False, 0.0, code=True)
    assert (plain.calibration, plain.code, plain.blocked) == (None, None, ())
    assert coded.code is not None
    assert len(coded.blocked) == 1


def test_a_square_under_30_mm_is_refused() -> None:
    with pytest.raises(ValueError, match="smaller than 30"):
        make_frame(A4, False, 29.9)


@pytest.mark.breaks("pages/paper-too-small")
def test_a_paper_that_holds_no_page_is_refused() -> None:
    with pytest.raises(Refusal) as refusal:
        make_frame(Paper("slip", "slip", 60.0, 120.0, (6.35, 12.7, 6.35, 12.7), ""), False, 50.0)
    assert refusal.value.findings[0].check == "pages/paper-too-small"


@pytest.mark.keeps("pages/paper-too-small")
def test_columns_share_the_width() -> None:
    one, two, three = columns(Box(10, 0, 100, 50), 3, 6.0)
    assert one.width == pytest.approx(26) and two.width == pytest.approx(26)
    assert three.right == pytest.approx(100)
    assert two.left - one.right == pytest.approx(6.0)
