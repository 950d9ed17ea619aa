"""A line of words with its box."""

import pytest
import shapely

from publisher.pages.type.styles import NOTE
from publisher.pages.type.text import Setter
from publisher.pages.type.word_boxes import note_at, word_in


def test_the_box_stands_round_the_point(setter: Setter) -> None:
    note = note_at("a", NOTE, 10.0, 20.0, setter)
    assert note.box.left < 10.0 < note.box.right and note.box.bottom < 20.0 < note.box.top
    assert note.box.width == pytest.approx(setter.width("a", NOTE))
    assert note_at("g", NOTE, 10.0, 20.0, setter).box.bottom < note.box.bottom  # room for the tail


def test_a_word_stands_in_an_area_only_when_it_fits(setter: Setter) -> None:
    assert word_in("remove", NOTE, shapely.box(0, 0, 20, 10), setter)
    assert word_in("remove", NOTE, shapely.box(0, 0, 8, 10), setter) is None
    assert word_in("remove", NOTE, shapely.Polygon(), setter) is None
