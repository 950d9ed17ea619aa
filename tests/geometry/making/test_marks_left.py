"""What is left of marks on a template."""

import shapely

from publisher.basics import LineKind, Purpose, circle, polyline
from publisher.geometry.making.marks_left import left_of, shortened
from publisher.geometry.model import Mark

TEMPLATE = shapely.box(0.0, 0.0, 10.0, 10.0)


def test_open_lines_end_where_the_template_does() -> None:
    inside = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((1.0, 1.0), (9.0, 1.0))), "course")
    over = Mark(LineKind.GLUE, Purpose.LAP, polyline(((5.0, 5.0), (15.0, 5.0))), "lap", "glue")
    word = Mark(LineKind.REFERENCE, Purpose.NAME, polyline(((20.0, 5.0),)), text="beside")
    pocket = Mark(LineKind.SCORE, Purpose.POCKET, circle((10.0, 5.0), 2.0))
    left = tuple(shortened([inside, over, word, pocket], TEMPLATE))
    assert left[0] is inside and left[2:] == (word, pocket)
    assert left[1].path.points == ((5.0, 5.0), (10.0, 5.0)) and (left[1].name, left[1].text) == ("lap", "glue")


def test_words_stay_with_the_first_piece() -> None:
    hollow = TEMPLATE.difference(shapely.box(4.0, 0.0, 6.0, 10.0))
    mark = Mark(LineKind.DRAW, Purpose.SURFACE, polyline(((0.0, 5.0), (10.0, 5.0))), text="once")
    line = shapely.LineString(mark.path.points)
    assert [one.text for one in left_of(mark, line, hollow)] == ["once", ""]
