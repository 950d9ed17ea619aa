"""Patterns that are bent until they fit: the reference part."""

import pytest

from publisher.material.bending import most_tilted
from publisher.material.outlines import outline
from publisher.material.rows import RowBook

SHEET = (0.0, 0.0, 508.0, 762.0)
QUARTERS = (0.0, 90.0, 180.0, 270.0)


@pytest.fixture(scope="module")
def book(shop) -> RowBook:
    """The lattices of a disc of 55 with a step of 30° to 105, gap 1."""
    return RowBook(outline(shop.layer(55.0, 105.0, 30.0), 1.0), True, 16)


def test_twenty_seven_of_the_reference_part(book) -> None:
    """27 on 508 × 762, where rows along the sides give 24 and general engines 26."""
    assert len(most_tilted(book, SHEET, (), 24, 15.0, 6)) >= 27


def test_nothing_better_is_nothing(book) -> None:
    """With 33 there already (the bound by area) no lattice gives more."""
    assert most_tilted(book, SHEET, (), 33, 30.0, 2) == ()
    assert most_tilted(book, (0.0, 0.0, 90.0, 90.0), (), 0, 30.0, 2) == ()


def test_only_allowed_turns(book) -> None:
    """In quarter turns every copy stays at one, whatever is found; the same twice."""
    spots = most_tilted(book, SHEET, QUARTERS, 18, 15.0, 2)
    assert {round(turn % 90.0, 6) for *_, turn in spots} <= {0.0}
    assert spots == most_tilted(book, SHEET, QUARTERS, 18, 15.0, 2)
