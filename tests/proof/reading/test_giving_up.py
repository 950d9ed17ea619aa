"""Whatever a reader gives up on is said in words: its own limit by name, an error of a library never by its text."""

import pytest
import shapely

from publisher.proof.reading import GIVES_UP, TooMuch, why_given_up


def test_a_limit_says_which_and_an_error_of_a_library_does_not() -> None:
    assert why_given_up(TooMuch("very many pieces")) == "very many pieces"
    with pytest.raises(GIVES_UP) as raised:
        shapely.Polygon([(0.0, 0.0), (1.0, 1.0)])
    assert why_given_up(raised.value) == "its numbers make no sense"
