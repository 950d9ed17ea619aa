"""A line is one from corner to corner, and no more of it than is seen."""

from math import cos, pi, sin

from publisher.basics import Box, Layer, Point, polyline
from publisher.pages.model import LineStyle, Stroke
from publisher.pages.sheet.smooth_lines import SmoothLines, smooth_lines, strokes_of
from publisher.pages.type import CUT, DRAW

SQUARE: tuple[Point, ...] = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))


def lines_of(*strokes: Stroke) -> SmoothLines:
    """Return the lines of strokes; those of ``DRAW`` have rank 5, others 0."""
    rank_of: dict[LineStyle, int] = {DRAW: 5}
    return smooth_lines(strokes_of(strokes), lambda style: rank_of.get(style, 0))


def stroke(*paths: tuple[Point, ...], style: LineStyle = CUT, closed: bool = False, clip: Box | None = None) -> Stroke:
    return Stroke(style, tuple(polyline(points, closed) for points in paths), Layer.PAGE, clip=clip)


def points_of(lines: SmoothLines) -> list[list[Point]]:
    return [list(shape.coords) for shape in lines.shapes]


def test_a_square_has_four_lines_and_a_circle_in_short_steps_one() -> None:
    assert points_of(lines_of(stroke(SQUARE, closed=True))) == [[SQUARE[at], SQUARE[(at + 1) % 4]] for at in range(4)]
    ring = tuple((cos(pi * k / 18), sin(pi * k / 18)) for k in range(37))
    assert points_of(lines_of(stroke(ring))) == [list(ring)]


def test_lines_know_their_stroke_their_path_their_width_and_who_gives_way() -> None:
    """Two strokes, the first of two lines; the last point of one and the first of the next are no line between them."""
    lines = lines_of(
        stroke(((0.0, 0.0), (5.0, 0.0)), ((5.0, 1.0), (5.0, 9.0), (9.0, 9.0))), stroke(SQUARE[:2], style=DRAW)
    )
    assert lines.stroke.tolist() == [0, 0, 0, 1]
    assert lines.path.tolist() == [0, 1, 1, 0]
    assert lines.rank.tolist() == [0, 0, 0, 5]
    assert lines.half.tolist() == [CUT.width / 2] * 3 + [DRAW.width / 2]
    assert points_of(lines)[1:3] == [[(5.0, 1.0), (5.0, 9.0)], [(5.0, 9.0), (9.0, 9.0)]]


def test_a_point_twice_running_is_one_and_a_line_of_one_point_none() -> None:
    spot = ((3.0, 3.0), (3.0, 3.0))
    lines = lines_of(stroke(spot, ((0.0, 0.0), (4.0, 0.0), (4.0, 0.0), (8.0, 0.0)), spot))
    assert points_of(lines) == [[(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)]]
    assert lines.path.tolist() == [1]
    assert len(lines_of(stroke(spot)).shapes) == 0


def test_of_a_line_in_a_window_what_it_shows_is_seen() -> None:
    """A line that leaves its window and comes back is two; one outside is none; lines of other strokes stay, in their order."""
    bow = ((0.0, 0.0), (4.0, 2.0), (8.0, 0.0))
    away = ((0.0, 5.0), (8.0, 5.0))
    first, last = stroke(((0.0, 9.0), (1.0, 9.0))), stroke(((0.0, 8.0), (1.0, 8.0)))
    lines = lines_of(first, stroke(bow, away, clip=Box(0.0, 0.0, 8.0, 1.0)), last)
    assert lines.stroke.tolist() == [0, 1, 1, 2]
    assert points_of(lines)[1:3] == [[(0.0, 0.0), (2.0, 1.0)], [(6.0, 1.0), (8.0, 0.0)]]


def test_pages_that_show_the_same_strokes_are_known_again() -> None:
    assert strokes_of([stroke(SQUARE)]) == strokes_of([stroke(SQUARE)])
    assert strokes_of([stroke(SQUARE)]) != strokes_of([stroke(SQUARE, style=DRAW)])
    assert strokes_of([stroke(SQUARE)]) != strokes_of([stroke(SQUARE, closed=True)])
    assert strokes_of([stroke(SQUARE)]) != strokes_of([stroke(SQUARE[:2], SQUARE[2:])])
    assert strokes_of([stroke(SQUARE)]) != strokes_of([stroke(SQUARE, clip=Box(0.0, 0.0, 8.0, 1.0))])
