"""A promised picture tells lines that must all be there from fine ones that may be thinned out."""

import pytest

from publisher.joints.model import Drawing, DrawingLabel, DrawnLine
from publisher.joints.picture_promise import picture_promise
from publisher.pages.sheet import pictures
from tests.proof.refused import refused_by

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


def test_fine_lines_of_each_kind_are_counted_apart() -> None:
    lines = (DrawnLine("hatch", WALL), DrawnLine("detail", BRICK), DrawnLine("hatch", BRICK))
    promise = picture_promise("step:1:act:1", Drawing("act:1:1", "", lines, (), 9.0, 3.0))
    assert (promise.fine, promise.kinds) == ((BRICK, WALL, BRICK), (1, 2))


@pytest.mark.parametrize("sign", ["hatch", "detail"])
def test_a_page_without_the_signs_that_tell_faces_apart_is_refused(monkeypatch: pytest.MonkeyPatch, sign: str) -> None:
    # a table of its own: a key taken out and put back stands last, and whatever this process draws later is in another order
    monkeypatch.setattr(pictures, "WEIGHTS", {kind: style for kind, style in pictures.WEIGHTS.items() if kind != sign})
    assert "proof/step-picture" in refused_by("toll-house")
