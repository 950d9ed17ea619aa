"""Pictures yield the finest of their lines where a page holds too many."""

from publisher.basics import Layer, polyline
from publisher.pages.model import Drawn, Stroke
from publisher.pages.sheet.thinning import A4, MOST_ON_A4, operators, thinned
from publisher.pages.type import CUT, PICTURE_DETAIL, PICTURE_GHOST, PICTURE_OUTLINE


def lines(style: object, *lengths: float) -> Stroke:
    paths = tuple(polyline(((0.0, float(i)), (length, float(i)))) for i, length in enumerate(lengths))
    return Stroke(style, paths, Layer.PAGE)  # type: ignore[arg-type]


def count(drawn: tuple[Drawn, ...]) -> int:
    return sum(map(operators, drawn))


def test_a_page_with_few_lines_stays_as_it_is() -> None:
    drawn = (lines(PICTURE_DETAIL, *range(1, 900)), lines(CUT, 5.0))
    assert thinned(drawn, A4) == drawn


def test_the_finest_lines_go_first_and_no_more_than_must() -> None:
    detail, outline = lines(PICTURE_DETAIL, *range(1, 2501)), lines(PICTURE_OUTLINE, *range(1, 101))
    left = thinned((detail, outline), A4)
    assert MOST_ON_A4 - 2 <= count(left) <= MOST_ON_A4
    assert left[1] == outline
    kept = left[0]
    assert isinstance(kept, Stroke)
    assert min(p.points[1][0] for p in kept.paths) > 2500 - len(kept.paths)
    assert thinned((detail, outline), 2 * A4) == (detail, outline)


def test_texture_goes_before_what_lies_behind_and_nothing_else_ever() -> None:
    heavy = (lines(CUT, *range(1, 2200)), lines(PICTURE_GHOST, 3.0, 4.0), lines(PICTURE_DETAIL, 1.0, 2.0))
    assert thinned(heavy, A4) == heavy[:1]
