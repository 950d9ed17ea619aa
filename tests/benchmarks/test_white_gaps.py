"""What closes up in print is found, and no page of a demo has any."""

from pathlib import Path

import pytest

from publisher.basics import Layer, Point, polyline
from publisher.pages import Page
from publisher.pages.model import LineStyle, Stroke
from publisher.pages.type import CUT, DRAW, PICTURE_OUTLINE
from tests.benchmarks.white_gaps import GAP, closings
from tests.whole.conftest import demo_pack

DESIGNS = Path(__file__).parents[2] / "designs"


def page(*strokes: tuple[LineStyle, tuple[Point, ...]]) -> Page:
    drawn = tuple(Stroke(style, (polyline(points),), Layer.PAGE) for style, points in strokes)
    return Page(1, "1", "steps", "Steps", 210.0, 297.0, drawn, (), "", (), ())


def test_two_lines_beside_each_other() -> None:
    """0.6 mm from middle to middle of lines 0.5 and 0.25 mm wide: 0.225 mm of white, for 8 mm."""
    (one,) = closings(page((CUT, ((0, 0), (30, 0))), (DRAW, ((4, 0.6), (12, 0.6)))), GAP)
    assert one.styles == ("cut", "draw")
    assert one.white == pytest.approx(0.225)
    assert one.long == pytest.approx(8.0, abs=0.1)


def test_a_curve_of_short_pieces() -> None:
    """None of its pieces is as long as the place that is found."""
    curve = tuple((x / 4, 0.45 + 0.0005 * x) for x in range(60))
    assert [
        one.long > 10.0 for one in closings(page((PICTURE_OUTLINE, curve), (PICTURE_OUTLINE, ((0, 0), (15, 0)))), GAP)
    ] == [True]


@pytest.mark.parametrize(
    "other",
    [((0.0, 0.7), (30.0, 0.7)), ((5.0, 0.0), (5.0, 9.0)), ((0.0, 0.0), (20.0, 4.0)), ((0.0, 0.05), (30.0, 0.05))],
    ids=["apart", "upon it", "sharp corner", "drawn twice"],
)
def test_what_is_no_such_place(other: tuple[Point, ...]) -> None:
    assert not list(closings(page((DRAW, ((0, 0), (30, 0))), (DRAW, other)), GAP))


@pytest.mark.parametrize("slug", sorted(spec.parent.name for spec in DESIGNS.glob("*/spec.yaml")))
def test_no_two_lines_of_a_demo_close_up(slug: str) -> None:
    pack = demo_pack(slug, "letter")
    assert len(pack.pages) > 9
    assert [(one.number, close) for one in pack.pages for close in closings(one, GAP)] == []
