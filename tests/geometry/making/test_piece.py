"""A piece's cut file: its letter stands on the piece, in no opening, and every word of its marks once."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from math import hypot
from typing import Any

import pytest

from publisher.basics import LineKind, Purpose, polyline
from publisher.geometry import Mark, piece_words, promised_piece


@pytest.mark.parametrize(
    ("shape", "sizes"),
    [
        ("ring", {"radius": 40.0, "hole_radius": 30.0}),
        ("rectangle", {"width": 200.0, "height": 6.0}),
        ("disc", {"radius": 3.0}),
    ],
)
def test_the_letter_stands_inside_the_piece(
    plan: Callable[..., Any], drawn: Callable[..., Any], shape: str, sizes: dict[str, float]
) -> None:
    part = drawn(plan(shape, sizes))
    letter = piece_words(part)[0]
    assert letter.text == part.letter and 2.0 <= letter.height <= 8.0
    x, y = letter.at
    if shape == "ring":
        assert 30.0 < hypot(x, y) < 40.0  # a letter in the middle would fall out with the hole
    box = part.outline.outer.box
    assert box.left < x < box.right and box.bottom < y < y + 0.7 * letter.height < box.top


def test_words_at_one_point_stand_in_one_line_and_no_line_is_without_length(
    plan: Callable[..., Any], drawn: Callable[..., Any]
) -> None:
    part = drawn(plan("rectangle", {"width": 80.0, "height": 40.0}))
    here = polyline(((10.0, 10.0),))
    marks = (
        Mark(LineKind.REFERENCE, Purpose.MATCH, here, text="a"),
        Mark(LineKind.REFERENCE, Purpose.LAP, here, text="inside face"),
        Mark(LineKind.SCORE, Purpose.BEND, polyline(((5.0, 5.0), (5.0, 30.0)))),
    )
    piece = promised_piece(replace(part, marks=marks))
    assert [word.text for word in piece.words or ()] == [part.letter, "a inside face"]
    assert [(line.kind, line.points) for line in piece.lines or ()] == [("score", ((5.0, 5.0), (5.0, 30.0)))]
    assert piece.rings == tuple(path.points for path in part.outline.paths)


def test_rings_are_as_fine_as_their_files_are_read(plan: Callable[..., Any], drawn: Callable[..., Any]) -> None:
    """A layer of a stair was refused, 0.01 mm off: chords of both, one over the other where the box of an arc ends."""
    ring = promised_piece(drawn(plan("disc", {"radius": 73.1}))).rings[0]
    middles = [((ax + bx) / 2, (ay + by) / 2) for (ax, ay), (bx, by) in pairwise(ring)]
    assert max(73.1 - hypot(x, y) for x, y in middles) <= 0.002
