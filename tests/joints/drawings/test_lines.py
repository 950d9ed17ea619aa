import numpy as np
import pytest
import shapely

from publisher.joints.drawings.lines import Sketch, finish, merge, tidy


def test_doubles_and_pieces_become_one_line() -> None:
    made = merge(
        [
            shapely.LineString([(0, 0), (10, 0)]),
            shapely.LineString([(4, 0), (20, 0)]),
            shapely.LineString([(20, 0), (20, 5)]),
        ]
    )
    assert [shapely.get_coordinates(line).tolist() for line in made] == [[[0, 0], [20, 0], [20, 5]]]


def test_specks_go_and_patterns_keep_their_rows() -> None:
    row, joint = shapely.LineString([(0, 0), (10, 0)]), shapely.LineString([(5, 0), (5, 3)])
    speck = shapely.LineString([(50, 0), (50.1, 0)])
    assert len(merge([row, joint, speck])) == 3  # the row is cut where the joint meets it
    assert len(tidy([row, joint, speck])) == 2


def test_a_drawing_begins_at_its_lower_left_corner() -> None:
    sketch = Sketch()
    sketch.add_path("outline", [(10.0, -5.0), (30.0, -5.0)])
    sketch.add("detail", shapely.LineString(np.array([[12.0, 0.0], [12.0, 7.25]])))
    sketch.label("A", 35.0, 0.0)
    drawing = finish(sketch, "part:a", "a part")
    assert (drawing.width, drawing.height) == (25.0, 12.25)
    assert drawing.labels[0].at == (25.0, 5.0)
    assert {line.weight: line.points for line in drawing.lines} == {
        "outline": ((0.0, 0.0), (20.0, 0.0)),
        "detail": ((2.0, 5.0), (2.0, 12.25)),
    }


def test_an_empty_sketch_is_an_empty_drawing() -> None:
    drawing = finish(Sketch(), "whole:x", "nothing")
    assert (drawing.lines, drawing.labels, drawing.width) == ((), (), 0.0)
    assert pytest.approx(0.0) == drawing.height
