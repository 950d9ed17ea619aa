"""A promised picture tells lines that must all be there from fine ones that may be thinned out."""

from publisher.joints.model import Drawing, DrawingLabel, DrawnLine
from publisher.joints.picture_promise import picture_promise

WALL, BRICK = ((0.0, 0.0), (9.0, 0.0)), ((0.0, 3.0), (9.0, 3.0))


def test_fine_lines_stand_apart_and_words_are_kept_or_not() -> None:
    drawing = Drawing(
        "whole:box",
        "",
        (DrawnLine("outline", WALL), DrawnLine("detail", BRICK)),
        (DrawingLabel("A", (1.0, 1.0)),),
        9.0,
        3.0,
    )
    promise = picture_promise("cover:whole:box", drawing)
    assert (promise.lines, promise.fine) == ((WALL,), (BRICK,))
    assert promise.labels == (("A", (1.0, 1.0)),)
    assert picture_promise("cover:whole:box", drawing, labels=False).labels == ()
