"""Words of marks stand near their marks and touch nothing."""

from collections.abc import Callable
from itertools import combinations
from math import hypot

import pytest
import shapely

from publisher.basics import LineKind, Pose, Purpose
from publisher.geometry import Mark, Part
from publisher.pages.part_notes import mark_notes
from publisher.pages.part_strokes import quiet_lines, region_polygon
from publisher.pages.rectangles import as_polygon
from publisher.pages.text import Setter


@pytest.mark.parametrize("pose", [Pose(), Pose(80, 90, 137.0, True)])
def test_words_cross_no_line_and_no_other_words(make_part: Callable[..., Part], setter: Setter, pose: Pose) -> None:
    marks = (
        Mark(LineKind.REFERENCE, Purpose.MATCH, ((3.0, 20.0),), text="a"),
        Mark(LineKind.REFERENCE, Purpose.MATCH, ((3.2, 20.0),), text="b"),
        Mark(LineKind.REFERENCE, Purpose.BEVEL, ((0.0, 38.0), (60.0, 38.0)), text="bevel 45°"),
    )
    part = make_part(marks=marks)
    notes = mark_notes(part, pose, setter)
    assert sorted(n.text for n in notes) == ["a", "b", "bevel 45°"]
    lines = shapely.union_all([region_polygon(part.template, pose).boundary, quiet_lines(part, pose)])
    for note in notes:
        assert not as_polygon(note.box).intersects(lines)
    for one, other in combinations(notes, 2):
        assert not as_polygon(one.box).intersects(as_polygon(other.box))


def test_words_stay_near_their_mark(stair_layer: Part, setter: Setter) -> None:
    (note,) = mark_notes(stair_layer, Pose(), setter)
    mark = next(m for m in stair_layer.marks if m.text)
    middle = ((note.box.left + note.box.right) / 2, (note.box.bottom + note.box.top) / 2)
    assert note.text == "climbs"
    assert hypot(middle[0] - mark.points[0][0], middle[1] - mark.points[0][1]) < 12.0


def test_a_part_without_words_has_none(make_part: Callable[..., Part], setter: Setter) -> None:
    assert mark_notes(make_part(), Pose(), setter) == ()
