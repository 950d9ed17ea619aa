"""Pictures fit their box, keep their shape, and never grow beyond the piece."""

from dataclasses import replace

import pytest

from publisher.basics import Box
from publisher.joints import Drawing, DrawingLabel, DrawnLine
from publisher.pages import Stroke, Words
from publisher.pages.sheet.pictures import LABEL_OUT, drawn_size, place_drawing
from publisher.pages.type import NOTE
from publisher.pages.type.fonts import Faces, face
from publisher.pages.type.text import Setter

DRAWING = Drawing(
    "whole:x", "a box",
    (DrawnLine("outline", ((0, 0), (200, 0), (200, 100), (0, 100), (0, 0))), DrawnLine("detail", ((0, 50), (200, 50)))),
    (DrawingLabel("A", (100.0, 50.0)),), 200.0, 100.0,
)  # fmt: skip


@pytest.fixture
def setter() -> Setter:
    return Setter(Faces(face("regular"), face("bold")))


def test_a_drawing_fills_its_box_in_its_own_shape(setter: Setter) -> None:
    drawn = place_drawing(setter, DRAWING, Box(10, 10, 110, 110))
    points = [p for s in drawn if isinstance(s, Stroke) for path in s.paths for p in path.points]
    assert (min(x for x, _ in points), max(x for x, _ in points)) == (10.0, 110.0)
    assert (min(y for _, y in points), max(y for _, y in points)) == (35.0, 85.0)
    assert [w.text for w in drawn if isinstance(w, Words)] == ["A"]


def test_a_small_piece_is_not_blown_up() -> None:
    assert drawn_size(DRAWING, 1000.0, 1000.0) == (1.0, 200.0, 100.0)


def test_a_silhouette_leaves_texture_out(setter: Setter) -> None:
    """A small one has finer lines, so that its slots and arms do not close up."""
    for size, style in ((10, "picture_detail"), (40, "picture_outline")):
        drawn = place_drawing(setter, DRAWING, Box(0, 0, size, size), largest=9.0, labels=False, details=False)
        assert [s.style.name for s in drawn if isinstance(s, Stroke)] == [style]


def test_labels_at_one_point_are_moved_apart(setter: Setter) -> None:
    crowded = replace(
        DRAWING,
        labels=(DrawingLabel("A", (100.0, 50.0)), DrawingLabel("B", (100.5, 50.0)), DrawingLabel("C", (100.0, 50.5))),
    )
    words = [w for w in place_drawing(setter, crowded, Box(10, 10, 110, 110)) if isinstance(w, Words)]
    assert [w.text for w in words] == ["A", "B", "C"]
    for one, other in ((0, 1), (0, 2), (1, 2)):
        a, b = words[one], words[other]
        assert abs(a.x - b.x) > 1.5 or abs(a.y - b.y) > 1.5


def test_no_label_stands_far_out_of_the_room_of_its_picture(setter: Setter) -> None:
    for at in ((0.0, 50.0), (200.0, 50.0), (230.0, 140.0), (-30.0, -40.0)):
        box = Box(10, 10, 110, 110)
        drawn = place_drawing(setter, replace(DRAWING, labels=(DrawingLabel("12 × A", at),)), box)
        (said,) = [thing for thing in drawn if isinstance(thing, Words)]
        width = setter.width("12 × A", NOTE.bold())
        assert box.left - LABEL_OUT <= said.x and said.x + width <= box.right + LABEL_OUT + 1e-6
        assert box.bottom - LABEL_OUT <= said.y <= box.top + LABEL_OUT


def test_a_label_that_stands_off_gets_a_line_to_its_part(setter: Setter) -> None:
    for at, leaders in (((215.0, 50.0), 1), ((202.5, 50.0), 0), ((100.0, 50.0), 0)):  # off, close beside, on the part
        drawn = place_drawing(setter, replace(DRAWING, labels=(DrawingLabel("A", at),)), Box(-10, 10, 230, 210))
        lines = [s for s in drawn if isinstance(s, Stroke) and s.style.name == "leader"]
        assert len(lines) == leaders
        for line in lines:
            (start, end) = line.paths[0].points
            assert end == pytest.approx((210.0, 110.0)) and start[0] > end[0]


def test_a_label_gives_way_to_a_line_that_would_run_through_it(setter: Setter) -> None:
    """It moves by less than its own size; one that no place is free for stays where it was."""
    for lines, free in (((50.0,), True), (tuple(range(2, 100, 2)), False)):
        drawing = replace(
            DRAWING, lines=(*DRAWING.lines, *(DrawnLine("outline", ((0, y), (200, y))) for y in lines)),
            labels=(DrawingLabel("top", (100.0, 50.0)),),
        )  # fmt: skip
        drawn = place_drawing(setter, drawing, Box(10, 10, 110, 110))
        (word,) = (thing for thing in drawn if isinstance(thing, Words))
        low, high = word.y - setter.tail("top", NOTE.bold()), word.y + setter.cap(NOTE.bold())
        crossing = [
            path for s in drawn if isinstance(s, Stroke) for path in s.paths
            if len({y for _, y in path.points}) == 1 and low < path.points[0][1] < high
        ]  # fmt: skip
        assert (not crossing) is free
        assert abs(word.y + setter.cap(NOTE.bold()) / 2 - 60.0) < (4.0 if free else 0.5)
